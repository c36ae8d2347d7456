"""The same work by general libraries: numpy, scipy and pandas, on one thread; trials and traces on as many as are told.

Usage: peers.py NAME [TRIALS] [THREADS] < problem.json.

odr, dense, monte_carlo: the problem is a line, with the keys x, y, ux, uy and shared (columns with the keys x and y, each the
effect of one standard deviation). Prints, as JSON, for each way of fitting: slope, median and least time of one fit
in microseconds.

odr    scipy.odr (ODRPACK), errors in both variables, rows independent: a model with derivatives by differences,
       with analytic ones, and scipy's own straight line.
dense  errors in both variables with three full covariance matrices; and, doing less, generalised least squares
       by Cholesky factor with the covariance of y alone.

monte_carlo draws every reading anew TRIALS times and fits the line again by the iteration of D. York et al., Am. J.
Phys. 72 (2004) 367, vectorised over the trials, with the quickest generator of numpy and the quickest size of a
chunk; it prints median and least time in milliseconds.

traces, correlation: the problem is a run of pairs of traces. It prints the delay of each pair in nanoseconds, and for
each way of going about it the median and least time of all pairs in milliseconds.

traces       the keys are files (for each of a few pairs, the text files of A and of B) and pairs (how many are measured,
             those few over and over). pandas.read_csv on the bytes in memory, then a constant fraction of one half with
             its uncertainty, vectorised in numpy over a chunk of pairs; on THREADS threads, and in as many processes
             that have the bytes already.
correlation  the keys are file (doubles: of each pair A's trace, then B's), pairs, samples and step (ns). The largest
             cross-correlation by numpy's real FFT, padded against wrapping around and not, and a parabola through it
             and its neighbours; THREADS is 1.

class        the key is files: bundles. pandas.read_csv on residuals.csv out of each, the line by scipy.odr with analytic
             derivatives, and the results together by Birge's weighted mean, in THREADS processes. It prints median and least
             time of all in milliseconds, how many results there are, their mean and its uncertainty in m/s.
"""

import io
import json
import multiprocessing
import statistics
import sys
import time
import warnings
from concurrent.futures import ThreadPoolExecutor

import numpy as np
from scipy import linalg

REPEATS = 200


def timed(fit):
    """Slope, and the time of one fit: each repeat is one fit, after a first that is not counted."""
    slope = fit()
    times = []
    for _ in range(REPEATS):
        start = time.perf_counter()
        fit()
        times.append((time.perf_counter() - start) * 1e6)
    return {"slope": float(slope), "median_us": statistics.median(times), "least_us": min(times)}


def odr(problem):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it is deprecated, and still what people use
        from scipy import odr as library

    x, y, ux, uy = (np.array(problem[name]) for name in ("x", "y", "ux", "uy"))
    by_differences = library.Model(lambda beta, x: beta[0] * x + beta[1])
    analytic = library.Model(
        lambda beta, x: beta[0] * x + beta[1],
        fjacb=lambda beta, x: np.vstack([x, np.ones_like(x)]),
        fjacd=lambda beta, x: np.full_like(x, beta[0]),
    )

    def fit(model, derivatives):
        run = library.ODR(library.RealData(x, y, sx=ux, sy=uy), model, beta0=[3.0, 10.0])
        run.set_job(deriv=derivatives)
        return run.run().beta[0]

    return {
        "differences": timed(lambda: fit(by_differences, 0)),
        "analytic": timed(lambda: fit(analytic, 3)),
        "unilinear": timed(lambda: fit(library.unilinear, 3)),
    }


def dense(problem):
    x, y, ux, uy = (np.array(problem[name]) for name in ("x", "y", "ux", "uy"))
    rows = len(x)
    vx, vy, cxy = np.diag(ux**2), np.diag(uy**2), np.zeros((rows, rows))
    for column in problem["shared"]:
        in_x, in_y = (np.array(column[name] or [0.0] * rows) for name in ("x", "y"))
        vx += np.outer(in_x, in_x)
        vy += np.outer(in_y, in_y)
        cxy += np.outer(in_x, in_y)
    ones = np.ones(rows)

    def solved(factor, columns):
        return linalg.solve_triangular(factor, np.column_stack(columns), lower=True, check_finite=False)

    def weighted():
        """Errors in y alone: (intercept, slope)."""
        z = solved(linalg.cholesky(vy, lower=True, check_finite=False), [ones, x, y])
        a = z[:, :2]
        return np.linalg.solve(a.T @ a, a.T @ z[:, 2])

    def both():
        """Gauss-Newton steps, the true positions profiled out; the covariance of y - a - b x is
        W(b) = Vy + b^2 Vx - b (Cxy + Cxy^T)."""
        a, b = weighted()
        for _ in range(50):
            w = vy + b * b * vx - b * (cxy + cxy.T)
            factor = linalg.cholesky(w, lower=True, check_finite=False)
            r = y - a - b * x
            e = linalg.cho_solve((factor, True), r, check_finite=False)
            z = solved(factor, [ones, x - (cxy - b * vx) @ e, r])
            columns = z[:, :2]
            normal = columns.T @ columns
            da, db = np.linalg.solve(normal, columns.T @ z[:, 2])
            a, b = a + da, b + db
            if abs(db) <= 1e-12 * abs(b) and abs(da) <= 1e-12 * max(1.0, abs(a)):
                break
        np.linalg.inv(normal)  # the covariance, which our fit gives too
        return b

    return {"both": timed(both), "weighted": timed(lambda: weighted()[1])}


def monte_carlo(problem, trials, threads):
    x, y, ux, uy = (np.array(problem[name])[:, None] for name in ("x", "y", "ux", "uy"))
    x, y = x - x.mean(), y - y.mean()
    start = float((x * y).sum() / (x * x).sum())
    vx, vy, rows = ux**2, uy**2, len(x)

    def some(generator, chunk, out):
        """Rows along the first axis, so that sums over them run along trials that lie side by side."""
        for k in range(0, len(out), chunk):
            m = min(chunk, len(out) - k)
            xs = x + ux * generator.standard_normal((rows, m))
            ys = y + uy * generator.standard_normal((rows, m))
            b = np.full(m, start)
            for _ in range(30):
                w = 1 / (vy + vx * (b * b))
                total = w.sum(0)
                u = xs - np.einsum("ij,ij->j", w, xs) / total
                v = ys - np.einsum("ij,ij->j", w, ys) / total
                beta = w * w * (u * vy + v * vx * b)
                new = np.einsum("ij,ij->j", beta, v) / np.einsum("ij,ij->j", beta, u)
                moved = np.abs(new - b).max()
                b = new
                if moved <= 1e-12 * abs(start):
                    break
            out[k : k + m] = b

    out = np.empty(trials)
    generators = [np.random.Generator(np.random.SFC64(seed)) for seed in range(threads)]
    parts = np.array_split(out, threads)

    def run(chunk):
        begun = time.perf_counter()
        with ThreadPoolExecutor(threads) as pool:
            list(pool.map(lambda part: some(part[0], chunk, part[1]), zip(generators, parts)))
        return (time.perf_counter() - begun) * 1e3

    chunk = min((250, 500, 1000, 2000, 5000), key=run)
    times = [run(chunk) for _ in range(5)]
    return {"median_ms": statistics.median(times), "least_ms": min(times)}


RUNS = 5
CHUNK = 10
"""Pairs that numpy takes at once: few enough for the cache."""

contents = []


def lasting(work):
    """What the work gives, and its times in ms, after a first run that is not counted."""
    found = work()
    times = []
    for _ in range(RUNS):
        begun = time.perf_counter()
        work()
        times.append((time.perf_counter() - begun) * 1e3)
    return found, {"median_ms": statistics.median(times), "least_ms": min(times)}


def constant_fraction(waves):
    """Crossings of half the height, in samples, and their uncertainties, along the last axis."""
    quiet = waves[..., :2000]
    base, noise = quiet.mean(-1), quiet.std(-1)
    level = base + 0.5 * (waves.max(-1) - base)
    at = (waves >= level[..., None]).argmax(-1)
    after = np.take_along_axis(waves, at[..., None], -1)[..., 0]
    before = np.take_along_axis(waves, at[..., None] - 1, -1)[..., 0]
    return at - 1 + (level - before) / (after - before), noise / (after - before)


def of_files(pairs):
    """Delays and uncertainties of some pairs, ns, from their files' bytes."""
    import pandas

    def read(file):
        # Told that all are doubles and to take the file at once, it needs half the time.
        return pandas.read_csv(file, dtype=np.float64, low_memory=False)

    delays, uncertainties = [], []
    for chunk in (pairs[k : k + CHUNK] for k in range(0, len(pairs), CHUNK)):
        starts, waves = np.empty((2, len(chunk), 2)), []
        for row, pair in enumerate(chunk):
            for side, content in enumerate(contents[pair % len(contents)]):
                table = read(io.BytesIO(content)).to_numpy()
                times = table[:, 0]
                starts[:, row, side] = times[0], (times[-1] - times[0]) / (len(times) - 1)
                waves.append(table[:, 1])
        places, off = constant_fraction(np.stack(waves).reshape(len(chunk), 2, -1))
        start, step = starts * 1e9
        edges, off = start + step * places, step * off
        delays.append(edges[:, 1] - edges[:, 0])
        uncertainties.append(np.hypot(off[:, 0], off[:, 1]))
    return np.concatenate(delays), np.concatenate(uncertainties)


def traces(problem, threads):
    for files in problem["files"]:
        contents.append([open(file, "rb").read() for file in files])
    parts = [part.tolist() for part in np.array_split(np.arange(problem["pairs"]), threads)]
    joined = lambda some: np.concatenate([delays for delays, _ in some]).tolist()
    with multiprocessing.get_context("fork").Pool(threads) as pool:
        delays, processes = lasting(lambda: joined(pool.map(of_files, parts, 1)))
    with ThreadPoolExecutor(threads) as pool:
        _, on_threads = lasting(lambda: joined(pool.map(of_files, parts)))
    return {"ways": {"processes": processes, "threads": on_threads}, "delays": delays}


def correlation(problem, threads):
    samples = problem["samples"]
    pairs = np.fromfile(problem["file"]).reshape(problem["pairs"], 2, samples)

    def run(size):
        lags = np.empty(len(pairs))
        for k in range(0, len(pairs), CHUNK):
            waves = pairs[k : k + CHUNK]
            waves = waves - waves[..., :2000].mean(-1, keepdims=True)
            spectra = np.fft.rfft(waves, size)
            products = np.fft.irfft(spectra[:, 1] * spectra[:, 0].conj(), size)
            best, row = products.argmax(-1), np.arange(len(waves))
            before, here, after = (products[row, (best + off) % size] for off in (-1, 0, 1))
            lag = best + 0.5 * (before - after) / (before - 2 * here + after)
            lags[k : k + CHUNK] = np.where(lag > size / 2, lag - size, lag)
        return (lags * problem["step"]).tolist()

    delays, padded = lasting(lambda: run(2 * samples))
    _, wrapping = lasting(lambda: run(samples))
    return {"ways": {"padded": padded, "wrapping": wrapping}, "delays": delays}


def of_bundle(file):
    """v and its uncertainty, m/s, out of a bundle's table of the line's rows."""
    import zipfile

    import pandas
    from scipy import odr as library

    with zipfile.ZipFile(file) as bundle:
        table = pandas.read_csv(io.BytesIO(bundle.read("residuals.csv"))).to_numpy(dtype=np.float64)
    x, ux, y, uy = table[:, 1:5].T
    model = library.Model(
        lambda beta, x: beta[0] * x + beta[1],
        fjacb=lambda beta, x: np.vstack([x, np.ones_like(x)]),
        fjacd=lambda beta, x: np.full_like(x, beta[0]),
    )
    run = library.ODR(library.RealData(x, y, sx=ux, sy=uy), model, beta0=[3.3, 0.0])
    run.set_job(deriv=3)
    fit = run.run()
    v = 1e9 / fit.beta[0]
    return v, v * fit.sd_beta[0] / fit.beta[0]


def together(results):
    v, u = np.array(results).T
    weights = 1 / u**2
    mean = (weights * v).sum() / weights.sum()
    birge = np.sqrt((weights * (v - mean) ** 2).sum() / (len(v) - 1))
    return float(mean), float(max(1.0, birge) / np.sqrt(weights.sum()))


def of_class(problem, threads):
    files = problem["files"]
    warnings.simplefilter("ignore")
    with multiprocessing.get_context("fork").Pool(threads) as pool:
        work = lambda: together(pool.map(of_bundle, files, 25))
        (mean, u), took = lasting(work)
    # The bench stands in air of group index 1.00028.
    return {"took": took, "results": len(files), "mean": mean * 1.00028, "u": u}


if __name__ == "__main__":
    name, *numbers = sys.argv[1:]
    work = {"odr": odr, "dense": dense, "monte_carlo": monte_carlo, "traces": traces, "correlation": correlation, "class": of_class}[name]
    print(json.dumps(work(json.load(sys.stdin), *map(int, numbers))))
