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

    A tenth of it (of the last size) is played three times before the clock starts, as on the other side.
    `play` returns the number of events of the model and, for each answer, values that are nearly independent.
    """
    *sizes, seed = sys.argv[1:]
    sizes = [int(size) for size in sizes]
    for warm_up in range(1, 4):
        random.seed(f"{seed}, warm-up {warm_up}")
        play(*sizes[:-1], sizes[-1] // 10)
    random.seed(seed)
    start = time.process_time()
    events, answers = play(*sizes)
    seconds = time.process_time() - start
    print(json.dumps({"seconds": seconds, "events": events, "answers": answers}))
