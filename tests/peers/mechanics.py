"""The same mechanics by the same method, in numpy and scipy: a peer to be as fast as, or faster.

The energy is that of Seatwright's design, the method too: nested meshes, Newton's method with an
active set, one sparse factorisation a step (SuperLU), pressures, tensions and pose as a border, the
unloaded sheet first. Nothing of Seatwright's solver is used; meshes, body and counts are read from
crates/mechanics/examples/coarse_problem.rs. There is no fallback: where the active set fails, so does
this program.
"""

import numpy as np
import scipy.sparse as sp
from scipy.sparse.linalg import splu

FREE, WALL, BODY = 0, 1, 2
STRIDE = np.array([0.01, 0.06, 0.06])  # the most of sink (m), roll and pitch in one step
LOOSE, LOOSE_SHEET = 1e-4, 0.1  # stiffness where nothing resists: N/m, Pa/m
DIP = 0.02  # how far the body is lowered at the start, m
MOST_STEPS = 40
GAUSS, WEIGHTS = np.polynomial.legendre.leggauss(24)


class FillLaw:
    """Cells of all compartments at once: V = N v pa/(pa + p) (1 + e0 exp(-p/pe))."""

    def __init__(self, problem):
        p = problem["parameters"]
        self.cells = np.array(problem["cells"]) * p["cell_volume"]
        self.voids = 1 / np.array(problem["packing"]) - 1
        self.air, self.closing = p["air_pressure"], p["void_pressure"]
        self.loose = self.cells * (1 + self.voids)

    def volume(self, pressure):
        squeezed = self.cells * self.air / (self.air + pressure)
        open_ = self.voids * np.exp(-pressure / self.closing)
        volume = squeezed * (1 + open_)
        return volume, -volume / (self.air + pressure) - squeezed * open_ / self.closing

    def pressure(self, volume):
        """Pressure at a volume and its slope; zero where the cells lie loose."""
        pressed = volume < self.loose
        high = np.where(pressed, np.maximum(self.air * (self.loose / volume - 1), 0), 0)
        low, at = np.zeros_like(volume), np.zeros_like(volume)
        asked = np.where(pressed, volume, self.loose)
        wanted = np.where(asked > 0, asked, 1.0)
        for _ in range(100):
            reached, slope = self.volume(at)
            reached, slope = np.where(asked > 0, reached, 1.0), np.where(asked > 0, slope, -1.0)
            low, high = np.where(reached >= wanted, at, low), np.where(reached < wanted, at, high)
            step = np.log(wanted / reached) * reached / slope
            if np.abs(step).max() <= 1e-14 * self.air:
                break
            inside = (at + step >= low) & (at + step <= high)
            at = np.where(inside, at + step, (low + high) / 2)
        slope = np.zeros_like(volume)
        slope[pressed] = 1 / self.volume(at)[1][pressed]
        return at, slope

    def energy(self, volume, pressure):
        """Integral of p dV from the volume to the loose one."""
        points = pressure[:, None] * (GAUSS + 1) / 2
        part = np.exp(-points / self.closing) / (self.air + points)
        closing = (part * WEIGHTS).sum(1) * pressure / 2
        whole = self.cells * self.air * (np.log1p(pressure / self.air) + self.voids * closing)
        return np.where(volume < self.loose, whole - pressure * volume, 0)


class Mesh:
    """One mesh: stiffness of each compartment under unit tension, and the areas of the nodes."""

    def __init__(self, places, triangles, owner, compartments, seam):
        tri, n = np.array(triangles), len(places)
        owner = np.array(owner)
        self.places, self.seam, self.n, self.m = places, seam, n, compartments
        a, b, c = (places[tri[:, k]] for k in range(3))
        edges = np.stack([c - b, a - c, b - a], axis=1)
        twice = (b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0]
        local = np.einsum("tad,tbd->tab", edges, edges) / (2 * twice)[:, None, None]
        rows, columns = np.repeat(tri, 3, axis=1).ravel(), np.tile(tri, (1, 3)).ravel()
        pattern = sp.csc_matrix((np.ones(rows.size), (rows, columns)), shape=(n, n))
        pattern = (pattern + sp.identity(n, format="csc")).tocsc()
        pattern.sort_indices()
        self.pattern = pattern
        # Where each entry of each compartment's matrix is in the common one.
        self.stiffness, self.entries, self.values = [], [], []
        of_column = np.repeat(np.arange(n), np.diff(pattern.indptr))
        keys = of_column.astype(np.int64) * n + pattern.indices
        self.diagonal = np.searchsorted(keys, np.arange(n, dtype=np.int64) * (n + 1))
        self.shares = np.zeros((n, compartments))
        for i in range(compartments):
            own = np.repeat(owner == i, 9)
            entry = (local.ravel()[own], (rows[own], columns[own]))
            matrix = sp.csc_matrix(entry, shape=(n, n))
            column = np.repeat(np.arange(n), np.diff(matrix.indptr)).astype(np.int64)
            self.entries.append(np.searchsorted(keys, column * n + matrix.indices))
            self.values.append(matrix.data)
            self.stiffness.append(matrix.tocsr())
            mine = owner == i
            np.add.at(self.shares[:, i], tri[mine].ravel(), np.repeat(twice[mine] / 6, 3))
        self.areas = self.shares.sum(1)
        self.patch_areas = self.shares.sum(0)

    def matrix(self, tensions, local):
        data = np.zeros(self.pattern.nnz)
        for tension, entries, values in zip(tensions, self.entries, self.values):
            data[entries] += tension * values
        data[self.diagonal] += local
        return sp.csc_matrix((data, self.pattern.indices, self.pattern.indptr), shape=(self.n,) * 2)


class Problem:
    """What is minimised on one mesh: the unloaded sheet, or with a body."""

    def __init__(self, given, mesh, law, unloaded=None):
        self.p, self.mesh, self.law = given["parameters"], mesh, law
        self.wall = np.where(mesh.seam, given["wall"], np.inf)
        self.unloaded, self.migration = None, np.zeros(mesh.m)
        self.modes = np.zeros((mesh.n, 0))
        if unloaded is not None:
            load = given["load"]
            sheet, volumes = unloaded
            self.unloaded = sheet[: mesh.n]
            self.migration = self.p["migration"] * np.minimum(1, law.loose / volumes)
            x, y = mesh.places.T
            self.modes = np.stack([np.ones(mesh.n), x, y - load["y"]], axis=1)
            self.under = np.array(given["underside"])[: mesh.n]
            self.weight = load["weight"] * np.array([1, load["x"], 0])
        self.local = mesh.shares @ np.maximum(self.migration, LOOSE_SHEET)
        self.resists = mesh.shares @ self.migration

    def bounds(self, pose):
        if self.unloaded is None:
            return self.wall, np.full(self.mesh.n, WALL)
        skin = self.under + self.modes @ pose
        return np.minimum(skin, self.wall), np.where(self.wall <= skin, WALL, BODY)

    def tension(self, extra):
        scale = self.p["stretch"] * self.mesh.patch_areas
        more = self.p["tension_taut"] - self.p["tension_slack"]
        left = more * np.exp(-extra / scale)
        energy = self.p["tension_taut"] * extra + more * scale * np.expm1(-extra / scale)
        return self.p["tension_taut"] - left, left / scale, energy

    def forces(self, sheet, pose):
        """Energy, slopes, and what a step needs; none where there is no room for the cells."""
        mesh, f = self.mesh, {}
        volume = sheet @ mesh.shares
        if not (volume > 0).all():
            return None
        f["bent"] = np.stack([matrix @ sheet for matrix in mesh.stiffness], axis=1)
        f["tension"], f["taut"], stretched = self.tension(0.5 * (sheet @ f["bent"]))
        f["volume"] = volume
        f["pressure"], slope = self.law.pressure(volume)
        f["stiff"] = -slope
        cover = self.p["cover_weight"]
        energy = stretched.sum() + self.law.energy(volume, f["pressure"]).sum() + cover * volume.sum()
        nodes = f["bent"] @ f["tension"] + mesh.shares @ (cover - f["pressure"])
        below = np.minimum(sheet, 0)
        base = self.p["base_stiffness"] * mesh.areas
        energy += 0.5 * (base @ below**2)
        nodes += base * below
        if self.unloaded is not None:
            by = sheet - self.unloaded
            energy += 0.5 * (self.resists @ by**2) + self.weight @ pose
            nodes += self.resists * by
        f["energy"], f["nodes"] = energy, nodes
        bound, kind = self.bounds(pose)
        f["holds"] = np.where((sheet >= bound) & (nodes < 0), kind, FREE)
        return f

    def residual(self, f):
        left = np.abs(f["nodes"][f["holds"] == FREE]).sum()
        if self.unloaded is None:
            return left
        held = f["holds"] == BODY
        return max(left, np.abs(self.weight + f["nodes"][held] @ self.modes[held]).max())

    def step(self, sheet, f):
        """The change of sheet and pose by Newton's method with the held nodes held."""
        mesh = self.mesh
        local = self.local + np.where(sheet < 0, self.p["base_stiffness"] * mesh.areas, 0)
        matrix = mesh.matrix(f["tension"], local)
        free, body = f["holds"] == FREE, f["holds"] == BODY
        ranks = np.concatenate([mesh.shares[:, f["stiff"] > 0], f["bent"][:, f["taut"] > 0]], axis=1)
        scale = np.concatenate([f["stiff"][f["stiff"] > 0], f["taut"][f["taut"] > 0]])
        moved = np.where(body[:, None], self.modes, 0)
        felt = matrix @ moved
        border = np.concatenate([felt, ranks], axis=1)
        at = np.flatnonzero(free)
        factor = splu(
            matrix[at][:, at], permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0,
            options={"SymmetricMode": True},
        )
        right = np.concatenate([border[at], -f["nodes"][at, None]], axis=1)
        solved = factor.solve(right)
        q, r = moved.shape[1], ranks.shape[1]
        corner = np.zeros((q + r, q + r))
        corner[:q, :q] = moved.T @ felt + LOOSE * np.eye(q)
        corner[:q, q:] = moved.T @ ranks
        corner[q:, :q] = (moved.T @ ranks).T
        corner[q:, q:] = -np.diag(1 / scale)
        load = np.zeros(q + r)
        if q:
            load[:q] = -self.weight - moved.T @ f["nodes"]
        schur = corner - border[at].T @ solved[:, :-1]
        small = np.linalg.solve(schur, load - border[at].T @ solved[:, -1])
        change = moved @ small[:q]
        change[at] = solved[:, -1] - solved[:, :-1] @ small
        return change, small[:q]

    def search(self, sheet, pose, enough):
        """Steps until what is left of the forces is below `enough`, in N."""
        sheet = np.minimum(sheet, self.bounds(pose)[0])
        f = self.forces(sheet, pose)
        for steps in range(MOST_STEPS):
            if self.residual(f) <= enough:
                return sheet, pose, f, steps
            change, turn = self.step(sheet, f)
            slope = f["nodes"] @ change + (self.weight @ turn if len(turn) else 0)
            share = min(1.0, *(STRIDE / np.maximum(np.abs(turn), 1e-300))) if len(turn) else 1.0
            for _ in range(30):
                to = pose + share * turn
                bound = self.bounds(to)[0]
                new = np.where(f["holds"] == FREE, np.minimum(sheet + share * change, bound), bound)
                g = self.forces(new, to)
                most = 1e-4 * share * min(slope, 0) + 1e-13 * (abs(f["energy"]) + 1)
                if g is not None and g["energy"] <= f["energy"] + most:
                    break
                share /= 2
            else:
                raise RuntimeError("no step lowers the energy")
            sheet, pose, f = new, to, g
        raise RuntimeError("out of steps")


class Cushion:
    """What is made once for a pattern: meshes, and the unit solution on the finest."""

    def __init__(self, given):
        places, seam = np.array(given["nodes"]), np.array(given["tethered"])
        m = len(given["cells"])
        levels = [*given["coarser"], {**given, "nodes": len(places)}]
        self.meshes = [
            Mesh(places[: own["nodes"]], own["triangles"], own["compartment_of"], m, seam[: own["nodes"]])
            for own in levels
        ]
        self.parents = [np.array(own["parents"]) for own in given["coarser"]]
        fine = self.meshes[-1]
        free = np.flatnonzero(~fine.seam)
        matrix = fine.matrix(np.ones(m), np.zeros(fine.n))
        self.unit = np.zeros(fine.n)
        self.unit[free] = splu(matrix[free][:, free]).solve(fine.areas[free])

    def held_by_seams(self, given, problem):
        """The unloaded sheet as though every seam held it."""
        fine, law, p = self.meshes[-1], problem.law, given["parameters"]
        unit = self.unit @ fine.shares
        low = np.full(fine.m, -p["cover_weight"] / p["tension_slack"])
        high = np.full(fine.m, 100.0)
        for _ in range(60):
            middle = (low + high) / 2
            volume = fine.patch_areas * given["wall"] + middle * unit
            tension = problem.tension(0.5 * middle**2 * unit)[0]
            net = middle * tension + p["cover_weight"]
            light = (net < 0) | (volume < law.volume(np.maximum(net, 0))[0])
            low, high = np.where(light, middle, low), np.where(light, high, middle)
        owner = fine.shares.argmax(1)
        return given["wall"] + np.where(fine.seam, 0, low[owner] * self.unit)

    def rest(self, given):
        """Unloaded, then loaded on mesh after mesh."""
        law, fine = FillLaw(given), self.meshes[-1]
        bare = Problem(given, fine, law)
        enough = 1e-6 * fine.areas.sum()
        sheet, _, f, _ = bare.search(self.held_by_seams(given, bare), np.zeros(0), enough)
        unloaded = (sheet, f["volume"])
        weight = given["load"]["weight"]
        coarse = self.meshes[0]
        state = sheet[: coarse.n]
        touching = (state - np.array(given["underside"])[: coarse.n]).max()
        pose, steps = np.array([touching - DIP, 0.0, 0.0]), 0
        for level, mesh in enumerate(self.meshes):
            problem = Problem(given, mesh, law, unloaded)
            last = level == len(self.meshes) - 1
            state, pose, g, more = problem.search(state, pose, 1e-9 * weight if last else 1e-2)
            steps += more
            if not last:
                state = np.concatenate([state, state[self.parents[level]].mean(1)])
        return {"pose": pose, "fill_pa": g["pressure"], "unloaded_pa": f["pressure"], "steps": steps}
