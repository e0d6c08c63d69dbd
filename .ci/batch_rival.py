#!/usr/bin/python3
"""What an analyst would write with the reference libraries, to measure the speed of
`coldseam batch` against: per column the density of fresh water, N2, a monotone cubic
and the depth where density rises fastest; no uncertainty.

Use: batch_rival.py FILE.csv > lines.jsonl   (Debian: python3-gsw, python3-scipy)
"""
import csv
import json
import sys
from itertools import groupby
from operator import itemgetter

import gsw
import numpy as np
from scipy.interpolate import PchipInterpolator


def layers(depth, temp):
    """The depth (m) where density rises fastest, that rise (kg/m3 per m), greatest N2."""
    z, first = np.unique(depth, return_index=True)
    t = temp[first]
    if len(z) < 3:
        return None
    ct = gsw.CT_from_t(0, t, z)  # a metre is a decibar to 2 %
    n2, _ = gsw.Nsquared(np.zeros_like(z), ct, z)
    curve = PchipInterpolator(z, gsw.rho(0, ct, 0))
    fine = np.linspace(z[0], z[-1], 200)
    rise = curve(fine, 1)
    i = int(rise.argmax())
    return float(fine[i]), float(rise[i]), float(n2.max())


def main(path):
    with open(path, newline="", encoding="utf-8-sig") as file:
        rows = csv.reader(file)
        names = next(rows)
        profile, depth, temp = (names.index(n) for n in ("profile", "depth_m", "temp_c"))
        write = sys.stdout.write
        for name, group in groupby(rows, key=itemgetter(profile)):
            pairs = [(float(r[depth]), float(r[temp])) for r in group if r[temp]]
            found = layers(*np.array(pairs).T) if pairs else None
            out = {"profile": name}
            if found:
                out["thermocline_m"], out["steepest"], out["n2"] = (round(v, 6) for v in found)
            write(json.dumps(out) + "\n")


main(sys.argv[1])
