"""Stock fill, unit sheet and counts, computed apart from the program.

Outside sources: scipy's sparse solver and root finder; the counts of two independent programs in
tests/reference/prototype_cases.md; for the trade's order of magnitude, common practice, no source.
"""

from aid import fill, sheet
from aid.program import folder, near, report

CELL = """format = 1
kind = "cell"
name = "reference"
title = "Reference"
edge_mm = 50.8
inflated_volume_ml = 25
film_mass_g = 0.8
[packing]
bulk = 0.6
wall = 0
source = "the reference cases"
"""

# 440 x 400 mm, straight seams, square corners; the crown is 15 mm.
LAYOUT = """format = 1
kind = "layout"
name = "reference"
title = "Reference"
about = "The reference cases."
class = "skin protection"
mirror = true
wall_height = 60
stock_crown = 15
rating_from = "the reference cases"
sizes = [{{ size = "440x400", max_user_weight_kg = 80 }}]
[points]
rear = [0, 0]
rear-corner = ["50%", 0]
front-corner = ["50%", "100%"]
front = [0, "100%"]
{points}
[seams]
outline = {{ through = ["rear", "rear-corner", {sides} "front-corner", "front"] }}
centre = {{ through = ["rear", {mids} "front"] }}
{seams}
[compartments]
{compartments}
"""


def layout(seams_at):
    rows = [0, *seams_at, 400]
    names = range(len(seams_at))
    return LAYOUT.format(
        points="\n".join(f"mid{n} = [0, {y}]\nside{n} = [\"50%\", {y}]" for n, y in enumerate(seams_at)),
        sides=" ".join(f'"side{n}",' for n in names),
        mids=" ".join(f'"mid{n}",' for n in names),
        seams="\n".join(f'seam{n} = {{ through = ["mid{n}", "side{n}"] }}' for n in names),
        compartments="\n".join(
            f'row{n} = {{ seed = ["25%", {(rows[n] + rows[n + 1]) / 2}], '
            f'numbers = {{ left = {2 * n + 1}, right = {2 * n + 2} }}, words = "row", for = "general" }}'
            for n in range(len(rows) - 1)
        ),
    )


def reported(seams_at):
    with folder() as here:
        (here / "reference.toml").write_text(layout(seams_at))
        (here / "cell.toml").write_text(CELL)
        return report("pattern", "./reference.toml", "--size", "440x400", "--cell", "./cell.toml", cwd=here)


def units(seams_at):
    rows = [0, *seams_at, 400]
    return [sheet.rectangle(0.220, (b - a) / 1e3) for a, b in zip(rows, rows[1:])]


def check_counts_follow_from_the_unloaded_pressures_of_the_reference():
    # Fill pressures in kPa and counts, rear to front, from the reference cases; the pressures are
    # given to two digits, so that the counts agree to 3 %.
    for seams_at, pressures, counts in [
        ([220], [0.35, 0.47], [83.6, 70.0]),
        ([140, 272], [0.74, 0.83, 0.88], [57.2, 54.8, 53.6]),
    ]:
        for unit, pressure, count in zip(units(seams_at), pressures, counts):
            rise = fill.rise_at(1e3 * pressure, unit)
            found = fill.cells(fill.space(0.060, rise, unit), 1e3 * pressure, 25e-6, 0.6)
            near(found, count, 0.03 * count, f"count at {pressure} kPa")


def check_the_stock_fill_is_one_pressure_for_all():
    for seams_at in ([220], [140, 272], [180, 290]):
        own = units(seams_at)
        pressure, spaces = fill.stock(own, 0.060, 0.015)[:2]
        said = reported(seams_at)
        near(said["unloaded_fill_kpa"], pressure / 1e3, 0.01 * pressure / 1e3, "unloaded fill pressure")
        for row, unit in enumerate(own):
            rise = fill.rise_at(pressure, unit)
            space = fill.space(0.060, rise, unit)
            count = fill.cells(space, pressure, 25e-6, 0.6)
            for side in (0, 1):
                there = said["compartments"][2 * row + side]
                # Half a per cent is what the mesh is held to; counts are whole.
                near(there["crown_mm"], 1e3 * rise * unit.top, 0.1, there["id"])
                near(there["volume_ml"], 1e6 * space, 0.005 * 1e6 * space, there["id"])
                near(there["cells"]["stock"], count, 1.0, there["id"])


def check_a_rear_side_compartment_holds_about_a_hundred_cells():
    """Common practice, no source: 25 ml cells, about 220 x 220 mm, filled proud: 100 to 120."""
    with folder() as here:
        (here / "proud.toml").write_text(layout([220]).replace("wall_height = 60", "wall_height = 85"))
        said = report("pattern", "./proud.toml", "--size", "440x400", cwd=here)
    assert 85 <= said["compartments"][0]["cells"]["stock"] <= 125, said["compartments"][0]


def check_each_size_has_counts_of_its_own():
    with folder() as here:
        totals = [report("pattern", "row-six", "--size", size, cwd=here)["total_cells"] for size in ("250x250", "440x400", "610x550")]
    assert totals == sorted(set(totals)), totals
