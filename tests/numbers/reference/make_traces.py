"""Makes traces.json: delays and crossings of sampled pulses, as numpy and scipy find them.

Usage: python make_traces.py > traces.json (with numpy and scipy)

Each case is a pair of band-limited pulses sampled alike, the second delayed by a part of a sample as well:
- crossing: place where the first rises through half its greatest sample, by numpy.interp between two samples;
- lag, parabola: lag of the largest cross-correlation by scipy.signal.correlate, and the vertex of the parabola through it
  and its neighbours;
- resampled: the same with both pulses resampled 32 times as finely by scipy.signal.resample, which for band-limited
  pulses is exact: what the delay really is, to a part of a finer sample;
- truth: the delay put in.
Numbers are rounded to nine digits before they are used, so that the file holds what was computed with.
"""

import json
import platform

import numpy
import scipy
import scipy.signal

SAMPLES = 512


def pulse(kind, at, width):
    x = (numpy.arange(SAMPLES) - at) / width
    if kind == "gauss":
        return numpy.exp(-0.5 * x * x)
    if kind == "skewed":
        # A Gaussian rise convolved with an exponential decay: an error function times an exponential.
        from scipy.special import erfc

        decay = 3.0
        return 1.5 * numpy.exp(0.5 / decay**2 - x / decay) * erfc((1 / decay - x) / numpy.sqrt(2)) / 2
    raise ValueError(kind)


def vertex(values, top):
    before, here, after = values[top - 1], values[top], values[top + 1]
    return top + 0.5 * (before - after) / (before - 2 * here + after)


def lag_of(a, b, fine=1):
    if fine > 1:
        a, b = (scipy.signal.resample(list_, len(list_) * fine) for list_ in (a, b))
    values = scipy.signal.correlate(b, a, mode="full", method="fft")
    top = int(numpy.argmax(values))
    return (top - (len(a) - 1)) / fine, (vertex(values, top) - (len(a) - 1)) / fine


def main():
    cases = []
    for kind in ("gauss", "skewed"):
        for width in (4.0, 8.0):
            for delay in (0.0, 17.25, 23.5, 30.8, -12.37):
                a = numpy.round(pulse(kind, 220.0, width), 9)
                b = numpy.round(0.75 * pulse(kind, 220.0 + delay, width), 9)
                level = 0.5 * a.max()
                above = int(numpy.argmax(a > level))
                crossing = float(numpy.interp(level, a[above - 1 : above + 1], [above - 1, above]))
                lag, parabola = lag_of(a, b)
                cases.append(
                    {
                        "kind": kind, "width": width, "truth": delay, "level": level, "crossing": crossing,
                        "lag": lag, "parabola": parabola, "resampled": lag_of(a, b, 32)[1],
                        "a": a.tolist(), "b": b.tolist(),
                    }
                )
    print(
        json.dumps(
            {
                "source": "numpy.interp, scipy.signal.correlate and scipy.signal.resample, by make_traces.py",
                "python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__,
                "cases": cases,
            }
        )
    )


main()
