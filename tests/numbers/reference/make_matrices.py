"""Makes matrices.json: straight lines under stated covariance matrices, with answers to 30 digits.

Usage: pip install mpmath==1.4.1 && python make_matrices.py > matrices.json (seconds)

Two ways that share no step with the engine:

- `york`: the unified equations of D. York, N. M. Evensen, M. López Martínez and J. De Basabe Delgado, Am. J. Phys. 72
  (2004) 367, equations (13), with a correlation of x and y in each row. Readings and weights of K. Pearson and York as in
  york-pearson.json; the correlations are made up.
- all others: χ² as a function of the slope alone from W⁻¹ in 60 digits, its least by the secant method on a difference
  quotient; then the whole covariance matrix of all x and y, errors that rows share among it, is inverted, and with it the
  whole information matrix of (true positions, intercept, slope) (ISO/TS 28037:2010, clause 10).

`parts` are the standard uncertainties of the slope that each part of the covariance causes: the slope is a linear
estimator at its own weights, and the law of propagation (JCGM 100:2008, 5.2.2) is applied to each part by itself.
"""

import json

from mpmath import __version__, findroot, matrix, mp, mpf, nstr, sqrt

mp.dps = 60


def numbers(list_of_values):
    return [mpf(value) for value in list_of_values]


def quotient(value):
    return float(nstr(value, 30))


def york(case):
    x, y = numbers(case["x"]), numbers(case["y"])
    ux, uy, cov = numbers(case["ux"]), numbers(case["uy"]), numbers(case["cov"])
    n = range(len(x))
    wx, wy = [1 / u**2 for u in ux], [1 / u**2 for u in uy]
    alpha = [sqrt(a * b) for a, b in zip(wx, wy)]
    r = [c / u / v for c, u, v in zip(cov, ux, uy)]
    b = mpf(case["start"])
    for _ in range(500):
        w = [wx[i] * wy[i] / (wx[i] + b**2 * wy[i] - 2 * b * r[i] * alpha[i]) for i in n]
        total = sum(w)
        mx, my = sum(w[i] * x[i] for i in n) / total, sum(w[i] * y[i] for i in n) / total
        beta = [
            w[i] * ((x[i] - mx) / wy[i] + b * (y[i] - my) / wx[i] - (b * (x[i] - mx) + y[i] - my) * r[i] / alpha[i])
            for i in n
        ]
        b, before = sum(w[i] * beta[i] * (y[i] - my) for i in n) / sum(w[i] * beta[i] * (x[i] - mx) for i in n), b
        if abs(b - before) < mpf(10) ** -50:
            break
    else:
        raise ValueError("not settled")
    a = my - b * mx
    adjusted = [mx + beta[i] for i in n]
    mean = sum(w[i] * adjusted[i] for i in n) / total
    u_slope = 1 / sqrt(sum(w[i] * (adjusted[i] - mean) ** 2 for i in n))
    chi2 = sum(w[i] * (y[i] - b * x[i] - a) ** 2 for i in n)
    return {
        "slope": quotient(b),
        "intercept": quotient(a),
        "u_slope": quotient(u_slope),
        "u_intercept": quotient(sqrt(1 / total + mean**2 * u_slope**2)),
        "chi2": quotient(chi2),
    }


def square(rows, n):
    return matrix([numbers(row) for row in rows]) if rows else matrix(n, n)


def parts_of(case, n):
    """Each part of the covariance as its blocks xx, yy, xy."""
    none = matrix(n, n)
    diagonal = lambda us: matrix([[us[i] ** 2 if i == j else mpf(0) for j in range(n)] for i in range(n)])
    outer = lambda a, b: matrix([[p * q for q in b] for p in a])
    parts = {"matrices": (square(case.get("Vx"), n), square(case.get("Vy"), n), square(case.get("Vxy"), n))}
    if "ux" in case:
        parts["distances"] = (diagonal(numbers(case["ux"])), none, none)
    if "uy" in case:
        parts["delays"] = (none, diagonal(numbers(case["uy"])), none)
    for k, offset in enumerate(case.get("offsets", [])):
        moved = [mpf(offset["u"]) if i in offset["rows"] else mpf(0) for i in range(n)]
        blocks = {"x": (outer(moved, moved), none, none), "y": (none, outer(moved, moved), none)}
        parts[f"offset {k}"] = blocks[offset["of"]]
    return parts


def whole(case):
    x, y = numbers(case["x"]), numbers(case["y"])
    n = len(x)
    parts = parts_of(case, n)
    xx, yy, xy = (sum((part[k] for part in parts.values()), matrix(n, n)) for k in range(3))
    at = lambda blocks, b: blocks[1] + b**2 * blocks[0] - b * (blocks[2] + blocks[2].T)
    ones, vx, vy = matrix([1] * n), matrix(x), matrix(y)

    def profile(b):
        inverse = at((xx, yy, xy), b) ** -1
        r = vy - b * vx
        a = (ones.T * inverse * r)[0] / (ones.T * inverse * ones)[0]
        r = r - a * ones
        return (r.T * inverse * r)[0], a, inverse, r

    def gradient(b):
        h = mpf(10) ** -18
        return (profile(b + h)[0] - profile(b - h)[0]) / (2 * h)

    start = mpf(case["start"])
    b = findroot(gradient, (start, start * (1 + mpf(10) ** -4)), solver="secant", tol=mpf(10) ** -50)
    chi2, a, inverse, r = profile(b)
    true = vx - (xy - b * xx) * inverse * r
    v = matrix(2 * n, 2 * n)
    for i in range(n):
        for j in range(n):
            v[i, j], v[n + i, n + j], v[i, n + j], v[n + j, i] = xx[i, j], yy[i, j], xy[i, j], xy[i, j]
    rows = range(n)
    exact = all(xx[i, i] == 0 for i in rows)
    if exact:
        jacobian = matrix([[1, x[i]] for i in rows])
        information = jacobian.T * yy**-1 * jacobian
    else:
        jacobian = matrix(2 * n, n + 2)
        for i in rows:
            jacobian[i, i], jacobian[n + i, i], jacobian[n + i, n], jacobian[n + i, n + 1] = 1, b, 1, true[i]
        information = jacobian.T * v**-1 * jacobian
    covariance = information**-1
    last = information.rows - 1
    u_intercept, u_slope = sqrt(covariance[last - 1, last - 1]), sqrt(covariance[last, last])
    design = matrix([[1, true[i]] for i in rows])
    estimator = ((design.T * inverse * design) ** -1 * design.T * inverse)[1, :]
    shares = {name: sqrt((estimator * at(part, b) * estimator.T)[0]) for name, part in parts.items()}
    assert abs(sum(share**2 for share in shares.values()) / u_slope**2 - 1) < mpf(10) ** -30
    return {
        "slope": quotient(b),
        "intercept": quotient(a),
        "u_slope": quotient(u_slope),
        "u_intercept": quotient(u_intercept),
        "chi2": quotient(chi2),
        "parts": {name: quotient(share) for name, share in shares.items()},
    }


def fading(size, share, n):
    return [[round(size * share ** abs(i - j), 12) for j in range(n)] for i in range(n)]


X = [0.412, 0.873, 1.204, 1.655, 2.217, 2.781, 3.146, 3.602]
Y = [3.51, 4.87, 6.19, 7.58, 9.31, 11.45, 12.44, 14.12]
SKEWED = [[round(2e-4 * 0.5 ** abs(i - j) * (1 + 0.1 * (i - j)), 12) for j in range(8)] for i in range(8)]
CASES = [
    {
        "name": "york",
        "x": [0.0, 0.9, 1.8, 2.6, 3.3, 4.4, 5.2, 6.1, 6.5, 7.4],
        "y": [5.9, 5.4, 4.4, 4.6, 3.5, 3.7, 2.8, 2.8, 2.4, 1.5],
        "ux": [0.032, 0.032, 0.045, 0.035, 0.071, 0.112, 0.13, 0.22, 0.75, 1.0],
        "uy": [1.0, 0.74, 0.5, 0.35, 0.22, 0.22, 0.12, 0.12, 0.1, 0.045],
        "cov": [0.016, 0.01, -0.01, 0.008, 0.01, -0.015, 0.005, 0.02, 0.05, -0.03],
        "start": -0.5,
    },
    {"name": "delays", "x": X, "y": Y, "Vy": fading(0.02, 0.8, 8), "start": 3.3},
    {
        "name": "distances, delays in the rows, offsets",
        "x": X,
        "y": Y,
        "Vx": fading(4e-4, 0.6, 8),
        "uy": [0.1, 0.12, 0.1, 0.09, 0.1, 0.15, 0.1, 0.11],
        "offsets": [{"of": "x", "rows": [4, 5, 6, 7], "u": 0.05}, {"of": "y", "rows": [0, 1, 2], "u": 0.2}],
        "start": 3.3,
    },
    {
        "name": "distances and delays together, an offset",
        "x": X,
        "y": Y,
        "Vx": fading(4e-4, 0.6, 8),
        "Vy": fading(0.02, 0.8, 8),
        "Vxy": SKEWED,
        "offsets": [{"of": "x", "rows": [3, 4, 5, 6, 7], "u": 0.03}],
        "start": 3.3,
    },
]

if __name__ == "__main__":
    for case in CASES:
        case["expected"] = york(case) if case["name"] == "york" else whole(case)
    source = "make_matrices.py, in which the equations used are named"
    print(json.dumps({"source": source, "mpmath": __version__, "cases": CASES}, indent=1, ensure_ascii=False))
