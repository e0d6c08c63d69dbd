// Package sun says when the sun rises and sets on a day at a place, how long twilight
// lasts, how high the sun stands, and how far its light reaches down into water as it
// sinks.
//
// Times are good to a minute between 65 degrees north and south, and worse where the sun
// grazes the horizon, near the polar circles; the horizon is that of flat country, and a
// hill or a forest at the water's edge is not known.
package sun

import (
	"math"
	"time"
)

// Elevations of the sun's centre at which an event happens, degrees: at sunrise its upper
// edge, 16 minutes of arc over the centre, is seen at the horizon through air that lifts
// it by 34 (the convention of the almanacs); civil twilight ends at 6 degrees below.
const (
	RiseDeg  = -50.0 / 60
	CivilDeg = -6.0
)

// position gives the sun's declination in degrees, and the equation of time in minutes, by
// which a sundial is ahead of the clock, at a number of days after noon of 1 January 2000
// UTC.
//
// Source: Meeus 1998, Astronomical Algorithms, chapters 25 (the lower accuracy) and 28, as
// the NOAA's solar calculator uses them; checked against tables of the U.S. Naval
// Observatory.
func position(days float64) (declination, equation float64) {
	t := days / 36525
	mean := 280.46646 + t*(36000.76983+0.0003032*t)
	anomaly := rad(357.52911 + t*(35999.05029-0.0001537*t))
	eccentricity := 0.016708634 - t*(0.000042037+0.0000001267*t)
	centre := math.Sin(anomaly)*(1.914602-t*(0.004817+0.000014*t)) + math.Sin(2*anomaly)*(0.019993-0.000101*t) + math.Sin(3*anomaly)*0.000289
	node := rad(125.04 - 1934.136*t)
	longitude := rad(mean + centre - 0.00569 - 0.00478*math.Sin(node))
	tilt := rad(23.4392911 - t*(0.013004167+t*(0.0000001639-0.0000005036*t)) + 0.00256*math.Cos(node))
	declination = deg(math.Asin(math.Sin(tilt) * math.Sin(longitude)))
	y, m := math.Tan(tilt/2)*math.Tan(tilt/2), 2*rad(mean)
	equation = 4 * deg(y*math.Sin(m)-2*eccentricity*math.Sin(anomaly)+4*eccentricity*y*math.Sin(anomaly)*math.Cos(m)-
		y*y/2*math.Sin(2*m)-1.25*eccentricity*eccentricity*math.Sin(2*anomaly))
	return declination, equation
}

func rad(d float64) float64 { return d * math.Pi / 180 }
func deg(r float64) float64 { return r * 180 / math.Pi }

// epoch is noon of 1 January 2000 UTC.
var epoch = time.Date(2000, 1, 1, 12, 0, 0, 0, time.UTC)

// after is the time so many days after the epoch; a Duration alone ends after 292 years.
func after(days float64) time.Time {
	whole := math.Floor(days)
	return epoch.AddDate(0, 0, int(whole)).Add(time.Duration((days - whole) * 24 * float64(time.Hour)))
}

// elevation is the sun's at a latitude, a declination and an hour angle, all in degrees,
// without the air's lift.
func elevation(latitude, declination, hourAngle float64) float64 {
	s := math.Sin(rad(latitude))*math.Sin(rad(declination)) + math.Cos(rad(latitude))*math.Cos(rad(declination))*math.Cos(rad(hourAngle))
	return deg(math.Asin(math.Max(-1, math.Min(1, s))))
}

// Elevation is how high the sun's centre stands over the horizon at a time and a place,
// degrees, below zero where it is down; the air's lift is left out.
func Elevation(at time.Time, latitude, longitude float64) float64 {
	at = at.UTC()
	days := at.Sub(epoch).Hours() / 24
	declination, equation := position(days)
	hours := float64(at.Hour()) + float64(at.Minute())/60 + float64(at.Second())/3600
	return elevation(latitude, declination, 15*(hours-12)+longitude+equation/4)
}
