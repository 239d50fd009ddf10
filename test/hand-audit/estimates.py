"""Estimates of the hand audit, each with its working: a line on the sheet and a row of expected.json."""

import math
from fractions import Fraction

from arithmetic import Z, f_95, quantile, t_95, wilson

LIMITS = ["0.25", "0.50", "0.75", "1.00", "1.50", "2.00"]
LINES = {"20/12.5": -0.2, "20/16": -0.1, "20/20": 0.0, "20/25": 0.1, "20/32": 0.2, "20/40": 0.3,
         "20/63": 0.5, "20/100": 0.7, "20/200": 1.0}
FEWEST = 5

text, rows = [], []


def say(*lines):
    text.extend(lines)


def put(measure, group, statistic, value, n, patients, working, limits=None):
    row = {"measure": measure, "group": group, "statistic": statistic, "value": float(value)}
    if limits:
        row |= {"low": float(limits[0]), "high": float(limits[1])}
    rows.append(row | {"n": n, "patients": patients, "working": working})
    interval = f" ({number(limits[0])} to {number(limits[1])})" if limits else ""
    say(f"- `{statistic}` = {working} = **{number(value)}**{interval}")


def number(value):
    """Six decimals, without the zeros that say nothing."""
    shown = f"{float(value):.6f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown


def title(words, level):
    if text and text[-1] != "":
        say("")
    say(f"{'#' * level} {words}", "")


def table(head, body):
    """Columns that line up in the source too."""
    cells = [head, ["-" * len(name) for name in head], *body]
    widths = [max(len(row[i]) for row in cells) for i in range(len(head))]
    cells[1] = ["-" * width for width in widths]
    say(*("| " + " | ".join(cell.ljust(width) for cell, width in zip(row, widths)) + " |" for row in cells), "")


class Group:
    """Values of some eyes, each with its patient."""

    def __init__(self, measure, name, pairs):
        self.measure, self.name = measure, name
        self.patients = [patient for patient, _ in pairs]
        self.values = [value for _, value in pairs]
        self.n, self.codes = len(pairs), sorted(set(self.patients))
        self.G = len(self.codes)
        self.estimable = self.G >= FEWEST
        sizes = [self.patients.count(code) for code in self.codes]
        self.deff = Fraction(sum(size * size for size in sizes), self.n)

    def put(self, statistic, value, working, limits=None):
        put(self.measure, self.name, statistic, value, self.n, self.G, working, limits if self.estimable else None)

    def sums(self, values):
        """Sum over the eyes of each patient."""
        return [sum(v for p, v in zip(self.patients, values) if p == code) for code in self.codes]

    def variance(self, influences, others=None):
        """G/(G − 1) · Σ u·w over patients."""
        u, w = self.sums(influences), self.sums(others or influences)
        return Fraction(self.G, self.G - 1) * sum(a * b for a, b in zip(u, w))

    def mean_limits(self, values):
        mean = sum(values) / self.n
        v = float(self.variance([(value - mean) / self.n for value in values]))
        return mean, v, t_95(self.G - 1)

    def head(self):
        both = self.n - self.G
        title(f"`{self.measure}`, `{self.name}`: {self.n} eyes of {self.G} patients", 3)
        listed = ", ".join(f"{p} {number(v)}" for p, v in zip(self.patients, self.values))
        say(f"Values: {listed}.")
        deff = f"Σm²/n = ({both}·4 + {self.G - both}·1)/{self.n} = {number(self.deff)}"
        few = "" if self.estimable else " Fewer than 5 patients: no interval."
        say(f"{deff}; n at this design effect {number(self.n / self.deff)}.{few}", "")

    def mean(self):
        mean, v, t = self.mean_limits(self.values)
        working = f"{number(sum(self.values))}/{self.n}"
        if self.estimable:
            u = ", ".join(number(s * self.n) for s in self.sums([(x - mean) / self.n for x in self.values]))
            say(f"- patients' sums of (value − mean): {u}; V = {self.G}/{self.G - 1} · Σ(these/{self.n})² = {v:.9f}; "
                f"t({self.G - 1}) = {number(t)}; half width {number(t * math.sqrt(v))}")
        half = t * math.sqrt(v)
        self.put("mean", mean, working, (mean - half, mean + half))

    def logarithmic(self, statistic, of, working):
        """A spread: interval of its logarithm by the jackknife over patients, or the normal form where that is larger."""
        value = of(self.values)
        limits = None
        if self.estimable:
            logs = [math.log(of([v for p, v in zip(self.patients, self.values) if p != code])) for code in self.codes]
            centre = sum(logs) / self.G
            jackknife = (self.G - 1) / self.G * sum((x - centre) ** 2 for x in logs)
            normal = float(self.deff) / (2 * (self.n - 1))
            shown = ", ".join(number(x) for x in logs)
            say(f"- logarithm of `{statistic}` without each patient in turn: {shown}; v_J = {number(jackknife)}; "
                f"v_N at most {number(normal)} (fellow eyes identical)")
            if jackknife >= normal:
                factor = math.exp(t_95(self.G - 1) * math.sqrt(jackknife))
                limits = (value / factor, value * factor)
        self.put(statistic, value, working, limits)

    def spread(self):
        def deviation(values):
            mean = sum(values) / len(values)
            return math.sqrt(sum((v - mean) ** 2 for v in values) / (len(values) - 1))
        squares = float(sum((v - sum(self.values) / self.n) ** 2 for v in self.values))
        self.logarithmic("sd", deviation, f"√({number(squares)}/{self.n - 1})")

    def root_mean_square(self):
        squares = float(sum(v * v for v in self.values))

        def root(values):
            return math.sqrt(sum(v * v for v in values) / len(values))
        self.logarithmic("root_mean_square", root, f"√({number(squares)}/{self.n})")

    def mean_absolute(self):
        sizes = [abs(v) for v in self.values]
        mean, v, t = self.mean_limits(sizes)
        factor = math.exp(t * math.sqrt(v) / mean)
        if self.estimable:
            say(f"- V of the mean of |value| = {v:.9f}; factor exp(t·√V/mean) = {number(factor)}")
        self.put("mean_absolute", mean, f"{number(sum(sizes))}/{self.n}", (mean / factor, mean * factor))

    def middle(self, statistic, values):
        """A median: type-7 quantiles at the score limits of one half, with t in place of z."""
        ordered = sorted(values)
        t, n = t_95(self.G - 1), float(self.n / self.deff)
        low, high = wilson(0.5, n, t)
        if self.estimable:
            say(f"- score limits of 0.5 at n {number(n)} with t: {number(low)} and {number(high)}")
        working = f"middle of {', '.join(number(v) for v in ordered)}"
        self.put(statistic, quantile(values, 0.5), working, (quantile(values, low), quantile(values, high)))

    def extremes(self):
        self.put("min", min(self.values), "least")
        self.put("max", max(self.values), "greatest")

    def share(self, ending, count):
        certain = count in (0, self.n)
        n = self.G if certain else float(self.n / self.deff)
        self.put(f"count_{ending}", count, "counted")
        limits = wilson(count / self.n, n, Z)
        self.put(f"share_{ending}", count / self.n, f"{count}/{self.n}, score interval at n {number(n)}", limits)

    def shares_within(self):
        for limit in LIMITS:
            self.share(f"within_{limit}", sum(round(abs(v), 6) <= float(limit) for v in self.values))

    def errors(self):
        self.head()
        self.put("n", self.n, "counted")
        self.mean()
        self.spread()
        self.middle("median", self.values)
        self.mean_absolute()
        self.middle("median_absolute", [abs(v) for v in self.values])
        self.root_mean_square()
        self.extremes()
        self.shares_within()

    def magnitudes(self):
        self.head()
        self.put("n", self.n, "counted")
        self.mean()
        self.spread()
        self.middle("median", self.values)
        self.shares_within()

    def acuities(self):
        self.head()
        self.put("n", self.n, "counted")
        self.mean()
        self.spread()
        self.middle("median", self.values)
        self.extremes()
        for line, tenth in LINES.items():
            self.share(f"at_or_better_{line}", sum(round(v, 6) <= tenth + 0.005 for v in self.values))


def vectors(measure, name, triples):
    """Centroid, spread and regions of doubled-angle vectors."""
    xs = Group(measure, name, [(p, x) for p, x, _ in triples])
    ys = Group(measure, name, [(p, y) for p, _, y in triples])
    n, G = xs.n, xs.G
    title(f"`{measure}`, `{name}`: {n} eyes of {G} patients", 3)
    say("Vectors: " + "; ".join(f"{p} ({number(x)}, {number(y)})" for p, x, y in triples) + ".", "")
    mx, my = sum(xs.values) / n, sum(ys.values) / n
    xs.put("n", n, "counted")
    xs.put("centroid_x", mx, f"{number(sum(xs.values))}/{n}")
    xs.put("centroid_y", my, f"{number(sum(ys.values))}/{n}")
    xs.put("centroid_magnitude", math.hypot(mx, my), f"√(({number(mx)})² + ({number(my)})²)")
    xs.put("centroid_axis", half_angle(mx, my), "half of the vector's angle")
    sxx = sum((x - mx) ** 2 for x in xs.values) / (n - 1)
    syy = sum((y - my) ** 2 for y in ys.values) / (n - 1)
    sxy = sum((x - mx) * (y - my) for x, y in zip(xs.values, ys.values)) / (n - 1)
    xs.put("sd_x", math.sqrt(sxx), f"√({number(sxx * (n - 1))}/{n - 1})")
    xs.put("sd_y", math.sqrt(syy), f"√({number(syy * (n - 1))}/{n - 1})")
    xs.put("covariance_xy", sxy, f"{number(sxy * (n - 1))}/{n - 1}")
    sizes = Group(measure, name, [(p, math.hypot(x, y)) for p, x, y in triples])
    mean, v, t = sizes.mean_limits(sizes.values)
    half = t * math.sqrt(v)
    if xs.estimable:
        say(f"- V of the mean magnitude by patients: {v:.9f}; t({G - 1}) = {number(t)}; half width {number(half)}")
    xs.put("mean_magnitude", mean, f"{number(sum(sizes.values))}/{n}", (mean - half, mean + half))
    if not xs.estimable:
        say("", "Fewer than 5 patients: no region, no test.")
        return
    ellipse(xs, "data_ellipse", sxx, sxy, syy, 2 * (n - 1) * (n + 1) / (n * (n - 2)) * f_95(n - 2))
    dx, dy = [(x - mx) / n for x in xs.values], [(y - my) / n for y in ys.values]
    vxx, vxy, vyy = (float(xs.variance(*pair)) for pair in ((dx, dx), (dx, dy), (dy, dy)))
    say(f"- V of the centroid by patients: xx {vxx:.9f}, xy {vxy:.9f}, yy {vyy:.9f}")
    ellipse(xs, "centroid_ellipse", vxx, vxy, vyy, 2 * (G - 1) / (G - 2) * f_95(G - 2))
    t2 = (vyy * mx * mx - 2 * vxy * mx * my + vxx * my * my) / (vxx * vyy - vxy * vxy)
    xs.put("hotelling_t2", t2, "centroid′ V⁻¹ centroid")
    xs.put("p", (1 + t2 / (G - 1)) ** (-(G - 2) / 2), f"(1 + T²/{G - 1})^(−{G - 2}/2)")


def half_angle(x, y):
    axis = math.degrees(math.atan2(y, x)) / 2 % 180
    return axis if axis > 0 else 180.0


def ellipse(group, name, sxx, sxy, syy, k):
    root = math.sqrt((sxx - syy) ** 2 + 4 * sxy * sxy)
    major, minor = (sxx + syy + root) / 2, (sxx + syy - root) / 2
    group.put(f"{name}_major", math.sqrt(k * major), f"√({number(k)} · {number(major)})")
    group.put(f"{name}_minor", math.sqrt(k * minor), f"√({number(k)} · {number(minor)})")
    tilt = math.degrees(math.atan2(2 * sxy, sxx - syy)) / 2
    group.put(f"{name}_angle", tilt, f"½ atan2(2·{number(sxy)}, {number(sxx - syy)}), from +x in the plot")
