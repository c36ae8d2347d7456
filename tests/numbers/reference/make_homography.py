"""Makes homography.json: projective transforms from crossings to marks, as general libraries find them.

Usage: python make_homography.py > homography.json (with numpy, scipy, opencv-python-headless and scikit-image)

Four marks: the transform is exact; OpenCV (cv2.findHomography, method 0) and scikit-image (ProjectiveTransform) solve
it each in its own way. More marks: the least squares of the distances in pixels. OpenCV refines by Levenberg–Marquardt
steps from its linear solution and stops early; scipy.optimize.least_squares takes its answer to the end, which is what
is kept, and OpenCV's must agree to the digits stated. OpenCV holds coordinates in single precision, so all marks are
eighths of a pixel, which single precision holds exactly.

The matrices are divided by their last element.
"""

import json
import platform
import random

import cv2
import numpy
import scipy
import skimage
from scipy.optimize import least_squares
from skimage.transform import ProjectiveTransform

SEED = 20040
random.seed(SEED)


def view():
    """A tilted screen of 10 × 8 divisions in a picture of some thousand pixels, as a 3 × 3 matrix."""
    yaw, pitch, roll = (numpy.radians(random.uniform(-25, 25)) for _ in range(3))
    c, s = numpy.cos, numpy.sin
    turn = (
        numpy.array([[c(roll), -s(roll), 0], [s(roll), c(roll), 0], [0, 0, 1]])
        @ numpy.array([[1, 0, 0], [0, c(pitch), -s(pitch)], [0, s(pitch), c(pitch)]])
        @ numpy.array([[c(yaw), 0, s(yaw)], [0, 1, 0], [-s(yaw), 0, c(yaw)]])
    )
    focal, away = random.uniform(1200, 4000), random.uniform(14, 25)
    lens = numpy.array([[focal, 0, random.uniform(700, 2000)], [0, focal, random.uniform(500, 1500)], [0, 0, 1]])
    plane = numpy.column_stack([turn[:, 0], turn[:, 1], [0, 0, away] - turn @ [5, 4, 0]])
    return lens @ plane


def through(matrix, at):
    x = numpy.column_stack([at, numpy.ones(len(at))]) @ matrix.T
    return x[:, :2] / x[:, 2:]


def least(crossings, marks, start):
    """The least squares of the distances in pixels, from a start, to the last digits."""
    centre, spread = marks.mean(0), marks.std()
    middle, reach = crossings.mean(0), crossings.std()
    to_unit = numpy.array([[1, 0, -centre[0]], [0, 1, -centre[1]], [0, 0, spread]]) / spread
    from_unit = numpy.array([[reach, 0, middle[0]], [0, reach, middle[1]], [0, 0, 1]])
    a, b = (crossings - middle) / reach, (marks - centre) / spread
    h = to_unit @ start @ from_unit
    h = (h / h[2, 2]).ravel()[:8]
    away = lambda h: (through(numpy.append(h, 1).reshape(3, 3), a) - b).ravel()
    def slopes(h):
        w = a @ h[6:] + 1
        x, y = through(numpy.append(h, 1).reshape(3, 3), a).T
        zero, p = numpy.zeros((len(a), 3)), numpy.column_stack([a, numpy.ones(len(a))]) / w[:, None]
        q = a / w[:, None]
        rows = numpy.empty((2 * len(a), 8))
        rows[0::2] = numpy.hstack([p, zero, -x[:, None] * q])
        rows[1::2] = numpy.hstack([zero, p, -y[:, None] * q])
        return rows
    for _ in range(3):
        h = least_squares(away, h, jac=slopes, method="lm", xtol=1e-15, ftol=1e-15, gtol=1e-15).x
        # Gauss–Newton steps end where the search's own stopping rule is blunt.
        for _ in range(20):
            h = h - numpy.linalg.lstsq(slopes(h), away(h), rcond=None)[0]
    m = numpy.linalg.inv(to_unit) @ numpy.append(h, 1).reshape(3, 3) @ numpy.linalg.inv(from_unit)
    return m / m[2, 2]


CORNERS = [(0, 0), (10, 0), (10, 8), (0, 8)]
MORE = {
    5: CORNERS + [(5, 4)],
    9: CORNERS + [(5, 4), (5, 0), (10, 4), (5, 8), (0, 4)],
    25: [(2.5 * c, 2 * r) for c in range(5) for r in range(5)],
}
cases, worst_cv, worst_sk = [], 0.0, 0.0
for index in range(24):
    matrix = view()
    count = 4 if index < 12 else [5, 9, 25][index % 3]
    crossings = numpy.array(CORNERS if count == 4 else MORE[count], dtype=float)
    if count == 4 and index % 2:
        # Four crossings that are no corners of a rectangle.
        crossings = numpy.array([(1, 0), (10, 2), (8, 8), (2, 5)], dtype=float)
    blur = numpy.array([[random.gauss(0, 1.5) for _ in range(2)] for _ in crossings])
    marks = numpy.round((through(matrix, crossings) + blur) * 8) / 8
    found, _ = cv2.findHomography(crossings, marks, 0)
    found = found / found[2, 2]
    case = {"crossings": crossings.tolist(), "marks": marks.tolist(), "opencv": found.tolist()}
    if count == 4:
        other = ProjectiveTransform.from_estimate(crossings, marks).params
        case["scikit_image"] = (other / other[2, 2]).tolist()
        truth = other / other[2, 2]
    else:
        truth = least(crossings, marks, found)
        case["least_squares"] = truth.tolist()
        place = [[3.25, 2.5], [7.0, 6.125]]
        case["places"] = {"divisions": place, "pixels": through(truth, numpy.array(place)).tolist()}
    off = float(numpy.max(numpy.abs(found / truth - 1)))
    if count == 4:
        worst_sk = max(worst_sk, off)
    else:
        worst_cv = max(worst_cv, off)
    cases.append(case)

print(json.dumps({
    "source": "made by make_homography.py with general libraries",
    "versions": {
        "python": platform.python_version(), "numpy": numpy.__version__, "scipy": scipy.__version__,
        "opencv": cv2.__version__, "scikit-image": skimage.__version__,
    },
    "seed": SEED,
    "largest_relative_difference": {"opencv_and_scikit_image": worst_sk, "opencv_and_least_squares": worst_cv},
    "cases": cases,
}, indent=1))
