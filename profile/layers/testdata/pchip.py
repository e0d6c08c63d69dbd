# python3 pchip.py > pchip.csv
"""Values of scipy's monotone cubic at the check columns of the Go tests.

Each line: the column, what is asked (value, slope, or depth at which a value is
reached), where, the answer, and the source. The version of scipy goes to the
error output; the committed file was made with 1.10.1.
"""
import sys

import scipy
from scipy.interpolate import PchipInterpolator

COLUMNS = {
    "A": (list(range(13)),
          [21.6, 21.5, 21.5, 21.3, 20.9, 18.2, 14.6, 11.8, 10.1, 9.2, 8.7, 8.4, 8.2]),
    "B": ([0, 1, 2, 4, 5, 6, 7, 8, 10, 13, 17],
          [20.4, 20.4, 20.3, 20.1, 18.9, 15.2, 12.4, 10.9, 9.0, 7.6, 6.9]),
    "few": ([0, 1.5, 3.1, 4.6, 7.6], [23.4, 22.8, 20.1, 12.2, 8.8]),
}
LEVELS = {"A": [20, 18, 16, 12, 10, 9], "B": [20, 15, 12, 8], "few": [21, 19, 15, 10]}


def main():
    out = sys.stdout
    out.write("column,asked,at,answer,source\n")
    source = "scipy PchipInterpolator"
    for name, (z, t) in COLUMNS.items():
        f = PchipInterpolator(z, t)
        slope = f.derivative()
        for a, b in zip(z, z[1:]):
            for share in (0.2, 0.5, 0.85):
                at = round(a + share * (b - a), 6)
                out.write("%s,value,%.6f,%.9f,%s\n" % (name, at, f(at), source))
                out.write("%s,slope,%.6f,%.9f,%s\n" % (name, at, slope(at), source))
        for level in LEVELS[name]:
            for root in f.solve(level, extrapolate=False):
                out.write("%s,depth,%.6f,%.9f,%s\n" % (name, level, root, source))


if __name__ == "__main__":
    sys.stderr.write("scipy %s\n" % scipy.__version__)
    main()
