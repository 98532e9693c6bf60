#!/usr/bin/python3
"""Writes src/conductor/detail/strip_table.hpp: the impedance of a rectangular bar by a two-dimensional volume integral
equation (equations (C.15) of docs/theory/conductor.md). Debian python3-numpy, python3-scipy; some ten minutes.

With `check` it prints a few bars apart from the grid instead, for tests/conductor/strip_test.cpp."""
import os
import sys

import numpy as np
from scipy.optimize import brentq
from scipy.special import elliprd, elliprf

# The log capacity of the cells differs from the rectangle's by this; it shows in the reactance of wide thick bars only
# (at width 6000, thickness 160 skin depths), where c must be as good as independent of the width.
MESH_LOG_ERROR = 3.24e-6
NODE = np.array([-np.sqrt(0.6), 0.0, np.sqrt(0.6)])
WEIGHT = np.array([5, 8, 5]) / 18


def graded(half, first, ratio):
    """Edges from the surface (0) to the middle (half), cells growing by `ratio`."""
    edges, step = [0.0], first
    while edges[-1] + 1.4 * step < half:
        edges.append(edges[-1] + step)
        step *= ratio
    edges.append(half)
    return np.array(edges)


def primitive(x, y):
    """Second primitive of ln(sqrt(x^2 + y^2)) in x and y; 0 on the axes where the terms vanish."""
    log = np.where((x == 0) | (y == 0), 0.0, x * y * np.log(x * x + y * y + 1e-300))
    to_y = x * x * np.where(x == 0, 0.0, np.arctan(y / np.where(x == 0, 1.0, x)))
    to_x = y * y * np.where(y == 0, 0.0, np.arctan(x / np.where(y == 0, 1.0, y)))
    return 0.5 * (log - 3 * x * y + to_y + to_x)


def cells(width, depth, first=0.15, ratio=1.25):
    """A quarter of the bar (thickness 1): edges of the cells and their areas."""
    ex = width / 2 - graded(width / 2, first * min(depth, 1.0), ratio)[::-1]
    ey = 0.5 - graded(0.5, first * min(depth, 1.0), ratio)[::-1]
    x0, y0 = np.meshgrid(ex[:-1], ey[:-1], indexing="ij")
    x1, y1 = np.meshgrid(ex[1:], ey[1:], indexing="ij")
    return [a.ravel() for a in (x0, x1, y0, y1)]


def shape(width):
    """Elliptic parameter, log capacity and the two complete integrals of the rectangle width x 1."""
    b = lambda c: elliprf(0, c, 1) - elliprd(0, c, 1) / 3
    aspect = lambda m: m * b(1 - m) / ((1 - m) * b(m))
    m = np.exp(brentq(lambda lm: aspect(np.exp(lm)) - 1 / width, np.log(0.3 / width), np.log(0.5000001), xtol=1e-14))
    return width / (4 * (1 - m) * b(m)), elliprf(0, 1 - m, 1), elliprf(0, m, 1)


def block(x0, x1, y0, y1, hx, hy, sx, sy):
    """Integral of ln(distance) over the image (sx, sy) of each cell (columns), averaged over each cell (rows)."""
    near = np.zeros((len(x0), len(x0)))
    for a in range(3):
        for b in range(3):
            px = (x0 + x1) / 2 + NODE[a] * hx / 2
            py = (y0 + y1) / 2 + NODE[b] * hy / 2
            u0, u1 = sx * x0 - px[:, None], sx * x1 - px[:, None]
            v0, v1 = sy * y0 - py[:, None], sy * y1 - py[:, None]
            exact = primitive(u1, v1) - primitive(u0, v1) - primitive(u1, v0) + primitive(u0, v0)
            # Far away the four corners cancel; the midpoint with its second derivatives does better there.
            u, v = 0.5 * (u0 + u1), 0.5 * (v0 + v1)
            r2 = u * u + v * v
            far = hx * hy * (0.5 * np.log(r2 + 1e-300) + (hx * hx - hy * hy) * (v * v - u * u) / (24 * r2 * r2 + 1e-300))
            near += WEIGHT[a] * WEIGHT[b] * np.where(r2 > 100 * (hx * hx + hy * hy), far, sx * sy * exact)
    return near


def impedance(width, depth):
    """Internal impedance times conductivity; thickness 1, skin depth `depth`, exp(+jwt)."""
    x0, x1, y0, y1 = cells(width, depth)
    area = (x1 - x0) * (y1 - y0)
    capacity = shape(width)[0]
    log_mean = np.zeros((len(area), len(area)))
    hx, hy = x1 - x0, y1 - y0
    for sx in (1, -1):
        for sy in (1, -1):
            log_mean += block(x0, x1, y0, y1, hx, hy, sx, sy)
    # Reciprocity, which quadrature over one cell and exact integration over the other keep only nearly.
    log_mean = 0.5 * (log_mean + log_mean.T * area[None, :] / area[:, None])
    log_mean -= 4 * np.log(capacity) * area  # the field outside is that of a wire of this radius: what is left is internal
    per_log = 1 / (np.pi * depth ** 2)  # omega mu sigma / (2 pi)
    system = np.eye(len(area)) - 1j * per_log * log_mean
    return 1.0 / (4 * np.sum(np.linalg.solve(system, np.ones(len(area))) * area)) - 1j * per_log * MESH_LOG_ERROR


def correction(width, depth):
    g = (1 + 1j) / depth
    slab = g / np.tanh(g / 2)
    capacity, k, k_other = shape(width)
    return impedance(width, depth) * 2 * np.pi ** 2 * capacity / slab - k_other


def dc_correction(width):
    capacity, _, k_other = shape(width)
    return np.pi ** 2 * capacity / width - k_other


TAU = [0.05, 0.07, 0.1, 0.14, 0.2, 0.3, 0.45, 0.65, 0.9, 1.2, 1.6, 2, 2.5, 3.1, 4, 5, 6.5, 9, 14, 25, 50, 100, 160]
ASPECT = [1, 1.5, 2.5, 5, 10, 20, 50, 150, 600, 2500, 6000]

CHECKS = ((1.2, 3.5), (3.5, 0.8), (8, 2.2), (15, 30), (30, 1.4), (100, 0.25), (350, 5.5), (1000, 1.0), (1430, 0.7),
          (20, 75))


def table_row(width):
    return [correction(width, 1 / tau) for tau in TAU]


def write_table(rows):
    here = os.path.dirname(os.path.abspath(__file__))
    with open(os.path.join(here, "../../src/conductor/detail/strip_table.hpp"), "w") as out:
        out.write("""#pragma once
// Written by tests/reference/make_strip_table.py: the end correction c of a rectangular bar, (C14), from a
// two-dimensional volume integral equation, (C15). Estimated error of the impedance from it: 0.2 %%.
#include <array>
#include <cstddef>

namespace loopwright::conductor::detail {

inline constexpr std::size_t strip_thicknesses = %d;
inline constexpr std::size_t strip_aspects = %d;
/// Thickness over skin depth, width over thickness.
inline constexpr std::array<double, strip_thicknesses> strip_thickness{%s};
inline constexpr std::array<double, strip_aspects> strip_aspect{%s};
/// c at direct current, one an aspect.
inline constexpr std::array<double, strip_aspects> strip_dc_correction{%s};
/// Real and imaginary parts, one row an aspect.
inline constexpr double strip_correction[strip_aspects][strip_thicknesses][2] = {
""" % (len(TAU), len(ASPECT), ", ".join(map(str, TAU)), ", ".join(map(str, ASPECT)),
       ", ".join("%.7f" % dc_correction(width) for width in ASPECT)))
        for row in rows:
            out.write("    {" + ", ".join("{%.5f, %.5f}" % (c.real, c.imag) for c in row) + "},\n")
        out.write("};\n\n} // namespace loopwright::conductor::detail\n")


def main():
    if "check" in sys.argv:
        for width, tau in CHECKS:  # over the resistance to direct current
            z = impedance(width, 1 / tau) * width
            print(f"{{{width}, {tau}, {z.real:.6g}, {z.imag:.6g}}},", flush=True)
    else:
        write_table([table_row(width) for width in ASPECT])


if __name__ == "__main__":
    main()
