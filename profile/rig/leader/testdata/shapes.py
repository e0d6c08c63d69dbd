# python3 shapes.py > shapes.csv
"""Shapes of the leaders of rigs.json under way, by scipy.

Tension and angle are integrated from the point fly up by the equations of Pode 1951
(DTMB Report 687) with DOP853; the drag across is Sucker & Brauer 1975, below a
Reynolds number of 1 passing into Kaplun 1957 at 0.1, the friction along is Kramers
1946 with the speed across, the drag of a body Brown & Lawler 2003, its size twice that
of a ball where none is given. Density and viscosity of the water are from
the table of IAPWS SR6-08(2011). The version of scipy goes to the error output; the
committed file was made with 1.10.1.

Each part in rigs.json is length, upper and lower diameter and density; each body is
distance from the tip, dry mass, density and diameter.
"""
import json
import math
import os
import sys

import scipy
from scipy.integrate import solve_ivp

G = 9.80665
HERE = os.path.dirname(os.path.abspath(__file__))


def cd_ball(re):
    return 24 / re * (1 + 0.15 * re ** 0.681) + 0.407 / (1 + 8710 / re)


def brauer(re):
    return 1.18 + 6.8 * re ** -0.89 + 1.96 * re ** -0.5 - 0.0004 * re / (1 + 3.64e-7 * re ** 2)


def kaplun(re):
    e = 1 / (0.5 - 0.57721566490153286 + math.log(8 / re))
    return 8 * math.pi / re * (e - 0.87 * e ** 3)


def cd_line(re):
    if re >= 1:
        return brauer(re)
    if re <= 0.1:
        return kaplun(re)
    q = math.log10(re) + 1
    q = 3 * q ** 2 - 2 * q ** 3
    return q * brauer(re) + (1 - q) * kaplun(re)


def across(rho, nu, d, v):
    re = d * abs(v) / nu
    return 0.5 * rho * d * cd_line(re) * v * abs(v) if re > 1e-30 else 0.0


def along(rho, nu, d, v, cross):
    return math.pi * rho * nu * v * (0.42 + 0.57 * math.sqrt(d * abs(cross) / nu))


def body_forces(body, rho, nu, u):
    _, kg, density, d = body
    if d == 0:
        d = 2.0 * (6 * kg / math.pi / density) ** (1 / 3)
    w = kg * G * (1 - rho / density)
    return w, 0.5 * rho * cd_ball(u * d / nu) * math.pi / 4 * d * d * u * u


def shape(rig, rtol=1e-11, method="DOP853"):
    """Place of every body from the point up, tension, angle, height, distance."""
    rho, nu, u = rig["rho"], rig["mu"] / rig["rho"], rig["speed"]
    total = sum(p[0] for p in rig["parts"])
    marks = []  # (from the point, body)
    for i, b in enumerate(rig["bodies"]):
        marks.append((total - b[0], i))
    marks.sort()
    places = {}
    pull, rise = 0.0, 0.0  # forward and up
    x = z = 0.0

    def take(upto):
        nonlocal pull, rise
        while marks and marks[0][0] <= upto + 1e-9:
            _, i = marks.pop(0)
            w, d = body_forces(rig["bodies"][i], rho, nu, u)
            rise, pull = rise + w, pull + d
            places[i] = (z, x)

    take(0)
    below = 0.0
    for length, top, low, density in reversed(rig["parts"]):
        cuts = [m[0] - below for m in marks if 1e-9 < m[0] - below < length - 1e-9]
        a = 0.0
        for b in cuts + [length]:
            def slope(s, y):
                t, th = y[0], y[1]
                d = low + (top - low) * s / length
                w = math.pi / 4 * d * d * (density - rho) * G
                c, sn = math.cos(th), math.sin(th)
                return [w * c + along(rho, nu, d, u * sn, u * c),
                        (-w * sn + across(rho, nu, d, u * c)) / t, sn, c]

            y0 = [math.hypot(pull, rise), math.atan2(pull, rise), x, z]
            r = solve_ivp(slope, (a, b), y0, method=method, rtol=rtol, atol=rtol * 1e-3)
            t, th, x, z = r.y[:, -1]
            pull, rise = t * math.sin(th), t * math.cos(th)
            a = b
            take(below + b)
        below += length
    return places, math.hypot(pull, rise), math.degrees(math.atan2(pull, rise)), z, x


def rigs():
    with open(os.path.join(HERE, "rigs.json")) as f:
        return json.load(f)


def main():
    out = sys.stdout
    out.write("rig,body,depth_m,behind_m,tension_n,angle_deg,source,command\n")
    for n, rig in enumerate(rigs()):
        places, t, th, z, x = shape(rig)
        for i in sorted(places):
            out.write("%d,%d,%.9f,%.9f,%.9e,%.7f,scipy solve_ivp DOP853,python3 shapes.py > shapes.csv\n"
                      % (n, i, z - places[i][0], x - places[i][1], t, th))


if __name__ == "__main__":
    sys.stderr.write("scipy %s\n" % scipy.__version__)
    main()
