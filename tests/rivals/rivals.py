"""The rivals: the model with one of its simplifications lifted, or several. Sources are in README.md."""

from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from scipy.interpolate import RegularGridInterpolator
from scipy.optimize import brentq
from scipy.spatial import cKDTree

from model import Grid, Parameters, loaded, unloaded

BASE = Parameters()


@dataclass(frozen=True)
class Rival:
    parameters: Parameters
    refitted: bool = False  # packing chosen anew, so that the stock's unloaded crown is the base model's
    settled: bool = False  # the given body is tissue already dented by a stock fill's pressures
    plausible: bool = True  # whether the program's ranges are to hold it


RIVALS = {
    "true area": Rival(BASE.but(true_area=True)),
    "inner bow half": Rival(BASE.but(inner_give=0.5)),
    "inner bow full": Rival(BASE.but(inner_give=1.0)),
    "inner, outer bow half": Rival(BASE.but(inner_give=0.5, outer_give=0.5)),
    "same, packing refitted": Rival(BASE.but(inner_give=0.5, outer_give=0.5), refitted=True),
    "sling sags 15 mm": Rival(BASE.but(sag=0.015)),
    "sling sags 20 mm": Rival(BASE.but(sag=0.020)),
    "tissue under a loaded skin": Rival(BASE.but(tissue=0.5e6), settled=True),
    # The body of the cases is a loaded shape: flattened once more, it is a bound and no rival.
    "tissue, counted twice": Rival(BASE.but(tissue=0.5e6), plausible=False),
    "in-plane 250 N/m": Rival(BASE.but(in_plane=250.0)),
    "in-plane 1000 N/m": Rival(BASE.but(in_plane=1000.0)),
    "in-plane 5000 N/m": Rival(BASE.but(in_plane=5000.0)),
    "area, bows half": Rival(BASE.but(true_area=True, inner_give=0.5, outer_give=0.5)),
    "area, bows half, in-plane 1000": Rival(
        BASE.but(true_area=True, inner_give=0.5, outer_give=0.5, in_plane=1000.0)
    ),
}

MOVED = 4  # cells, from a compartment at the rear to its mirror image (see `Case.moved`)


DISC = 0.015  # m: surface pressures are results as means over such a disc


@lru_cache
def grid_of(cushion, step):
    return Grid(cushion, step)


@lru_cache
def parameters_of(rival, case, step):
    """The rival's parameters; packing fitted to the crown that the base model gives the same counts."""
    if not rival.refitted:
        return rival.parameters
    crown = lambda parameters: unloaded(grid_of(case.cushion, step), case.counts, parameters)[0].max()
    wanted = crown(BASE)
    # A ten-thousandth of packing is some 0.02 mm of crown.
    packing = brentq(lambda it: crown(rival.parameters.but(packing=it)) - wanted, 0.50, 0.70, xtol=1e-4)
    return rival.parameters.but(packing=packing)


@lru_cache
def settled_pressure(case, step):
    """Surface pressure on the body of a case at its stock, in the base model, as a field."""
    grid = grid_of(case.cushion, step)
    body = case.body(grid.x, grid.y)
    pressure = loaded(grid, case.counts, BASE, body, case.load, case.line)[2]
    places, area = np.column_stack([grid.x, grid.y]), grid.mass.sum(axis=1)
    near = cKDTree(places).query_ball_point(places, DISC)
    means = np.array([np.average(pressure[disc], weights=area[disc]) for disc in near])
    return field(grid, means)


def field(grid, values):
    return RegularGridInterpolator(grid.lines, values.reshape([line.size for line in grid.lines]))


def rest(case, counts, rival, step):
    """Clearance of the skin above the base left and right in m, roll and pitch as slopes, fill
    pressures in Pa."""
    grid, parameters = grid_of(case.cushion, step), parameters_of(rival, case, step)
    ease = np.zeros(grid.nodes)
    if rival.settled:
        ease = settled_pressure(case.settled_on or case, step)((grid.x, grid.y)) / parameters.tissue
    body = case.body(grid.x, grid.y)
    pose, pressures, skin = loaded(grid, counts, parameters, body, case.load, case.line, ease)
    x, y = case.seat_bone
    extra = parameters.sag * (1 - (2 * x / case.cushion.width) ** 2)
    sides = [case.body(s * x, y) + pose @ [1, s * x, y - case.line] + extra for s in (-1, 1)]
    if parameters.tissue:
        dent = field(grid, skin)
        sides = [side + dent((s * x, y)) for side, s in zip(sides, (-1, 1))]
    return (*(float(side) for side in sides), pose[1], pose[2], pressures)
