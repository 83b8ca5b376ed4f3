"""Reads the program's drawings: seams and texts of an SVG, in millimetres of the page."""

import re
import xml.etree.ElementTree as tree

import numpy

SVG = "{http://www.w3.org/2000/svg}"
# The program draws arcs as cubics that stay within a micrometre; these are cut so finely that the
# chords lose less than that again.
STEPS = 200


def texts(svg):
    """Each text with its place: (words, x, y, size in points, weight, colour)."""
    found = []
    for node in tree.fromstring(svg).iter(SVG + "text"):
        if "transform" in node.attrib:
            x, y = map(float, re.match(r"translate\(([-\d.]+) ([-\d.]+)\)", node.attrib["transform"]).groups())
        else:
            x, y = float(node.attrib["x"]), float(node.attrib["y"])
        size = float(node.attrib["font-size"]) * 72 / 25.4
        found.append(("".join(node.itertext()), x, y, size, node.attrib["font-weight"], node.attrib["fill"]))
    return found


def lines(svg):
    """Each stroked path without a fill, as points."""
    paths = (node for node in tree.fromstring(svg).iter(SVG + "path"))
    return [points(node.attrib["d"]) for node in paths if node.attrib.get("fill") == "none"]


def points(path):
    """The points of a path of straight lines and cubics."""
    found, here = [], None
    for letter, numbers in re.findall(r"([MLCQZ])([^MLCQZ]*)", path):
        values = numpy.array([float(number) for number in numbers.split()]).reshape(-1, 2)
        if letter in "ML":
            found.append(values[0])
            here = values[0]
        elif letter == "C":
            t = numpy.linspace(0, 1, STEPS + 1)[1:, None]
            one, two, end = values
            curve = (1 - t) ** 3 * here + 3 * (1 - t) ** 2 * t * one + 3 * (1 - t) * t**2 * two + t**3 * end
            found.extend(curve)
            here = end
        elif letter == "Z":
            found.append(found[0])
        else:
            raise ValueError(f"no {letter} was expected")
    return numpy.array(found)
