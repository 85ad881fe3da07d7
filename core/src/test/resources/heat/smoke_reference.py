"""Writes smoke-cases.csv and smoke-reference.csv: bare meat that dries in air, by a method unlike the product's.

Chebyshev collocation in s = (r/R)^2 as in scipy_reference.py; here the surface follows from the whole balance
2 k T_s / R = h (Ta - T) + e sigma (Ta^4 - T^4) - L E by SciPy's brentq, and the water lost is one more unknown of the
Radau integration (rtol 1e-9). The equations are written out afresh; constants as the product states them. Repeated with
fewer points and looser steps the figures move by the column `shift`. Needs python3, numpy and scipy; run it in this
folder. The cooks are invented.
"""
import csv
import math
import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
from scipy.special import roots_jacobi
from scipy.interpolate import BarycentricInterpolator

P, SIGMA, DENSITY, LEWIS, MOLAR_HEAT, MOLAR_WATER, ACTIVITY = 101325.0, 5.670374e-8, 1050.0, 0.90, 29.3, 0.018015, 0.99


def saturation(t):
    """Hyland and Wexler 1983, over water."""
    k = t + 273.15
    c = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8)
    return math.exp(sum(a * k ** (i - 1) for i, a in enumerate(c)) + 6.5459673 * math.log(k))


def wetness(lost, law, raw):
    half_wet, share = law
    if share == 0:
        return 0.0
    lost = max(lost, 0.0)
    first = 1.0 if math.isinf(half_wet) else half_wet / (half_wet + lost)
    return first * (1.0 if math.isinf(share) else max(0.0, 1 - (lost / (share * raw)) ** 3))


def exchange(t, air, bare, phi):
    h, eps, w = bare
    outside = P * w / (0.621945 + w)
    own = min(ACTIVITY * saturation(t), 0.95 * P)
    drive = math.log((P - outside) / (P - own))
    leaving = (phi if drive > 0 else 1.0) * MOLAR_WATER * h / (MOLAR_HEAT * LEWIS) * drive
    radiation = eps * SIGMA * ((air + 273.15) ** 4 - (t + 273.15) ** 4)
    return h * (air - t) + radiation - (2.501e6 - 2361 * t) * leaving, leaving


def chebyshev(n):
    x = np.cos(np.pi * np.arange(n + 1) / n)
    c = np.hstack([2, np.ones(n - 1), 2]) * (-1) ** np.arange(n + 1)
    dx = np.subtract.outer(x, x)
    d = np.outer(c, 1 / c) / (dx + np.eye(n + 1))
    d -= np.diag(d.sum(axis=1))
    return (1 + x) / 2, 2 * d  # node 0 is the surface


def solve(case, n, rtol):
    half, beta = case["thickness_mm"] / 2000, case["beta"]
    k, alpha = 0.48, case["alpha"]
    raw = DENSITY * half / (beta + 1)
    s, d = chebyshev(n)
    nodes, weights = roots_jacobi(40, 0, (beta - 1) / 2)
    weights = weights / weights.sum()
    state, found, clock = np.append(np.full(n, float(case["start"])), 0.0), {}, 0.0
    for minutes, t0, t1, surface in case["segments"]:
        end = clock + minutes

        def medium(t):
            return t0 + (t1 - t0) * (t / 60 - clock) / minutes

        def close(inner, lost, air):
            """The surface temperature and the water leaving."""
            steady = 2 * k / half * (d[0, 1:] @ inner)
            own = 2 * k / half * d[0, 0]
            if len(surface) == 1:
                return (surface[0] * air - steady) / (own + surface[0]), 0.0
            phi = wetness(lost, surface[3:], raw)
            x = brentq(lambda t: own * t + steady - exchange(t, air, surface[:3], phi)[0], -50, 300, xtol=1e-12, rtol=1e-14)
            return x, exchange(x, air, surface[:3], phi)[1]

        def rhs(t, y):
            x, leaving = close(y[:-1], y[-1], medium(t))
            gradient = d @ np.append(x, y[:-1])
            return np.append((alpha * (2 * (1 + beta) * gradient + 4 * s * (d @ gradient)) / half ** 2)[1:], leaving)

        here = [m for m in case["minutes"] if clock < m <= end]
        points = sorted(set(here) | {end})
        result = solve_ivp(rhs, (clock * 60, end * 60), state, method="Radau", rtol=rtol, atol=rtol,
                           t_eval=[60 * m for m in points])
        assert result.success, result.message
        for m, y in zip(points, result.y.T):
            if m in here:
                x, _ = close(y[:-1], y[-1], medium(m * 60))
                full = np.append(x, y[:-1])
                mean = weights @ BarycentricInterpolator(s, full)((1 + nodes) / 2)
                found[m] = (full[-1], full[0], mean, y[-1])
        state, clock = result.y[:, -1], end
    return found


NOMINAL, INF = (6.5, 0.8, 0.04, 1.0, 0.38), math.inf
CASES = [
    dict(case="brisket, bench, bath", beta=0.5, thickness_mm=100, alpha=1.3e-7, start=4, minutes=range(10, 1217, 10),
         segments=[(480, 115, 115, NOMINAL), (16, 22, 22, (5, 0.8, 0.008, 1.0, 0.38)), (720, 68, 68, (95,))]),
    dict(case="flat, warming smoker, wrapped", beta=0.3, thickness_mm=60, alpha=1.5e-7, start=6, minutes=range(10, 601, 10),
         segments=[(40, 30, 121, (9.75, 0.95, 0.1, 0.5, 0.304)), (140, 121, 110, (9.75, 0.95, 0.1, 0.5, 0.304)),
                   (420, 110, 110, (9,))]),
    dict(case="always wet", beta=0.5, thickness_mm=100, alpha=1.05e-7, start=4, minutes=range(10, 721, 10),
         segments=[(720, 110, 110, (4, 0.4, 0.005, INF, INF))]),
    dict(case="shoulder in a humid oven, then vented", beta=1.25, thickness_mm=115, alpha=1.3e-7, start=4,
         minutes=range(10, 841, 10),
         segments=[(240, 95, 95, (6.5, 0.8, 0.4, 1.0, 0.38)), (600, 107, 107, (4.333, 0.667, 0.016, 2.0, 0.475))]),
    dict(case="thin slab dried out", beta=0.0, thickness_mm=25, alpha=1.3e-7, start=10, minutes=range(5, 601, 5),
         segments=[(600, 121, 121, (9.75, 0.8, 0.02, 0.5, 0.304))]),
]

if __name__ == "__main__":
    print("scipy", scipy.__version__, "numpy", np.__version__)
    with open("smoke-cases.csv", "w", newline="") as cases, open("smoke-reference.csv", "w", newline="") as reference:
        to_cases, to_reference = csv.writer(cases, lineterminator="\n"), csv.writer(reference, lineterminator="\n")
        to_cases.writerow(["case", "beta", "thickness_mm", "alpha", "start_C", "segments"])
        to_reference.writerow(["case", "minute", "core_C", "surface_C", "mean_C", "water_kg_m2", "shift"])
        for case in CASES:
            segments = "|".join(";".join([str(m), str(a), str(b)] + [str(v) for v in surface])
                                for m, a, b, surface in case["segments"])
            to_cases.writerow([case[c] for c in ("case", "beta", "thickness_mm", "alpha", "start")] + [segments])
            coarse, fine = solve(case, 24, 1e-7), solve(case, 32, 1e-9)
            shifts = []
            for m in case["minutes"]:
                shifts.append(max(abs(a - b) for a, b in zip(coarse[m], fine[m])))
                to_reference.writerow([case["case"], m] + [f"{v:.7f}" for v in fine[m]] + [f"{shifts[-1]:.7f}"])
            print(case["case"], "largest shift", max(shifts))
