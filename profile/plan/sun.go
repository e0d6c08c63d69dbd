package plan

import (
	"time"

	"coldseam/profile"
	"coldseam/profile/sun"
)

// sunOf is the light of the drop's day; nil where the day or the latitude is not known.
func sunOf(d *profile.Drop, zone *time.Location) *sun.Outlook {
	day, _, ok := dated(d.Date)
	if !ok || !d.Latitude.Known {
		return nil
	}
	o := sun.Look(day, d.Latitude.Value, d.Longitude, d.Secchi, zone)
	return &o
}

// sunDeg is how high the sun stood when the drop was taken, degrees.
func (p *Plan) sunDeg() profile.Optional {
	day, clocked, ok := dated(p.Drop.Date)
	if p.Sun == nil || p.Sun.Clock == nil || !ok || !clocked {
		return profile.Optional{}
	}
	at := time.Date(day.Year(), day.Month(), day.Day(), day.Hour(), day.Minute(), 0, 0, p.Sun.Clock)
	return profile.Some(sun.Elevation(at, p.Drop.Latitude.Value, p.Drop.Longitude.Value))
}

// dated reads a drop's date, and says whether it has a time of day.
func dated(date string) (at time.Time, clocked, ok bool) {
	if at, err := time.Parse("2006-01-02 15:04", date); err == nil {
		return at, true, true
	}
	at, err := time.Parse("2006-01-02", date)
	return at, false, err == nil
}
