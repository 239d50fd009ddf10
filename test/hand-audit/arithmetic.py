"""Arithmetic of the hand audit: quantiles of t and F, the score interval, type-7 quantiles."""

import math
from statistics import NormalDist

Z = NormalDist().inv_cdf(0.975)


def bisect(function, low, high):
    """Where an increasing function crosses 0."""
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if function(middle) < 0 else (low, middle)
    return (low + high) / 2


def t_within(t, df):
    """P(|T| < t) for whole degrees: Abramowitz and Stegun 26.7.3 and 26.7.4."""
    angle = math.atan(t / math.sqrt(df))
    c, s = math.cos(angle), math.sin(angle)
    if df % 2:
        total, term = 0.0, c
        for k in range(1, df - 1, 2):
            total += term
            term *= c * c * (k + 1) / (k + 2)
        return 2 / math.pi * (angle + s * total)
    total, term = 0.0, 1.0
    for k in range(0, df - 1, 2):
        total += term
        term *= c * c * (k + 1) / (k + 2)
    return s * total


def t_95(df):
    return bisect(lambda t: t_within(t, df) - 0.95, 0, 100)


def f_95(m):
    """Upper 5 % point of F with 2 and m degrees, closed form."""
    return m / 2 * (0.05 ** (-2 / m) - 1)


def wilson(p, n, z):
    centre = (p + z * z / (2 * n)) / (1 + z * z / n)
    half = z / (1 + z * z / n) * math.sqrt(p * (1 - p) / n + z * z / (4 * n * n))
    return max(0.0, centre - half), min(1.0, centre + half)


def quantile(values, p):
    """Type 7."""
    ordered = sorted(values)
    at = (len(ordered) - 1) * p
    below = min(int(at), len(ordered) - 2)
    return ordered[below] + (at - below) * (ordered[below + 1] - ordered[below])
