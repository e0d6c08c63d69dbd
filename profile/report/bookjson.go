package report

import (
	"coldseam/profile"
	"coldseam/profile/layers"
	"coldseam/profile/plan"
)

// BookJSON is the list of a book, the newest first.
type BookJSON struct {
	Drops []InBookJSON `json:"drops"`
	More  int          `json:"more"` // older ones that are not in it
}

// InBookJSON is one drop of the list.
type InBookJSON struct {
	Number      int               `json:"number,omitempty"` // absent where the page cannot be read
	Path        string            `json:"path"`
	Date        string            `json:"date,omitempty"`
	Water       string            `json:"water,omitempty"`
	Spot        string            `json:"spot,omitempty"`
	For         string            `json:"for,omitempty"` // as the page has it
	Readings    int               `json:"readings"`
	Structure   layers.Structure  `json:"structure,omitempty"` // absent where there is no plan
	Thermocline *profile.Estimate `json:"thermocline_m,omitempty"`
	BandTop     *profile.Estimate `json:"band_top_m,omitempty"`
	BandBottom  *profile.Estimate `json:"band_bottom_m,omitempty"`
	Caught      int               `json:"caught"` // fish
	Unended     bool              `json:"not_ended"`
	Error       string            `json:"error,omitempty"` // why the page cannot be read
}

// InBookAsJSON makes the stable form of a drop in the list; p is its plan, or nil.
func InBookAsJSON(number int, path string, d profile.Drop, p *plan.Plan, unended bool) InBookJSON {
	out := InBookJSON{
		Number: number, Path: path, Date: d.Date, Water: d.Water, Spot: d.Spot, For: d.For,
		Readings: len(d.Readings), Caught: fishTaken(d), Unended: unended,
	}
	if p == nil {
		return out
	}
	out.Structure, out.Thermocline = p.Layers.Structure, rounded(p.Layers.Thermocline, 3)
	if p.Band.Found {
		out.BandTop, out.BandBottom = rounded(&p.Band.Top, 3), rounded(&p.Band.Bottom, 3)
	}
	return out
}
