# python3 basin.py > basin.csv
"""Reference answers for wind on a water of two layers, by scipy, from other formulations.

end     steady displacement at the ends, from the balance without the linear step:
        h1 dh1/dx = tau/(g drho), the warm layer keeping its volume, by solve_bvp; the mean
        of the rise upwind and the fall downwind.
period  time of rocking, from the eigenvalues of the equations of motion of both layers
        under a free surface, on a grid of 400 cells (the layers' thickness is even).
quarter displacement at the downwind end a quarter of the period after a sudden wind, over
        the steady one, from the same equations of motion, by the matrix exponential.
eighth  the same after an eighth of the period.
surfaces  the Wedderburn number at which the steady balance has no warm water left at the
        upwind end, by brentq.

Densities are those of IAPWS SR6-08(2011). The version of scipy goes to the error output; the committed
file was made with 1.10.1.
"""
import sys

import numpy as np
import scipy
from scipy.integrate import quad, solve_bvp
from scipy.linalg import eigh_tridiagonal, expm
from scipy.optimize import brentq

G, AIR, DRAG = 9.80665, 1.2, 1.3e-3


def density(c):
    t = c + 273.15
    a, b = 10 / (593 - t), 10 / (t - 232)
    v = 1.93763157e-2
    for k, e in ((6.74458446e3, 4), (-2.22521604e5, 5), (1.00231247e8, 7), (-1.63552118e9, 8), (8.32299658e9, 9)):
        v += k * a**e
    for k, e in ((5.78545292e-3, 1), (-1.53195665e-2, 2), (3.11337859e-2, 3), (-4.23546241e-2, 4), (3.38713507e-2, 5), (-1.19946761e-2, 6)):
        v += k * b**e
    return 1 / (461.51805 * 10 / 1e5 * v)


def steady(h1, drho, stress, length):
    s = stress / (G * drho)
    # y0 = h1(x), y1 = its integral from the upwind end
    f = lambda x, y: np.vstack((s / y[0], y[0]))
    ends = lambda a, b: np.array([a[1], b[1] - h1 * length])
    x = np.linspace(0, length, 41)
    got = solve_bvp(f, ends, x, np.vstack((np.full_like(x, h1), h1 * x)), tol=1e-10, max_nodes=20000)
    assert got.success, got.message
    return (got.y[0, -1] - got.y[0, 0]) / 2


def motion(h1, h2, r1, r2, length, n):
    """Both layers under a free surface: x = (eta, zeta, u1, u2), dx/dt = A x + b stress."""
    dx = length / n
    m = n - 1  # velocities stand between the cells; the ends are walls
    div = np.zeros((n, m))
    for j in range(m):
        div[j, j], div[j + 1, j] = -1 / dx, 1 / dx
    grad = div.T
    a = np.zeros((2 * n + 2 * m, 2 * n + 2 * m))
    e, z, u, v = slice(0, n), slice(n, 2 * n), slice(2 * n, 2 * n + m), slice(2 * n + m, None)
    a[e, u], a[e, v] = h1 * div, h2 * div  # surface rises where either layer comes together
    a[z, v] = h2 * div  # the plane between them where the lower one does
    a[u, e] = -G * grad
    a[v, e], a[v, z] = -G * r1 / r2 * grad, -G * (r2 - r1) / r2 * grad
    b = np.zeros(2 * n + 2 * m)
    b[u] = 1 / (r1 * h1)
    return a, b


def period(h1, h2, r1, r2, length, n=400):
    # of each wave along the length, the surface and the plane between move by this matrix
    d = G * h2 * (r2 - r1) / r2
    slow2 = np.min(np.linalg.eigvals(np.array([[G * h1 + G * h2 * r1 / r2, d], [G * h2 * r1 / r2, d]])).real)
    dx = length / n
    lap = eigh_tridiagonal(np.r_[1, np.full(n - 2, 2), 1] / dx**2, np.full(n - 1, -1) / dx**2, eigvals_only=True, select="i", select_range=(1, 1))[0]
    return 2 * np.pi / np.sqrt(slow2 * lap)


def reached(h1, h2, r1, r2, length, share, n=60):
    a, b = motion(h1, h2, r1, r2, length, n)
    size = len(b)
    aug = np.zeros((size + 1, size + 1))
    aug[:size, :size], aug[:size, size] = a, b
    at = expm(aug * share * period(h1, h2, r1, r2, length, n))[:size, size]
    rise = at[n : 2 * n]
    full = length / (2 * G * (r2 - r1) * h1)
    x = (np.arange(n) + 0.5) / n
    # zeta is the height of the plane: it falls at the downwind end; continued to the wall
    return -(rise[-1] + (rise[-1] - rise[-2]) / 2) / full


def surfaces(h1):
    # no warm water upwind: h1(x)^2 = 2 s x; the mean over the length is h1
    mean = lambda s: quad(lambda x: np.sqrt(2 * s * x), 0, 1)[0] - h1
    return h1**2 / brentq(mean, 1e-6, 1e3 * h1**2)


def main():
    print(f"scipy {scipy.__version__}", file=sys.stderr)
    print("upper_m,lower_m,above_c,below_c,length_m,wind_mps,end_m,period_s,quarter,eighth,surfaces")
    for h1, h2, above, below, length, wind in (
        (4, 8, 22, 9, 500, 5),
        (4, 8, 22, 9, 500, 10),
        (5, 7, 22, 9, 1000, 5),
        (5, 7, 22, 9, 1000, 10),
        (7, 12, 22, 9, 3000, 5),
        (7, 12, 22, 9, 3000, 10),
        (3, 3, 18, 12, 400, 4),
        (9, 20, 16, 6, 4000, 6),
        (6, 50, 20, 5, 8000, 3),
    ):
        r1, r2 = density(above), density(below)
        stress = AIR * DRAG * wind**2
        print(f"{h1},{h2},{above},{below},{length},{wind},{steady(h1, r2 - r1, stress, length):.6f},{period(h1, h2, r1, r2, length):.3f}"
              f",{reached(h1, h2, r1, r2, length, 0.25):.4f},{reached(h1, h2, r1, r2, length, 0.125):.4f},{surfaces(h1):.6f}")


main()
