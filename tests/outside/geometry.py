"""Areas, perimeters, seams and unions of the built-in layouts.

Outside source: Shapely (GEOS), which finds the faces of the drawn seams by itself.
"""

import shapely
from shapely.ops import polygonize, unary_union

from aid.drawing import lines, texts
from aid.program import LAYOUTS, folder, near, report, run

SIZES = {
    "row-six": ["250x250", "431.8x406.4", "610x550"],
    "island-eight": ["360x360", "431.8x406.4", "560x500"],
    "curved-ten": ["400x400", "431.8x406.4", "610x550"],
}
# Coordinates are written to a micrometre, arcs drawn to a micrometre: over a perimeter of at most
# 2.5 m that is 5 mm2, and as much again for chords.
AREA = 10.0
# A micrometre at each of some dozen ends.
LENGTH = 0.05


def drawn(layout, size):
    """The report on a pattern, and the faces of its drawing with the number in each."""
    with folder() as here:
        said = report("pattern", layout, "--size", size, "--svg", "a.svg", cwd=here)
        svg = (here / "a.svg").read_text(encoding="utf-8")
    # Seams meet at points that are written to a micrometre.
    seams = unary_union(shapely.set_precision([shapely.LineString(line) for line in lines(svg)], 0.001))
    faces = list(polygonize(seams))
    numbers = [(words, shapely.Point(x, y)) for words, x, y, *_ in texts(svg) if words.isdigit()]
    return said, faces, numbers, seams


def each():
    for layout in LAYOUTS:
        for size in SIZES[layout]:
            yield layout, size


def face_of(faces, place):
    """The face in which a number stands: the text begins left of its middle, at its base."""
    around = shapely.box(place.x, place.y - 8, place.x + 6, place.y)
    return max(faces, key=lambda face: face.intersection(around).area)


def check_every_compartment_has_the_area_and_perimeter_of_its_face():
    for layout, size in each():
        said, faces, numbers, _ = drawn(layout, size)
        assert len(faces) == len(said["compartments"]) == len(numbers), (layout, size, len(faces))
        for compartment in said["compartments"]:
            place = next(place for words, place in numbers if words == str(compartment["number"]))
            face = face_of(faces, place)
            what = f"{layout} {size} {compartment['id']}"
            near(compartment["area_mm2"], face.area, AREA, f"area of {what}")
            near(compartment["perimeter_mm"], face.length, LENGTH, f"perimeter of {what}")


def check_compartments_cover_the_outline_without_overlap():
    for layout, size in each():
        said, faces, _, _ = drawn(layout, size)
        whole = unary_union(faces)
        assert isinstance(whole, shapely.Polygon) and not whole.interiors, (layout, size)
        near(sum(face.area for face in faces), whole.area, AREA, f"cover of {layout} {size}")
        near(sum(it["area_mm2"] for it in said["compartments"]), whole.area, AREA * len(faces), f"sum of {layout} {size}")
        for a in range(len(faces)):
            for b in range(a):
                near(faces[a].intersection(faces[b]).area, 0.0, 0.1, f"overlap in {layout} {size}")


def check_seams_have_the_length_of_what_is_drawn():
    for layout, size in each():
        said, faces, _, _ = drawn(layout, size)
        # The bar at the client's left bounds no face.
        seams = unary_union([face.boundary for face in faces])
        near(sum(seam["length_mm"] for seam in said["seams"]), seams.length, 0.5, f"seams of {layout} {size}")


def check_the_outline_is_as_wide_and_deep_as_asked():
    for layout, size in each():
        said, faces, _, _ = drawn(layout, size)
        west, north, east, south = unary_union(faces).bounds
        near(east - west, said["width_mm"], 0.02, f"width of {layout} {size}")
        near(south - north, said["depth_mm"], 0.02, f"depth of {layout} {size}")
