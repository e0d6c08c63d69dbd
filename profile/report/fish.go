package report

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/unit"
)

// scales are the scales that temperatures of fish are printed in: the one stated, else
// both.
func scales(u unit.System) []unit.Temperature {
	if u.Temp == unit.NoTemperature {
		return []unit.Temperature{unit.Celsius, unit.Fahrenheit}
	}
	return []unit.Temperature{u.Temp}
}

// keyWidth is the width of the table's first column; a longer key has a line of its own.
const keyWidth = 18

// FishTable prints the fishes and their needs, a line each, on the scale of u, or on
// both where it states none.
func FishTable(all []fish.Fish, u unit.System, width int) string {
	var b strings.Builder
	widths := [][]int{{12, 8}, {4, 3}, {4, 3}} // "18.5 to 26.5", then whole degrees
	row := func(key, kind, need, least string, temps func(unit.Temperature) [3]string) {
		line := fmt.Sprintf("%-*s %-9s", keyWidth, key, kind)
		for i := range widths {
			for j, t := range scales(u) {
				line += fmt.Sprintf(" %*s", widths[i][j], temps(t)[i])
			}
		}
		b.WriteString(line + fmt.Sprintf(" %4s %5s\n", need, least))
	}
	row("", "", "", "oxygen", func(t unit.Temperature) [3]string {
		if t != scales(u)[0] {
			return [3]string{}
		}
		return [3]string{"comfort", "warm", "best"}
	})
	row("fish", "kind", "need", "least", func(t unit.Temperature) [3]string { return [3]string{t.String(), t.String(), t.String()} })
	for _, f := range all {
		key := plain.Line(f.Key)
		if utf8.RuneCountInString(key) > keyWidth {
			b.WriteString(key + "\n")
			key = ""
		}
		row(key, f.Kind.String(), bare(f.OxygenMgL), bare(f.OxygenLeastMgL), func(t unit.Temperature) [3]string {
			return [3]string{degree(f.ComfortLowC, t) + " to " + degree(f.ComfortHighC, t), degree(f.UpperUseC, t), degree(f.OptimumC, t)}
		})
	}
	b.WriteString("\n" + WrapTo("comfort: where they are found most; warm: the warmest they use; best: of growth or of choice; oxygen, in mg/L: the least worth fishing, and the least they use. A dash: not known. Sources: coldseam fish NAME.", width) + "\n")
	return b.String()
}

// degree prints a figure as a bare number on a scale, a dash where unknown.
func degree(f fish.Figure, t unit.Temperature) string {
	if !f.Known {
		return "-"
	}
	s := unit.System{Temp: t}.Degrees(f.Value)
	return s[:strings.IndexByte(s, ' ')]
}

// bare prints a figure as it is, a dash where unknown.
func bare(f fish.Figure) string {
	if !f.Known {
		return "-"
	}
	return unit.Exact(f.Value)
}

// figureNames are the names of the figures for people.
var figureNames = map[string]string{
	fish.UseLow: "used from", fish.ComfortLow: "comfortable from", fish.Optimum: "best", fish.ComfortHigh: "comfortable up to",
	fish.UseHigh: "used up to", fish.Lethal: "lethal in time", fish.OxygenLeast: "oxygen used down to", fish.Oxygen: "oxygen needed",
}

// Fish explains one fish: its group, each figure with its source on the scale of u, or
// on both where it states none, and what its body and its habits mean for the angler.
func Fish(f fish.Fish, u unit.System, width int) string {
	var b strings.Builder
	title := plain.Line(f.Name)
	if f.Scientific != "" {
		title += " (" + plain.Line(f.Scientific) + ")"
	}
	b.WriteString(WrapTo(title+", "+f.Kind.String(), width) + "\n")
	if also := otherNames(f); len(also) > 0 {
		b.WriteString(WrapTo("Also called "+list(also)+".", width) + "\n")
	}
	b.WriteString("\n")
	for _, g := range f.Figures() {
		figure(&b, g, u, width)
	}
	b.WriteString("\n")
	for _, text := range append([]string{noteOn(plain.Line(f.Note), u)}, habits(f, u)...) {
		if text != "" {
			b.WriteString(WrapTo(text, width) + "\n")
		}
	}
	return b.String()
}

// otherNames are the names of a fish besides its title.
func otherNames(f fish.Fish) []string {
	var out []string
	for _, n := range append([]string{f.Key}, f.Aliases...) {
		if !strings.EqualFold(n, f.Name) {
			out = append(out, plain.Line(n))
		}
	}
	return out
}

// noted finds the temperatures of a note, "13 C" or "17.7, 11.9 and 9.9 C".
var (
	noted = sync.OnceValue(func() *regexp.Regexp {
		return regexp.MustCompile(`\d+(\.\d+)?((, | to | or | and )\d+(\.\d+)?)* [CF]\b`)
	})
	digits = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\d+(\.\d+)?`) })
)

// noteOn turns the temperatures of a note into the one scale of u, with as many decimals
// as they have.
func noteOn(note string, u unit.System) string {
	if u.Temp == unit.NoTemperature {
		return note
	}
	return noted().ReplaceAllStringFunc(note, func(temps string) string {
		from, _ := unit.TemperatureNamed(temps[len(temps)-1:])
		if from == u.Temp {
			return temps
		}
		return digits().ReplaceAllStringFunc(temps[:len(temps)-1], func(n string) string {
			v, err := strconv.ParseFloat(n, 64)
			if err != nil {
				return n
			}
			_, decimals, _ := strings.Cut(n, ".")
			return strconv.FormatFloat(u.Temp.FromC(from.ToC(v)), 'f', len(decimals), 64)
		}) + u.Temp.String()
	})
}

// habits says what the fish's group, body and feeding mean.
func habits(f fish.Fish, u unit.System) []string {
	out := []string{"Colder water than it likes best does not keep it away, warmer does."}
	if f.Kind != fish.Coldwater {
		out[0] = "Both colder and warmer water than it likes keep it away."
	}
	if f.OpenWater {
		out = append(out, "It feeds in open water: hang the fly at its depth, over deep water (common practice).")
	} else {
		out = append(out, "Look for it where the bottom meets its water (common practice).")
	}
	if f.Salmonid {
		out = append(out, "It is of the salmon family: in a top layer of "+onScales(plan.StopC, u, published)+" or more it is likely to die if released.")
	}
	if f.FlyG.Known {
		out = append(out, fmt.Sprintf("A usual fly for it weighs about %s g (%s).", number(f.FlyG.Value), plain.Line(f.FlyG.Source)))
	}
	if f.Teeth {
		out = append(out, "Its teeth cut tippet: tie a foot of wire or 60 lb line in front of the fly (common practice).")
	}
	if f.CanVent {
		return append(out, "It can let gas out of its swim bladder on the way up, if it is brought up slowly.")
	}
	return append(out, "It cannot let gas out of its swim bladder: do not fish for it deep to release it.")
}

// figure prints one figure with its source, which is wrapped under itself.
func figure(b *strings.Builder, g fish.Named, u unit.System, columns int) {
	name := figureNames[g.Name]
	if !g.Known {
		fmt.Fprintf(b, "  %-19s not known\n", name)
		return
	}
	width := len("2.5 mg/L")
	if len(scales(u)) == 2 {
		width = len("19.6 C (67 F)")
	}
	value := onScales(g.Value, u, published)
	if g.Name == fish.Oxygen || g.Name == fish.OxygenLeast {
		value = unit.Exact(g.Value) + " mg/L"
	}
	before := fmt.Sprintf("  %-19s %-*s  ", name, width, value)
	for _, word := range strings.Fields(g.Source) {
		if utf8.RuneCountInString(word) > columns-len(before) { // an address, say: on a line of its own
			b.WriteString(strings.TrimRight(before, " ") + "\n    " + Wrap(plain.Line(g.Source), "    ", columns-4) + "\n")
			return
		}
	}
	room := strings.Repeat("x", len(before)-1) // what Wrap must leave free in the first line
	_, source, _ := strings.Cut(Wrap(room+" "+plain.Line(g.Source), strings.Repeat(" ", len(before)), columns), " ")
	b.WriteString(before + source + "\n")
}

// onScales prints a temperature on the scale of u, or on both, "19.5 C (67 F)".
func onScales(c float64, u unit.System, print func(unit.System, float64) string) string {
	var out []string
	for _, t := range scales(u) {
		out = append(out, print(unit.System{Temp: t}, c))
	}
	if len(out) == 2 {
		return out[0] + " (" + out[1] + ")"
	}
	return out[0]
}

// published prints a temperature with the digits of its source: tenths of a degree
// Celsius, whole degrees Fahrenheit.
func published(u unit.System, c float64) string {
	if u.Temp == unit.Fahrenheit {
		return u.Degrees(c)
	}
	return unit.Exact(math.Round(c*10)/10) + " C"
}

// FishJSON is the stable form of a fish; a figure not known is absent, and each one
// that is known has its source under the figure's own key.
type FishJSON struct {
	Key         string            `json:"key"`
	Name        string            `json:"name"`
	Scientific  string            `json:"scientific,omitempty"`
	Aliases     []string          `json:"aliases"`
	Kind        string            `json:"kind"`
	Salmonid    bool              `json:"salmonid"`
	OpenWater   bool              `json:"open_water"`
	CanVent     bool              `json:"can_vent"`
	Teeth       bool              `json:"teeth"`
	FlyG        *float64          `json:"fly_g,omitempty"`
	UseLow      *float64          `json:"use_low_c,omitempty"`
	ComfortLow  *float64          `json:"comfort_low_c,omitempty"`
	Optimum     *float64          `json:"optimum_c,omitempty"`
	ComfortHigh *float64          `json:"comfort_high_c,omitempty"`
	UseHigh     *float64          `json:"use_high_c,omitempty"`
	Lethal      *float64          `json:"lethal_c,omitempty"`
	OxygenLeast *float64          `json:"oxygen_least_mgl,omitempty"`
	Oxygen      *float64          `json:"oxygen_mgl,omitempty"`
	Sources     map[string]string `json:"sources"`
	Note        string            `json:"note,omitempty"`
}

// FishAsJSON makes the stable form of a fish.
func FishAsJSON(f fish.Fish) FishJSON {
	value := func(g fish.Figure) *float64 { return known(profile.Optional{Value: g.Value, Known: g.Known}) }
	out := FishJSON{
		Key: f.Key, Name: f.Name, Scientific: f.Scientific, Aliases: append([]string{}, f.Aliases...),
		Kind: f.Kind.String(), Salmonid: f.Salmonid, OpenWater: f.OpenWater, CanVent: f.CanVent, Teeth: f.Teeth, FlyG: value(f.FlyG),
		UseLow: value(f.LowerUseC), ComfortLow: value(f.ComfortLowC), Optimum: value(f.OptimumC),
		ComfortHigh: value(f.ComfortHighC), UseHigh: value(f.UpperUseC), Lethal: value(f.LethalC),
		OxygenLeast: value(f.OxygenLeastMgL), Oxygen: value(f.OxygenMgL),
		Sources: map[string]string{}, Note: f.Note,
	}
	if f.FlyG.Known {
		out.Sources["fly_g"] = f.FlyG.Source
	}
	for _, g := range f.Figures() {
		if g.Known {
			out.Sources[g.Name] = g.Source
		}
	}
	return out
}
