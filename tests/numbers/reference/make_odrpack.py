"""Makes odrpack-200.json: 200 lines with errors in both variables, as ODRPACK fits them.

Usage: python make_odrpack.py > odrpack-200.json (with numpy and scipy; a quarter of a minute)
       python make_odrpack.py odrpack-200.json, which fits the problems of that file anew

ODRPACK (P. T. Boggs, R. H. Byrd, J. R. Donaldson and R. B. Schnabel, ACM Trans. Math. Softw. 15 (1989) 348) varies
slope, intercept and all true positions together. It is given the readings counted from their means in units of their
spans, analytic derivatives and the tightest stopping rules, and is started anew where it stopped until nothing moves.

A problem is kept if two such walks, from different lines, end at the same one: to 1e-9 of the slope and of the standard
errors. Whatever is passed over is counted, by kind; nothing is chosen by looking at other programs' answers. Whether a
walk settles so far hangs on the last bits, and so on the processor: fitted anew on another one, some of the problems
kept have no answer (null), which the test counts.

The standard errors are those that ODRPACK prints, divided by its residual standard deviation, by which it scales them.
"""

import json
import math
import platform
import random
import sys
import warnings

import numpy
import scipy

with warnings.catch_warnings():
    warnings.simplefilter("ignore")  # it is deprecated; the pinned version has it
    from scipy import odr

SEED = 28037
KINDS = {"bench": 110, "few": 20, "uneven": 20, "wide": 15, "far": 15, "units": 10, "pairs": 10}
LINE = odr.Model(
    lambda beta, x: beta[0] * x + beta[1],
    fjacb=lambda beta, x: numpy.vstack([x, numpy.ones_like(x)]),
    fjacd=lambda beta, x: numpy.full_like(x, beta[0]),
)


def digits(value, count=7):
    return float(f"{value:.{count - 1}e}")


def problem(kind, chance):
    """Metres and nanoseconds of a bench, or something harder."""
    rows = {"few": chance.randint(3, 5), "wide": chance.randint(30, 60)}.get(kind, chance.randint(6, 30))
    step = chance.uniform(0.1, 0.6)
    places = [step * (i + chance.uniform(-0.3, 0.3)) for i in range(rows)]
    slope, intercept = 3.3356 * chance.uniform(0.99, 1.01), chance.uniform(-20, 40)
    ux = [chance.uniform(0.002, 0.02) for _ in places]
    uy = [chance.uniform(0.05, 0.4) for _ in places]
    if kind == "uneven":
        ux, uy = ([u * 10 ** chance.uniform(-1.5, 1.5) for u in list_] for list_ in (ux, uy))
    if kind == "wide":
        ux = [10 * step * chance.uniform(0.8, 1.2) for _ in places]
        places = [4 * place for place in places]
    if kind == "pairs":
        places = [places[i - i % 2] + 1e-6 * (i % 2) for i in range(rows)]
    x = [place + chance.gauss(0, u) for place, u in zip(places, ux)]
    y = [intercept + slope * place + chance.gauss(0, u) for place, u in zip(places, uy)]
    if kind == "far":
        far = 10 ** chance.uniform(3, 6)
        x, y = [value + far for value in x], [value + 3 * far for value in y]
    if kind == "units":
        px, py = 10.0 ** chance.randint(-15, 15), 10.0 ** chance.randint(-15, 15)
        x, ux = ([value * px for value in list_] for list_ in (x, ux))
        y, uy = ([value * py for value in list_] for list_ in (y, uy))
    count = 13 if kind == "far" else 7
    return {
        "kind": kind,
        "x": [digits(value, count) for value in x],
        "y": [digits(value, count) for value in y],
        "ux": [digits(u, 3) for u in ux],
        "uy": [digits(u, 3) for u in uy],
    }


class Scaled:
    """A problem in units of its spans, x counted from its mean and y from a span below it: ODRPACK judges its steps by
    the size of each parameter, so that none may be near zero."""

    def __init__(self, one):
        x, y, ux, uy = (numpy.array(one[name]) for name in ("x", "y", "ux", "uy"))
        self.x_mean, self.y_mean = float(numpy.mean(x)), float(numpy.mean(y))
        self.x_span, self.y_span = float(numpy.ptp(x)), float(numpy.ptp(y))
        self.x, self.y = (x - self.x_mean) / self.x_span, (y - self.y_mean) / self.y_span + 1
        self.ux, self.uy = ux / self.x_span, uy / self.y_span

    def walk(self, beta):
        """Slope and intercept from a start, their covariance, and χ²; `None` where nothing settles."""
        delta = numpy.zeros_like(self.x)
        data = odr.RealData(self.x, self.y, sx=self.ux, sy=self.uy)
        for _ in range(60):
            run = odr.ODR(data, LINE, beta0=beta, delta0=delta, sstol=1e-15, partol=1e-15, maxit=500)
            run.set_job(deriv=3)
            out = run.run()
            moved = numpy.max(numpy.abs(out.beta - beta) / numpy.sqrt(numpy.diag(out.cov_beta)))
            beta, delta = out.beta, out.delta
            if moved < 1e-11 and out.info in (1, 2, 3):
                return out
        return None

    def fitted(self):
        """What ODRPACK says, in the units of the readings."""
        weight = 1 / (self.uy**2 + self.ux**2)
        plain = numpy.polyfit(self.x, self.y, 1)
        weighted = numpy.polyfit(self.x, self.y, 1, w=numpy.sqrt(weight))
        ends = [self.walk(start) for start in (plain, weighted * [1.1, 0.9])]
        if None in ends:
            return None
        (slope, level), (other_slope, other_level) = (end.beta for end in ends)
        covariance = ends[0].cov_beta
        u, other_u = (numpy.sqrt(numpy.diag(end.cov_beta)) for end in ends)
        apart = [(slope - other_slope) / slope, (level - other_level) / u[1], *((u - other_u) / u)]
        if max(map(abs, apart)) > 1e-9:
            return None
        # ODRPACK's sd_beta is this times the residual standard deviation.
        scaled = ends[0].sd_beta / math.sqrt(ends[0].res_var)
        per = self.y_span / self.x_span
        return {
            "slope": float(slope * per),
            "mean_x": self.x_mean,
            "at_mean_x": float(self.y_mean + (level - 1) * self.y_span),
            "u_slope": float(scaled[0] * per),
            "u_at_mean_x": float(scaled[1] * self.y_span),
            "covariance": float(covariance[0, 1] * per * self.y_span),
            "chi_square": float(ends[0].sum_square),
        }


def main():
    if len(sys.argv) > 1:
        with open(sys.argv[1], encoding="utf-8") as file:
            problems = [case["problem"] for case in json.load(file)["cases"]]
        made, passed_over = [{"problem": one, "odrpack": Scaled(one).fitted()} for one in problems], None
    else:
        chance = random.Random(SEED)
        made, passed_over = [], {}
        for kind, count in KINDS.items():
            while count:
                one = problem(kind, chance)
                fitted = Scaled(one).fitted()
                if fitted is None:
                    passed_over[kind] = passed_over.get(kind, 0) + 1
                    continue
                made.append({"problem": one, "odrpack": fitted})
                count -= 1
    head = {
        "id": "odrpack-200",
        "checks": "lines with errors in both variables beside an independent program",
        "source": "ODRPACK 2.01 as scipy.odr has it; problems from make_odrpack.py",
        "how_obtained": {
            "script": "make_odrpack.py",
            "seed": SEED,
            "python": platform.python_version(),
            "numpy": numpy.__version__,
            "scipy": scipy.__version__,
            "passed_over": passed_over,
        },
        "tolerance": {"chi_square_rel": 1e-8, "estimate_of_u": 1e-6, "u_rel": 1e-6},
    }
    cases = ",\n".join("  " + json.dumps(one) for one in made)
    print(json.dumps(head, indent=1)[:-2] + ',\n "cases": [\n' + cases + "\n ]\n}")


if __name__ == "__main__":
    main()
