"""Writes series-reference.csv: exact series solutions of transient conduction, computed with mpmath at 40 digits.

dT/dt = a (T'' + b/r T'), insulated centre, k T'(R) = h (Tm - T(R)), uniform start; theta = (T - Tm)/(T0 - Tm).
With p = (b - 1)/2: eigenfunctions phi(s) = Gamma(1+p) (2/s)^p J_p(s), eigenvalues z J_{p+1}(z) = Bi J_p(z), weights
C = 2 z^p J_{p+1} / (Gamma(1+p) 2^p z [J_p^2 + J_{p+1}^2 - (2p/z) J_p J_{p+1}]); for b = 0, 1, 2 these are the cosine,
J_0 and sin(s)/s series of the textbooks (Carslaw and Jaeger 1959; Luikov 1968). The mean over the volume follows from
the integral of s^b phi. Needs python3 and mpmath; run it in this folder.
"""
import csv
import mpmath as mp

mp.mp.dps = 40
BIOT = ["0.1", "0.2", "0.5", "1", "2", "5", "10", "20", "50", "100"]
FOURIER = ["0.02", "0.05", "0.1", "0.2", "0.5", "1", "2", "5"]
SHAPES = ["0", "0.28", "0.7", "1", "1.25", "2"]
TERMS = 40


def condition(beta, biot):
    p = (beta - 1) / 2
    return lambda z: z * mp.besselj(p + 1, z) - biot * mp.besselj(p, z)


def eigenvalues(beta, biot, count):
    found, f = [], condition(beta, biot)
    step = mp.mpf("0.05")
    left = mp.mpf("1e-6")
    value = f(left)
    while len(found) < count:
        right = left + step
        next_value = f(right)
        if value * next_value < 0:
            found.append(mp.findroot(f, (left, right), solver="anderson", tol=mp.mpf(10) ** -60, verify=False))
        left, value = right, next_value
    return found


def terms(beta, biot):
    p = (beta - 1) / 2
    result = []
    for z in eigenvalues(beta, biot, TERMS):
        jp, jq = mp.besselj(p, z), mp.besselj(p + 1, z)
        norm = mp.gamma(1 + p) * mp.mpf(2) ** p
        weight = 2 * z ** p * jq / (norm * z * (jp ** 2 + jq ** 2 - 2 * p / z * jp * jq))
        at_surface = norm * z ** -p * jp
        # mean of phi over the volume: (b+1) times the integral of x^b phi(z x) dx = (b+1)/z * norm * z^-p * J_{p+1}(z)
        mean = (beta + 1) * norm * z ** (-p - 1) * jq
        result.append((z, weight, at_surface, mean))
    return result


with open("series-reference.csv", "w", newline="") as out:
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["beta", "biot", "fourier", "theta_centre", "theta_surface", "theta_mean"])
    for beta in SHAPES:
        for biot in BIOT:
            series = terms(mp.mpf(beta), mp.mpf(biot))
            for fourier in FOURIER:
                decay = [w * mp.exp(-z * z * mp.mpf(fourier)) for z, w, _, _ in series]
                centre = mp.fsum(decay)
                surface = mp.fsum(d * s for d, (_, _, s, _) in zip(decay, series))
                mean = mp.fsum(d * m for d, (_, _, _, m) in zip(decay, series))
                writer.writerow([beta, biot, fourier] + [mp.nstr(v, 12) for v in (centre, surface, mean)])
