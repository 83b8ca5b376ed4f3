"""The fill law, computed apart from the program, in SI.

The top sheet of a compartment rises by c U, with U the unit sheet (see `sheet`) and
c = (p - w) / T. Its stretch is a = c^2 V_U / 2, since the integral of |grad U|^2 is that of U, and
the cover's tension T = T0 + (T1 - T0)(1 - exp(-a / (eps A))). N cells of volume v make a space of
N v pa / (pa + p) (1 + e0 exp(-p / pe)), with e0 = 1 / phi - 1: air in the cells, and voids.
Tensions, eps, pe and w are estimates, picked for plausible pressures; no measured cushion.
"""

import math

from scipy.optimize import brentq

SLACK_TENSION, FULL_TENSION, STRETCH = 20.0, 120.0, 0.02
VOID_PRESSURE, COVER_WEIGHT, AIR = 2000.0, 40.0, 101325.0


def tension(rise, unit):
    """N/m, where the sheet is `rise` (1/m) times the unit sheet."""
    stretch = rise**2 * unit.volume / 2
    return SLACK_TENSION + (FULL_TENSION - SLACK_TENSION) * (1 - math.exp(-stretch / (STRETCH * unit.area)))


def pressure_at(crown, unit):
    """Pa, where the top stands `crown` metres above the walls."""
    rise = crown / unit.top
    return rise * tension(rise, unit) + COVER_WEIGHT


def rise_at(pressure, unit):
    """The rise (1/m) under a fill pressure; the tension grows with it, so there is one answer."""
    load = pressure - COVER_WEIGHT
    return brentq(lambda rise: rise * tension(rise, unit) - load, 0, load / SLACK_TENSION)


def space(wall, rise, unit):
    """m3 under the top sheet, above the seat base."""
    return wall * unit.area + rise * unit.volume


def cells(volume, pressure, cell, phi):
    """How many cells make this space at this pressure; not rounded."""
    voids = (1 / phi - 1) * math.exp(-pressure / VOID_PRESSURE)
    return volume * (AIR + pressure) / (AIR * cell * (1 + voids))


def packing(cell, bulk, wall_loss, wall, volume, unit):
    """Share of the space that poured cells fill: bulk (1 - c d S / V), with d the diameter of the
    ball of a cell's volume and S the whole surface, the top taken as flat."""
    ball = (6 * cell / math.pi) ** (1 / 3)
    surface = 2 * unit.area + wall * unit.rim
    return bulk * (1 - wall_loss * ball * surface / volume)


def stock(units, wall, crown):
    """The stock fill: one pressure for all, from the crown of the compartment of the largest area.
    Returns the pressure and, for each, its crown and its space."""
    largest = max(units, key=lambda unit: unit.area)
    pressure = pressure_at(crown, largest)
    rises = [rise_at(pressure, unit) for unit in units]
    return pressure, [(rise * unit.top, space(wall, rise, unit)) for rise, unit in zip(rises, units)]
