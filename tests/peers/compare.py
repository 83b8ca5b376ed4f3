"""Times of the peer and of Seatwright on one problem, and whether they agree.

Usage: compare.py COMMAND..., which is crates/mechanics/examples/coarse_problem.rs with its arguments
up to MM. The two take turns, so that what else the machine does slows both.
"""

import json
import statistics
import subprocess
import sys
import time

import numpy as np

from mechanics import Cushion

AGREED = 1e-3  # a tenth of a percent
TURNS = 5
RUNS = 8  # in a turn, of each


def seek(command):
    """Seatwright's problem with its answer, and the seconds of its runs but for the first: the peer
    is warm too."""
    done = subprocess.run([*command, str(1 + RUNS)], check=True, capture_output=True, text=True)
    given = json.loads(done.stdout)
    return given, given["seconds"][1:]


def difference(given, answer):
    """The greatest difference as a share: of each pressure and of the height; of slopes, which may
    vanish, over a tenth of a radian."""
    own = given["answer"]
    shares = [np.abs(answer[key] / np.array(own[key]) - 1).max() for key in ("fill_pa", "unloaded_pa")]
    pose = np.abs(answer["pose"] - np.array(own["pose"]))
    return max(*shares, pose[0] / abs(own["pose"][0]), pose[1] / 0.1, pose[2] / 0.1)


def main(command):
    given, _ = seek(command)
    cushion = Cushion(given)
    cushion.rest(given)
    ours, peers = [], []
    for _ in range(TURNS):
        ours += seek(command)[1]
        for _ in range(RUNS):
            start = time.perf_counter()
            answer = cushion.rest(given)
            peers.append(time.perf_counter() - start)
    print(f"nodes {len(given['nodes'])}, the peer's steps {answer['steps']}")
    # The fastest is what each needs; the machine slows the others.
    for word, of in [("median", statistics.median), ("fastest", min)]:
        own, other = 1e3 * of(ours), 1e3 * of(peers)
        print(f"{word}: seatwright {own:.1f} ms, peer {other:.1f} ms, ratio {other / own:.1f}")
    worst = difference(given, answer)
    print(f"greatest difference {100 * worst:.1e} %")
    return 0 if worst <= AGREED else 1


sys.exit(main(sys.argv[1:]))
