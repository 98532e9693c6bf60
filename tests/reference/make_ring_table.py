#!/usr/bin/python3
"""Prints the rows of tests/conductor/curvature_test.cpp: fat rings, with Legendre functions and quadrature of mpmath
(Debian python3-mpmath 1.2.1) in place of recurrences and the trapezoidal rule."""
from mpmath import mp, mpf, cos, diff, ellipk, legenp, linspace, nstr, pi, quad, sqrt

mp.dps = 20


def ring(ratio, orders):
    x = mpf(ratio)
    sh = sqrt(x * x - 1)
    nodes = linspace(0, pi, 7)

    def coefficient(n):
        return quad(lambda t: sqrt(x - cos(t)) * cos(n * t), nodes) * (1 if n == 0 else 2) / pi

    def radial(n):
        return legenp(n - mpf(1) / 2, 1, x, type=3)

    def ratio_of(n):
        with mp.workdps(40):
            return diff(lambda y: legenp(n - mpf(1) / 2, 1, y, type=3), x) * sh / radial(n)

    terms = [coefficient(n) * ratio_of(n) for n in range(orders)]

    def slope(t):
        q = x - cos(t)
        return x / sh - sh / (2 * q) + sum(c * cos(n * t) for n, c in enumerate(terms)) / sqrt(q)

    current = 2 * quad(lambda t: slope(t) * (x - cos(t)) / sh, nodes)
    loss = 2 * quad(lambda t: 2 * pi * slope(t) ** 2 * (x - cos(t)) ** 2 / sh, nodes)
    return loss / current ** 2 / x, 2 * pi * sh / current / x


for ratio, orders in (("1.5", 34), ("2", 26), ("4", 18), ("10", 12)):
    factor, inductance = ring(ratio, orders)
    print(f"{{{ratio}, {nstr(factor, 12)}, {nstr(inductance, 12)}}},")
