"""The whole mechanics against a general solver: the same energy, on the same coarse mesh, for three
layouts and two bodies, with upright walls and with walls that bow under a cover of true area.

Outside source: IPOPT through CasADi (see aid/interior_point.py).
"""

import json

from aid import interior_point
from aid.program import example, near

LAYOUTS = ("row-six", "island-eight", "curved-ten")
BODIES = ("level", "oblique", "level-giving", "oblique-giving")
CASES = [(layout, "440x400", body) for layout in LAYOUTS for body in BODIES]


def problem(layout, size, body):
    return json.loads(example("coarse_problem", layout, size, body))


def check_pressures_and_pose_agree():
    for case in CASES:
        given = problem(*case)
        answer = given["answer"]
        bare, loaded = interior_point.solve(given)
        for found, expected, what in [
            (bare["fill_pa"], answer["unloaded_pa"], "unloaded pressure"),
            (loaded["fill_pa"], answer["fill_pa"], "fill pressure"),
        ]:
            for one, other in zip(found, expected):
                # Two in a thousand; a slack compartment has no pressure, to a hundredth of a pascal.
                near(one, other, 0.002 * abs(other) + 0.5, f"{what} of {case}")
        sink, roll, pitch = loaded["pose"]
        near(sink, answer["pose"][0], 0.002 * abs(answer["pose"][0]), f"height of {case}")
        # Slopes: two in a thousand, and no better than a hundredth of a degree.
        for found, expected, what in [(roll, answer["pose"][1], "roll"), (pitch, answer["pose"][2], "pitch")]:
            near(found, expected, 0.002 * abs(expected) + 1e-4, f"{what} of {case}")
