"""Make the reference tables of package water with two independent libraries.

iapws gives density and viscosity (IAPWS SR6-08(2011)), gsw (TEOS-10) gives the
buoyancy frequency, the oxygen at saturation and what salt adds to the density.

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
STANDARD_GRAVITY = 9.80665
OXYGEN_G_MOL = 31.9988  # 2 x 15.9994

# A made-up fresh-water profile, one reading a metre from the surface.
PROFILE_A_TEMP_C = [21.6, 21.5, 21.5, 21.3, 20.9, 18.2, 14.6,
                    11.8, 10.1, 9.2, 8.7, 8.4, 8.2]


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


def salinity_rows():
    """Density added by sea salt at one atmosphere, TEOS-10.

    The salinity is that of the practical scale, which EOS-80 uses; TEOS-10 wants
    absolute salinity, larger by 35.16504/35.
    """
    for temp in (0.0, 10.0, 20.0, 30.0):
        pure = gsw.rho_t_exact(0.0, temp, 0.0)
        for salinity in (0.1, 0.2, 0.5, 1.0, 2.0, 5.0):
            absolute = salinity * 35.16504 / 35
            salted = gsw.rho_t_exact(absolute, temp, 0.0)
            yield ["%.0f" % temp, "%.1f" % salinity, "%.6f" % (salted - pure)]


def n2_rows(case, sa, ct, p, lat, temps):
    """N2 of each pair of levels, and the two densities it can be made from.

    Both densities of a pair are for the pressure halfway between the levels, so
    that the squeeze of depth is not taken for stability. The distance follows
    from the pressures and the gravity that gsw uses at that latitude.
    """
    n2, p_mid = gsw.Nsquared(sa, ct, p, lat)
    grav = gsw.grav(lat, p)
    for i in range(len(n2)):
        gravity = 0.5 * (grav[i] + grav[i + 1])
        upper = gsw.rho(sa[i], ct[i], p_mid[i])
        lower = gsw.rho(sa[i + 1], ct[i + 1], p_mid[i])
        middle = gsw.rho(0.5 * (sa[i] + sa[i + 1]), 0.5 * (ct[i] + ct[i + 1]),
                         p_mid[i])
        dz = (p[i + 1] - p[i]) * 1e4 / (middle * gravity)
        yield [case, "%.3f" % p_mid[i], "%.4f" % temps[i], "%.4f" % temps[i + 1],
               "%.8f" % upper, "%.8f" % lower, "%.8f" % dz, "%.8f" % gravity,
               "%.8e" % n2[i]]


def check_cast_rows():
    """The brackish one (column 3) of the TEOS-10 check casts, which gsw carries."""
    path = os.path.join(os.path.dirname(gsw.__file__), "tests", "gsw_cv_v3_0.npz")
    check = np.load(path)
    sa, ct, p, temps = (check[name + "_chck_cast"][:, 2]
                        for name in ("SA", "CT", "p", "t"))
    # The 1st to 7th levels, down to 76 dbar.
    sa, ct, p, temps = sa[:7], ct[:7], p[:7], temps[:7]
    lat = float(np.ravel(check["lat_chck_cast"])[2])
    published = check["n2"][:6, 2]
    made = gsw.Nsquared(sa, ct, p, lat)[0]
    if np.max(np.abs(made - published)) > 1e-15:
        sys.exit("gsw.Nsquared does not give the published N2 of the check cast")
    return n2_rows("check_cast_3", sa, ct, p, lat, temps)


def profile_a_rows():
    temps = np.array(PROFILE_A_TEMP_C)
    rho = np.array([liquid(t)["rho"] for t in temps])
    metre = STANDARD_GRAVITY * 0.5 * (rho[:-1] + rho[1:]) / 1e4
    p = np.concatenate([[0.0], np.cumsum(metre)])
    sa = np.zeros_like(temps)
    ct = gsw.CT_from_t(sa, temps, p)
    # At this latitude gravity at the surface is standard gravity.
    return n2_rows("profile_a", sa, ct, p, 45.49731694, temps)


def main():
    folder = sys.argv[1] if len(sys.argv) > 1 else os.path.dirname(
        os.path.abspath(__file__))
    write(folder, "iapws_density.csv",
          ["temp_c", "density_kgm3", "viscosity_pas", "source"], density_rows())
    write(folder, "oxygen_gsw.csv",
          ["temp_c", "oxygen_umolkg", "oxygen_mgl"], oxygen_rows())
    write(folder, "salinity_gsw.csv",
          ["temp_c", "salinity_gkg", "increment_kgm3"], salinity_rows())
    write(folder, "n2_gsw.csv",
          ["case", "p_mid_dbar", "temp_upper_c", "temp_lower_c", "rho_upper_kgm3",
           "rho_lower_kgm3", "dz_m", "gravity_ms2", "n2_s2"],
          list(check_cast_rows()) + list(profile_a_rows()))


main()
