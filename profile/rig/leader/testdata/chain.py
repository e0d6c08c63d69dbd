# python3 chain.py > chain.csv
"""Reference answers: when the point fly of a sinking leader first reaches a depth.

This solves another formulation than the Go package: nodes in Cartesian
coordinates with their inertia (mass of line, fly and the water they move), joined
by slightly stretching, damped springs that only pull, integrated by scipy's LSODA
(stiff, banded) from rest on the surface. Drag correlations are written anew from
their sources. The version of scipy goes to the error output; the committed file
was made with 1.10.1.

Options for studies, not for the file: links=N, noinertia (a hundredth of it).
"""
import multiprocessing
import os
import sys

os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")  # each process has a processor

import numpy as np
import scipy
from scipy.integrate import solve_ivp

G = 9.80665
FT = 0.3048
RHO, NU = 999.1026, 1.13755e-3 / 999.1026  # water of 15 C, IAPWS SR6-08(2011)
NYLON, FLUORO = 1140.0, 1780.0
DAMP = 0.1  # s, of the springs: 0.005 moves no wait by 0.1 %
LINE_M, LINE_D = 9.144, 0.0011  # m, the fly line that a sliding tip pulls, half of it wet


def sphere(re):
    """Brown & Lawler 2003, J. Environ. Eng. 129:222 (from memory)."""
    return 24 / re * (1 + 0.150 * re**0.681) + 0.407 / (1 + 8710 / re)


def cylinder(re):
    """Sucker & Brauer 1975 (from memory), flow across."""
    return 1.18 + 6.8 * re**-0.89 + 1.96 * re**-0.5 - 4e-4 * re / (1 + 3.64e-7 * re * re)


def friction(re):
    """Kramers 1946, Physica 12:61, at Prandtl number 1 (from memory): by the
    independence principle (Sears 1948) also the friction along a slanted line."""
    return 0.42 + 0.57 * re**0.5


def butt_to_tippet(total, end, end_d, end_rho):
    """2 ft of butt and the rest of the length nylon, then the tippet."""
    return [(2 * FT, 0.51e-3, NYLON), (total - 2 * FT - end, 0.30e-3, NYLON), (end, end_d, end_rho)]


# name: parts (length m, diameter m, density), bodies (at m, dry kg, density,
# dressing), tip slides, depths asked in m
RIGS = {
    "6 ft, 0.05 g": ([(7.5 * FT, 0.18e-3, FLUORO)], [(7.5 * FT, 5e-5, 4000, 2)], False, [1, 6 * FT]),
    "10 ft, 0.1 g": ([(3, 0.30e-3, NYLON), (0.81, 0.18e-3, FLUORO)], [(3.81, 1e-4, 4000, 2)], False, [1.5, 3.048]),
    "15 ft, 0.25 g": (butt_to_tippet(18.75 * FT, 1.5, 0.18e-3, FLUORO), [(18.75 * FT, 2.5e-4, 4000, 2)], False, [2, 15 * FT]),
    "20 ft, 0.05 g, nylon and two droppers": (
        butt_to_tippet(25 * FT, 3.0, 0.20e-3, NYLON),
        [(25 * FT - 2, 3e-5, 3000, 2), (25 * FT - 1, 3e-5, 3000, 2), (25 * FT, 5e-5, 4000, 2)], False, [3, 20 * FT]),
    "15 ft, 0.25 g, tip slides": (butt_to_tippet(18.75 * FT, 1.5, 0.18e-3, FLUORO), [(18.75 * FT, 2.5e-4, 4000, 2)], True, [2, 15 * FT]),
    "30 ft, 1 g and a shot": (
        butt_to_tippet(37.5 * FT, 5, 0.20e-3, FLUORO),
        [(37.5 * FT - 0.4, 4e-4, 7290, 1), (37.5 * FT, 1e-3, 4000, 2)], False, [4, 30 * FT]),
}


class Chain:
    def __init__(self, parts, bodies, slides, links, inertia):
        self.slides = slides
        total = sum(p[0] for p in parts)
        cuts = sorted({0.0, total, *(b[0] for b in bodies)})
        s = [0.0]
        for a, b in zip(cuts, cuts[1:]):
            n = max(2, int(np.ceil(links * (b - a) / total)))
            s += [a + (b - a) * (k + 1) / n for k in range(n)]
        self.s = np.array(s)
        self.n = len(s)
        self.l = np.diff(self.s)
        # what lies in each link, averaged over it
        edges = np.cumsum([0.0] + [p[0] for p in parts])
        d = np.zeros(self.n - 1)
        lin = np.zeros(self.n - 1)  # kg/m
        for j in range(self.n - 1):
            for k, (_, pd, pr) in enumerate(parts):
                lap = max(0.0, min(edges[k + 1], self.s[j + 1]) - max(edges[k], self.s[j]))
                d[j] += pd * lap / self.l[j]
                lin[j] += pr * np.pi / 4 * pd * pd * lap / self.l[j]
        self.d = d
        disp = RHO * np.pi / 4 * d * d  # water displaced, kg/m
        half = lambda v: np.concatenate(([v[0]], v[:-1] + v[1:], [v[-1]])) / 2
        self.weight = G * half((lin - disp) * self.l)
        self.mass = half((lin + disp) * self.l)  # added mass of one displaced, across
        self.ball = np.zeros(self.n)
        for at, kg, rho, dressing in bodies:
            j = int(np.argmin(abs(self.s - at)))
            size = (6 * kg / (np.pi * rho)) ** (1 / 3)
            self.weight[j] += G * kg * (1 - RHO / rho)
            self.ball[j] = size * dressing
            # the dressing holds water, and half the whole ball's volume moves too
            self.mass[j] += kg + RHO * np.pi / 6 * (1.5 * (size * dressing) ** 3 - size**3)
        if slides:
            self.mass[0] += RHO * np.pi / 4 * LINE_D**2 * LINE_M
        self.mass *= inertia
        pull = self.weight.sum()
        self.k = pull / 2e-4 / self.l  # stretches by 0.02 % under its whole weight
        self.c = DAMP * self.k

    def rhs(self, t, y):
        q = y.reshape(self.n, 4)
        r, v = q[:, :2], q[:, 2:]
        dr, dv = np.diff(r, axis=0), np.diff(v, axis=0)
        length = np.hypot(dr[:, 0], dr[:, 1])
        e = dr / length[:, None]
        tension = np.maximum(0, self.k * (length - self.l) + self.c * (dv * e).sum(1))
        f = np.zeros_like(r)
        f[:, 1] += self.weight
        pull = tension[:, None] * e
        f[:-1] += pull
        f[1:] -= pull
        # half of each link's drag at either end, by that link's own direction
        for nodes in (slice(0, -1), slice(1, None)):
            vt = (v[nodes] * e).sum(1)
            across = v[nodes] - vt[:, None] * e
            vn = np.hypot(across[:, 0], across[:, 1])
            ren = np.maximum(vn * self.d / NU, 1e-6)
            half = self.l / 2
            f[nodes] -= (0.5 * RHO * self.d * half * cylinder(ren) * ren * NU / self.d)[:, None] * across
            f[nodes] -= (np.pi * RHO * NU * half * friction(ren) * vt)[:, None] * e
        b = self.ball > 0
        speed = np.hypot(v[b, 0], v[b, 1])
        re = np.maximum(speed * self.ball[b] / NU, 1e-6)
        f[b] -= (0.5 * RHO * np.pi / 4 * self.ball[b] ** 2 * sphere(re) * re * NU / self.ball[b])[:, None] * v[b]
        out = np.empty_like(q)
        out[:, :2] = v
        out[:, 2:] = f / self.mass[:, None]
        out[0] = 0
        if self.slides:
            f0 = f[0, 0] - 0.5 * np.pi * RHO * NU * LINE_M * friction(0.0) * v[0, 0]  # half of it is wet
            out[0, 0], out[0, 2] = v[0, 0], f0 / self.mass[0]
        return out.ravel()

    def path(self, depth, rtol=1e-4):
        y = np.zeros((self.n, 4))
        y[:, 0] = self.s
        there = lambda t, y: y[-3] - depth
        there.terminal = True
        sol = solve_ivp(self.rhs, (0, 3600), y.ravel(), method="LSODA", rtol=rtol, atol=1e-6,
                        lband=7, uband=7, events=[there], first_step=1e-4, dense_output=True)
        if not sol.success or not len(sol.t_events[0]):
            raise SystemExit(f"not reached: {sol.message}")
        if sol.y.reshape(self.n, 4, -1)[:, 1].min() < -0.002:
            raise SystemExit("a node rose above the surface")
        return sol


def main():
    links, inertia = 40, 1.0
    for a in sys.argv[1:]:
        if a.startswith("links="):
            links = int(a[6:])
        elif a == "noinertia":
            inertia = 0.01
    print("scipy", scipy.__version__, file=sys.stderr)
    print("rig,depth_m,seconds,source")
    with multiprocessing.Pool() as pool:  # a rig for each processor
        for lines in pool.starmap(answers, [(name, links, inertia) for name in RIGS], chunksize=1):
            print(*lines, sep="\n")


def answers(name, links, inertia):
    """The lines of one rig."""
    parts, bodies, slides, depths = RIGS[name]
    sol = Chain(parts, bodies, slides, links, inertia).path(max(depths))
    fine = np.linspace(0, sol.t[-1], 20001)
    z = sol.sol(fine)[-3]
    lines = []
    for depth in depths:
        j = int(np.argmax(z >= depth)) if depth < max(depths) else len(fine) - 1
        t = fine[j] if j in (0, len(fine) - 1) else np.interp(depth, z[j - 1:j + 1], fine[j - 1:j + 1])
        lines.append(f'"{name}",{depth:.4f},{t:.2f},scipy solve_ivp LSODA of {links} springs')
    return lines


if __name__ == "__main__":
    main()
