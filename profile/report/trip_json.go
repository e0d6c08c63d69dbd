package report

import (
	"time"

	"coldseam/profile"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/trip"
	"coldseam/profile/unit"
)

// TripJSON is the stable form of a Trip.
type TripJSON struct {
	Water       string            `json:"water,omitempty"`
	Date        string            `json:"date"`
	For         string            `json:"for"`
	State       trip.State        `json:"state"`
	From        trip.Source       `json:"from"`
	Drops       int               `json:"drops"`
	Years       int               `json:"years"`
	Last        string            `json:"last_drop,omitempty"`
	Thermocline *profile.Estimate `json:"thermocline_m,omitempty"`
	Top         *profile.Estimate `json:"band_top_m,omitempty"`
	MaybeTop    bool              `json:"band_maybe_from_surface"`
	WaterM      *profile.Estimate `json:"water_m,omitempty"` // under the fly
	Taken       bool              `json:"water_by_practice"`
	TooWarm     bool              `json:"too_warm"`
	LineM       float64           `json:"marked_line_m"`
	DeepestM    float64           `json:"deepest_reading_m"`
	RopeM       *SpanOfRope       `json:"anchor_rope_m,omitempty"`
	ReadM       *float64          `json:"read_first_m,omitempty"`
	Leaders     []TieJSON         `json:"leaders"`
	Bring       []string          `json:"bring"`
	Rules       *RulesJSON        `json:"rules,omitempty"` // absent where none are noted
	Sun         *SunJSON          `json:"sun,omitempty"`
}

// SpanOfRope is how much of it an anchor takes.
type SpanOfRope struct {
	Low  float64 `json:"low"`
	High float64 `json:"high"`
}

// TieJSON is a rig for one depth of water.
type TieJSON struct {
	WaterM float64 `json:"water_m"`
	Rig    RigJSON `json:"rig"`
}

// RulesJSON are those noted of a water; what is not limited is absent.
type RulesJSON struct {
	MaxLeaderM  *float64 `json:"max_leader_m,omitempty"`
	MaxFlies    int      `json:"max_flies,omitempty"`
	AddedWeight bool     `json:"added_weight"`
	Indicator   bool     `json:"indicator"`
	Checked     string   `json:"checked,omitempty"`
	Note        string   `json:"note,omitempty"`
}

// JSON makes the stable form.
func (t Trip) JSON() TripJSON {
	s := speaker{plan.Plan{Fish: t.Fish, Rules: t.Rules}, t.Units.Shown()}
	e, k := t.Expect, t.Kit
	out := TripJSON{
		Water: t.Water, Date: t.Day.Format(time.DateOnly), For: t.Fish.Key, State: e.State, From: e.From, Drops: e.Drops, Years: e.Years,
		Thermocline: rounded(e.Thermocline, 3), Top: rounded(e.Edge, 3), MaybeTop: e.MaybeTop, WaterM: rounded(e.Water, 3), Taken: e.WaterTaken, TooWarm: e.TooWarm,
		LineM: unit.RoundTo(k.LineM, 3), DeepestM: unit.RoundTo(k.DeepestM, 3), ReadM: known(k.ReadM),
		Leaders: []TieJSON{}, Bring: t.bring(s), Rules: rulesJSON(t.Rules), Sun: sunJSON(t.Sun),
	}
	if !e.Last.IsZero() {
		out.Last = e.Last.Format(time.DateOnly)
	}
	if k.AnchorM > 0 {
		out.RopeM = &SpanOfRope{unit.RoundTo(k.RopeLowM, 3), unit.RoundTo(k.RopeHighM, 3)}
	}
	for _, tie := range k.Ties {
		out.Leaders = append(out.Leaders, TieJSON{unit.RoundTo(tie.WaterM, 3), Rig(tie.Rig)})
	}
	return out
}

func rulesJSON(r rig.Rules) *RulesJSON {
	if r.Water == "" {
		return nil
	}
	out := &RulesJSON{MaxFlies: r.MaxFlies, AddedWeight: !r.NoAddedWeight, Indicator: !r.NoIndicator, Checked: r.Checked, Note: r.Note}
	if r.MaxLeaderM > 0 {
		out.MaxLeaderM = known(profile.Some(r.MaxLeaderM))
	}
	return out
}
