"""Widths of planted compartments: the greatest disc, arms and corners that `check` speaks of.

Outside source: Shapely (GEOS): its maximum inscribed circle, and its opening by a disc (a negative
buffer, then a positive one).
"""

import json
import math
import re

import shapely

from aid.program import folder, run

HAND = 78.0
# What the program finds to half a millimetre, it says in whole ones.
SAID = 1.1

LAYOUT = """format = 1
kind = "layout"
name = "planted"
title = "Planted"
about = "One planted compartment and what is left beside it."
class = "general use"
wall_height = 60
stock_crown = 5
rating_from = "none"
sizes = [{{ size = "400x400", max_user_weight_kg = 60 }}]
[points]
{points}
[seams]
outline = {{ through = [{ring}], closed = true }}
[compartments]
planted = {{ seed = [{x}, {y}], number = 1, words = "planted", for = "general" }}
"""

# Outlines within 400 x 400 mm, x from the middle.
SHAPES = {
    "square": [(-60, 0), (60, 0), (60, 120), (-60, 120)],
    "strip narrower than a hand": [(-150, 0), (150, 0), (150, 65), (-150, 65)],
    "strip narrower than a cell": [(-150, 0), (150, 0), (150, 40), (-150, 40)],
    "arm of 20": [(-150, 0), (150, 0), (150, 200), (10, 200), (10, 300), (-10, 300), (-10, 200), (-150, 200)],
    "arm of 40": [(-150, 0), (150, 0), (150, 200), (20, 200), (20, 260), (-20, 260), (-20, 200), (-150, 200)],
    "arm of 90": [(-150, 0), (150, 0), (150, 200), (45, 200), (45, 300), (-45, 300), (-45, 200), (-150, 200)],
    "corridor of 60": [(-150, 0), (150, 0), (150, 150), (30, 150), (30, 230), (150, 230), (150, 380), (-150, 380), (-150, 230), (-30, 230), (-30, 150), (-150, 150)],
    "corner to corner": [(-190, 0), (190, 0), (190, 180)],
    "half a right angle": [(-150, 0), (150, 0), (150, 300)],
    "needle": [(-190, 0), (190, 0), (190, 90)],
}


def remarks_on(corners):
    names = [f"p{place}" for place in range(len(corners))]
    inside = shapely.maximum_inscribed_circle(shapely.Polygon(corners)).coords[0]
    text = LAYOUT.format(
        points="\n".join(f"{name} = [{x}, {y}]" for name, (x, y) in zip(names, corners)),
        ring=", ".join(f'"{name}"' for name in names),
        x=inside[0],
        y=inside[1],
    )
    narrow = 2 * shapely.maximum_inscribed_circle(shapely.Polygon(corners)).length < 50.8
    with folder() as here:
        (here / "planted.toml").write_text(text)
        said = json.loads(run("check", "planted.toml", "--json", cwd=here, expect=3 if narrow else 0))
    return [remark["message"] for remark in said["files"][0]["remarks"]]


def widest(shape):
    return 2 * shapely.maximum_inscribed_circle(shape, 0.01).length


def angles(corners):
    """Each corner with its inner angle in degrees."""
    for place, here in enumerate(corners):
        back, ahead = corners[place - 1], corners[(place + 1) % len(corners)]
        a = math.atan2(back[1] - here[1], back[0] - here[0])
        b = math.atan2(ahead[1] - here[1], ahead[0] - here[0])
        yield here, math.degrees((a - b) % (2 * math.pi))


def numbers(message):
    return [float(number) for number in re.findall(r"-?\d+(?:\.\d+)?", message)]


def check_the_greatest_disc_decides_what_is_too_narrow():
    for name, corners in SHAPES.items():
        width = widest(shapely.Polygon(corners))
        found = [words for words in remarks_on(corners) if words.startswith("at its widest")]
        if width >= HAND:
            assert not found, (name, width, found)
            continue
        assert len(found) == 1, (name, width, found)
        said, number = numbers(found[0])[:2]
        assert abs(said - width) <= SAID and number == 1, (name, width, found)
        assert ("a cell" in found[0]) == (width < 50.8), (name, width, found)


def check_arms_and_corridors_are_what_an_opening_leaves():
    for name, corners in SHAPES.items():
        shape = shapely.Polygon(corners)
        if widest(shape) < HAND:
            continue
        found = [words for words in remarks_on(corners) if words.startswith("a part of")]
        left = shape.difference(shape.buffer(-HAND / 2 + 0.01, quad_segs=64).buffer(HAND / 2, quad_segs=64))
        pieces = [piece for piece in getattr(left, "geoms", [left])]
        # Of a right angle a disc leaves 0.215 of its squared radius; what it leaves of sharper
        # corners is no arm.
        arms = [piece for piece in pieces if piece.area > 0.26 * (HAND / 2) ** 2]
        sharp = [shapely.Point(at) for at, angle in angles(corners) if angle < 89]
        arms = [arm for arm in arms if all(arm.distance(corner) > 1 for corner in sharp)]
        assert len(found) == len(arms), (name, found, [arm.area for arm in arms])
        for words, arm in zip(found, arms):
            _, width, x, y = numbers(words)[:4]
            assert arm.buffer(HAND / 2).contains(shapely.Point(x, y)), (name, words)
            planted = float(name.split()[-1])
            assert abs(width - planted) <= SAID, (name, words)


def check_acute_corners_are_where_they_are():
    for name, corners in SHAPES.items():
        if widest(shapely.Polygon(corners)) < HAND:
            continue
        found = [numbers(words)[1:4] for words in remarks_on(corners) if "has a corner of" in words]
        acute = [(angle, *at) for at, angle in angles(corners) if angle < 30]
        assert len(found) == len(acute), (name, found, acute)
        for said, own in zip(sorted(found), sorted(acute)):
            # Said in whole degrees and millimetres.
            assert all(abs(a - b) <= 0.51 for a, b in zip(said, own)), (name, said, own)
