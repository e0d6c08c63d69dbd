package report

import (
	"fmt"

	"coldseam/profile/band"
	"coldseam/profile/fish"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// comfort is the range that the fish likes, "55 to 66 F".
func (s speaker) comfort() string {
	return s.degrees(s.p.Fish.ComfortLowC.Value, s.p.Fish.ComfortHighC.Value)
}

// rate is how far up or down a degree is, "about 1.5 ft for each 2 F".
func (s speaker) rate(perDegreeM float64) string {
	if s.u.Temp == unit.Fahrenheit {
		return fmt.Sprintf("about %s for each 2 F", s.span(perDegreeM*5/9*2))
	}
	return fmt.Sprintf("about %s for each 1 C", s.span(perDegreeM))
}

// expect says what one reading at the fly's depth should show, and what to do when
// it does not.
func (s speaker) expect(a plan.AtFly) string {
	rate := s.rate(a.PerDegreeM)
	t := fmt.Sprintf("One reading at the fly's depth, %s: expect %s.", s.u.Length(a.DepthM), s.degrees(a.LowC, a.HighC))
	better := fmt.Sprintf(" Warmer is good news: they like %s.", s.comfort())
	suits := fmt.Sprintf(" Anything from %s suits them", s.comfort())
	switch a.Turn {
	case plan.WarmerAside:
		return t + better + " Colder: look for warmer water elsewhere, in sunny, sheltered bays and on the shore that the wind blows to (common practice)."
	case plan.WarmerAbove:
		return t + better + " Colder: go shallower, " + rate + "."
	case plan.WarmerUnder:
		return t + better + " Colder: go deeper, " + rate + "."
	case plan.TooWarmAbove:
		return t + fmt.Sprintf(" Warmer: go deeper, %s; colder: shallower by as much.", rate)
	case plan.NoOxygenAbove:
		return t + suits + ", but not above the band: it has too little oxygen there."
	case plan.AllComfort:
		return t + suits + "."
	case plan.CoolingComfort:
		return t + suits + fmt.Sprintf("; colder: go shallower, %s; over %s: deeper by as much.", rate, s.u.Degrees(s.p.Fish.ComfortHighC.Value))
	}
	return t
}

// noTake says how to change the depth when nothing takes, and which way first.
func (s speaker) noTake(first plan.Way) string {
	step := "6 to 12 inches"
	if !s.u.Feet() {
		step = "15 to 30 cm"
	}
	t := fmt.Sprintf("No bites: change depth by %s every 5 to 10 minutes (common practice)", step)
	top, _ := s.p.Band.Safe(s.p.Column.Last().DepthM)
	switch first {
	case plan.UpOxygen:
		t += ", shallower first: late in winter oxygen fails from the bottom up"
	case plan.UpWarmer:
		t += ", shallower first: the warmer water is there"
	case plan.DownWarmer:
		t += ", deeper first: the warmer water is there"
	case plan.DownOxygen:
		t += fmt.Sprintf(", deeper first: above %s there is too little oxygen", s.u.Length(top))
	case plan.DownCooler:
		t += fmt.Sprintf(", deeper first: above %s it is too warm", s.u.Length(top))
		if _, bottom, bet := s.p.Band.BestBet(s.p.Column.Last().DepthM); bet == band.UpperPart {
			t += fmt.Sprintf(", and below %s oxygen is unknown", s.u.Length(bottom))
		}
	}
	return t + "."
}

// changes says what would change the advice.
func (s speaker) changes() []string {
	out := []string{}
	for _, c := range s.p.Changes() {
		out = append(out, s.change(c))
	}
	return out
}

func (s speaker) change(c plan.Change) string {
	f, start := s.p.Fish, s.u.Length(s.p.FlyM())
	most, need := s.u.Degrees(f.ComfortHighC.Value), number(f.OxygenMgL.Value)
	switch c {
	case plan.ColderBelow:
		return fmt.Sprintf("a reading of %s or less further down", most)
	case plan.CoolerWater:
		return fmt.Sprintf("water of %s or less, from a spring or after cool weather", most)
	case plan.MoreOxygen:
		suits := most + " or less"
		if f.Kind != fish.Coldwater {
			suits = s.comfort()
		}
		return fmt.Sprintf("oxygen of %s mg/L or more in water of %s", need, suits)
	case plan.LessOxygen:
		return fmt.Sprintf("oxygen below %s mg/L at %s would move you %s", need, start, s.retreat(s.p.Retreat()))
	case plan.WarmerNearby:
		return fmt.Sprintf("water nearer to %s, in a sunny bay or after some warm days, would move you there", s.comfort())
	case plan.WarmerStart:
		return fmt.Sprintf("water over %s at %s would move you down", most, start)
	case plan.ColderStart:
		return fmt.Sprintf("water under %s at %s would move you up", s.u.Degrees(f.ComfortLowC.Value), start)
	case plan.WindTilts:
		return s.windTilts()
	}
	return string(c)
}

// retreat says where too little oxygen at the start would send the angler.
func (s speaker) retreat(r plan.Retreat) string {
	switch r.To {
	case plan.ToUnder:
		return "down: above it there is too little as well"
	case plan.ToDepth:
		return "up to " + s.u.Length(r.TopM)
	case plan.ToEdge:
		return "up to the band's edge, " + s.u.Length(r.TopM)
	case plan.ToSurer:
		return "up to " + s.u.Span(r.TopM, r.BottomM) + ", though it is warmer than they like"
	case plan.ToAbove:
		return "up"
	case plan.ToWarmer:
		return "up, into water warmer than they like"
	}
	return "off this place: hardly any water above it is cool enough"
}
