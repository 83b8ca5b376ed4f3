"""The unit sheet over one compartment: lap U = -1 inside, U = 0 on the rim. The rise of a real top
sheet is (pressure - weight) / tension times U.

Two solvers that share nothing with the program: finite differences on a rectangle, and linear
triangles on any polygon, both with scipy's sparse solver.
"""

import dataclasses

import numpy
import shapely
from scipy.sparse import coo_matrix, diags, identity, kron
from scipy.sparse.linalg import spsolve
from scipy.spatial import Delaunay


@dataclasses.dataclass
class UnitSheet:
    """Area (m2) and rim (m) of the compartment, volume (m4) and greatest height (m2) of U."""

    area: float
    rim: float
    volume: float
    top: float


def rectangle(width, depth, steps=64):
    """Five-point differences on two grids; their error goes with the square of the step, so that
    four thirds of the finer less a third of the coarser lacks it. The sides are in metres."""
    coarse, fine = (numpy.array(_differences(width, depth, n)) for n in (steps, 2 * steps))
    volume, top = (4 * fine - coarse) / 3
    return UnitSheet(width * depth, 2 * (width + depth), volume, top)


def _differences(width, depth, steps):
    hx, hy = width / steps, depth / steps
    second = diags([1.0, -2.0, 1.0], [-1, 0, 1], shape=(steps - 1, steps - 1))
    one = identity(steps - 1)
    sheet = spsolve((kron(second, one) / hx**2 + kron(one, second) / hy**2).tocsc(), -numpy.ones((steps - 1) ** 2))
    return sheet.sum() * hx * hy, sheet.max()


def polygon(shape, step):
    """Linear triangles with sides of about `step`; shape and step are in metres."""
    points = _nodes(shape, step)
    triangles = Delaunay(points).simplices
    middles = shapely.points(points[triangles].mean(axis=1))
    triangles = triangles[shapely.contains(shape, middles)]
    sheet, load = _linear_triangles(points, triangles, _on_rim(shape, points))
    return UnitSheet(shape.area, shape.length, sheet @ load, sheet.max())


def _nodes(shape, step):
    rim = shapely.get_coordinates(shape.segmentize(step / 2).boundary)
    west, south, east, north = shape.bounds
    x, y = numpy.meshgrid(numpy.arange(west, east, step), numpy.arange(south, north, step * 3**0.5 / 2))
    x[1::2] += step / 2
    inner = numpy.column_stack([x.ravel(), y.ravel()])
    kept = shapely.contains(shape.buffer(-0.6 * step), shapely.points(inner))
    return numpy.unique(numpy.vstack([rim, inner[kept]]), axis=0)


def _on_rim(shape, points):
    return shapely.distance(shape.boundary, shapely.points(points)) < 1e-9


def _linear_triangles(points, triangles, fixed):
    """Returns the sheet at the nodes, and the weights whose sum over it is its volume."""
    a, b, c = (points[triangles[:, corner]] for corner in range(3))
    # Edges opposite to each corner; gradients are these turned by a right angle, over twice the area.
    edges = numpy.stack([c - b, a - c, b - a], axis=1)
    doubled = numpy.abs(edges[:, 0, 0] * edges[:, 1, 1] - edges[:, 0, 1] * edges[:, 1, 0])
    edges, triangles, doubled = (part[doubled > 1e-14] for part in (edges, triangles, doubled))
    stiffness = numpy.einsum("tid,tjd->tij", edges, edges) / (2 * doubled)[:, None, None]
    rows, columns = numpy.repeat(triangles, 3, axis=1).ravel(), numpy.tile(triangles, 3).ravel()
    count = len(points)
    matrix = coo_matrix((stiffness.ravel(), (rows, columns)), shape=(count, count)).tocsr()
    load = numpy.bincount(triangles.ravel(), numpy.repeat(doubled / 6, 3), minlength=count)
    free = numpy.flatnonzero(~fixed & (load > 0))
    sheet = numpy.zeros(count)
    sheet[free] = spsolve(matrix[free][:, free].tocsc(), load[free])
    return sheet, load
