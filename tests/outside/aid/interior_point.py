"""The energy of the filled cushion under a body, minimised by a general interior-point solver.

Outside source: IPOPT (Waechter and Biegler, Mathematical Programming 106, 25-57, 2006) through
CasADi, which differentiates the energy by itself. Nothing of Seatwright's solver is used: the
energy is written down here anew, from a mesh, a body given at the mesh's nodes, and counts.

A problem is a dict (the program's tests write such dicts as JSON):
    nodes            [[x, y], ...] in metres
    triangles        [[i, j, k], ...]
    compartment_of   compartment of each triangle
    tethered         true at nodes on a seam
    walls            [[i, j, left, right], ...]: stretches of wall, the nodes at their ends and the
                     compartments on both sides, -1 outside
    wall             height of the seams, m
    underside        loaded underside of the body at each node, m; least height 0
    cells            cells in each compartment
    packing          share of the space that unpressed cells fill, per compartment
    parameters       tension_slack, tension_taut (N/m), stretch, migration (Pa/m), void_pressure,
                     air_pressure, cover_weight (Pa), base_stiffness (Pa/m), cell_volume (m3),
                     inner_give, outer_give (shares), small_slopes (whether the cover's extra area
                     is half its squared slope)
    load             weight (N), x, y (m), tilt_y: the y about which pitch turns (m),
                     trunk_height (m), own_roll_stiffness (N m per radian), roll_at_ease (slope)
"""

import casadi as ca
import numpy as np

GAUSS, WEIGHTS = np.polynomial.legendre.leggauss(20)
EASY = 2.0  # difference of pressure at which a slack wall has bowed to the full, Pa


def void_law(problem):
    """Volume of each compartment's cells at a pressure, and the energy that it takes to get there."""
    p = problem["parameters"]
    gas = np.array(problem["cells"]) * p["cell_volume"]
    voids = 1.0 / np.array(problem["packing"]) - 1.0

    def volume(i, pressure):
        air = p["air_pressure"] / (p["air_pressure"] + pressure)
        return gas[i] * air * (1 + voids[i] * ca.exp(-pressure / p["void_pressure"]))

    def energy(i, pressure):
        # Integral of -s dV/ds from 0 to the pressure, by parts; Gauss's rule for the rest.
        rest = sum(w / 2 * volume(i, pressure * (g + 1) / 2) for g, w in zip(GAUSS, WEIGHTS))
        return pressure * (rest - volume(i, pressure))

    return volume, energy


def elements(problem):
    """Areas, gradients and node sharing of the triangles."""
    xy = np.array(problem["nodes"])
    tri = np.array(problem["triangles"])
    a, b, c = xy[tri[:, 0]], xy[tri[:, 1]], xy[tri[:, 2]]
    twice = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (c[:, 0] - a[:, 0]) * (b[:, 1] - a[:, 1])
    edges = np.stack([c - b, a - c, b - a], axis=1)
    gradients = np.stack([-edges[:, :, 1], edges[:, :, 0]], axis=2) / twice[:, None, None]
    return tri, np.abs(twice) / 2, gradients


def assemble(problem):
    """Stiffness matrix and node areas of each compartment."""
    import scipy.sparse as sp

    tri, areas, gradients = elements(problem)
    owner = np.array(problem["compartment_of"])
    n = len(problem["nodes"])
    stiffness, shares = [], []
    for i in range(len(problem["cells"])):
        own = owner == i
        local = np.einsum("tad,tbd,t->tab", gradients[own], gradients[own], areas[own])
        rows = np.repeat(tri[own], 3, axis=1).ravel()
        columns = np.tile(tri[own], (1, 3)).ravel()
        stiffness.append(sp.csc_matrix((local.ravel(), (rows, columns)), shape=(n, n)))
        share = np.zeros(n)
        np.add.at(share, tri[own].ravel(), np.repeat(areas[own] / 3, 3))
        shares.append(share)
    return stiffness, shares


def gradients(problem, i):
    """Matrices that give the slopes of the triangles of a compartment, and their areas."""
    import scipy.sparse as sp

    tri, areas, slopes = elements(problem)
    own = np.array(problem["compartment_of"]) == i
    rows = np.repeat(np.arange(own.sum()), 3)
    shape = (own.sum(), len(problem["nodes"]))
    matrix = lambda axis: sp.csc_matrix((slopes[own][:, :, axis].ravel(), (rows, tri[own].ravel())), shape=shape)
    return matrix(0), matrix(1), areas[own]


def stations(problem):
    """Walls at nodes: node, compartments on both sides, length, and the most that is swept; those
    that sweep nothing are left out."""
    xy, lengths = np.array(problem["nodes"]), {}
    for a, b, left, right in problem["walls"]:
        for node in (a, b):
            key = (node, max(left, right), min(left, right))
            lengths[key] = lengths.get(key, 0.0) + np.linalg.norm(xy[a] - xy[b]) / 2
    p, most = problem["parameters"], problem["wall"] ** 2 / (2 * np.pi)
    give = lambda other: p["outer_give"] if other < 0 else p["inner_give"]
    found = [(*key, length, give(key[2]) * most) for key, length in sorted(lengths.items())]
    return [station for station in found if station[4] > 0]


def minimise(problem, unloaded=None):
    """Finds the sheet without a body, or with one when the unloaded sheet is given."""
    p, load = problem["parameters"], problem["load"]
    stiffness, shares = assemble(problem)
    volume, void_energy = void_law(problem)
    n, m = len(problem["nodes"]), len(problem["cells"])
    u, fill = ca.MX.sym("u", n), ca.MX.sym("fill", m)  # fill pressures in kPa
    below = ca.MX.sym("below", n)  # how far below the base
    # Half the integral of the squared slope, as unknowns of their own: the second derivatives
    # stay sparse, and the energy, which grows with them, presses each onto its bound.
    bent = ca.MX.sym("bent", m)
    unknowns = [u, fill, below, bent]
    total = sum(shares)
    energy = p["cover_weight"] * ca.dot(total, u)
    energy += p["base_stiffness"] / 2 * ca.dot(total, below**2)
    constraints, lower = [u + below], [np.zeros(n)]
    walls = stations(problem)
    bowed = [ca.MX(0)] * m
    if walls:
        node, gains, loses, length, reach = (np.array(column) for column in zip(*walls))
        # The height over that at which a wall is slack, as a share, and the swept area as one.
        taut, swept = ca.MX.sym("taut", len(walls)), ca.MX.sym("swept", len(walls))
        unknowns += [taut, swept]
        low = 2 / np.pi * problem["wall"]
        constraints.append(taut - (u[node.tolist()] - low) / (problem["wall"] - low))
        constraints.append(1 - taut**2 - swept**2)
        lower += [np.zeros(len(walls)), np.zeros(len(walls))]
        energy += EASY / 2 * ca.dot(length * reach, swept**2)
        for i in range(m):
            bowed[i] = ca.dot(length * reach * ((gains == i) * 1.0 - (loses == i)), swept)
    for i in range(m):
        if p["small_slopes"]:
            slope = ca.mtimes(ca.mtimes(u.T, ca.DM(stiffness[i])), u) / 2
        else:
            along, across, areas = gradients(problem, i)
            square = ca.mtimes(ca.DM(along), u) ** 2 + ca.mtimes(ca.DM(across), u) ** 2
            slope = ca.dot(areas, ca.sqrt(1 + square) - 1)
        constraints.append(1e3 * (bent[i] - slope))
        lower.append(np.zeros(1))
        reach = p["stretch"] * shares[i].sum()
        taut = p["tension_taut"] - p["tension_slack"]
        energy += p["tension_taut"] * bent[i] + taut * reach * (ca.exp(-bent[i] / reach) - 1)
        energy += void_energy(i, 1e3 * fill[i])
        constraints.append(1e3 * (ca.dot(shares[i], u) + bowed[i] - volume(i, 1e3 * fill[i])))
        lower.append(np.zeros(1))
    if unloaded is not None:
        pose = ca.MX.sym("pose", 3)
        unknowns.append(pose)
        x, y = np.array(problem["nodes"]).T
        for i in range(m):
            full = problem["cells"][i] * p["cell_volume"] / problem["packing"][i]
            held = unloaded["volumes"][i]
            migration = p["migration"] * min(1.0, full / held)
            energy += migration / 2 * ca.dot(shares[i], (u - unloaded["sheet"]) ** 2)
        energy += load["weight"] * (
            pose[0] + pose[1] * load["x"] + pose[2] * (load["y"] - load["tilt_y"])
        )
        energy -= load["weight"] * load["trunk_height"] * pose[1] ** 2 / 2
        energy += load["own_roll_stiffness"] * (pose[1] - load["roll_at_ease"]) ** 2 / 2
        under = np.array(problem["underside"])
        body = under + pose[0] + pose[1] * x + pose[2] * (y - load["tilt_y"])
        constraints.append(body - u)
        lower.append(np.zeros(n))
    volumes = ca.vertcat(*[ca.dot(shares[i], u) + bowed[i] for i in range(m)])
    return run(problem, unknowns, energy, constraints, lower, unloaded, volumes)


def run(problem, unknowns, energy, constraints, lower, unloaded, volumes):
    n, m = len(problem["nodes"]), len(problem["cells"])
    w = len(stations(problem))
    tethered = np.array(problem["tethered"])
    high = np.where(tethered, problem["wall"], 1.0)
    upper = [high, np.full(m, 100.0), np.full(n, 1.0), np.full(m, 10.0)]
    least = [np.full(n, -1.0), np.zeros(m), np.zeros(n), np.zeros(m)]
    start = [np.full(n, problem["wall"] * 0.9), np.full(m, 1.0), np.full(n, 1e-6), np.full(m, 1e-3)]
    if w:
        least += [np.zeros(w), np.full(w, -1.0)]
        upper += [np.ones(w), np.ones(w)]
        start += [np.full(w, 0.9), np.zeros(w)]
    if unloaded is not None:
        least.append(np.full(3, -0.5))
        upper.append(np.full(3, 0.5))
        start[:2] = [unloaded["sheet"], np.full(m, 2.0)]
        start.append(np.array([0.1, 0.0, 0.0]))
    options = {
        "ipopt.print_level": 0, "print_time": 0, "ipopt.sb": "yes",
        "ipopt.tol": 1e-10, "ipopt.acceptable_tol": 1e-9, "ipopt.max_iter": 500,
        "ipopt.mu_strategy": "adaptive", "ipopt.bound_relax_factor": 0,
    }
    nlp = {"x": ca.vertcat(*unknowns), "f": energy, "g": ca.vertcat(*constraints)}
    solver = ca.nlpsol("cushion", "ipopt", nlp, options)
    found = solver(
        x0=np.concatenate(start), lbx=np.concatenate(least), ubx=np.concatenate(upper),
        lbg=np.concatenate(lower), ubg=np.inf,
    )
    if not solver.stats()["success"]:
        raise RuntimeError(solver.stats()["return_status"])
    x = np.array(found["x"]).ravel()
    answer = {"sheet": x[:n], "fill_pa": 1e3 * x[n : n + m], "energy": float(found["f"])}
    answer["volumes"] = np.array(ca.Function("volumes", [nlp["x"]], [volumes])(x)).ravel()
    if unloaded is not None:
        answer["pose"] = x[-3:]
    return answer


def solve(problem):
    """Returns the unloaded and the loaded answer."""
    bare = minimise(problem)
    return bare, minimise(problem, bare)
