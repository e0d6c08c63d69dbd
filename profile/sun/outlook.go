package sun

import (
	"time"

	"coldseam/profile"
	"coldseam/profile/light"
)

// Outlook is the light of a day on a water.
type Outlook struct {
	Day
	Clock *time.Location // that of the place, nil where it or the longitude is not known, or they do not fit
	// LimitM is how deep 1 % of the noon's light reaches, unknown without a Secchi depth;
	// EveningM how deep that light still goes EveningH before sunset, meaningless unless
	// Evening.
	LimitM   profile.Optional
	Evening  bool
	EveningM profile.Estimate
}

// EveningH is when the evening's light is told, in hours before sunset; a day no longer
// than LongH is evening all along.
const (
	EveningH = 1.0
	LongH    = 4.0
)

// Look gives the outlook for a date. The zone may be nil.
func Look(date time.Time, latitude float64, longitude, secchi profile.Optional, zone *time.Location) Outlook {
	o := Outlook{Day: On(date, latitude, longitude)}
	if longitude.Known && zone != nil && fits(o.Noon.At.In(zone)) {
		o.Clock = zone
	}
	limit := light.OnePercentM(secchi.Value)
	if !secchi.Known || !(limit > 0) || o.Sun == Below {
		return o
	}
	o.LimitM = profile.Some(limit)
	if o.Sun == Crosses && o.LengthH() >= LongH {
		o.Evening = true
		o.EveningM = light.EveningM(secchi.Value, o.HighestDeg, o.ElevationDeg(o.Sunset.SolarH-EveningH))
	}
	return o
}

// noonOffH: where a clock shows another time at the sun's noon, it is not that of the place.
const noonOffH = 3.5

// fits reports whether a clock shows about noon at the sun's noon.
func fits(noon time.Time) bool {
	h := float64(noon.Hour()) + float64(noon.Minute())/60
	return h >= 12-noonOffH && h <= 12+noonOffH
}

// OnClock gives an event by the clock of the place; ok is false where the Outlook has none.
func (o Outlook) OnClock(e Event) (at time.Time, ok bool) {
	if o.Clock == nil || e.At.IsZero() {
		return time.Time{}, false
	}
	return e.At.In(o.Clock), true
}
