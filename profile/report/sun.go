package report

import (
	"fmt"
	"math"
	"time"

	"coldseam/profile"
	"coldseam/profile/plan"
	"coldseam/profile/sun"
	"coldseam/profile/unit"
)

// Sun says when the sun rises and sets on the day of a plan, and how far its light sinks;
// nothing where the day or the latitude is not known.
func Sun(p plan.Plan) []string {
	if p.Sun == nil {
		return nil
	}
	out := []string{sunTimes(*p.Sun)}
	if !p.UnderIce() {
		out = append(out, evening(*p.Sun, p.Drop.Units.Shown())...)
	}
	return out
}

// sunTimes are sunrise, sunset and twilight, by the clock where that is known.
func sunTimes(o sun.Outlook) string {
	at, by := solarTime, "; by the sundial, where noon is 12:00: for clock times note the longitude, and in the settings the time zone"
	if noon, ok := o.OnClock(o.Noon); ok {
		at = func(e sun.Event) string { return e.At.In(o.Clock).Round(time.Minute).Format("15:04") }
		by = " (" + noon.Format("MST") + ")"
	}
	light := ""
	switch o.Twilight {
	case sun.Crosses:
		light = fmt.Sprintf("light from %s to %s", at(o.Dawn), at(o.Dusk))
	case sun.Above:
		light = "light all night"
	case sun.Below:
		light = "and no light"
	}
	switch o.Sun {
	case sun.Above:
		return "The sun does not set."
	case sun.Below:
		if o.Twilight == sun.Below {
			by = ""
		}
		return fmt.Sprintf("The sun does not rise, %s%s.", light, by)
	}
	return fmt.Sprintf("Sunrise %s, sunset %s, %s, the sun up for %s%s.", at(o.Sunrise), at(o.Sunset), light, hours(o.LengthH()), by)
}

// solarTime is an event by the sundial.
func solarTime(e sun.Event) string {
	minutes := int(math.Round(e.SolarH * 60))
	return fmt.Sprintf("%02d:%02d", minutes/60%24, minutes%60)
}

// hours prints a length of time, "15 h 18 min".
func hours(h float64) string {
	minutes := int(math.Round(h * 60))
	return fmt.Sprintf("%d h %d min", minutes/60, minutes%60)
}

// evening says how far the light sinks; nothing without a Secchi depth.
func evening(o sun.Outlook, u unit.System) []string {
	if !o.Evening {
		return nil
	}
	return []string{fmt.Sprintf("Under a clear sky the light that reaches %s at noon reaches %s an hour before sunset: fish may come up then (common practice).",
		u.Length(o.LimitM.Value), u.Span(o.EveningM.Low, o.EveningM.High))}
}

// SunJSON is the light of the day. The hours are those of the sundial, noon at 12; the times
// are absent where longitude or time zone is not known, and all of an event that does not
// happen.
type SunJSON struct {
	Sun        sun.Course        `json:"sun"`
	Twilight   sun.Course        `json:"twilight"`
	Dawn       *EventJSON        `json:"dawn,omitempty"`
	Sunrise    *EventJSON        `json:"sunrise,omitempty"`
	Noon       *EventJSON        `json:"noon,omitempty"`
	Sunset     *EventJSON        `json:"sunset,omitempty"`
	Dusk       *EventJSON        `json:"dusk,omitempty"`
	LengthH    float64           `json:"length_h"`
	HighestDeg float64           `json:"highest_deg"`
	NoonM      *float64          `json:"noon_light_m,omitempty"`
	EveningM   *profile.Estimate `json:"evening_light_m,omitempty"`
}

// EventJSON is a time of the day.
type EventJSON struct {
	SolarH float64 `json:"solar_h"`
	At     string  `json:"at,omitempty"`
}

func sunJSON(o *sun.Outlook) *SunJSON {
	if o == nil {
		return nil
	}
	event := func(e sun.Event, c sun.Course) *EventJSON {
		if c != sun.Crosses {
			return nil
		}
		out := &EventJSON{SolarH: unit.RoundTo(e.SolarH, 3)}
		if at, ok := o.OnClock(e); ok {
			out.At = at.Round(time.Second).Format(time.RFC3339)
		}
		return out
	}
	out := &SunJSON{
		Sun: o.Day.Sun, Twilight: o.Twilight, LengthH: unit.RoundTo(o.LengthH(), 3), HighestDeg: unit.RoundTo(o.HighestDeg, 2), NoonM: known(o.LimitM),
		Dawn: event(o.Dawn, o.Twilight), Sunrise: event(o.Sunrise, o.Day.Sun), Noon: event(o.Noon, sun.Crosses), Sunset: event(o.Sunset, o.Day.Sun), Dusk: event(o.Dusk, o.Twilight),
	}
	if o.Evening {
		out.EveningM = rounded(&o.EveningM, 3)
	}
	return out
}
