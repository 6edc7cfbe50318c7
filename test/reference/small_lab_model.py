"""Workload C in SimPy: a small lab, many replications. Usage: small_lab_model.py WEEKS REPLICATIONS SEED

Two technicians on weekdays from 08:00 to 16:00, eight machines that print through the night. A job is prepared,
waits for a machine, is set up, printed, unloaded and finished by hand. Work with hands stops when the shift ends and
queues again behind its like. Times are hours.
"""

from random import expovariate, lognormvariate, uniform

import simpy
from run import report

PERSONS = 2
MACHINES = 8
GAP = 168 / 100
SHIFT_START = 8
SHIFT_LENGTH = 8

OFF_DUTY, UNLOAD, SET_UP, PREPARE, BENCH = -1, 0, 1, 2, 3


class SmallLab:
    def __init__(self, env):
        self.env = env
        self.technicians = simpy.PreemptiveResource(env, PERSONS)
        self.machines = simpy.Resource(env, MACHINES)
        self.lead_times = []
        self.hands_time = 0
        self.events = 0
        env.process(self.arrivals())
        for person in range(PERSONS):
            env.process(self.nights(person == 0))

    def arrivals(self):
        while True:
            yield self.env.timeout(expovariate(1 / GAP))
            self.events += 1
            self.env.process(self.job())

    def job(self):
        arrived = self.env.now
        yield from self.work(PREPARE, lognormvariate(-2, 0.5))
        with self.machines.request() as machine:
            yield machine
            yield from self.work(SET_UP, uniform(0.05, 0.15))
            yield self.env.timeout(lognormvariate(1, 0.5))
            self.events += 1
            yield from self.work(UNLOAD, uniform(0.03, 0.1))
        yield from self.work(BENCH, expovariate(1 / 0.3))
        self.lead_times.append(self.env.now - arrived)

    def work(self, kind, remaining):
        while remaining > 0:
            with self.technicians.request(priority=kind, preempt=False) as technician:
                yield technician
                started = self.env.now
                try:
                    yield self.env.timeout(remaining)
                    self.events += 1
                except simpy.Interrupt:
                    pass
                remaining -= self.env.now - started
                self.hands_time += self.env.now - started
                if remaining < 1e-9:
                    return

    def nights(self, is_counted):
        """Takes one technician away whenever the shift is over."""
        env = self.env
        day = 0
        while True:
            with self.technicians.request(priority=OFF_DUTY) as absence:
                yield absence
                yield env.timeout(day * 24 + SHIFT_START - env.now)
                self.events += is_counted
            yield env.timeout(SHIFT_LENGTH)
            self.events += is_counted
            day += 3 if day % 7 == 4 else 1


def play(weeks, replications):
    events = 0
    answers = {"mean lead time, h": [], "jobs finished a week": [], "hours of hands a week": []}
    for _ in range(replications):
        env = simpy.Environment()
        lab = SmallLab(env)
        env.run(until=weeks * 168)
        events += lab.events
        answers["mean lead time, h"].append(sum(lab.lead_times) / len(lab.lead_times))
        answers["jobs finished a week"].append(len(lab.lead_times) / weeks)
        answers["hours of hands a week"].append(lab.hands_time / weeks)
    return events, answers


if __name__ == "__main__":
    report(play)
