package report

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"coldseam/profile/catches"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// NothingCaught is said of a book, or what was asked of it, without a catch.
const NothingCaught = "No catch is noted: coldseam caught \"rainbow 16 ft\" notes one with today's drop."

// Caught tells what was caught, fish by fish, in these units, for a terminal of a width.
func Caught(taken []catches.Taken, u unit.System, width int) string {
	s := speaker{u: u.Shown()}
	var parts []string
	for _, t := range catches.TallyBy(taken) {
		name := plain.Line(t.Fish)
		if name == "" {
			name = "fish not named"
		}
		part := WrapTo(strings.TrimSuffix(sentence(name), ".")+": "+strconv.Itoa(t.Count)+" taken", width) + "\n"
		for _, r := range s.tally(t) {
			part += r.text(width)
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, "\n")
}

// CatchLegend says what the picture of catches shows.
func CatchLegend(marks string) string {
	return "Each letter is one fish: " + marks + ". Fish are taken where a fly was: what was not tried is not in it."
}

// fewest is how many fish have a middle worth telling; of fewer the ends alone are told.
const fewest = 4

// tally tells where and when one fish was taken, in counts.
func (s speaker) tally(t catches.Tally) (rows []Row) {
	span := func(label string, v catches.Spread, say func(low, high float64) string) {
		if v.N == 0 {
			return
		}
		row := Row{Label: label, Value: say(v.Least, v.Most)}
		var more []string
		if half := say(v.Low, v.High); v.N >= fewest && half != row.Value {
			more = append(more, "half of them "+half)
		}
		if v.N < t.Count {
			more = append(more, fmt.Sprintf("known of %d", v.N))
		}
		row.Detail = strings.Join(more, "; ")
		rows = append(rows, row)
	}
	span("Depth", t.Depth, s.u.Span)
	span("Water", t.Temp, s.degrees)
	span("Thermocline", t.Below, s.beside)
	add := func(label string, parts []string) {
		if len(parts) > 0 {
			rows = append(rows, Row{Label: label, Value: strings.Join(parts, ", ")})
		}
	}
	add("Band", byPart(t))
	add("Months", byMonth(t))
	add("Hours", byHour(t))
	if t.NoDepth > 0 {
		add("No depth", []string{"noted of " + strconv.Itoa(t.NoDepth)})
	}
	return rows
}

// beside says depths beside the thermocline, below it where they are above zero.
func (s speaker) beside(low, high float64) string {
	side := func(m float64) (text, where string) {
		switch text = s.u.Length(max(m, -m)); {
		case s.u.Mark(max(m, -m)) == "0":
			return "at it", ""
		case m < 0:
			return text, " above it"
		}
		return text, " below it"
	}
	a, sideA := side(low)
	b, sideB := side(high)
	switch {
	case a+sideA == b+sideB:
		return a + sideA
	case sideA == sideB: // the one nearer to it first
		return s.u.Span(min(max(low, -low), max(high, -high)), max(low, -low, high, -high)) + sideA
	case sideA == "":
		return "from it to " + b + sideB
	}
	return a + sideA + " to " + b + sideB
}

// byPart counts fish by the part of the band.
func byPart(t catches.Tally) (parts []string) {
	names := map[catches.Part]string{
		catches.Above: "above it", catches.BestBet: "in its best bet", catches.Rest: "in the rest of it", catches.Below: "below it",
	}
	for _, p := range catches.Parts {
		if n := t.Parts[p]; n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", n, names[p]))
		}
	}
	return parts
}

// byMonth counts fish by month.
func byMonth(t catches.Tally) (parts []string) {
	for m, n := range t.Months {
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%s %d", time.Month(m+1), n))
		}
	}
	if t.NoMonth > 0 && len(parts) > 0 {
		parts = append(parts, fmt.Sprintf("not noted %d", t.NoMonth))
	}
	return parts
}

// hoursTogether are told as one span of the day.
const hoursTogether = 3

// byHour counts fish by the hours of the day, three together.
func byHour(t catches.Tally) (parts []string) {
	for h := 0; h < len(t.Hours); h += hoursTogether {
		n := 0
		for _, v := range t.Hours[h : h+hoursTogether] {
			n += v
		}
		if n > 0 {
			parts = append(parts, fmt.Sprintf("%d:00 to %d:00 %d", h, h+hoursTogether, n))
		}
	}
	if t.NoHour > 0 && len(parts) > 0 {
		parts = append(parts, fmt.Sprintf("not noted %d", t.NoHour))
	}
	return parts
}

// CatchesJSON is what was caught, for scripts.
type CatchesJSON struct {
	Fish    []TallyJSON `json:"fish"`
	Catches []TakenJSON `json:"catches"`
}

// TallyJSON counts one fish.
type TallyJSON struct {
	Fish    string               `json:"fish"`
	Count   int                  `json:"count"`
	NoDepth int                  `json:"without_depth"`
	DepthM  *SpreadJSON          `json:"depth_m,omitempty"`
	TempC   *SpreadJSON          `json:"temp_c,omitempty"`
	BelowM  *SpreadJSON          `json:"below_thermocline_m,omitempty"`
	Parts   map[catches.Part]int `json:"band"`
	Months  [12]int              `json:"months"`
	Hours   [24]int              `json:"hours"`
	NoMonth int                  `json:"without_month"`
	NoHour  int                  `json:"without_hour"`
}

// SpreadJSON is how values lie; low to high is the middle half.
type SpreadJSON struct {
	N      int     `json:"fish"`
	Median float64 `json:"median"`
	Low    float64 `json:"low"`
	High   float64 `json:"high"`
	Least  float64 `json:"least"`
	Most   float64 `json:"most"`
}

// TakenJSON is one catch.
type TakenJSON struct {
	Fish   string       `json:"fish"`
	Count  int          `json:"count"`
	Water  string       `json:"water,omitempty"`
	Date   string       `json:"date,omitempty"`
	Time   string       `json:"time,omitempty"`
	DepthM *float64     `json:"depth_m,omitempty"`
	TempC  *float64     `json:"temp_c,omitempty"`
	BelowM *float64     `json:"below_thermocline_m,omitempty"`
	Part   catches.Part `json:"band,omitempty"`
}

// CatchesAsJSON makes the stable form of catches.
func CatchesAsJSON(taken []catches.Taken) CatchesJSON {
	out := CatchesJSON{Fish: []TallyJSON{}, Catches: []TakenJSON{}}
	for _, t := range catches.TallyBy(taken) {
		for _, p := range catches.Parts {
			t.Parts[p] += 0 // none is printed too
		}
		out.Fish = append(out.Fish, TallyJSON{
			Fish: t.Fish, Count: t.Count, NoDepth: t.NoDepth, DepthM: spreadJSON(t.Depth), TempC: spreadJSON(t.Temp), BelowM: spreadJSON(t.Below),
			Parts: t.Parts, Months: t.Months, Hours: t.Hours, NoMonth: t.NoMonth, NoHour: t.NoHour,
		})
	}
	for _, t := range taken {
		out.Catches = append(out.Catches, TakenJSON{t.Fish, t.Count, t.Water, t.Date, t.Time, known(t.DepthM), known(t.TempC), known(t.BelowM), t.Part})
	}
	return out
}

func spreadJSON(s catches.Spread) *SpreadJSON {
	if s.N == 0 {
		return nil
	}
	r := func(v float64) float64 { return unit.RoundTo(v, 3) }
	return &SpreadJSON{s.N, r(s.Median), r(s.Low), r(s.High), r(s.Least), r(s.Most)}
}
