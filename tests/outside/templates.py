"""Cutting templates: lengths and layers of the DXF, offsets, what is sewn together, tiles laid together.

Outside sources: ezdxf reads and audits the DXF; Shapely (GEOS) makes offsets and finds the stretches
between junctions by itself; pdfium, by pypdfium2, draws the pages.
"""

import math
import re
import xml.etree.ElementTree as ElementTree

import ezdxf
import numpy
import pypdfium2
import shapely
from scipy.spatial import cKDTree
from shapely.ops import linemerge, polygonize, unary_union

from aid.drawing import points
from aid.program import folder, near, report, run

# A layout with a tail of arcs, one with a closed island, one with smooth curves, one in inches.
CASES = [
    ("row-six", "440x400", 10.0),
    ("island-eight", "17x16in", 12.0),
    ("curved-ten", "440x400", 10.0),
    ("curved-ten", "610x550", 8.0),
]
# What is asked: a hundredth of a millimetre for what a machine cuts, 0.2 mm for what hands sew.
MACHINE = 0.01
HANDS = 0.2
# Arcs are drawn as straight pieces here: within a thousandth.
CHORD = 0.001
KINDS = ["cut", "stitch", "notch", "opening", "grain", "clients-left"]


def arc(entity):
    """An arc as points, within a thousandth of a millimetre."""
    radius, start = entity.dxf.radius, math.radians(entity.dxf.start_angle)
    sweep = (math.radians(entity.dxf.end_angle) - start) % math.tau
    step = 2 * math.acos(1 - min(1, CHORD / radius))
    count = max(2, math.ceil(sweep / step))
    angles = [start + sweep * at / count for at in range(count + 1)]
    centre = entity.dxf.center
    return [(centre.x + radius * math.cos(a), centre.y + radius * math.sin(a)) for a in angles]


def length_of(entity):
    if entity.dxftype() == "LINE":
        return (entity.dxf.end - entity.dxf.start).magnitude
    sweep = (entity.dxf.end_angle - entity.dxf.start_angle) % 360
    return entity.dxf.radius * math.radians(sweep)


def line_of(entity):
    if entity.dxftype() == "LINE":
        return shapely.LineString([(p.x, p.y) for p in (entity.dxf.start, entity.dxf.end)])
    return shapely.LineString(arc(entity))


def drawn(layout, size, allowance, *more):
    """The report on a template, its DXF as ezdxf reads it, and the folder's texts by name."""
    with folder() as here:
        said = report(
            "template", layout, "--size", size, "--allowance", allowance, "--out", "t", *more, cwd=here
        )
        (name,) = (here / "t").glob("*.dxf")
        document = ezdxf.readfile(name)
        svgs = {path.name: path.read_text(encoding="utf-8") for path in (here / "t").glob("*.svg")}
        pdfs = {path.name: path.read_bytes() for path in (here / "t").glob("*.pdf")}
        pattern = report("pattern", layout, "--size", size, cwd=here)
    return said, document, pattern, svgs, pdfs


def of_layer(document, layer):
    return [own for own in document.modelspace() if own.dxf.layer == layer and own.dxftype() != "TEXT"]


def meeting(lines):
    """The same lines, whose ends are one point where they are within a micrometre of each other."""
    ends = numpy.array([end for line in lines for end in (line.coords[0], line.coords[-1])])
    groups = cKDTree(ends).query_ball_point(ends, 0.001)
    first = [tuple(ends[min(group)]) for group in groups]
    return [
        shapely.LineString([first[2 * at], *line.coords[1:-1], first[2 * at + 1]]) for at, line in enumerate(lines)
    ]


def panels(document, layer):
    """The closed lines of a layer with the largest areas: of the top, at the left, and the base."""
    lines = meeting([line_of(own) for own in of_layer(document, layer)])
    shapes = unary_union(list(polygonize(lines)))
    shapes = sorted(shapes.geoms, key=lambda shape: -shape.area)[:2]
    return sorted((shapely.Polygon(shape.exterior) for shape in shapes), key=lambda shape: shape.centroid.x)


def check_the_dxf_is_of_release_12_and_holds_what_was_promised():
    for layout, size, allowance in CASES:
        _, document, *_ = drawn(layout, size, allowance)
        assert document.dxfversion == "AC1009", document.dxfversion
        faults = document.audit()
        assert not faults.errors, faults.errors
        kinds = {own.dxftype() for own in document.modelspace()}
        assert kinds == {"LINE", "ARC", "TEXT"}, kinds
        layers = {own.dxf.layer for own in document.modelspace()}
        wanted = {kind.upper().replace("-", "_") for kind in KINDS} | {"TEXT"}
        assert layers == wanted, layers
        assert all(layer in document.layers for layer in layers)


def check_lengths_of_the_dxf_are_those_of_pattern_and_report():
    for layout, size, allowance in CASES:
        said, document, pattern, *_ = drawn(layout, size, allowance)
        seams = said["template_seams"]
        what = f"{layout} {size}"
        for own in pattern["seams"]:
            strips = [seam["on_wall_mm"] for seam in seams if seam["seam"] == own["name"]]
            near(sum(strips), own["length_mm"], MACHINE, f"{what}, seam {own['name']}")
        high = pattern["wall_height_mm"]
        walls = sum(2 * seam["on_wall_mm"] + 2 * high for seam in seams)
        panels_ = sum(seam["on_base_mm"] + seam["on_top_mm"] for seam in seams)
        stitches = of_layer(document, "STITCH")
        # A rounding to six digits for each of some hundred pieces.
        near(sum(map(length_of, stitches)), walls + panels_, MACHINE, f"{what}, all stitches")
        lines = [length_of(own) for own in stitches if own.dxftype() == "LINE"]
        for seam in seams:
            alike = [length for length in lines if abs(length - seam["on_wall_mm"]) <= MACHINE]
            assert len(alike) >= 2, f"{what}: wall {seam['wall']} of {seam['on_wall_mm']} mm"


def check_cut_lines_are_offsets_of_stitch_lines():
    for layout, size, allowance in CASES:
        _, document, *_ = drawn(layout, size, allowance)
        for stitch, cut in zip(panels(document, "STITCH"), panels(document, "CUT"), strict=True):
            # 720 straight pieces to a turn: within a thousandth for these allowances.
            wanted = stitch.buffer(allowance, quad_segs=180)
            apart = shapely.hausdorff_distance(wanted.exterior, cut.exterior, densify=0.01)
            assert apart <= 2 * MACHINE, f"{layout} {size}: {apart} mm apart"


def check_what_is_sewn_together_is_as_long():
    for layout, size, allowance in CASES:
        for more in [(), ("--stretch",)]:
            said, document, *_ = drawn(layout, size, allowance, *more)
            seams = said["template_seams"]
            ease = said["ease_percent"] / 100
            assert (ease == 0) == (more != ()), (layout, ease)
            walls = sorted(seam["on_wall_mm"] for seam in seams)
            stitches = [line_of(own) for own in of_layer(document, "STITCH")]
            for panel, times in zip(panels(document, "CUT"), [1 + ease, 1.0], strict=True):
                inside = [line for line in stitches if panel.contains(line)]
                # Shapely joins what runs on, and stops where more than two lines meet.
                joined = linemerge(meeting(inside))
                found = sorted(line.length for line in getattr(joined, "geoms", [joined]))
                assert len(found) == len(walls), (layout, size, len(found), len(walls))
                for own, wall in zip(found, walls, strict=True):
                    near(own / times, wall, HANDS, f"{layout} {size}, stretch of {wall} mm")
            for seam in seams:
                near(seam["on_base_mm"], seam["on_wall_mm"], HANDS, "wall and base")
                near(seam["on_top_mm"] - seam["eased_in_mm"], seam["on_wall_mm"], HANDS, "wall and top")


def check_crowns_are_arcs_over_their_chords():
    """The arc by the sine of half its angle, found by bisection: another way than the program's."""
    for layout, size, allowance in CASES:
        said, *_ = drawn(layout, size, allowance)
        for crown in said["crowns"]:
            chord, rise = crown["width_mm"], crown["rise_mm"]
            low, high = 1e-6, math.pi / 2
            for _ in range(100):
                half = (low + high) / 2
                # Rise over chord grows with the angle.
                if (1 - math.cos(half)) / (2 * math.sin(half)) < rise / chord:
                    low = half
                else:
                    high = half
            near(crown["arc_mm"], chord * half / math.sin(half), 0.01, f"{layout} {size} {crown['number']}")
        near(said["ease_percent"], max(own["extra_percent"] for own in said["crowns"]), 0.001, "ease")


def paths(svg):
    """The lines of the pieces in a drawing, by their kind, in millimetres of the page."""
    found = {kind: [] for kind in KINDS}
    root = ElementTree.fromstring(svg)
    for group in root.iter("{http://www.w3.org/2000/svg}g"):
        kind = next((own for own in KINDS if re.fullmatch(rf"(top|base|wall-\d+)-{own}", group.get("id", ""))), None)
        for path in group.iter("{http://www.w3.org/2000/svg}path") if kind else []:
            found[kind].extend(polylines(path.get("d")))
    return found


def polylines(text):
    """The parts of a path as lines of points."""
    return [shapely.LineString(points(part)) for part in re.findall(r"M[^M]*", text)]


def crosses(svg):
    """The middles of the four crosses of a page: left, right, upper, lower."""
    group = re.search(r'<g id="joins".*?</g>', svg, re.S).group(0)
    middles = []
    for path in re.findall(r' d="(M[^"]*C[^"]*)"', group):
        (line,) = polylines(path)
        middles.append((line.centroid.x, line.centroid.y))
    xs, ys = sorted({round(x, 2) for x, _ in middles}), sorted({round(y, 2) for _, y in middles})
    assert len(middles) == 4 and len(xs) == 2 and len(ys) == 2, middles
    return xs[0], xs[1], ys[0], ys[1]


def tile_of(svg):
    """Column and row of a page, by its name; none of the map."""
    name = re.search(r"<title>Cutting template in tiles ([A-Z])(\d+)</title>", svg)
    return (ord(name.group(1)) - ord("A"), int(name.group(2)) - 1) if name else None


def laid(svgs):
    """Each page of tiles with the way by which its lines come to lie on the sheet."""
    sheet = next(text for name, text in svgs.items() if name.endswith("-template.svg"))
    tiles = {name: text for name, text in svgs.items() if tile_of(text)}
    whole = paths(sheet)
    corner = next(text for text in tiles.values() if tile_of(text) == (0, 0))
    # The first page has the upper left corner of the top: where its cut line is leftmost and highest.
    box, own = [unary_union(of["cut"]).bounds for of in (whole, paths(corner))]
    base_x, base_y = box[0] - own[0], box[1] - own[1]
    placed = []
    for name, text in tiles.items():
        column, row = tile_of(text)
        left, right, upper, lower = crosses(text)
        way = (base_x + column * (right - left), base_y + row * (lower - upper))
        placed.append((name, text, way, (left, right, upper, lower)))
    return whole, placed


def check_tiles_laid_together_are_the_sheet():
    for layout, size, allowance, paper in [("curved-ten", "440x400", 10.0, "a4"), ("row-six", "440x400", 10.0, "letter")]:
        _, _, _, svgs, _ = drawn(layout, size, allowance, "--paper", paper)
        whole, placed = laid(svgs)
        assert len(placed) > 10, len(placed)
        for kind in KINDS:
            lines = unary_union(whole[kind])
            seen = []
            for _, text, way, _ in placed:
                seen += [shapely.affinity.translate(line, *way) for line in paths(text)[kind]]
            seen = unary_union(seen)
            apart = shapely.hausdorff_distance(lines, seen, densify=0.05)
            assert apart <= HANDS, f"{layout} on {paper}, {kind}: {apart} mm apart"


def check_tiles_as_drawn_lie_on_the_sheet():
    """Every cut line of the sheet is dark where the pages lie, as pdfium draws these."""
    dots = 10  # to a millimetre
    _, _, _, svgs, pdfs = drawn("curved-ten", "440x400", 10.0)
    whole, placed = laid(svgs)
    tiles = next(pdf for name, pdf in pdfs.items() if name.endswith("-tiles.pdf"))
    document = pypdfium2.PdfDocument(tiles)
    cut = unary_union(whole["cut"])
    looked_at = 0
    for name, text, way, (left, right, upper, lower) in placed:
        number = int(re.search(r"-(\d+)\.svg", name).group(1))
        picture = document[number - 1].render(scale=dots * 25.4 / 72).to_numpy()
        dark = picture[..., :3].max(axis=2) < 128
        window = shapely.box(left, upper, right, lower)
        own = shapely.affinity.translate(cut, -way[0], -way[1]).intersection(window)
        for line in getattr(own, "geoms", [own]):
            for step in numpy.arange(0, line.length, 2.0):
                point = line.interpolate(step)
                x, y = point.x * dots, point.y * dots
                # A dot is dark within 0.2 mm of where the line is to be.
                around = dark[int(y) - 2 : int(y) + 3, int(x) - 2 : int(x) + 3]
                assert around.any(), f"{name}: nothing at {point.x:.1f}, {point.y:.1f}"
                looked_at += 1
    # Some 14 m of cut lines.
    assert looked_at > 3000, looked_at


def check_every_tile_has_a_square_of_100_mm():
    _, _, _, svgs, _ = drawn("row-six", "440x400", 10.0)
    for name, text in svgs.items():
        if not tile_of(text):
            continue
        group = re.search(r'<g id="square".*?</g>', text, re.S).group(0)
        (line,) = polylines(re.search(r' d="([^"]*)"', group).group(1))
        x0, y0, x1, y1 = line.bounds
        near(x1 - x0, 100.0, 0.001, name)
        near(y1 - y0, 100.0, 0.001, name)
        assert re.search(r'width="[\d.]+mm" height="[\d.]+mm" viewBox="0 0 ', text), name


def check_the_base_is_the_mirror_of_the_top():
    """Of a layout whose sides differ, so that a base that was not mirrored would be found."""
    with folder() as here:
        run("new", "layout", "mine.toml", cwd=here)
        text = (here / "mine.toml").read_text(encoding="utf-8")
        text = text.replace("mirror = true", "mirror = false").replace("revision = 1", "")
        text = re.sub(r"\[points\].*", "", text, flags=re.S) + ASKEW
        (here / "askew.toml").write_text(text, encoding="utf-8")
        said = report("template", "askew.toml", "--size", "440x400", "--out", "t", "--stretch", cwd=here)
        (name,) = (here / "t").glob("*.dxf")
        document = ezdxf.readfile(name)
    top, base = panels(document, "CUT")
    flipped = shapely.affinity.scale(base, xfact=-1, origin=(0, 0))
    off = (top.bounds[0] - flipped.bounds[0], top.bounds[1] - flipped.bounds[1])
    near(shapely.affinity.translate(flipped, *off).symmetric_difference(top).area, 0.0, 10.0, "mirrored")
    straight = shapely.affinity.translate(base, top.bounds[0] - base.bounds[0], top.bounds[1] - base.bounds[1])
    assert straight.symmetric_difference(top).area > 1000.0
    # The opening of the compartment at the client's left, 1, is at the right of the base.
    left = next(own for own in said["openings"] if own["number"] == 1)
    assert left["middle_mm"][0] < 0
    numbers = [own for own in document.modelspace() if own.dxftype() == "TEXT" and own.dxf.text == "1"]
    on_base = [own for own in numbers if base.contains(shapely.Point(own.dxf.align_point.x, own.dxf.align_point.y))]
    assert len(on_base) == 1 and on_base[0].dxf.align_point.x > base.centroid.x, numbers


ASKEW = """
[points]
rear-left = ["-50%", "0%"]
rear-right = ["50%", "0%", "round 90"]
front-right = ["50%", "100%"]
front-left = ["-50%", "100%", "round 30"]
rear = { on = "outline", from = "rear-left", to = "rear-right", at = "50%" }
front = { on = "outline", from = "front-right", to = "front-left", at = "50%" }

[seams]
outline = { through = ["rear-left", "rear-right", "front-right", "front-left"], closed = true }
centre = { through = ["rear", "front"] }

[compartments]
left = { seed = ["-25%", "50%"], number = 1, words = "left", for = "general" }
right = { seed = ["25%", "50%"], number = 2, words = "right", for = "general" }
"""
