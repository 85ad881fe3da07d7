"""Writes scipy-reference.csv: conduction under media that step and ramp, by a method unlike the product's.

In s = (r/R)^2 the equation rho c T_t = [2 (1+b) k T_s + 4 s (k T_s)_s] / R^2 has smooth solutions for every shape factor
b, so Chebyshev collocation in s converges fast; time by SciPy's Radau IIA (order 5, rtol 1e-10), restarted wherever the
medium changes. The surface value follows from 2 k T_s / R = h (Tm - T) by Newton's method. Repeated with more points
and tighter steps the figures move by about 1e-7 C (column `shift`). Choi-Okos coefficients are read from the
shipped table. Needs python3, numpy and scipy; run it in this folder. The cooks are invented.
"""
import csv
import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.special import roots_jacobi
from scipy.interpolate import BarycentricInterpolator

TABLE = "../../../../../reference-tables/src/main/resources/org/holdproof/tables/heat/thermal-properties.csv"


def choi_okos(weights, path):
    poly = {}
    for row in csv.DictReader(open(TABLE, encoding="utf-8")):
        if row["record"] == "component equation":
            poly[row["food"], row["component_property"].split(" ")[0]] = [float(row[c]) for c in "ABC"]
    at = lambda food, prop, t: poly[food, prop][0] + t * (poly[food, prop][1] + t * poly[food, prop][2])
    total = sum(weights.values())
    share = {food: w / total for food, w in weights.items()}

    def density(t):
        return 1 / sum(w / at(f, "rho", t) for f, w in share.items())

    def conductivity(t):
        volume = {f: density(t) * w / at(f, "rho", t) for f, w in share.items()}
        if path == "PARALLEL":
            return sum(v * at(f, "k", t) for f, v in volume.items())
        return 1 / sum(v / at(f, "k", t) for f, v in volume.items())

    return conductivity, lambda t: density(t) * sum(w * at(f, "cp", t) for f, w in share.items())


def constant(k, alpha):
    return lambda t: k + 0 * t, lambda t: k / alpha + 0 * t


def chebyshev(n):
    x = np.cos(np.pi * np.arange(n + 1) / n)
    c = np.hstack([2, np.ones(n - 1), 2]) * (-1) ** np.arange(n + 1)
    dx = np.subtract.outer(x, x)
    d = np.outer(c, 1 / c) / (dx + np.eye(n + 1))
    d -= np.diag(d.sum(axis=1))
    return (1 + x) / 2, 2 * d  # node 0 is the surface


def solve(case, n, rtol):
    half = case["thickness_mm"] / 2000
    beta = case["beta"]
    s, d = chebyshev(n)
    conductivity, capacity = case["properties"]

    def surface(inner, tm, h):
        t = inner[0]
        for _ in range(50):
            full = np.hstack([t, inner])
            k = conductivity(t)
            g = 2 * k * (d[0] @ full) / half - h * (tm - t)
            slope = 2 * k * d[0, 0] / half + h + 2 * (conductivity(t + 1e-4) - k) / 1e-4 * (d[0] @ full) / half
            step = g / slope
            t -= step
            if abs(step) < 1e-12:
                break
        return np.hstack([t, inner])

    nodes, weights = roots_jacobi(40, 0, (beta - 1) / 2)
    weights = weights / weights.sum()

    state = np.full(n, float(case["start"]))
    found, clock = {}, 0.0
    asked = list(case["minutes"])
    for minutes, t0, t1, h in case["segments"]:
        end = clock + minutes

        def medium(t):
            return t0 + (t1 - t0) * (t / 60 - clock) / minutes

        def rhs(t, y):
            full = surface(y, medium(t), h)
            k = conductivity(full)
            flux = k * (d @ full)
            return ((2 * (1 + beta) * flux + 4 * s * (d @ flux)) / half ** 2 / capacity(full))[1:]

        here = [m for m in asked if clock < m <= end]
        points = sorted(set(here) | {end})
        result = solve_ivp(rhs, (clock * 60, end * 60), state, method="Radau", rtol=rtol, atol=rtol,
                           t_eval=[60 * m for m in points])
        assert result.success, result.message
        for m, y in zip(points, result.y.T):
            if m in here:
                full = surface(y, medium(m * 60), h)
                mean = weights @ BarycentricInterpolator(s, full)((1 + nodes) / 2)
                found[m] = (full[-1], full[0], mean)
        state, clock = result.y[:, -1], end
    return found


LONG_COOK = [(30, 20, 110, 15), (150, 110, 110, 15), (420, 57, 57, 300), (240, 0.5, 0.5, 150)]
SWINGING = [(5, 59, 61, 200) if i % 2 == 0 else (5, 61, 59, 200) for i in range(36)]
WALK_IN = [(60, 12, 4, 7), (600, 4, 3, 7), (200, 3, 3, 15)]
BRISKET = {"water": 55.2, "protein": 16.9, "fat": 26.5, "ash": 0.8}
COD = {"water": 81.2, "protein": 17.8, "fat": 0.7, "ash": 1.2}
CASES = [
    dict(case="long cook, constant", beta=0.28, thickness_mm=65, food="", path="", properties=constant(0.48, 1.3e-7),
         start=4, segments=LONG_COOK, minutes=range(10, 841, 10)),
    dict(case="long cook, brisket", beta=1.0, thickness_mm=90, food="55.2;16.9;26.5;0.8", path="PARALLEL",
         properties=choi_okos(BRISKET, "PARALLEL"), start=4, segments=LONG_COOK, minutes=range(10, 841, 10)),
    dict(case="swinging bath, constant", beta=2.0, thickness_mm=40, food="", path="", properties=constant(0.48, 1.3e-7),
         start=5, segments=SWINGING, minutes=range(2, 181, 2)),
    dict(case="bath, cod in series", beta=0.0, thickness_mm=30, food="81.2;17.8;0.7;1.2", path="SERIES",
         properties=choi_okos(COD, "SERIES"), start=3, segments=[(180, 62, 62, 400)], minutes=range(2, 181, 2)),
    dict(case="walk-in, brisket in series", beta=0.7, thickness_mm=80, food="55.2;16.9;26.5;0.8", path="SERIES",
         properties=choi_okos(BRISKET, "SERIES"), start=60, segments=WALK_IN, minutes=range(10, 861, 10)),
]

print("scipy", scipy.__version__, "numpy", np.__version__)
with open("scipy-cases.csv", "w", newline="") as cases, open("scipy-reference.csv", "w", newline="") as reference:
    to_cases, to_reference = csv.writer(cases, lineterminator="\n"), csv.writer(reference, lineterminator="\n")
    to_cases.writerow(["case", "beta", "thickness_mm", "water;protein;fat;ash", "path", "start_C", "segments"])
    to_reference.writerow(["case", "minute", "core_C", "surface_C", "mean_C", "shift"])
    for case in CASES:
        segments = "|".join(";".join(str(v) for v in seg) for seg in case["segments"])
        to_cases.writerow([case[c] for c in ("case", "beta", "thickness_mm", "food", "path", "start")] + [segments])
        coarse, fine = solve(case, 36, 1e-8), solve(case, 48, 1e-10)
        for m in case["minutes"]:
            shift = max(abs(a - b) for a, b in zip(coarse[m], fine[m]))
            to_reference.writerow([case["case"], m] + [f"{v:.5f}" for v in fine[m]] + [f"{shift:.5f}"])
        print(case["case"], "largest shift", max(max(abs(a - b) for a, b in zip(coarse[m], fine[m])) for m in fine))
