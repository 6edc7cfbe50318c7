"""The lab of packages/core/bench/bench-lab.ts in SimPy. Usage: lab_model.py WEEKS REPLICATIONS SEED

Two technicians by day and help in the evening, resin and filament machines, of which the latter break down, a washer
for whole builds, a curing station that waits to fill. Waiting work with hands is ranked over all queues (rush, kind, promise, number); work that
may not pause starts only if it typically fits before the window ends. Times are hours.
"""

import math
from bisect import insort
from random import betavariate, expovariate, lognormvariate, randint, random

import simpy
from run import report

IGNORED_WEEKS = 2
TOLERANCE = 1e-9
HOURS_BETWEEN_FAILURES = 60
DAY_WINDOWS = [(day * 24 + start, day * 24 + end) for day in range(5) for start, end in ((7, 11.5), (12, 15.5))]
EVENING_WINDOWS = [(day * 24 + 16, day * 24 + 20) for day in range(4)]
STARTS = sorted(start for start, _ in DAY_WINDOWS + EVENING_WINDOWS)
MACHINE, STATION, BENCH = range(3)


def pert(low, mode, high):
    """Beta with weight 4 on the mode; minutes in, hours out."""
    width = high - low
    return (low + width * betavariate(1 + 4 * (mode - low) / width, 1 + 4 * (high - mode) / width)) / 60


class Person:
    def __init__(self, skills):
        self.skills = skills
        self.on_duty = False
        self.window_end = 0.0
        self.task = None


class Job:
    def __init__(self, number, part, pieces, space, arrived, rush, due):
        self.number = number
        self.part = part
        self.pieces = pieces
        self.space = pieces * space
        self.arrived = arrived
        self.rank = (0 if rush else 1, due, number)


class Load:
    """What waits for a machine or station: one job, or the jobs of a build."""

    def __init__(self, jobs, kind, ready):
        self.jobs = jobs
        self.space = sum(job.space for job in jobs)
        self.ready = ready
        self.done = None
        self.best = min(job.rank for job in jobs)
        self.rank = (self.best[0], kind, *self.best[1:])

    def __lt__(self, other):
        return self.rank < other.rank


class Task:
    """Work with hands that waits for a person."""

    def __init__(self, rank, skill, need, started):
        self.rank = rank
        self.skill = skill
        self.need = need
        self.started = started
        self.process = None

    def __lt__(self, other):
        return self.rank < other.rank


class EndOfInstant(simpy.Event):
    """Happens when nothing else is left to happen at this time."""

    def __init__(self, env, callback):
        super().__init__(env)
        self._ok = True
        self._value = None
        self.callbacks.append(callback)
        env.schedule(self, priority=simpy.events.NORMAL + 1)


class UnitGroup:
    """Machines or stations that are alike, and what waits for them."""

    def __init__(self, count, capacity, full_share, waited, first_need, size, run):
        self.idle = count
        self.capacity = capacity
        self.full_share = full_share
        self.waited = waited
        self.first_need = first_need
        self.size = size
        self.run = run
        self.loads = []
        self.waiting_size = 0

    def seed(self, now):
        """First-ranked load when something may be launched now, else None."""
        if self.idle == 0 or not self.loads:
            return None
        first = self.loads[0]
        if self.waiting_size >= self.full_share * self.capacity - TOLERANCE:
            return first
        return first if self.waited is not None and first.ready + self.waited <= now + TOLERANCE else None

    def take(self):
        """Takes what fits, in the order of rank."""
        taken, left, size = [], [], 0
        for load in self.loads:
            if not taken or size + self.size(load) <= self.capacity + TOLERANCE:
                taken.append(load)
                size += self.size(load)
            else:
                left.append(load)
        self.loads = left
        self.waiting_size -= size
        return taken


class BenchLab:
    def __init__(self, env, weeks):
        self.env = env
        self.start = IGNORED_WEEKS * 168
        self.end = (IGNORED_WEEKS + weeks) * 168
        self.numbers = 0
        self.open = 0
        self.lead_times = []
        self.worked = 0.0
        self.runs = {"resin": 0, "filament": 0}
        self.breakdowns = 0
        self.finished = env.event()
        self.events = 0
        self.dispatch_is_due = False
        self.queues = {"prepare files": [], "run machines": [], "hand work": []}
        technicians = [Person({"prepare files", "run machines", "hand work"}) for _ in range(2)]
        helper = Person({"run machines"})
        self.persons = [helper, *technicians]
        self.groups = {
            "resin": UnitGroup(3, 24, 0.6, 4, 12 / 60, lambda load: load.space, self.resin_build),
            "filament": UnitGroup(6, 4, 0, None, 10 / 60, lambda load: load.space, self.filament_build),
            "washer": UnitGroup(1, 2, 0, None, 0.1, lambda load: 1, self.wash),
            "curing": UnitGroup(1, 6, 0.5, 1, 0.05, lambda load: 1, self.cure),
        }
        env.process(self.shifts(technicians, DAY_WINDOWS))
        env.process(self.shifts([helper], EVENING_WINDOWS))
        env.process(self.demand("ring", 20, 12, 1, 72, self.resin_part))
        env.process(self.demand("housing", 9, 4, 3, 96, self.resin_part))
        env.process(self.demand("bracket", 24, 4, 1, 72, self.filament_part))
        env.process(self.watch())

    # Demand and routes

    def demand(self, part, per_week, most_pieces, space, promise, route):
        env = self.env
        while True:
            yield env.timeout(expovariate(per_week / 168))
            rush = random() < 0.15
            due = env.now + (24 if rush else promise)
            self.numbers += 1
            job = Job(self.numbers, part, randint(1, most_pieces), space, env.now, rush, due)
            self.events += 1
            if self.start <= env.now < self.end:
                self.open += 1
            env.process(route(job))

    def resin_part(self, job):
        yield from self.bench(job, "prepare files", pert(10, 20, 45), 20 / 60, False)
        yield from self.unit("resin", Load([job], MACHINE, self.env.now))
        yield from self.bench(job, "hand work", sum(pert(2, 5, 15) for _ in range(job.pieces)), 0, True)
        yield from self.unit("curing", Load([job], STATION, self.env.now))
        yield from self.bench(job, "hand work", pert(4, 8, 18), 0, True)
        self.ends(job)

    def filament_part(self, job):
        yield from self.bench(job, "prepare files", pert(10, 20, 45), 20 / 60, False)
        yield from self.unit("filament", Load([job], MACHINE, self.env.now))
        yield from self.bench(job, "hand work", sum(pert(2, 5, 15) for _ in range(job.pieces)), 0, True)
        yield from self.bench(job, "hand work", pert(4, 8, 18), 0, True)
        self.ends(job)

    def ends(self, job):
        if self.start <= job.arrived < self.end:
            self.lead_times.append(self.env.now - job.arrived)
            self.open -= 1
            self.check_finished()

    def watch(self):
        yield self.env.timeout(self.end)
        self.check_finished()

    def check_finished(self):
        if self.open == 0 and self.env.now >= self.end and not self.finished.triggered:
            self.finished.succeed()

    # Machines and stations

    def unit(self, name, load):
        load.done = self.env.event()
        group = self.groups[name]
        insort(group.loads, load)
        group.waiting_size += group.size(load)
        if group.waited is not None:
            self.env.process(self.waited(group))
        self.dispatch()
        yield load.done

    def waited(self, group):
        yield self.env.timeout(group.waited)
        self.dispatch()

    def launch(self, group, person):
        group.idle -= 1
        loads = group.take()
        self.env.process(group.run(group, loads, person))

    def resin_build(self, group, loads, person):
        rank = min(load.best for load in loads)
        pieces = sum(job.pieces for load in loads for job in load.jobs)
        yield from self.hands((rank[0], MACHINE, *rank[1:]), "run machines", pert(8, 12, 24), 12 / 60, False, person)
        yield self.env.timeout(0.1)
        self.events += 1
        yield self.env.timeout(pert(120, 180, 360) + 0.02 * pieces)
        self.events += 1
        yield from self.hands((rank[0], MACHINE, *rank[1:]), "run machines", pert(6, 9, 18), 9 / 60, False)
        self.run_ends("resin", group)
        build = Load([job for load in loads for job in load.jobs], STATION, self.env.now)
        yield from self.unit("washer", build)
        for load in loads:
            load.done.succeed()

    def filament_build(self, group, loads, person):
        rank = min(load.best for load in loads)
        pieces = sum(job.pieces for load in loads for job in load.jobs)
        yield from self.hands((rank[0], MACHINE, *rank[1:]), "run machines", pert(6, 10, 20), 10 / 60, False, person)
        yield from self.running(0.1)
        yield from self.running(0.3 + pieces * lognormvariate(0.4, 0.4))
        yield from self.running(0.5)
        yield from self.hands((rank[0], MACHINE, *rank[1:]), "run machines", pert(4, 6, 12), 6 / 60, False)
        self.run_ends("filament", group)
        for load in loads:
            load.done.succeed()

    def running(self, left):
        """Something that goes by itself, until it has gone on for so many hours between failures.

        A failure stops it until somebody is in and has repaired it. The time to the next one has no memory, so it may
        be drawn anew whenever something begins to run.
        """
        env = self.env
        failure = expovariate(1 / HOURS_BETWEEN_FAILURES)
        while failure < left:
            yield env.timeout(failure)
            self.events += 1
            if self.start <= env.now < self.end:
                self.breakdowns += 1
            left -= failure
            if not any(person.on_duty for person in self.persons):
                yield env.timeout(self.until_somebody_comes())
                self.events += 1
            yield from self.hands((-1, -1, env.now, -1), "run machines", pert(20, 40, 90), 0, True)
            failure = expovariate(1 / HOURS_BETWEEN_FAILURES)
        yield env.timeout(left)
        self.events += 1

    def until_somebody_comes(self):
        hour = self.env.now % 168
        return next((start for start in STARTS if start >= hour), STARTS[0] + 168) - hour

    def wash(self, group, loads, person):
        return self.station(group, loads, person, 0.1, 0.4)

    def cure(self, group, loads, person):
        return self.station(group, loads, person, 0.05, 0.5)

    def station(self, group, loads, person, handling, run):
        rank = loads[0].rank
        yield from self.hands(rank, "run machines", handling, handling, False, person)
        yield self.env.timeout(run)
        self.events += 1
        yield from self.hands(rank, "run machines", handling, handling, False)
        group.idle += 1
        for load in loads:
            load.done.succeed()
        self.dispatch()

    def run_ends(self, name, group):
        group.idle += 1
        if self.start <= self.env.now < self.end:
            self.runs[name] += 1
        self.dispatch()

    # People

    def bench(self, job, skill, duration, typical, pausable):
        rank = (job.rank[0], BENCH, *job.rank[1:])
        return self.hands(rank, skill, duration, typical, pausable)

    def hands(self, rank, skill, remaining, typical, pausable, person=None):
        """Work with hands, from waiting for a person on; with a person given it starts at once."""
        env = self.env
        while True:
            task = Task(rank, skill, 0 if pausable else typical, None)
            if person is None:
                task.started = env.event()
                insort(self.queues[skill], task)
                self.dispatch()
                person = yield task.started
            person.task = task
            task.process = env.active_process
            started = env.now
            try:
                yield env.timeout(remaining)
                self.events += 1
                self.book(started)
                person.task = None
                self.dispatch()
                return
            except simpy.Interrupt:
                self.events += 1
                self.book(started)
                remaining -= env.now - started
                pausable = True
                person.task = None
                person = None

    def book(self, started):
        self.worked += max(0, min(self.env.now, self.end) - max(started, self.start))

    def shifts(self, persons, windows):
        env = self.env
        for week in range(1000):
            for start, end in windows:
                yield env.timeout(week * 168 + start - env.now)
                self.events += 1
                for person in persons:
                    person.on_duty = True
                    person.window_end = week * 168 + end
                self.dispatch()
                yield env.timeout(week * 168 + end - env.now)
                self.events += 1
                for person in persons:
                    person.on_duty = False
                    if person.task is not None:
                        person.task.process.interrupt()

    def find(self, skill, need):
        """The free person with the fewest skills whose time is enough."""
        latest = self.env.now + need - TOLERANCE
        for person in self.persons:
            if person.on_duty and person.task is None and skill in person.skills and person.window_end >= latest:
                return person
        return None

    def dispatch(self):
        """Has work started as soon as everything else of this instant has happened."""
        if not self.dispatch_is_due:
            self.dispatch_is_due = True
            EndOfInstant(self.env, self.start_work)

    def start_work(self, _):
        """Starts the first-ranked work that has its person, until nothing more can start."""
        self.dispatch_is_due = False
        now = self.env.now
        while any(person.on_duty and person.task is None for person in self.persons):
            best = None
            for queue in self.queues.values():
                for task in queue:
                    if best is not None and not task.rank < best[0]:
                        break
                    person = self.find(task.skill, task.need)
                    if person is not None:
                        best = (task.rank, person, task, None)
                        break
            for group in self.groups.values():
                seed = group.seed(now)
                if seed is not None and (best is None or seed.rank < best[0]):
                    person = self.find("run machines", group.first_need)
                    if person is not None:
                        best = (seed.rank, person, None, group)
            if best is None:
                return
            _, person, task, group = best
            if task is None:
                person.task = group
                self.launch(group, person)
            else:
                self.queues[task.skill].remove(task)
                person.task = task
                task.started.succeed(person)


def play(weeks, replications):
    events = 0
    answers = {
        "mean lead time, h": [],
        "p90 lead time, h": [],
        "hours at work a week": [],
        "resin builds a week": [],
        "filament builds a week": [],
        "breakdowns a week": [],
    }
    for _ in range(replications):
        env = simpy.Environment()
        lab = BenchLab(env, weeks)
        env.run(until=lab.finished)
        times = sorted(lab.lead_times)
        events += lab.events
        answers["mean lead time, h"].append(sum(times) / len(times))
        answers["p90 lead time, h"].append(times[math.ceil(0.9 * len(times)) - 1])
        answers["hours at work a week"].append(lab.worked / weeks)
        answers["resin builds a week"].append(lab.runs["resin"] / weeks)
        answers["filament builds a week"].append(lab.runs["filament"] / weeks)
        answers["breakdowns a week"].append(lab.breakdowns / weeks)
    return events, answers


if __name__ == "__main__":
    report(play)
