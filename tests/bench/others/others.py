"""The same work in Python's numeric stack, as vectors: python3 others.py WHAT FILE. Prints the processor's seconds of
the work alone, and a figure of the result. Reading the file and starting Python do not count."""
import sys
import time

import numpy as np
from scipy.stats import fisher_exact

what, path = sys.argv[1:3]
data = np.loadtxt(path, delimiter=",", ndmin=2)


def runs(flags, width, least=None):
    sums = np.concatenate(([0], np.cumsum(flags)))
    return int(np.sum(sums[width:] - sums[:-width] >= (least or width)))


def chart():
    x = data[:, 0]
    steps = np.diff(x)
    z = (x - x.mean()) / (np.abs(steps).mean() / (2 / np.sqrt(np.pi)))
    up = steps > 0
    down = steps < 0
    turn = (up[1:] & down[:-1]) | (down[1:] & up[:-1])
    size = np.abs(z)
    others = (runs(z > 0, 9) + runs(z < 0, 9) + runs(up, 5) + runs(down, 5) + runs(turn, 12) + runs(z > 2, 3, 2) +
              runs(z < -2, 3, 2) + runs(z > 1, 5, 4) + runs(z < -1, 5, 4) + runs(size < 1, 15) + runs(size > 1, 8))
    assert others >= 0
    return int(np.sum(size > 3))


def fisher():
    return sum(fisher_exact(row.reshape(2, 2).astype(int))[1] for row in data)


def firth():
    x = np.column_stack((np.ones(len(data)), data[:, 0]))
    y = data[:, 1]
    b = np.zeros(2)
    for _ in range(50):
        p = 1 / (1 + np.exp(-(x @ b)))
        w = p * (1 - p)
        inverse = np.linalg.inv(x.T @ (w[:, None] * x))
        h = w * np.einsum("ij,ij->i", x @ inverse, x)
        step = inverse @ (x.T @ (y - p + h * (0.5 - p)))
        b += step
        if np.abs(step).max() < 1e-10:
            break
    return b[1]


def change():
    x = data[:, 0]
    n = len(x)
    k = np.arange(1, n)
    weight = n / (k * (n - k))

    def ratios(v):
        s = np.cumsum(v - v.mean())[:-1]
        return s * s * weight

    seen = ratios(x)
    random = np.random.default_rng(1)
    sum(ratios(random.permutation(x)).max() >= seen.max() for _ in range(999))
    return int(seen.argmax()) + 1


work = {"chart": chart, "fisher": fisher, "firth": firth, "change": change}[what]
start = time.process_time()
figure = work()
print(f"{time.process_time() - start:.6f} {figure:.12g}")
