"""The model of a cushion that carries a body, written a second time from its equations alone.

A convex energy of the sheet's heights u, the body's pose q, and where a rival wants them the walls' bow
x and the seams' shift s, on a coarse grid of rectangles whose lines fall on the seams. Its least value is
found by a primal-dual interior-point method. Metres, newtons, pascals; x to the client's right, y forward.
"""

from dataclasses import dataclass, replace

import numpy as np
import scipy.sparse as sp
from scipy.optimize import brentq
from scipy.sparse.linalg import splu
from scipy.special import exp1


@dataclass(frozen=True)
class Parameters:
    """Usual values of the model, and of what a rival adds to it (0 or None: left out)."""

    tension_slack: float = 20.0  # N/m
    tension_taut: float = 120.0  # N/m
    stretch: float = 0.02  # share of extra area that takes up 63 % of the slack
    migration: float = 50e3  # Pa/m
    packing: float = 0.60
    void_pressure: float = 2e3  # Pa
    cell_volume: float = 25e-6  # m3
    air_pressure: float = 101_325.0  # Pa
    cover_weight: float = 40.0  # Pa
    base_stiffness: float = 2e6  # Pa/m
    true_area: bool = False
    inner_give: float = 0.0  # share of the bow that walls between compartments take
    outer_give: float = 0.0
    sag: float = 0.0  # of a sling base at its middle, m
    tissue: float | None = None  # Pa/m
    in_plane: float | None = None  # stiffness of the cover that seams pull at when they shift, N/m

    def but(self, **changes):
        return replace(self, **changes)


FREE_BODY = 1e-3, 1e-5, 1e-5  # N/m, N m: shortens steps of a body in the air, does not move the answer
LEAST_TENSION = 1.0  # N/m: a sheet without slack to give up still hangs together


class Grid:
    """Rectangles of a cushion, its compartments, and the places along its walls."""

    def __init__(self, cushion, step):
        self.height = cushion.wall
        across = lines([-cushion.width / 2, *cushion.seams_x, cushion.width / 2], step)
        along = lines([0.0, *cushion.seams_y, cushion.depth], step)
        self.lines = across, along
        self.x, self.y = (a.ravel() for a in np.meshgrid(across, along, indexing="ij"))
        self.nodes, many = self.x.size, along.size
        left = np.arange(across.size - 1)[:, None] * many + np.arange(many - 1)[None, :]
        corners = np.stack([left, left + many, left + 1, left + many + 1], axis=-1).reshape(-1, 4)
        middle_x, middle_y = self.x[corners].mean(axis=1), self.y[corners].mean(axis=1)
        column = np.searchsorted(cushion.seams_x, middle_x)
        row = np.searchsorted(cushion.seams_y, middle_y)
        columns, rows = len(cushion.seams_x) + 1, len(cushion.seams_y) + 1
        self.count = columns * rows
        owner = row * columns + column  # rear to front, left to right
        self._triangles(corners, owner)
        self._walls(cushion, columns, rows)

    def _triangles(self, corners, owner):
        """Both ways to halve each rectangle, each with half its weight: no side is favoured."""
        wide, long = self.x[corners[:, 1]] - self.x[corners[:, 0]], self.y[corners[:, 2]] - self.y[corners[:, 0]]
        area = wide * long
        self.mass = sp.csr_matrix(  # node x compartment
            (np.repeat(area / 4, 4), (corners.ravel(), np.repeat(owner, 4))), shape=(self.nodes, self.count)
        ).toarray()
        self.area = self.mass.sum(axis=0)
        slope_x, slope_y = [], []
        for x0, x1, y0, y1 in [(0, 1, 1, 3), (2, 3, 0, 2), (0, 1, 0, 2), (2, 3, 1, 3)]:
            slope_x.append(difference(corners[:, x0], corners[:, x1], wide, self.nodes))
            slope_y.append(difference(corners[:, y0], corners[:, y1], long, self.nodes))
        self.slope_x, self.slope_y = sp.vstack(slope_x).tocsr(), sp.vstack(slope_y).tocsr()
        self.slope_x_t, self.slope_y_t = self.slope_x.T.tocsr(), self.slope_y.T.tocsr()
        self.weight, self.owner = np.tile(area / 4, 4), np.tile(owner, 4)

    def _walls(self, cushion, columns, rows):
        """Runs of wall between two compartments (or one and the outside), and their places."""
        edges_x = [-cushion.width / 2, *cushion.seams_x, cushion.width / 2]
        edges_y = [0.0, *cushion.seams_y, cushion.depth]
        self.runs, node, run, share = [], [], [], []
        wanted = []
        for line, at in enumerate(edges_x):
            for row in range(rows):
                a = row * columns + line - 1 if line > 0 else None
                b = row * columns + line if line < columns else None
                wanted.append((self.x, at, self.y, edges_y[row : row + 2], a, b, np.diff(edges_x), line))
        for line, at in enumerate(edges_y):
            for column in range(columns):
                a = (line - 1) * columns + column if line > 0 else None
                b = line * columns + column if line < rows else None
                wanted.append((self.y, at, self.x, edges_x[column : column + 2], a, b, np.diff(edges_y), line))
        for fixed, at, moving, (low, high), a, b, widths, line in wanted:
            places = np.flatnonzero(np.isclose(fixed, at) & (moving > low - 1e-9) & (moving < high + 1e-9))
            places = places[np.argsort(moving[places])]
            gaps = np.diff(moving[places])
            lengths = (np.r_[gaps, 0] + np.r_[0, gaps]) / 2
            inner = a is not None and b is not None
            give_way = (1 / widths[line - 1] + 1 / widths[line]) if inner else 0.0
            self.runs.append((a, b, high - low, give_way))
            node.append(places), share.append(lengths), run.append(np.full(places.size, len(self.runs) - 1))
        self.node, self.run, self.share = np.concatenate(node), np.concatenate(run), np.concatenate(share)
        self.inner = np.array([a is not None and b is not None for a, b, _, _ in self.runs])


def lines(edges, step):
    parts = [np.linspace(a, b, max(1, round((b - a) / step)) + 1) for a, b in zip(edges, edges[1:])]
    return np.concatenate([parts[0], *(part[1:] for part in parts[1:])])


def difference(start, end, length, nodes):
    rows = np.arange(start.size)
    values = np.r_[-1 / length, 1 / length]
    return sp.csr_matrix((values, (np.r_[rows, rows], np.r_[start, end])), shape=(start.size, nodes))


class Cells:
    """Loose sealed cells of one compartment: V = N v pa/(pa + p) (1 + e exp(-p/pe))."""

    def __init__(self, count, parameters):
        self.solid = count * parameters.cell_volume
        self.air, self.closing = parameters.air_pressure, parameters.void_pressure
        self.voids = 1 / parameters.packing - 1
        self.loose = self.solid / parameters.packing

    def volume(self, p):
        return self.solid * self.air / (self.air + p) * (1 + self.voids * np.exp(-p / self.closing))

    def at(self, volume):
        """Energy, pressure and -dp/dV at a volume."""
        if volume >= self.loose:
            return 0.0, 0.0, 0.0
        if volume <= 0.02 * self.solid:
            return np.inf, 0.0, 0.0
        high = self.air * (self.loose / volume - 1)
        p = brentq(lambda p: self.volume(p) - volume, 0.0, high * (1 + 1e-9), xtol=1e-10, rtol=1e-14)
        open_ = self.voids * np.exp(-p / self.closing)
        softness = volume / (self.air + p) + self.solid * self.air / (self.air + p) * open_ / self.closing
        ratio, ratio_p = self.air / self.closing, (self.air + p) / self.closing
        closing = self.voids * np.exp(ratio) * (exp1(ratio) - exp1(ratio_p))
        energy = self.solid * self.air * (np.log1p(p / self.air) + closing) - p * volume
        return energy, p, 1 / softness


class Problem:
    """The energy of one fill of one cushion, loaded or not, under one set of parameters."""

    def __init__(self, grid, counts, parameters, loaded=None, rest=None, ease=0.0):
        """`loaded`: heights of the body at the nodes, load in N and y of its line; `rest`: the
        unloaded sheet and its volumes; `ease`: how far soft tissue stands out beyond the body, m."""
        self.ease = ease
        self.grid, self.p = grid, parameters
        self.cells = [Cells(n, parameters) for n in counts]
        self.drop = parameters.sag * (1 - (grid.x / np.abs(grid.x).max()) ** 2)
        give = np.where(grid.inner, parameters.inner_give, parameters.outer_give)[grid.run]
        self.bows, self.upright = np.flatnonzero(give > 0), np.flatnonzero(give == 0)
        self.most_bow = give[self.bows] * grid.height**2 / (2 * np.pi)
        self.shifting = np.flatnonzero(grid.inner) if parameters.in_plane else np.array([], int)
        self.loaded, n = loaded, grid.nodes
        self.local = n + self.bows.size  # heights and bows: sparse; pose and shifts: a dense border
        self.pose = 3 if loaded else 0
        self.size = self.local + self.pose + self.shifting.size
        self.migration = np.zeros(n)
        self.rest = np.zeros(n)
        if rest is not None:
            self.rest, volumes = rest
            full = np.array([c.loose for c in self.cells]) / volumes
            self.migration = grid.mass @ (parameters.migration * np.minimum(1, full))
        self.total = grid.mass.sum(axis=1)
        self.hard_body = loaded is not None and parameters.tissue is None
        if loaded:
            body, load, line = loaded
            self.lever = np.stack([np.ones(n), grid.x, grid.y - line], axis=1)
        self._linear_parts()

    def _linear_parts(self):
        """Volumes, and the share of shifts in the extra areas: both linear in the unknowns."""
        grid, n = self.grid, self.grid.nodes
        self.volume_of = np.zeros((self.size, grid.count))
        self.volume_of[:n] = grid.mass
        self.empty = grid.mass.T @ self.drop
        for row, k in enumerate(self.bows, start=n):
            for side, sign in zip(grid.runs[grid.run[k]][:2], (1, -1) if self._outward(k) else (-1, 1)):
                if side is not None:
                    self.volume_of[row, side] += sign * grid.share[k]
        self.area_of = np.zeros((self.size, grid.count))
        self.shift_stiffness = np.zeros(self.shifting.size)
        for row, r in enumerate(self.shifting):
            a, b, length, widths = grid.runs[r]
            for side, sign in ((a, 1), (b, -1)):
                self.area_of[self.local + self.pose + row, side] = sign * length
                self.volume_of[self.local + self.pose + row, side] = sign * length * grid.height / 2
            self.shift_stiffness[row] = self.p.in_plane * length * widths
        self.shift_of = np.full(len(grid.runs), -1)
        self.shift_of[self.shifting] = np.arange(self.shifting.size)

    def _outward(self, k):
        """Whether a positive bow adds to the first side: so for inner walls and where only it is there."""
        return self.grid.runs[self.grid.run[k]][0] is not None

    def parts(self, z):
        n = self.grid.nodes
        return z[:n], z[n : self.local], z[self.local : self.local + self.pose], z[self.local + self.pose :]

    def tension(self, extra):
        """Energy, tension and its slope of the cover of each compartment."""
        p, scale = self.p, self.p.stretch * self.grid.area
        range_ = p.tension_taut - p.tension_slack
        least = -scale * np.log((p.tension_taut - LEAST_TENSION) / range_)
        a = np.maximum(extra, least)
        fading = range_ * np.exp(-a / scale)
        energy = p.tension_taut * a + scale * (fading - range_)
        slack = extra < least
        energy += np.where(slack, LEAST_TENSION * (extra - least), 0)
        return energy, p.tension_taut - fading, np.where(slack, 0, fading / scale)

    def extra_area(self, u, z):
        gx, gy = self.grid.slope_x @ u, self.grid.slope_y @ u
        square = gx**2 + gy**2
        each = square / (1 + np.sqrt(1 + square)) if self.p.true_area else square / 2
        return gx, gy, np.bincount(self.grid.owner, self.grid.weight * each, self.grid.count) + self.area_of.T @ z

    def body(self, q):
        return self.loaded[0] + self.lever @ q

    def energy(self, z):
        u, _, q, shift = self.parts(z)
        volumes = self.volume_of.T @ z + self.empty
        value = sum(c.at(v)[0] for c, v in zip(self.cells, volumes))
        if not np.isfinite(value):
            return np.inf
        value += self.tension(self.extra_area(u, z)[2])[0].sum()
        value += self.total @ (self.p.cover_weight * u) + self.migration @ (u - self.rest) ** 2 / 2
        value += self.p.base_stiffness / 2 * self.total @ np.maximum(-u - self.drop, 0) ** 2
        value += self.shift_stiffness @ shift**2 / 2
        if self.loaded:
            value += self.loaded[1] * q[0]
            if not self.hard_body:
                value += self.p.tissue / 2 * self.total @ np.maximum(u - self.body(q) + self.ease, 0) ** 2
        return value

    def derivatives(self, z):
        """Gradient; Hessian as a sparse part, a dense border, its corner, and terms of low rank."""
        grid, n = self.grid, self.grid.nodes
        u, _, q, shift = self.parts(z)
        gradient, diagonal = np.zeros(self.size), self.migration.copy()
        border = np.zeros((self.local, self.size - self.local))
        corner = np.zeros((self.size - self.local,) * 2)
        gx, gy, extra = self.extra_area(u, z)
        _, tension, stiffening = self.tension(extra)
        root = np.sqrt(1 + gx**2 + gy**2) if self.p.true_area else np.ones_like(gx)
        areas = self.area_of.copy()
        for i in range(grid.count):
            share = np.where(grid.owner == i, grid.weight / root, 0)
            areas[:n, i] += grid.slope_x_t @ (share * gx) + grid.slope_y_t @ (share * gy)
        laws = [c.at(v) for c, v in zip(self.cells, self.volume_of.T @ z + self.empty)]
        pressure, stiffness = np.array([[law[1], law[2]] for law in laws]).T
        gradient += areas @ tension - self.volume_of @ pressure
        sink = np.maximum(-u - self.drop, 0)
        gradient[:n] += self.p.cover_weight * self.total + self.migration * (u - self.rest)
        gradient[:n] -= self.p.base_stiffness * self.total * sink
        diagonal += self.p.base_stiffness * self.total * (sink > 0)
        gradient[self.local + self.pose :] += self.shift_stiffness * shift
        corner[range(self.pose, len(corner)), range(self.pose, len(corner))] += self.shift_stiffness
        if self.loaded:
            gradient[self.local] += self.loaded[1]
            if not self.hard_body:
                pressed = np.maximum(u - self.body(q) + self.ease, 0)
                spring = self.p.tissue * self.total * (pressed > 0)
                gradient[:n] += spring * pressed
                gradient[self.local : self.local + 3] -= self.lever.T @ (spring * pressed)
                diagonal += spring
                border[:n, :3] -= spring[:, None] * self.lever
                corner[:3, :3] += self.lever.T @ (spring[:, None] * self.lever)
                corner[range(3), range(3)] += FREE_BODY
        t = tension[grid.owner] * grid.weight / root
        bend = t / root**2 if self.p.true_area else 0 * t
        xx, yy, xy = sp.diags(t - bend * gx**2), sp.diags(t - bend * gy**2), sp.diags(-bend * gx * gy)
        cover = grid.slope_x_t @ xx @ grid.slope_x + grid.slope_y_t @ yy @ grid.slope_y
        if self.p.true_area:
            mixed = grid.slope_x_t @ xy @ grid.slope_y
            cover = cover + mixed + mixed.T
        rank = np.hstack([self.volume_of, areas]), np.r_[stiffness, stiffening]
        return gradient, cover, diagonal, border, corner, rank

    def limits(self, z):
        """Room left at each limit: under the body, at upright walls, at walls that bow."""
        grid = self.grid
        u, bow, q, shift = self.parts(z)
        tilt = np.r_[shift, 0][self.shift_of[grid.run]] ** 2 / (2 * grid.height)
        top = u[grid.node] + self.drop[grid.node] + tilt
        low = 2 * grid.height / np.pi
        over = np.maximum((top[self.bows] - low) / (grid.height - low), 0)
        room = [self.body(q) - u] if self.hard_body else []
        room += [grid.height - top[self.upright], 1 - over**2 - (bow / self.most_bow) ** 2]
        return np.concatenate(room)

    def limit_slopes(self, z):
        """Of each limit's room: -derivative by u at its node, by its bow, by its shift; curvatures."""
        grid = self.grid
        u, bow, q, shift = self.parts(z)
        s = np.r_[shift, 0][self.shift_of[grid.run]]
        h = grid.height
        low = 2 * h / np.pi
        top = u[grid.node] + self.drop[grid.node] + s**2 / (2 * h)
        over = np.maximum((top[self.bows] - low) / (h - low), 0) / (h - low)
        bent = (over > 0) / (h - low) ** 2
        s_up, s_bow = s[self.upright], s[self.bows]
        one = np.ones(self.upright.size)
        by_u = np.r_[one, 2 * over]
        by_bow = 2 * bow / self.most_bow**2
        by_shift = np.r_[s_up / h, 2 * over * s_bow / h]
        curve_uu = np.r_[0 * one, 2 * bent]
        curve_us = np.r_[0 * one, 2 * bent * s_bow / h]
        curve_ss = np.r_[one / h, 2 * bent * (s_bow / h) ** 2 + 2 * over / h]
        return by_u, by_bow, by_shift, curve_uu, 2 / self.most_bow**2, curve_us, curve_ss


def newton_step(problem, z, room, force, barrier):
    """Step towards the least of energy - barrier sum ln(room), with multipliers `force`."""
    grid, n, local = problem.grid, problem.grid.nodes, problem.local
    gradient, cover, diagonal, border, corner, (rank, weight) = problem.derivatives(z)
    by_u, by_bow, by_shift, uu, bb, us, ss = problem.limit_slopes(z)
    contact = n if problem.hard_body else 0
    hold, push = force / room, barrier / room
    slopes = lambda d: change_of_room(problem, d, by_u, by_bow, by_shift)
    if contact:
        gradient[:n] += push[:n]
        gradient[local : local + 3] -= problem.lever.T @ push[:n]
        diagonal = diagonal + hold[:n]
        border[:n, :3] -= hold[:n, None] * problem.lever
        corner[:3, :3] += problem.lever.T @ (hold[:n, None] * problem.lever)
    places = np.r_[problem.upright, problem.bows]
    node, shift = grid.node[places], problem.shift_of[grid.run[places]]
    wall_hold, wall_push, wall_force = hold[contact:], push[contact:], force[contact:]
    many = problem.upright.size
    np.add.at(gradient, node, wall_push * by_u)
    diagonal = diagonal + np.bincount(node, wall_hold * by_u**2 + wall_force * uu, n)
    gradient[n:local] += wall_push[many:] * by_bow
    bow_diagonal = wall_hold[many:] * by_bow**2 + wall_force[many:] * bb
    bow_rows = np.arange(problem.bows.size)
    mixed = sp.csr_matrix((wall_hold[many:] * by_u[many:] * by_bow, (node[many:], bow_rows)), shape=(n, bow_rows.size))
    moves = shift >= 0
    at = problem.pose + shift[moves]
    np.add.at(gradient, local + at, (wall_push * by_shift)[moves])
    np.add.at(border, (node[moves], at), (wall_hold * by_u * by_shift + wall_force * us)[moves])
    np.add.at(corner, (at, at), (wall_hold * by_shift**2 + wall_force * ss)[moves])
    bowed = moves[many:]
    np.add.at(border, (n + bow_rows[bowed], problem.pose + shift[many:][bowed]),
              (wall_hold[many:] * by_bow * by_shift[many:])[bowed])
    sparse = cover + sp.diags(diagonal)
    if bow_rows.size:
        sparse = sp.bmat([[sparse, mixed], [mixed.T, sp.diags(bow_diagonal)]])
    step = bordered_solve(sparse.tocsc(), border, corner, rank, weight, -gradient)
    return step, gradient @ step, slopes(step)


def change_of_room(problem, step, by_u, by_bow, by_shift):
    du, dbow, dq, dshift = problem.parts(step)
    places = np.r_[problem.upright, problem.bows]
    wall = -by_u * du[problem.grid.node[places]]
    wall -= by_shift * np.r_[dshift, 0][problem.shift_of[problem.grid.run[places]]]
    wall[problem.upright.size :] -= by_bow * dbow
    return np.r_[problem.lever @ dq - du, wall] if problem.hard_body else wall


def bordered_solve(sparse, border, corner, rank, weight, right):
    """(sparse with border and corner + rank weight rank^T) step = right, by Schur's complement."""
    local = sparse.shape[0]
    used = weight > 0
    rank, weight = rank[:, used], weight[used]
    columns = np.hstack([border, rank[:local]])
    lower = np.block([[corner, rank[local:]], [rank[local:].T, -np.diag(1 / weight)]])
    factor = splu(sparse, permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True})
    solved = factor.solve(np.column_stack([right[:local], columns]))
    rest = np.r_[right[local:], np.zeros(weight.size)]
    small = np.linalg.solve(lower - columns.T @ solved[:, 1:], rest - columns.T @ solved[:, 0])
    return np.r_[solved[:, 0] - solved[:, 1:] @ small, small[: right.size - local]]


LAST_BARRIER = 1e-10  # J: at 0.1 N on a node, a gap of a nanometre
MOST_STEPS = 150


def least(problem, z):
    """The unknowns of least energy, from a start strictly inside all limits."""
    barrier, room = 1e-3, problem.limits(z)
    assert (room > 0).all(), "the start is not inside the limits"
    force = barrier / room
    merit = lambda z, room: problem.energy(z) - barrier * np.log(room).sum()
    for _ in range(MOST_STEPS):
        step, slope, change = newton_step(problem, z, room, force, barrier)
        if barrier <= LAST_BARRIER and -slope < 1e-10:
            return z, force
        part = min(1.0, 0.995 / max(1e-300, (-change / room).max()))
        before = merit(z, room)
        change_of_force = barrier / room - force - force / room * change
        for _ in range(50):
            new = problem.limits(z + part * step)
            if (new > 0).all() and merit(z + part * step, new) <= before + 1e-4 * part * slope + 1e-11:
                break
            part /= 2
        else:
            raise ArithmeticError("no step leads down")
        z, room = z + part * step, new
        grown = min(1.0, 0.995 / max(1e-300, (-change_of_force / force).max()))
        force = np.clip(force + grown * change_of_force, 1e-3 * barrier / room, 1e3 * barrier / room)
        if part > 0.3 and -slope < 300 * barrier * np.sqrt(room.size):
            barrier = max(LAST_BARRIER, barrier * (0.1 if part > 0.9 else 0.3))
    raise ArithmeticError("out of steps")


def unloaded(grid, counts, parameters):
    """The sheet at rest, its volumes and fill pressures."""
    problem = Problem(grid, counts, parameters)
    z = np.zeros(problem.size)
    z[: grid.nodes] = 0.98 * grid.height - problem.drop
    z, _ = least(problem, z)
    volumes = problem.volume_of.T @ z + problem.empty
    return z[: grid.nodes], volumes, [c.at(v)[1] for c, v in zip(problem.cells, volumes)]


def loaded(grid, counts, parameters, body, load, line, ease=0.0):
    """Pose (sink in m, roll and pitch as slopes), fill pressures, and at the nodes the surface
    pressure on a hard body or, on soft tissue, how far the skin is dented beyond the body, m."""
    sheet, volumes, _ = unloaded(grid, counts, parameters)
    problem = Problem(grid, counts, parameters, (body, load, line), (sheet, volumes), ease)
    z = np.zeros(problem.size)
    z[: grid.nodes] = np.minimum(sheet, 0.98 * grid.height - problem.drop)
    # A hard body starts above the sheet, one with soft tissue in it.
    z[problem.local] = (z[: grid.nodes] - body).max() + (0.005 if problem.hard_body else -0.020)
    z, force = least(problem, z)
    volumes = problem.volume_of.T @ z + problem.empty
    pose = z[problem.local : problem.local + 3]
    dent = np.maximum(z[: grid.nodes] - problem.body(pose), -problem.ease)
    skin = force[: grid.nodes] / problem.total if problem.hard_body else dent
    return pose, [c.at(v)[1] for c, v in zip(problem.cells, volumes)], skin
