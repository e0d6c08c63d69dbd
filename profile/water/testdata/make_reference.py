"""Make the reference tables of package water with two independent libraries.

iapws gives density and viscosity (IAPWS SR6-08(2011)), gsw (TEOS-10) gives the oxygen at
saturation.

Usage: python3 make_reference.py [FOLDER]

The tables are written to FOLDER, or beside this script. Numbers are rounded well
above the noise of double arithmetic, so a second run gives the same bytes.
"""
import os
import sys

import gsw
import iapws
import numpy as np
from iapws import _iapws

COMMAND = "python3 make_reference.py"
VERSIONS = "python %d.%d.%d, iapws %s, gsw %s, numpy %s" % (
    sys.version_info[:3] + (iapws.__version__, gsw.__version__, np.__version__))
OXYGEN_G_MOL = 31.9988  # 2 x 15.9994


def write(folder, name, columns, rows):
    """Write one table: where it comes from, the column names, the rows."""
    with open(os.path.join(folder, name), "w", newline="\n") as out:
        out.write("# made by: %s; %s\n" % (COMMAND, VERSIONS))
        out.write(",".join(columns) + "\n")
        for row in rows:
            out.write(",".join(row) + "\n")


def liquid(temp_c):
    """Properties of liquid water at 0.1 MPa."""
    return _iapws._Liquid(temp_c + 273.15)


def density_rows():
    for step in range(61):
        temp = step / 2
        props = liquid(temp)
        yield ["%.1f" % temp, "%.6f" % props["rho"], "%.6e" % props["mu"],
               "SR6-08(2011)"]


def oxygen_rows():
    for temp in range(31):
        umol_kg = float(gsw.O2sol_SP_pt(0.0, float(temp)))
        mg_l = umol_kg * 1e-6 * OXYGEN_G_MOL * liquid(temp)["rho"]
        yield ["%d" % temp, "%.4f" % umol_kg, "%.5f" % mg_l]


def main():
    folder = sys.argv[1] if len(sys.argv) > 1 else os.path.dirname(
        os.path.abspath(__file__))
    write(folder, "iapws_density.csv",
          ["temp_c", "density_kgm3", "viscosity_pas", "source"], density_rows())
    write(folder, "oxygen_gsw.csv",
          ["temp_c", "oxygen_umolkg", "oxygen_mgl"], oxygen_rows())


main()
