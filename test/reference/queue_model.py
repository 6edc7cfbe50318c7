"""Workload A in SimPy: M/M/1, an arrival an hour, mean service 0.9 h. Usage: queue_model.py CUSTOMERS SEED"""

from random import expovariate

import simpy
from run import batch_means, report

GAP = 1.0
SERVICE = 0.9


def customer(env, server, waits):
    arrived = env.now
    with server.request() as request:
        yield request
        waits.append(env.now - arrived)
        yield env.timeout(expovariate(1 / SERVICE))


def arrivals(env, server, customers, waits):
    for _ in range(customers):
        yield env.timeout(expovariate(1 / GAP))
        env.process(customer(env, server, waits))


def play(customers):
    env = simpy.Environment()
    waits = []
    env.process(arrivals(env, simpy.Resource(env), customers, waits))
    env.run()
    return 2 * customers, {"mean wait, h": batch_means(waits)}


if __name__ == "__main__":
    report(play)
