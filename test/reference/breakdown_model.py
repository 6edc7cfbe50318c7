"""Workload B in SimPy: eight servers that fail by the clock. Usage: breakdown_model.py CUSTOMERS SEED

Six arrivals an hour, mean service 1 h; each server fails after 100 h on average, busy or not, is repaired in 10 h
on average, and goes on with what it was at.
"""

from random import expovariate

import simpy
from run import batch_means, report

SERVERS = 8
GAP = 1 / 6
SERVICE = 1.0
TIME_TO_FAILURE = 100.0
TIME_TO_REPAIR = 10.0


class Queue:
    def __init__(self, env, customers):
        self.env = env
        self.customers = customers
        self.line = simpy.Store(env)
        self.waits = []
        self.stays = []
        self.events = 0
        self.all_served = env.event()

    def arrivals(self):
        for _ in range(self.customers):
            yield self.env.timeout(expovariate(1 / GAP))
            self.events += 1
            self.line.put(self.env.now)

    def server(self):
        env = self.env
        while True:
            arrived = yield from self.next_customer()
            self.waits.append(env.now - arrived)
            remaining = expovariate(1 / SERVICE)
            while remaining > 0:
                started = env.now
                try:
                    yield env.timeout(remaining)
                    remaining = 0
                except simpy.Interrupt as failure:
                    remaining -= env.now - started
                    yield failure.cause
            self.events += 1
            self.stays.append(env.now - arrived)
            if len(self.stays) == self.customers:
                self.all_served.succeed()

    def next_customer(self):
        while True:
            request = self.line.get()
            try:
                return (yield request)
            except simpy.Interrupt as failure:
                request.cancel()
                yield failure.cause

    def breakdowns(self, server):
        env = self.env
        while True:
            yield env.timeout(expovariate(1 / TIME_TO_FAILURE))
            self.events += 1
            repair = env.timeout(expovariate(1 / TIME_TO_REPAIR))
            server.interrupt(repair)
            yield repair
            self.events += 1


def play(customers):
    env = simpy.Environment()
    queue = Queue(env, customers)
    env.process(queue.arrivals())
    for _ in range(SERVERS):
        env.process(queue.breakdowns(env.process(queue.server())))
    env.run(until=queue.all_served)
    return queue.events, {"mean wait, h": batch_means(queue.waits), "mean stay, h": batch_means(queue.stays)}


if __name__ == "__main__":
    report(play)
