"""What the reference models share: the processor time of a run, and the report of it as one line of JSON."""

import json
import random
import sys
import time


def batch_means(values, batches=40):
    """Means of equal batches, one after the other; what does not fill a batch is left out."""
    size = len(values) // batches
    return [sum(values[batch * size : (batch + 1) * size]) / size for batch in range(batches)]


def report(play):
    """Calls play(*sizes) with the whole numbers of the command line; the last argument is the seed.

    `play` returns the number of events of the model and, for each answer, values that are nearly independent.
    """
    *sizes, seed = sys.argv[1:]
    random.seed(seed)
    start = time.process_time()
    events, answers = play(*map(int, sizes))
    seconds = time.process_time() - start
    print(json.dumps({"seconds": seconds, "events": events, "answers": answers}))
