"""Counting by weight, against a simulation of the weighing.

Outside source: none but numpy's random numbers; the formula is that of Steiner and MacKay (2004),
tabled in tests/reference/count_by_weight.csv. Here batches and counts are weighed ten thousand
times, with cells that differ by 4 % and a scale that rounds.
"""

import csv

import numpy

from aid.program import REFERENCE, near


def check_the_tabled_error_is_that_of_simulated_weighings():
    random = numpy.random.default_rng(11)
    with open(REFERENCE / "count_by_weight.csv", newline="") as table:
        lines = [line for line in table if not line.startswith("#")]
    rows = list(csv.reader(lines))[1:]
    assert len(rows) == 72, len(rows)
    for cell, division, cells, batch, expected in (map(float, row) for row in rows[::5]):
        if division > cell:
            continue

        def weighed(count):
            # Vessel and content are each rounded to the division.
            masses = cell * (count + 0.04 * numpy.sqrt(count) * random.standard_normal(10_000))
            errors = random.uniform(-division / 2, division / 2, (2, 10_000))
            return masses + errors[0] - errors[1]

        found = numpy.std(weighed(cells) / (weighed(batch) / batch))
        # Ten thousand draws know a standard deviation to 0.7 %; the formula is linear in the
        # batch's error, which is up to a tenth of it.
        near(found / expected, 1.0, 0.06, f"{cell} g, {division} g, {cells:.0f} of {batch:.0f}")
