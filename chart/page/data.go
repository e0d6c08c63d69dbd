package page

import (
	"encoding/json"
	"fmt"
	"strconv"

	"coldseam/chart"
	"coldseam/profile"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// data is what the script gets: the picture's options, and the words and numbers that
// stand under the finger, in the angler's units.
type data struct {
	Option map[string]any `json:"option"`
	Depth  string         `json:"depth"` // unit
	Temp   string         `json:"temp"`  // unit
	Rise   string         `json:"rise"`  // unit of the density's rise
	Axes   []switched     `json:"axes"`  // that are there while what they measure is
	Drops  []under        `json:"drops"`
}

// switched is an axis that is there while what it measures is.
type switched struct {
	Key   string `json:"key"`
	Axis  int    `json:"axis"`
	Below bool   `json:"below"` // under the plot, where it needs room of its own
}

// under is what stands under the finger of one drop.
type under struct {
	Name     string        `json:"name"`
	Key      string        `json:"key"`   // series that switches it off
	Curve    [][]float64   `json:"curve"` // depth, temperature, its 80 % interval; of one drop the density's rise too
	Readings []underAPoint `json:"readings"`
	Zones    []underAZone  `json:"zones"`
}

type underAPoint struct {
	Depth float64  `json:"depth"`
	Lines []string `json:"lines"`
}

type underAZone struct {
	Name   string  `json:"name"`
	Top    float64 `json:"top"`
	Bottom float64 `json:"bottom"`
}

// encoded makes the picture and encodes it. The encoder refuses what is no number and
// writes <, > and & so that no text can end the element that holds it.
func encoded(p plot, drops []chart.Drop) ([]byte, error) {
	out := data{Depth: p.u.Depth.String(), Temp: p.u.Temp.String(), Rise: p.riseUnit(), Axes: []switched{}}
	picture := several(p, drops)
	if len(drops) == 1 {
		picture = single(p, drops[0])
	}
	picture.Validate()
	out.Option = picture.JSON()
	out.Option["textStyle"] = map[string]any{"fontSize": textPx, "fontFamily": "system-ui, sans-serif", "color": ink}
	if p.hasOxygen {
		out.Axes = append(out.Axes, switched{"oxygen", oxygenAxis, false})
	}
	if p.hasGradient {
		out.Axes = append(out.Axes, switched{"density", densityAxis, true})
	}
	for i, d := range drops {
		u := under{Name: shortOf(d, i), Key: "d" + strconv.Itoa(i), Zones: []underAZone{}, Curve: [][]float64{}, Readings: []underAPoint{}}
		if len(drops) == 1 {
			u.Name, u.Key = "", "curve"
		}
		for _, q := range d.Curve {
			row := []float64{p.depthOf(q.DepthM), p.tempOf(q.TempC), p.tempOf(q.LowC), p.tempOf(q.HighC)}
			if p.hasGradient {
				row = append(row, p.riseOf(q.RisePerM))
			}
			u.Curve = append(u.Curve, row)
		}
		for _, r := range d.Readings {
			u.Readings = append(u.Readings, underAPoint{p.depthOf(r.DepthM), words(p.u, r)})
		}
		for _, z := range d.Zones {
			u.Zones = append(u.Zones, underAZone{plain.Line(z.Name), p.depthOf(z.TopM), p.depthOf(z.BottomM)})
		}
		out.Drops = append(out.Drops, u)
	}
	b, err := json.Marshal(out)
	if err != nil {
		return nil, fmt.Errorf("the picture cannot be encoded: %w", err)
	}
	return b, nil
}

// words says a reading, and how near to it the water is.
func words(u unit.System, r chart.Reading) []string {
	out := []string{"read " + warmText(u, r) + " " + u.Temp.String() + " at " + deepText(u, r) + " " + u.Depth.String()}
	if r.Oxygen.Known {
		out = append(out, "oxygen "+oxygenText(r.Oxygen)+" mg/L")
	}
	if n := note(r); n != "" {
		out = append(out, n)
	}
	return out
}

// note says what is odd about a reading, "" where nothing is.
func note(r chart.Reading) string {
	switch {
	case !r.Used && r.Flag != "":
		return plain.Line(r.Flag) + ", left out"
	case !r.Used:
		return "left out"
	}
	return plain.Line(r.Flag)
}

// warmText and deepText print a reading's two numbers, each with half of the interval that
// holds it in 8 of 10 cases, where that shows.
func warmText(u unit.System, r chart.Reading) string {
	return degrees(u, r.TempC) + within(u.Temp.DiffFromC(r.ErrC), 1)
}

func deepText(u unit.System, r chart.Reading) string {
	return unit.Digits(u.Depth.From(r.DepthM), 2) + within(u.Depth.From(r.ErrM), 1)
}

func within(standardError float64, decimals int) string {
	text := unit.Digits(chart.Within80*standardError, decimals)
	if text == "0" {
		return ""
	}
	return " ± " + text
}

func depthText(u unit.System, m float64) string {
	return unit.Digits(u.Depth.From(m), 2) + " " + u.Depth.String()
}

func degrees(u unit.System, c float64) string {
	return fmt.Sprintf("%.1f", unit.RoundTo(u.Temp.FromC(c), 1))
}

func oxygenText(o profile.Optional) string { return unit.Digits(o.Value, 1) }

// shortOf names one drop of several: by its date, else by its place.
func shortOf(d chart.Drop, i int) string {
	if d.Short == "" {
		return "drop " + strconv.Itoa(i+1)
	}
	return plain.Line(d.Short)
}
