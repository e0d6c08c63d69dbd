"""Make days.csv, sunrise, sunset and civil twilight by PyEphem, whose own tests compare it
with the tables of the U.S. Naval Observatory.

Usage: python3 make_days.py > days.csv

Hours are those before or after the place's mean noon; 99 where the sun does not cross. The
elevation is the sun's at 15:00 UTC, in degrees, without refraction.
"""
import math
import sys

import ephem

PLACES = [(46.1, -89.3), (33.77, -84.42), (0.0, 37.0), (-45.0, 170.5), (-33.5, 18.4), (60.0, 25.0), (64.8, -147.7), (70.0, 25.0)]
DAYS = [(2026, m, d) for m in range(1, 13) for d in (3, 21)] + [(2024, 2, 29), (2049, 12, 31)]


def event(name, where, noon, horizon, centre):
    where.horizon, where.date = horizon, noon
    try:
        at = getattr(where, name)(ephem.Sun(), use_center=centre)
    except ephem.CircumpolarError:
        return "99"
    hours = (at - noon) * 24
    return "%.3f" % hours if abs(hours) < 12 else "99"


def main():
    print("latitude,longitude,date,dawn,sunrise,sunset,dusk,elevation,command")
    for latitude, longitude in PLACES:
        for day in DAYS:
            where = ephem.Observer()
            where.pressure, where.lat, where.lon = 0, str(latitude), str(longitude)
            noon = ephem.Date("%d/%d/%d 12:00" % day) - longitude / 360
            row = [event("previous_rising", where, noon, "-6", True), event("previous_rising", where, noon, "-0:34", False),
                   event("next_setting", where, noon, "-0:34", False), event("next_setting", where, noon, "-6", True)]
            where.date = "%d/%d/%d 15:00" % day
            sun = ephem.Sun(where)
            row.append("%.3f" % math.degrees(sun.alt))
            print(",".join(["%g" % latitude, "%g" % longitude, "%d-%02d-%02d" % day] + row + ["python3 make_days.py > days.csv"]))


if __name__ == "__main__":
    sys.exit(main())
