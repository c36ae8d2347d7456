"""Makes floor.json: straight lines that are hard on doubles, with answers to 50 digits.

Usage: pip install mpmath==1.4.1 && python make_floor.py > floor.json (minutes; sooner with gmpy2 beside it)

The readings of a case are made from its recipe in doubles, by sums, products and a generator of whole numbers that give
the same bits in every language; `fingerprint` tells whether they did. The answers take these doubles as exact. They come
from normal equations in 120 digits (sixty would do) and Newton's method on the slope alone, its derivative by differences:
no step is shared with the engine, which has no normal equations, sixteen digits and exact derivatives. Where the rows are
few, the covariance is also found by inverting the whole information matrix of (true positions, intercept, slope).

`digits_left` are the digits of each answer that stay the same when every reading is moved by half a unit in its last place
(the smallest of four draws of signs): what is left if the doubles are roundings of something else. The answers to the
doubles as they stand have more.
"""

import json
import math
import random
import struct

from mpmath import __version__, fdot, mp, mpf, nstr, sqrt, workdps

mp.dps = 120
MASK = 2**64 - 1


class Chance:
    """Knuth's 64-bit congruential generator (MMIX); the upper 53 bits as a double in 0 … 1."""

    def __init__(self, seed):
        self.state = seed

    def next(self):
        self.state = (self.state * 6364136223846793005 + 1442695040888963407) & MASK
        return (self.state >> 11) * 2.0**-53


def readings(case):
    """x, y, ux, uy, shared and free columns, in doubles. floor.rs does the same, operation for operation."""
    chance, px, py = Chance(case["seed"]), case["x"], case["y"]
    x, y, ux, uy = [], [], [], []
    for i in range(case["rows"]):
        jitter, of_x, of_y, wide_x, wide_y = (chance.next() for _ in range(5))
        place = px["from"] + px["step"] * (i // px["group"]) + px["gap"] * (i % px["group"])
        place = place + px["jitter"] * (jitter - 0.5)
        x.append((place + px["scatter"] * (of_x - 0.5)) * px["unit"])
        y.append((py["intercept"] + py["slope"] * place + py["scatter"] * (of_y - 0.5)) * py["unit"])
        ux.append(px["u"] * (1.0 + (case["ratio"] - 1.0) * (wide_x * wide_x * wide_x)) * px["unit"])
        uy.append(py["u"] * (1.0 + (case["ratio"] - 1.0) * (wide_y * wide_y * wide_y)) * py["unit"])
    return x, y, ux, uy, [shared_column(case, c, x, y) for c in case["shared"]], [free_column(c, x) for c in case["free"]]


def shared_column(case, column, x, y):
    """Effect of one standard deviation on each row: the same from row `from` on, or in proportion to the reading."""
    readings_, unit = (x, case["x"]["unit"]) if column["in"] == "x" else (y, case["y"]["unit"])
    if column["kind"] == "scale":
        return [column["size"] * value for value in readings_]
    return [column["size"] * unit if i >= column["from"] else 0.0 for i in range(len(x))]


def free_column(column, x):
    """1 from row `from` on; or the square of x, counted from `origin`."""
    if column["kind"] == "step":
        return [1.0 if i >= column["from"] else 0.0 for i in range(len(x))]
    return [(value - column["origin"]) * (value - column["origin"]) for value in x]


def fingerprint(lists):
    state = 0
    for value in (value for list_ in lists for value in list_):
        bits = struct.unpack("<Q", struct.pack("<d", value))[0]
        state = ((state ^ bits) * 1099511628211) & MASK
    return f"{state:016x}"


def solve(matrix, columns):
    """Cholesky's method, for a few unknowns."""
    size = len(matrix)
    low = [[mpf(0)] * size for _ in range(size)]
    for i in range(size):
        for j in range(i + 1):
            rest = matrix[i][j] - fdot(low[i][:j], low[j][:j])
            low[i][j] = sqrt(rest) if i == j else rest / low[j][j]
    answers = []
    for column in columns:
        there, back = [], [mpf(0)] * size
        for i in range(size):
            there.append((column[i] - fdot(low[i][:i], there)) / low[i][i])
        for i in reversed(range(size)):
            back[i] = (there[i] - sum(low[k][i] * back[k] for k in range(i + 1, size))) / low[i][i]
        answers.append(back)
    return answers


class Problem:
    """The model y = a + b (x - shared) + shared + free, W = uy² + b² ux²; unknowns: shared (prior 0 ± 1), free, a, b."""

    def __init__(self, case, data, signs=None):
        def exact(list_):
            if signs is None:
                return [mpf(value) for value in list_]
            return [mpf(value) + signs.choice((-1, 1)) * mpf(math.ulp(value)) / 2 for value in list_]

        x, y, ux, uy, shared, free = data
        self.x, self.y = exact(x), exact(y)
        n = self.n = len(x)
        nothing = [mpf(0)] * n
        self.stated = case["form"] != "ordinary"
        self.var_x = [u * u for u in map(mpf, ux)] if self.stated and case["x"]["u"] else nothing
        self.var_y = [u * u for u in map(mpf, uy)] if self.stated else [mpf(1)] * n
        lists = [[mpf(value) for value in list_] for list_ in shared]
        self.shared = [(l, nothing) if c["in"] == "x" else (nothing, l) for c, l in zip(case["shared"], lists)]
        self.free = [[mpf(value) for value in list_] for list_ in free]
        self.free_in_x = [c["in"] == "x" for c in case["free"]]

    def information(self, columns, weights, right):
        held = len(self.shared)
        weighted = [[w * v for w, v in zip(weights, column)] for column in columns]
        matrix = [[fdot(a, b) for b in columns] for a in weighted]
        for k in range(held):
            matrix[k][k] += 1
        return matrix, [fdot(a, right) for a in weighted]

    def at(self, b):
        """The other unknowns, their columns, residuals, weights, χ² and dχ²/db at a slope."""
        weights = [1 / (vy + b * b * vx) for vx, vy in zip(self.var_x, self.var_y)]
        effects = [[in_y - b * in_x for in_x, in_y in zip(*column)] for column in self.shared]
        columns = [*effects, *self.free, [mpf(1)] * self.n]
        bare = [y - b * x for x, y in zip(self.x, self.y)]
        matrix, right = self.information(columns, weights, bare)
        others = solve(matrix, [right])[0]
        left = [value - fdot(others, row) for value, row in zip(bare, zip(*columns))]
        e = [w * r for w, r in zip(weights, left)]
        chi_square = fdot(e, left) + sum(z * z for z in others[: len(self.shared)])
        seen = [x - sum(z * c[0][i] for z, c in zip(others, self.shared)) for i, x in enumerate(self.x)]
        slope = -2 * fdot(e, seen) - 2 * b * sum(v * w * w for v, w in zip(self.var_x, e))
        return others, columns, left, weights, chi_square, slope, seen

    def least(self):
        """The slope of least χ²."""
        b = self.start()
        for _ in range(60):
            nudge = abs(b) * mpf(10) ** -40
            here, beyond = self.at(b)[5], self.at(b + nudge)[5]
            step = -here * nudge / (beyond - here)
            assert beyond > here, "not in a valley"
            b += step
            if abs(step) < abs(b) * mpf(10) ** -70:
                return b
        raise AssertionError("no least χ²")

    def start(self):
        """Close to the least χ² over all slopes. With errors in x there may be two valleys, so all are looked at."""
        total = sum(1 / v for v in self.var_y)
        mx, my = (sum(v / u for v, u in zip(list_, self.var_y)) / total for list_ in (self.x, self.y))
        dx, dy = [v - mx for v in self.x], [v - my for v in self.y]
        plain = sum(a * c / v for a, c, v in zip(dx, dy, self.var_y)) / sum(a * a / v for a, v in zip(dx, self.var_y))
        if not any(self.var_x) and not any(any(column[0]) for column in self.shared):
            return plain
        scale = (max(self.y) - min(self.y)) / (max(self.x) - min(self.x))
        with workdps(40):
            step, count = (1, 88) if self.n <= 100 else (4, 22)
            slopes = [scale * mp.tan(mp.radians(step * k)) for k in range(-count, count + 1)] + [plain]
            heights = {b: self.at(b)[4] for b in slopes}
            order = sorted(slopes)
            best = min(order, key=heights.get)
            place = order.index(best)
            low, high = order[max(place - 1, 0)], order[min(place + 1, len(order) - 1)]
            for _ in range(25):  # ends where dχ²/db changes sign; halve between them
                middle = (low + high) / 2
                if self.at(middle)[5] > 0:
                    high = middle
                else:
                    low = middle
        return (low + high) / 2

    def answers(self):
        b = self.least()
        others, columns, left, weights, chi_square, _, seen = self.at(b)
        true = [s + b * v * w * r for s, v, w, r in zip(seen, self.var_x, weights, left)]
        size = len(columns) + 1
        matrix, _ = self.information([*columns, true], weights, left)
        cov = solve(matrix, [[mpf(int(i == j)) for j in range(size)] for i in range(size)])
        if self.stated and self.n <= 10 and not self.shared and not self.free and any(self.var_x):
            self.confirm(b, true, cov)
        dof = self.n - 2 - len(self.free)
        unit = mpf(1) if self.stated else chi_square / dof
        held, slope, level = len(self.shared), size - 1, size - 2
        found = {
            "slope": b,
            "intercept": others[level],
            "u_slope": sqrt(cov[slope][slope] * unit),
            "u_intercept": sqrt(cov[level][level] * unit),
            "covariance": cov[slope][level] * unit,
            "chi_square": chi_square,
        }
        for k in range(held):
            found[f"shared_{k}"], found[f"u_shared_{k}"] = others[k], sqrt(cov[k][k] * unit)
        for j, in_x in enumerate(self.free_in_x):
            k = held + j
            value, variance = others[k], cov[k][k]
            if in_x:  # a step t in x is the effect -b t in y
                value = -value / b
                variance = (variance + 2 * value * cov[k][slope] + value * value * cov[slope][slope]) / b**2
            found[f"free_{j}"], found[f"u_free_{j}"] = value, sqrt(variance * unit)
        return found

    def confirm(self, b, true, cov):
        """The same covariance from the whole information matrix of (true positions, a, b)."""
        n = self.n
        whole = [[mpf(0)] * (n + 2) for _ in range(n + 2)]
        for i in range(n):
            whole[i][i] = 1 / self.var_x[i] + b * b / self.var_y[i]
            rows = {i: b, n: mpf(1), n + 1: true[i]}
            for p in rows:
                for q in rows:
                    if (p, q) != (i, i):
                        whole[p][q] += rows[p] * rows[q] / self.var_y[i]
        for k, j in ((n, 0), (n + 1, 1)):
            column = solve(whole, [[mpf(int(i == k)) for i in range(n + 2)]])[0]
            for value, known in zip(column[n:], cov[j]):
                assert abs(value - known) < abs(known) * mpf(10) ** -50


def sizes(found):
    """What each answer's error is measured by: itself, or its uncertainty where it may be near zero."""
    measure = {name: abs(value) for name, value in found.items()}
    measure["covariance"] = found["u_slope"] * found["u_intercept"]
    for name in found:
        if name.startswith(("shared", "free")):
            measure[name] = max(abs(found[name]), found["u_" + name])
    return measure


def condition(x):
    """Ratio of the singular values of the columns (1, x), each brought to length 1."""
    n, sum_x, sum_xx = len(x), sum(map(mpf, x)), sum(mpf(v) ** 2 for v in x)
    cosine = abs(sum_x) / sqrt(n * sum_xx)
    return sqrt((1 + cosine) / (1 - cosine))


def finished(case):
    data = readings(case)
    found = Problem(case, data).answers()
    measure, signs = sizes(found), random.Random(case["seed"])
    moved = [Problem(case, data, signs).answers() for _ in range(4)]
    shift = {name: max(abs(other[name] - found[name]) for other in moved) / measure[name] for name in found}
    return {
        **case,
        "fingerprint": fingerprint([*data[:4], *data[4], *data[5]]),
        "condition": float(nstr(condition(data[0]), 3)),
        "digits_left": {name: float(nstr(-mp.log10(max(by, mpf(10) ** -20)), 3)) for name, by in shift.items()},
        "expected": {name: nstr(value, 50) for name, value in found.items()},
    }


def case(id_, form, rows, says, x=None, y=None, ratio=1.0, shared=(), free=()):
    place = {"from": 0.0, "step": 1.0, "group": 1, "gap": 0.0, "jitter": 0.0, "scatter": 0.0, "u": 0.0, "unit": 1.0}
    value = {"intercept": 2.5, "slope": 3.3356, "scatter": 0.5, "u": 0.125, "unit": 1.0}
    seed = int.from_bytes(id_.encode(), "big") % 2**32
    return {
        "id": id_, "says": says, "form": form, "rows": rows, "seed": seed, "ratio": ratio,
        "x": {**place, **(x or {})}, "y": {**value, **(y or {})}, "shared": list(shared), "free": list(free),
    }  # fmt: skip


def cases():
    small, big = 1e-15, 1e15
    pairs = {"group": 2, "gap": 1e-9}
    for rows in (3, 24, 5000):
        yield case(f"ordinary-{rows}", "ordinary", rows, "nothing hard", {"jitter": 0.5})
        yield case(f"ordinary-far-{rows}", "ordinary", rows, "offset 1e9", {"from": 1e9, "jitter": 0.5})
    yield case("ordinary-condition-9", "ordinary", 24, "condition 1e9", {"from": 1.0, "step": 1e-10}, {"scatter": 1e-9})
    yield case("ordinary-condition-12", "ordinary", 24, "condition 1e12", {"from": 1.0, "step": 1.5e-13}, {"scatter": 1e-12})
    yield case("ordinary-small-big", "ordinary", 24, "units 1e-15 and 1e15", {"unit": small}, {"unit": big})
    yield case("ordinary-big-small", "ordinary", 24, "units 1e15 and 1e-15", {"unit": big}, {"unit": small})
    yield case("ordinary-pairs-3", "ordinary", 3, "two positions 1e-9 apart", pairs)
    yield case("ordinary-pairs-24", "ordinary", 24, "positions in pairs 1e-9 apart", pairs)
    yield case("ordinary-sharp", "ordinary", 24, "scatter 1e-12 of the span", {"jitter": 0.5}, {"scatter": 1e-10})

    yield case("weighted-3", "weighted", 3, "nothing hard", {"jitter": 0.5})
    yield case("weighted-far", "weighted", 24, "offset 1e9", {"from": 1e9, "jitter": 0.5}, ratio=10.0)
    yield case("weighted-uneven", "weighted", 24, "uncertainties up to 1e6 apart", {"jitter": 0.5}, ratio=1e6)
    yield case("weighted-uneven-5000", "weighted", 5000, "uncertainties up to 1e6 apart", {"jitter": 0.5}, ratio=1e6)
    yield case("weighted-condition-12", "weighted", 24, "condition 1e12", {"from": 1.0, "step": 1.5e-13}, {"scatter": 1e-12, "u": 1e-13}, 3.0)
    yield case("weighted-small-big", "weighted", 24, "units 1e-15 and 1e15", {"unit": small}, {"unit": big}, 3.0)

    error, wide = {"scatter": 0.1, "u": 0.05, "jitter": 0.5}, {"scatter": 30.0, "u": 10.0}
    for rows in (3, 24, 5000):
        yield case(f"both-{rows}", "both", rows, "nothing hard", error, ratio=3.0)
    yield case("both-far", "both", 24, "offset 1e9", {**error, "from": 1e9}, ratio=3.0)
    yield case("both-far-3", "both", 3, "offset 1e9", {**error, "from": 1e9}, ratio=3.0)
    yield case("both-wide-10", "both", 10, "u(x) ten times the step, as large as the span", wide)
    yield case("both-wide-24", "both", 24, "u(x) ten times the step", wide)
    yield case("both-wide-500", "both", 500, "u(x) ten times the step", wide, ratio=3.0)
    yield case("both-wide-5000", "both", 5000, "u(x) ten times the step", wide, ratio=3.0)
    yield case("both-uneven", "both", 24, "uncertainties up to 1e6 apart", {**error, "u": 1e-4}, {"u": 1e-4}, ratio=1e6)
    yield case("both-condition-12", "both", 24, "condition 1e12", {"from": 1.0, "step": 1.5e-13, "scatter": 2e-14, "u": 1e-14}, {"scatter": 1e-13, "u": 5e-14})
    yield case("both-small-big", "both", 24, "units 1e-15 and 1e15", {**error, "unit": small}, {"unit": big})
    yield case("both-big-small", "both", 24, "units 1e15 and 1e-15", {**error, "unit": big}, {"unit": small})
    yield case("both-pairs", "both", 24, "positions in pairs 1e-9 apart, u(x) 1e-9", {**pairs, "scatter": 2e-9, "u": 1e-9})

    def offset(in_, first, size):
        return {"in": in_, "kind": "offset", "from": first, "size": size}

    def scale(in_, size):
        return {"in": in_, "kind": "scale", "from": 0, "size": size}

    steps = [offset("x", 8, 0.3), offset("x", 16, 0.3), scale("y", 1e-3)]
    yield case("shared-24", "shared", 24, "two splices and a time base", error, shared=steps)
    yield case("shared-5000", "shared", 5000, "two splices and a time base", error, shared=steps)
    yield case("shared-far", "shared", 24, "offset 1e9, with a scale error that moves all rows by 1e5", {**error, "from": 1e9}, shared=[scale("x", 1e-4), offset("y", 12, 1.0)])
    yield case("shared-large", "shared", 24, "a shared error 1e6 times the rows' own", error, shared=[offset("y", 12, 1e5), offset("x", 0, 1e5)])
    yield case("shared-alike", "shared", 24, "two shared errors that differ in one row of 24", error, shared=[offset("y", 12, 10.0), offset("y", 13, 10.0)])
    yield case("shared-units", "shared", 24, "units 1e-15 and 1e15", {**error, "unit": small}, {"unit": big}, shared=steps)
    yield case("shared-pairs", "shared", 24, "positions in pairs 1e-9 apart", {**pairs, "u": 1e-9, "scatter": 2e-9}, shared=[offset("x", 12, 1e-3), scale("x", 1e-2)])

    def step(in_, first):
        return {"in": in_, "kind": "step", "from": first, "origin": 0.0}

    def square(origin):
        return {"in": "y", "kind": "square", "from": 0, "origin": origin}

    yield case("free-splice", "free", 24, "an unknown splice", error, free=[step("x", 12)])
    yield case("free-splice-far", "free", 24, "an unknown splice at offset 1e9", {**error, "from": 1e9}, free=[step("x", 12)])
    yield case("free-splice-5000", "free", 5000, "an unknown splice", error, free=[step("x", 1000)])
    yield case("free-splice-5", "free", 5, "an unknown splice among five rows", error, free=[step("x", 3)])
    yield case("free-bend", "free", 24, "a bend counted from the start", {"jitter": 0.5}, free=[square(0.0)])
    yield case("free-bend-far", "free", 24, "a bend counted from zero at offset 1e5: columns alike in five digits", {"from": 1e5, "jitter": 0.5}, free=[square(0.0)])
    yield case("free-both", "free", 24, "an unknown splice and a bend, errors shared as well", error, shared=[offset("y", 6, 0.5)], free=[step("x", 12), square(12.0)])


if __name__ == "__main__":
    made = [finished(one) for one in cases()]
    head = {
        "id": "floor",
        "checks": "slope, intercept, their covariance, chi-square, shared and free unknowns of hard straight lines",
        "source": "own recipes; definitions as ISO/TS 28037:2010 and D. York et al., Am. J. Phys. 72 (2004) 367",
        "how_obtained": f"make_floor.py, mpmath {__version__} at 120 digits; 50 are printed",
        "tolerance": {"relative": 1e-9},
    }
    lines = ",\n".join("  " + json.dumps(one) for one in made)
    print(json.dumps(head, indent=1)[:-2] + ',\n "cases": [\n' + lines + "\n ]\n}")
