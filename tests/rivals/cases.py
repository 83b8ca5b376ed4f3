"""The cases: cushions, counts, bodies and loads, each given so that any other program can repeat it.

Walls 60 mm, straight seams across the whole cushion, square corners; counts are listed rear to front
and, within a row, from the client's left to right. The body is that of
tests/reference/prototype_cases.md; a body of scale s is that body with all its lengths times s, about
the middle of the cushion's rear edge: height s B(x/s, y/s). Load on the line x = 0; seat bones at
x = +-62 mm, y = 130 mm, times the scale. The least height of the body is 0 before it sinks.
"""

from dataclasses import dataclass

import numpy as np


@dataclass(frozen=True)
class Cushion:
    width: float
    depth: float
    seams_x: tuple
    seams_y: tuple
    wall: float = 0.060


@dataclass(frozen=True)
class Case:
    cushion: Cushion
    counts: tuple
    load: float = 500.0  # N
    scale: float = 1.0
    moved: tuple = (0, 1)  # places in `counts`: the left and the right rear compartment that cells change
    settled_on: "Case | None" = None  # where soft tissue took the body's shape, if not on this stock itself

    @property
    def line(self):
        """Distance of the load from the rear edge, m."""
        return 0.170 * self.scale

    @property
    def seat_bone(self):
        return 0.062 * self.scale, 0.130 * self.scale

    def body(self, x, y):
        return self.scale * (heights(x / self.scale, y / self.scale) - LOWEST)


def heights(x, y):
    """Two buttocks and two thighs, and their smooth least."""
    each = []
    for s in (-1, 1):
        r2 = ((x - 0.060 * s) / 0.120) ** 2 + ((y - 0.130) / 0.130) ** 2
        each.append(0.085 * np.where(r2 < 1, 1 - np.sqrt(np.maximum(1 - r2, 0)), r2))
        d2 = ((x - s * (0.085 + 0.10 * (y - 0.130))) / 0.090) ** 2
        round_ = 0.090 * np.where(d2 < 1, 1 - np.sqrt(np.maximum(1 - d2, 0)), d2)
        each.append(round_ + 0.020 + 0.01 * (y - 0.130) + 6 * np.maximum(0.130 - y, 0))
    return np.min(each, axis=0) - 0.004 * np.log(np.exp((np.min(each, axis=0) - each) / 0.004).sum(axis=0))


LOWEST = heights(*np.meshgrid(np.arange(-0.1, 0.1, 0.0005), np.arange(0.05, 0.25, 0.0005))).min()

FOUR = Cushion(0.440, 0.400, (0.0,), (0.220,))
SIX = Cushion(0.440, 0.400, (0.0,), (0.140, 0.272))
THREE = Cushion(0.440, 0.400, (-0.080, 0.080), (0.220,))
EIGHT = Cushion(0.440, 0.400, (-0.110, 0.0, 0.110), (0.220,))
SMALL = Cushion(0.300, 0.300, (0.0,), (0.165,))

STOCK = Case(FOUR, (83.6, 83.6, 70.0, 70.0))
CASES = {
    "four": STOCK,
    "four-left-less-35": Case(FOUR, (54.3, 83.6, 70.0, 70.0), settled_on=STOCK),
    "six": Case(SIX, (57.2, 57.2, 54.8, 54.8, 53.6, 53.6), settled_on=STOCK),
    "three-by-two": Case(THREE, (57.0, 63.0, 57.0, 48.0, 53.0, 48.0), moved=(0, 2), settled_on=STOCK),
    "eight-narrow": Case(EIGHT, (44.0,) * 4 + (36.0,) * 4, moved=(1, 2), settled_on=STOCK),
    "child": Case(SMALL, (42.0, 42.0, 35.0, 35.0), load=180.0, scale=0.7),
}
