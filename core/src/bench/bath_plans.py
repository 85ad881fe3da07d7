"""The work of BathPlans.java in SciPy: finite volumes in space (40 cells), LSODA with a banded Jacobian in time,
least_squares for the fit. Processor seconds, median; the same figures must come out. Run by bath-plans.sh."""
import math
import statistics
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import least_squares

CELLS, K = 40, 0.48
# Food Code 3-401.11(B)(2): °F and seconds
ROWS = [(130, 6720), (131, 5340), (133, 3360), (135, 2160), (136, 1680), (138, 1080), (140, 720), (142, 480),
        (144, 300), (145, 240), (147, 134), (149, 85), (151, 54), (153, 34), (155, 22), (157, 14), (158, 0)]


def core(thickness, beta, alpha, h, start, bath, minutes, rtol=1e-5, atol=1e-3):
    half = thickness / 2000
    dr = half / CELLS
    faces = (np.arange(CELLS) + 0.5) * dr
    area = faces ** beta
    edges = np.concatenate(([0.0], faces, [half])) ** (beta + 1) / (beta + 1)
    volume = np.diff(edges)
    between = alpha * area / dr
    outside = alpha / K * h * half ** beta
    lower = np.concatenate((between / volume[1:], [0.0]))
    upper = np.concatenate(([0.0], between / volume[:-1]))
    diagonal = np.zeros(CELLS + 1)
    diagonal[:-1] -= between / volume[:-1]
    diagonal[1:] -= between / volume[1:]
    diagonal[-1] -= outside / volume[-1]
    banded = np.vstack((upper, diagonal, lower))
    source = outside * bath / volume[-1]

    def slope(_, t):
        d = diagonal * t
        d[1:] += lower[:-1] * t[:-1]
        d[:-1] += upper[1:] * t[1:]
        d[-1] += source
        return d

    seconds = np.asarray(minutes) * 60.0
    return solve_ivp(slope, (0, seconds[-1]), np.full(CELLS + 1, float(start)), method="LSODA", t_eval=seconds,
                     jac=lambda t, y: banded, lband=1, uband=1, rtol=rtol, atol=atol).y[0]


def solve():
    return core(50, 0.28, 1.3e-7, 95, 5, 60, np.arange(301))[150]


def smoke(rtol=1e-5, atol=1e-3):
    """A day of 100 mm: 8 h bare at 115 C, 16 h in a bath at 68 C; the surface and the water lost in the same system."""
    half, beta, alpha = 0.05, 0.5, 1.3e-7
    dr = half / CELLS
    faces = (np.arange(CELLS) + 0.5) * dr
    edges = np.concatenate(([0.0], faces, [half])) ** (beta + 1) / (beta + 1)
    volume = np.diff(edges)
    between = alpha * faces ** beta / dr
    lower = np.concatenate((between / volume[1:], [0.0]))
    upper = np.concatenate(([0.0], between / volume[:-1]))
    diagonal = np.zeros(CELLS + 1)
    diagonal[:-1] -= between / volume[:-1]
    diagonal[1:] -= between / volume[1:]
    skin = alpha / K * half ** beta / volume[-1]
    raw = 1050 * half / (beta + 1)

    def flux(t, lost):
        k = t + 273.15
        own = 0.99 * math.exp(-5.8002206e3 / k + 1.3914993 - 4.8640239e-2 * k + 4.1764768e-5 * k * k
                              - 1.4452093e-8 * k ** 3 + 6.5459673 * math.log(k))
        drive = math.log((101325 - 101325 * 0.04 / 0.661945) / (101325 - min(own, 96258.0)))
        m = max(lost, 0.0)
        phi = max(0.0, 1 - (m / (0.38 * raw)) ** 3) / (1 + m) if drive > 0 else 1.0
        leaving = phi * 0.018015 * 6.5 / (29.3 * 0.9) * drive
        radiation = 0.8 * 5.670374e-8 * (388.15 ** 4 - k ** 4)
        return 6.5 * (115 - t) + radiation - (2.501e6 - 2361 * t) * leaving, leaving

    def slope(bare):
        def of(_, y):
            t = y[:-1]
            d = diagonal * t
            d[1:] += lower[:-1] * t[:-1]
            d[:-1] += upper[1:] * t[1:]
            heat, leaving = flux(t[-1], y[-1]) if bare else (95 * (68 - t[-1]), 0.0)
            d[-1] += skin * heat
            return np.append(d, leaving)
        return of

    state = np.append(np.full(CELLS + 1, 4.0), 0.0)
    smoked = solve_ivp(slope(True), (0, 28800), state, method="LSODA", t_eval=np.arange(0, 28801, 240.0), lband=1, uband=1,
                       rtol=rtol, atol=atol)
    solve_ivp(slope(False), (0, 57600), smoked.y[:, -1], method="LSODA", t_eval=np.arange(0, 57601, 240.0), lband=1, uband=1,
              rtol=rtol, atol=atol)
    return smoked.y[0, -1]


def safe(minutes, celsius):
    best = np.inf
    for fahrenheit, seconds in ROWS:
        level = (fahrenheit - 32) / 1.8
        if celsius[-1] >= level:
            i = int(np.argmax(celsius >= level))
            share = (level - celsius[i - 1]) / (celsius[i] - celsius[i - 1])
            best = min(best, minutes[i - 1] + share * (minutes[i] - minutes[i - 1]) + seconds / 60)
    return best


def table():
    """As the plan table does it: two runs a row, scaled to every set point."""
    cells = np.empty((20, 20))
    for row in range(20):
        thickness = 10 + 5 * row
        for extra, alpha, low in ((0, 1.11e-7, 0.0), (5, 1.05e-7, 0.5)):
            half = (thickness + extra) / 2000
            settling = 12 * half * half / alpha * (K / (95 * half * 1.28) + 4 / np.pi ** 2) / 60
            minutes = settling * (np.arange(241) / 240) ** 2
            share = core(thickness + extra, 0.28, alpha, 95, 0, 1, minutes, 1e-6, 1e-5)
            for column in range(20):
                cells[row, column] = safe(minutes, 5 + (56 + column - low - 5) * share)
    return cells[8, 4]


def fit():
    minutes = np.arange(241)
    log = core(50, 0.28, 1.3e-7, 95, 5, 60, minutes) + 0.2 * np.random.default_rng(1).standard_normal(241)

    def residual(p):
        return core(50, 0.28, 1.3e-7 * np.exp(p[0]), K / (p[1] * 0.025), 5, 60, minutes) - log

    def run():
        found = least_squares(residual, [0.0, 0.1], bounds=([-2.3, 1e-6], [2.3, 20]), diff_step=0.01, x_scale=[1, 0.1])
        return decay(1.3e-7 * np.exp(found.x[0]), 1 / found.x[1])

    return run


def decay(alpha, biot):
    """The slowest rate a minute, from the eigenvalue of the same cells."""
    late = core(50, 0.28, alpha, biot * K / 0.025, 5, 60, [0, 100, 160], 1e-8, 1e-8)
    return np.log((60 - late[1]) / (60 - late[2])) / 60


def timed(name, work, times, rounds):
    figure = work()
    taken = []
    for _ in range(rounds):
        begin = time.process_time()
        for _ in range(times):
            figure = work()
        taken.append((time.process_time() - begin) / times)
    print(f"{name} {statistics.median(taken):.6f} {figure:.6f}")


timed("solve", solve, 5, 5)
timed("smoke", smoke, 2, 5)
timed("table", table, 1, 3)
timed("fit", fit(), 1, 3)
