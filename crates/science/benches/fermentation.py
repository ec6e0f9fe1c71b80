"""The same fermentations in plain Python under SciPy's integrators, for comparison.

Prints one line a case and method: name, method, best seconds of a few runs, then the states.
Times are in hours, amounts for a kilogram of flour.
"""

import sys
import time
from math import exp, log, sqrt

from scipy.integrate import solve_ivp

G, M, D, Y, L, N, A_READY, U_Y, U_L, ACID, MADE, LOST = range(12)


def square_root_law(t, lowest, highest, bend):
    return ((t - lowest) * (1 - exp(bend * (t - highest)))) ** 2 if lowest < t < highest else 0.0


def cardinal(t, lowest, optimum, highest, rate):
    if t <= lowest or t >= highest:
        return 0.0
    below = optimum - lowest
    bottom = below * (below * (t - optimum) - (optimum - highest) * (optimum + lowest - 2 * t))
    return rate * (t - highest) * (t - lowest) ** 2 / bottom


def culture(t, a, b, c, highest):
    x = highest - t
    return a * x**b * exp(-c * x) if x > 0 else 0.0


BACTERIA = (0.1267, 1.5404, 0.1931, 41.0)
BAKERS = {
    "gas": (-5.0, 50.0, 0.2),
    "growth": lambda t: cardinal(t, 2.84, 32.27, 45.39, 0.25),
    "maltose": 0.85,
    "wakening": 0.30,
    "lag": 2.0,
    "room": 1.9,
}
SOURDOUGH = {
    "gas": (-5.0, 42.0, 0.3),
    "growth": lambda t: culture(t, 0.0124, 2.981, 0.3355, 36.0),
    "maltose": 0.5,
    "wakening": 0.05,
    "lag": 0.4,
    "room": 5.0,
}


def system(leaven, water, salt, compact, void, stretch, leak, path):
    gas_law, growth_law, maltose_share = leaven["gas"], leaven["growth"], leaven["maltose"]
    at25, at27, at30 = (square_root_law(t, *gas_law) for t in (25.0, 27.0, 30.0))
    bacteria30 = culture(30.0, *BACTERIA)
    mixed = compact / (1 - void)
    salt_share = max(0.0, 1 - (salt / 40.0) ** 2)

    def slopes(hour, y):
        t = path(hour)
        g, m, d, n = max(y[G], 0.0), max(y[M], 0.0), max(y[D], 0.0), max(y[N], 0.0)
        ph = 3.5 + 2.5 * exp(-y[ACID] / 46.3)
        warmth = square_root_law(t, *gas_law)
        osmotic = max(0.0, 1 - (1.86 * salt / 58.44 + g + m / 2) / water / 4.0)
        ease = osmotic * max(0.0, 1 - 46.07 * y[MADE] / (95.0 * water))
        on_hexose = g / (0.004 + g)
        on_maltose = maltose_share * m / (0.012 + m) * 0.03 / (0.03 + g)
        supply = min(1.0, on_hexose + on_maltose)
        working = 0.017 * warmth / at30 * ease * y[A_READY] * y[Y]
        rg, rm = working * on_hexose, working * on_maltose
        mu = growth_law(t)
        grown = mu / (1 + exp(-y[U_Y])) * ease * supply * n / (0.15 + n) * y[Y]
        mu_b = culture(t, *BACTERIA) * salt_share
        acidity = 0.0
        if 3.8 < ph < 6.8:
            inside = (ph - 3.8) * (ph - 6.8)
            acidity = inside / (inside - (ph - 5.4) ** 2)
        sugar = (m + g) / (0.01 + m + g)
        grown_b = mu_b / (1 + exp(-y[U_L])) * acidity * sugar * y[L]
        above = max(0.0, ph - 3.5)
        acid = 70.0 * grown_b + 3.0 * mu_b / bacteria30 * y[L] * sugar * above / (above + 0.3)
        lactic = 0.82 * acid / 1000
        share = m / (m + g + 1e-12)
        release = 0.4 * 1.7 ** ((t - 30) / 10) * max(0.0, min(1.0, (ph - 3.2) / 0.8)) * d
        made = rg + rm + lactic
        molar = 8.314462 * (t + 273.15) / 101.325
        air = void * mixed / molar
        dissolved = 0.034 * exp(2400 * (1 / (t + 273.15) - 1 / 298.15)) * water * 1.2
        held = y[MADE] - y[LOST]
        b = air + dissolved - held
        bubbles = (-b + sqrt(b * b + 4 * max(held, 0.0) * air)) / 2
        stretched = (bubbles + air) * molar / (mixed * stretch)
        lost = made * min(1.0, stretched**4) + leak * warmth / at25 * bubbles
        ready = (1 - y[A_READY]) * supply * warmth / at27 / leaven["wakening"]
        ready -= 0.02 * warmth / at30 * y[A_READY] * (1 - supply)
        return [
            -rg / 1.9 - lactic * (1 - share) + 0.5 * lactic * share,
            release - rm / 1.9 - 1.5 * lactic * share,
            -release,
            grown,
            grown_b,
            -grown,
            ready,
            mu,
            mu_b,
            acid,
            made,
            lost,
        ]

    return slopes


def lag(rate, hours):
    return -log(exp(rate * hours) - 1)


def cases():
    def drifting(hour):
        return 24 - 6 * exp(-0.35 * hour)

    compact = 1 / 1.44 + 1 / 0.998
    lag_b = lag(culture(27.0, *BACTERIA), 2.0)
    start = [0.085, 0.006, 0.275, 9.5 * 0.085, 0.0, 1.9, 0.0, lag(BAKERS["growth"](27.0), 2.0), lag_b, 0.0, 0.0, 0.0]
    yield "preferment", system(BAKERS, 1.14, 0.0, compact, 0.03, 2.3, 0.12, drifting), start
    f = 1 / 11
    dissolved = 0.8 * f * 0.034 * exp(2400 * (1 / 291.15 - 1 / 298.15)) * 1.14 * 1.2
    start = [
        0.085 * (1 - f) + f * 0.0006,
        0.006 * (1 - f) + f * 0.1444,
        0.275 * (1 - f) + f * 0.0309,
        5.0 * f,
        0.8642 * f,
        5.0 * (1 - f),
        0.8,
        lag(SOURDOUGH["growth"](27.0), 0.4),
        lag(culture(27.0, *BACTERIA), 0.4),
        65.80 * f,
        dissolved,
        0.0,
    ]
    yield "sourdough", system(SOURDOUGH, 1.14, 0.0, compact, 0.03, 2.0, 0.15, drifting), start


def main():
    tolerance = float(sys.argv[1]) if len(sys.argv) > 1 else 1e-6
    for name, slopes, start in cases():
        for method in ("LSODA", "BDF", "RK45"):
            best = float("inf")
            for _ in range(3):
                begun = time.perf_counter()
                answer = solve_ivp(slopes, (0.0, 24.0), start, method=method, rtol=tolerance, atol=tolerance * 1e-3)
                best = min(best, time.perf_counter() - begun)
            print(name, method, best, *(repr(float(v)) for v in answer.y[:, -1]))


main()
