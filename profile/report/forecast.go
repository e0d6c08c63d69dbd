package report

import (
	"fmt"
	"time"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/forecast"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/rig"
	"coldseam/profile/unit"
)

// expected says what is to be expected on a day; its speaker has the last drop.
type expected struct {
	speaker
	e plan.Expected
}

// Expected says for a terminal of a width what is to be expected on a day, and what to read
// first to check it.
func Expected(e plan.Expected, width int) string {
	s := expected{speak(e.Last), e}
	return laid(width, s.title(), s.whenLastRead(), s.rests(), s.rows(), s.notes())
}

// title names the water, the day and the fish.
func (s expected) title() string {
	t := s.e.Day.Format(time.DateOnly) + ", for " + s.p.Fish.Name
	if w := s.p.Drop.Water; w != "" {
		t = plain.Line(w) + ", " + t
	}
	return t
}

// rests says what the forecast rests on.
func (s expected) rests() string {
	drops := "one drop"
	if s.e.Drops > 1 {
		drops = fmt.Sprintf("%d drops of this season", s.e.Drops)
	}
	if n := s.e.EarlierYears; n > 0 {
		drops += " and " + count(n, "earlier year")
	}
	last := "the last " + s.daysBefore() + " before"
	if s.e.Drops == 1 && s.e.EarlierYears == 0 {
		last = s.daysBefore() + " before"
	}
	return "No reading: an expectation from " + drops + ", " + last + ". Ranges hold in 8 of 10 cases."
}

func (s expected) daysBefore() string {
	n := int(s.e.DaysAhead + 0.5)
	if n == 0 {
		return "hours"
	}
	return count(n, "day")
}

// whenLastRead are the cautions about warmth that the last drop gave.
func (s expected) whenLastRead() (out []string) {
	for _, c := range s.p.Cautions {
		if c == plan.Warm70 || c == plan.Warm68 {
			out = append(out, "When last read: "+s.today(c))
		}
	}
	return out
}

func (s expected) rows() []Row {
	out := []Row{s.from()}
	if row, ok := s.to(); ok {
		out = append(out, row)
	}
	out = append(out, s.at("Thermocline", s.e.Thermocline, ""), Row{"Top water", s.u.Degrees(s.e.MixedC.Best), s.degrees(s.e.MixedC.Low, s.e.MixedC.High)})
	if s.e.Rig != nil {
		out = append(out, s.overRow())
	}
	return append(out, s.readRow())
}

// at is the row of a depth with its interval, and what is there.
func (s expected) at(label string, e profile.Estimate, what string) Row {
	detail := s.u.Span(e.Low, e.High)
	if what != "" {
		detail += "; " + what
	}
	return Row{label, s.u.Length(e.Best), detail}
}

// from is where the water begins to be cool enough for the fish.
func (s expected) from() Row {
	const label = "Fish from"
	warm := s.u.Degrees(s.p.Fish.ComfortHighC.Value)
	switch {
	case s.e.Surface == forecast.Colder:
		return Row{label, "the surface", "nothing should be warmer than " + warm}
	case s.e.Top != nil && s.e.Surface == forecast.Unknown:
		return s.at(label, *s.e.Top, "or from the surface, if it has cooled to "+warm)
	case s.e.Top != nil:
		return s.at(label, *s.e.Top, warm+" or less from there down")
	case s.p.Layers.MixedTempC > s.p.Fish.ComfortHighC.Value:
		return Row{label, "not known", "the last drop did not reach water of " + warm + " or less"}
	}
	return Row{label, "not known", "the top may be over " + warm + " by then; the last drop had no water so warm"}
}

// to is where it begins to be too cold for fish that need it warm.
func (s expected) to() (row Row, ok bool) {
	const label = "Fish to"
	cold := s.u.Degrees(s.p.Fish.ComfortLowC.Value)
	switch {
	case s.p.Fish.Kind == fish.Coldwater:
		return row, false
	case s.e.Bottom != nil:
		return s.at(label, *s.e.Bottom, "colder than "+cold+" below"), true
	case s.p.Layers.MixedTempC < s.p.Fish.ComfortLowC.Value:
		return Row{label, "not known", "all of it was colder than " + cold + " when last read"}, true
	}
	return row, false
}

// overRow is what that means for the rig.
func (s expected) overRow() Row {
	then := s.speaker
	then.p.Band, then.p.Column, then.p.Rig = s.e.Moved.Band, s.e.Moved.Column, s.e.Rig
	r := *s.e.Rig
	name, _ := then.rigName(r)
	switch {
	case r.Kind == rig.Hung:
		name += ", fly " + s.u.Length(r.HangM) + " under it"
	case len(r.Parts) > 0:
		name += " of " + s.u.Piece(r.LeaderM)
	}
	if then.p.Band.Suspended {
		return Row{"Fly", s.u.Length(r.FlyM) + " down", "over open water; " + name}
	}
	return Row{"Cast over", s.u.Marked(then.p.Band.WaterM), "of water; " + name}
}

// readRow says what to read first to check all that.
func (s expected) readRow() Row {
	check := "if it is otherwise, take a whole drop"
	if s.e.Top != nil {
		check = fmt.Sprintf("%s should be near %s; if not, take a whole drop", s.u.Degrees(s.p.Fish.ComfortHighC.Value), s.u.Length(s.e.Top.Best))
	}
	return Row{"Read first", s.marks(s.e.ReadM), check}
}

// marks lists depths at marks of the line, "15, 17 and 20 ft".
func (s expected) marks(depths []float64) string {
	var words []string
	for _, z := range depths {
		words = append(words, s.u.Mark(z))
	}
	return list(words) + " " + s.u.Shown().Depth.String()
}

func (s expected) notes() []string {
	oxygen := "oxygen is not forecast"
	if s.p.Band.Oxygen {
		oxygen += ": measure it again"
	}
	return []string{
		fmt.Sprintf("Confidence: depth %s; %s.", s.e.Level, oxygen),
		"The weather of the days between is not in it: a storm or a cold week moves all of this.",
	}
}

// NoForecast says why nothing is forecast for a day, and what to do; without a capital and a
// full stop.
func NoForecast(r forecast.Refusal, day time.Time) string {
	last := "the last drop, of " + r.Last.Format(time.DateOnly) + ","
	switch r.Why {
	case forecast.NoDrop:
		return "there is no drop to forecast from: take one with coldseam drop"
	case forecast.NotAhead:
		return fmt.Sprintf("%s is not before %s: ask for a day after it", last, day.Format(time.DateOnly))
	case forecast.OtherSeason:
		return fmt.Sprintf("%s is of another season: a forecast needs one at most %d days before", last, forecast.MostDays)
	case forecast.TooOld:
		return fmt.Sprintf("%s was more than %d days before, and so far ahead nothing holds: read again", last, forecast.MostDays)
	case forecast.TooEarly:
		return last + " was taken before the layers have settled, which they have by May (November in the south): read again"
	case forecast.TooLate:
		return "from the end of September (March in the south) waters turn over, and nothing is forecast: take a drop"
	case forecast.TooFew:
		return last + " has under three depths: read again"
	case forecast.UnderIce:
		return last + " is colder on top, as under ice: read again when the layers are there"
	case forecast.OneLayer:
		return last + " is one layer, top to bottom: there is no thermocline to forecast"
	}
	return string(r.Why)
}

// ExpectedJSON is the stable form of what is expected.
type ExpectedJSON struct {
	Water        string            `json:"water,omitempty"`
	On           string            `json:"on"`
	For          string            `json:"for"`
	Last         string            `json:"last"`
	DaysAhead    float64           `json:"days_ahead"`
	Drops        int               `json:"drops"`
	EarlierYears int               `json:"earlier_years"`
	Thermocline  *profile.Estimate `json:"thermocline_m"`
	TopC         *profile.Estimate `json:"top_temp_c"`
	Surface      forecast.Surface  `json:"surface"`
	From         *profile.Estimate `json:"fish_from_m,omitempty"`
	To           *profile.Estimate `json:"fish_to_m,omitempty"`
	WaterM       *float64          `json:"water_m,omitempty"`
	FlyM         *float64          `json:"fly_m,omitempty"`
	LeaderM      *float64          `json:"leader_m,omitempty"`
	Rig          rig.Kind          `json:"rig,omitempty"`
	ReadM        []float64         `json:"read_m"`
	Confidence   plan.Level        `json:"confidence_depth"`
	Warnings     []string          `json:"warnings"`
}

// ExpectedAsJSON makes it.
func ExpectedAsJSON(e plan.Expected) ExpectedJSON {
	s := expected{speak(e.Last), e}
	out := ExpectedJSON{
		Water: plain.Line(s.p.Drop.Water), On: e.Day.Format(time.DateOnly), For: s.p.Fish.Key, Last: s.p.Drop.Date,
		DaysAhead: unit.RoundTo(e.DaysAhead, 3), Drops: e.Drops, EarlierYears: e.EarlierYears,
		Thermocline: rounded(&e.Thermocline, 3), TopC: rounded(&e.MixedC, 3), Surface: e.Surface,
		From: rounded(e.Top, 3), To: rounded(e.Bottom, 3), ReadM: []float64{}, Confidence: e.Level, Warnings: append([]string{}, s.whenLastRead()...),
	}
	for _, z := range e.ReadM {
		out.ReadM = append(out.ReadM, unit.RoundTo(z, 3))
	}
	if e.Rig != nil {
		water, fly := unit.RoundTo(e.Moved.Band.WaterM, 3), unit.RoundTo(e.Rig.FlyM, 3)
		out.WaterM, out.FlyM, out.Rig = &water, &fly, e.Rig.Kind
		if len(e.Rig.Parts) > 0 {
			leader := unit.RoundTo(e.Rig.LeaderM, 3)
			out.LeaderM = &leader
		}
	}
	return out
}
