package sun

import (
	"math"
	"time"

	"coldseam/profile"
)

// Course is what the sun does on a day about an elevation.
type Course string

// The courses.
const (
	Crosses Course = "crosses" // it comes up to the elevation and goes down from it
	Above   Course = "above"   // it stays over it all day and night
	Below   Course = "below"   // it does not reach it
)

// Event is a time of the day.
type Event struct {
	SolarH float64   // hours of a sundial: the sun stands highest at 12
	At     time.Time // in UTC; zero where the longitude is not known
}

// Day is the light of one day at a place. Sunrise and Sunset are meaningless unless the
// Sun crosses, Dawn and Dusk, the ends of civil twilight, unless Twilight does.
type Day struct {
	Sun, Twilight                     Course
	Dawn, Sunrise, Noon, Sunset, Dusk Event
	HighestDeg                        float64 // the sun at noon

	latitude, declination float64 // at noon
}

// On gives the light of a date, of its year, month and day, at a latitude in degrees.
// Without a longitude the events have sundial times alone, and are good to two minutes.
func On(date time.Time, latitude float64, longitude profile.Optional) Day {
	year, month, day := date.Date()
	noon := time.Date(year, month, day, 12, 0, 0, 0, time.UTC)
	f := finder{latitude, math.Round(float64(noon.Unix()-epoch.Unix())/86400) - longitude.Or(0)/360}
	d := Day{Noon: Event{SolarH: 12}, latitude: latitude}
	d.declination, _ = position(f.moment(12))
	d.HighestDeg = d.ElevationDeg(12)
	d.Sunrise.SolarH, d.Sunset.SolarH, d.Sun = f.events(RiseDeg)
	d.Dawn.SolarH, d.Dusk.SolarH, d.Twilight = f.events(CivilDeg)
	for _, e := range []*Event{&d.Dawn, &d.Sunrise, &d.Noon, &d.Sunset, &d.Dusk} {
		if longitude.Known {
			e.At = after(f.moment(e.SolarH))
		}
	}
	return d
}

// LengthH is how long the sun is up, hours.
func (d Day) LengthH() float64 {
	switch d.Sun {
	case Above:
		return 24
	case Below:
		return 0
	}
	return d.Sunset.SolarH - d.Sunrise.SolarH
}

// ElevationDeg is the sun's at an hour of the sundial.
func (d Day) ElevationDeg(solarH float64) float64 {
	return elevation(d.latitude, d.declination, 15*(solarH-12))
}

// finder finds the events of a day.
type finder struct {
	latitude float64
	noon     float64 // of the clock of the place, in days after the epoch
}

// moment is when the sundial shows an hour, in days after the epoch.
func (f finder) moment(solarH float64) float64 {
	t := f.noon + (solarH-12)/24
	_, ahead := position(t)
	return t - ahead/60/24
}

// events finds the two hours of the sundial at which the sun passes an elevation.
func (f finder) events(elevationDeg float64) (up, down float64, course Course) {
	up, first := f.event(elevationDeg, -1)
	down, second := f.event(elevationDeg, 1)
	if first != Crosses {
		return 0, 0, first
	}
	return up, down, second
}

// event finds the one before noon, side -1, or after it, 1: the declination changes by up
// to a minute of arc an hour, so that it is asked again at the time found.
func (f finder) event(elevationDeg, side float64) (solarH float64, course Course) {
	solarH = 12 + 6*side
	cos := 0.0
	for range 5 {
		d, _ := position(f.moment(solarH))
		cos = (math.Sin(rad(elevationDeg)) - math.Sin(rad(f.latitude))*math.Sin(rad(d))) / (math.Cos(rad(f.latitude)) * math.Cos(rad(d)))
		solarH = 12 + side*deg(math.Acos(math.Max(-1, math.Min(1, cos))))/15
	}
	switch {
	case cos > 1:
		return 0, Below
	case cos < -1:
		return 0, Above
	}
	return solarH, Crosses
}
