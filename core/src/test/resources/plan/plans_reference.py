"""Writes plans-reference.csv: random plans, smoked or not, reckoned a second time from the plan's stated assumptions.

The solver is that of ../heat/smoke_reference.py (Chebyshev collocation, the surface by brentq, Radau), which shares no code
and no method with the product. Rows: FDA Food Code 2017, 3-401.11(B). As planned: the smoke with 1.30e-7 m2/s and the
nominal surface on the likely shape, the bath with 1.11e-7 m2/s on the slow shape, 95 W/(m2 K). At worst: 5 mm (smoked: or a
tenth) thicker, 0.91e-7 m2/s (brisket in series, the fat unsaid), bath 0.5 C low, smoker 10 C low and the surface always wet.
Needs python3, numpy and scipy; run it in this folder. The cooks are invented; numpy's seed is 11.
"""
import csv
import math
import sys
import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq
sys.path.insert(0, "../heat")
from smoke_reference import DENSITY, INF, chebyshev, exchange, wetness

K, N = 0.48, 20
SHAPES = {"SLAB": (0, 0.28), "ROAST": (0.28, 1), "CYLINDER": (0.70, 1.25), "SPHERE": (1.25, 2)}
NOMINAL, WET = (6.5, 0.8, 0.04, 1.0, 0.38), (4, 0.4, 0.005, INF, INF)
ROWS = [(130, 6720), (131, 5340), (133, 3360), (135, 2160), (136, 1680), (138, 1080), (140, 720), (142, 480),
        (144, 300), (145, 240), (147, 134), (149, 85), (151, 54), (153, 34), (155, 22), (157, 14), (158, 0)]


def march(half, beta, alpha, profile, minutes, air, surface):
    """Cores every half minute and the profile at the end, centre last; surface: (h,) or an exposure."""
    s, d = chebyshev(N)
    raw = DENSITY * half / (beta + 1)

    def close(inner, lost):
        steady, own = 2 * K / half * (d[0, 1:] @ inner), 2 * K / half * d[0, 0]
        if len(surface) == 1:
            return (surface[0] * air - steady) / (own + surface[0]), 0.0
        phi = wetness(lost, surface[3:], raw)
        x = brentq(lambda t: own * t + steady - exchange(t, air, surface[:3], phi)[0], -50, 300, xtol=1e-10)
        return x, exchange(x, air, surface[:3], phi)[1]

    def rhs(_, y):
        x, leaving = close(y[:-1], y[-1])
        gradient = d @ np.append(x, y[:-1])
        return np.append((alpha * (2 * (1 + beta) * gradient + 4 * s * (d @ gradient)) / half ** 2)[1:], leaving)

    at = np.append(np.arange(0, minutes, 0.5), minutes)
    run = solve_ivp(rhs, (0, 60 * minutes), np.append(profile, 0.0), method="Radau", rtol=1e-6, atol=1e-6, t_eval=60 * at)
    assert run.success, run.message
    return at, run.y[-2], run.y[:-1, -1]


def safe(minutes, core):
    """The earliest end of an unbroken spell at or above a row's temperature that lasts its time."""
    best = INF
    for fahrenheit, seconds in ROWS:
        level, since = (fahrenheit - 32) / 1.8, None
        for i in range(1, len(core)):
            cross = minutes[i - 1] + (level - core[i - 1]) / (core[i] - core[i - 1] or 1) * (minutes[i] - minutes[i - 1])
            if core[i] >= level and since is None:
                since = cross
            until = minutes[i] if core[i] >= level else cross
            if since is not None and until - since >= seconds / 60:
                best = min(best, since + seconds / 60)
                break
            if core[i] < level:
                since = None
    return best


def plan(thickness, smoke_beta, smoke_alpha, smoke, surface, beta, alpha, start, bath):
    half, before = thickness / 2000, 0.0
    profile, minutes, core = np.full(N, start), np.array([0.0]), np.array([start])
    if smoke:
        before = smoke[1]
        minutes, core, profile = march(half, smoke_beta, smoke_alpha, profile, before, smoke[0], surface)
    long = 60 * (6 + 40 * (half / 0.05) ** 2)
    at, bathed, _ = march(half, beta, alpha, profile, long, bath, (95,))
    return safe(np.append(minutes, before + at[1:]), np.append(core, bathed[1:]))


if __name__ == "__main__":
    random = np.random.default_rng(11)
    with open("plans-reference.csv", "w", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["shape", "thickness_mm", "start_C", "smoke_air_C", "smoke_min", "bath_C", "planned_min", "worst_min"])
        for i in range(60):
            name = list(SHAPES)[random.integers(4)]
            slow, fast = SHAPES[name]
            thickness, start = round(random.uniform(15, 110), 1), round(random.uniform(1, 8), 1)
            bath = round(random.uniform(56, 78), 1)
            smoke = (round(random.uniform(95, 125), 1), 5 * int(random.integers(12, 96))) if i % 2 else None
            planned = plan(thickness, slow + (fast - slow) / 3, 1.3e-7, smoke, NOMINAL, slow, 1.11e-7, start, bath)
            thicker = max(thickness + 5, 1.1 * thickness) if smoke else thickness + 5
            cold = (smoke[0] - 10, smoke[1]) if smoke else None
            worst = plan(thicker, slow, 0.91e-7, cold, WET, slow, 0.91e-7, start, bath - 0.5)
            out.writerow([name, thickness, start, smoke[0] if smoke else "", smoke[1] if smoke else "", bath,
                          f"{planned:.2f}", f"{worst:.2f}"])
