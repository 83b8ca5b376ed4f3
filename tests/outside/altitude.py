"""Air pressure over height, against the standard atmosphere as the `ambiance` package has it.

Outside source: ambiance, which implements ICAO Doc 7488 (as ISO 2533).
"""

import csv
import io

import ambiance

from aid.program import example, near


def check_the_air_pressure_is_that_of_another_library():
    rows = list(csv.DictReader(io.StringIO(example("standard_air"))))
    assert len(rows) == 116, len(rows)
    for row in rows:
        height = float(row["height_m"])
        # The formula takes geometric height; the standard's tables take geopotential height,
        # which is the same to h / 6356766: ask the library for the geometric height that has it.
        geometric = ambiance.Atmosphere.geop2geom_height(height)
        expected = float(ambiance.Atmosphere(geometric).pressure[0])
        # Constants of six digits: 2 in 1e5.
        near(float(row["pressure_pa"]) / expected, 1.0, 3e-5, f"pressure at {height} m")
