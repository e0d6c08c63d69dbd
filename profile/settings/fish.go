package settings

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"coldseam/profile/fish"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// ownFish is a fish of the angler's own as the file has it: one of the table set
// right, or one that the table lacks.
type ownFish struct {
	Name, Like, Kind, Source string
	Comfort, Optimum, Oxygen string
	UseUpTo                  string `toml:"use_up_to"`
	Alias                    any    // a text, or several in []
}

// Most letters of a name and of a source, as the table of fishes has them.
const (
	longestName   = 40
	longestSource = 69
)

// unsourced is the source of figures whose fish names none.
const unsourced = "your settings"

func (p *parser) fishes(list []ownFish) {
	for i, o := range list {
		r := fishReader{parser: p, n: i, ownFish: o, source: strings.TrimSpace(o.Source)}
		if r.source == "" {
			r.source = unsourced
		}
		if f := r.read(); p.err == nil {
			p.s.Fish = append(p.s.Fish, f)
		}
	}
}

// fishReader turns one [[fish]] into a fish.
type fishReader struct {
	*parser
	ownFish
	n      int // of the table in the file, from 0
	names  []string
	source string
	scale  unit.Temperature // the last one written
}

func (r *fishReader) bad(key, format string, args ...any) {
	r.fail(place{"fish", r.n, key}, fmt.Errorf(format, args...))
}

func (r *fishReader) read() fish.Fish {
	r.texts()
	f := r.start()
	switch r.Kind {
	case "":
	case "coldwater":
		f.Kind = fish.Coldwater
	case "coolwater":
		f.Kind = fish.Coolwater
	case "warmwater":
		f.Kind = fish.Warmwater
	default:
		r.bad("kind", "%q: write coldwater, coolwater or warmwater", r.Kind)
	}
	if f.Key == "" { // a fish of its own in all
		f.Salmonid, f.CanVent = f.Kind == fish.Coldwater, f.Kind == fish.Coldwater
		f.Note = "The figures are yours. A coldwater fish of yours is taken to be of the salmon family, with an open swim bladder, and another not."
	}
	if f.Key == "" || f.Scientific == "" {
		f.Name = strings.Join(strings.Fields(r.Name), " ")
		f.Key = strings.ToLower(f.Name)
	}
	f.Aliases = append(slices.Clone(f.Aliases), r.names...)
	r.figures(&f)
	r.order(f)
	r.alone(f)
	return f
}

// texts refuses what could not be typed or shown as a name or a source.
func (r *fishReader) texts() {
	check := func(key, text string, most int) {
		switch {
		case plain.Line(text) != text:
			r.bad(key, "%q has a character that cannot be shown: leave it out", text)
		case len([]rune(text)) > most:
			r.bad(key, "%q... is too long: write at most %d letters", string([]rune(text)[:20]), most)
		case key != "source" && !strings.ContainsFunc(text, func(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) }):
			r.bad(key, "%q is no name: write one, e.g. %s", text, map[string]string{"name": `name = "rainbow"`, "alias": `alias = ["bow"]`}[key])
		}
	}
	if strings.TrimSpace(r.Name) == "" {
		r.bad("name", "each [[fish]] needs it, e.g. name = \"rainbow\"")
	}
	check("name", r.Name, longestName)
	list, several := r.Alias.([]any)
	if r.Alias != nil && !several {
		list = []any{r.Alias}
	}
	for _, a := range list {
		text, ok := a.(string)
		if !ok {
			r.bad("alias", "write names in quotes, e.g. alias = [\"bow\"]")
		}
		check("alias", text, longestName)
		r.names = append(r.names, text)
	}
	check("source", r.source, longestSource)
}

// start finds the fish to begin from: the one it is said to be like, else the table's
// of that name, else none. A fish that the table names keeps its names and its body,
// whatever it is like. A fish without a scientific name is one that the table lacks.
func (r *fishReader) start() fish.Fish {
	same, err := fish.Find(r.Name)
	named := err == nil
	if r.Like == "" && named {
		return same
	}
	if r.Like == "" {
		for _, need := range []struct{ key, value, example string }{
			{"kind", r.Kind, "coldwater"}, {"comfort", r.Comfort, "55 to 62 F"}, {"oxygen", r.Oxygen, "6 mg/L"},
		} {
			if strings.TrimSpace(need.value) == "" {
				r.bad(need.key, "a fish that the table lacks needs it, e.g. %s = %q, or like = \"rainbow\" to take what is not written from that fish", need.key, need.example)
			}
		}
		return fish.Fish{}
	}
	like, err := fish.FindIn(r.s.Fish, r.Like)
	if err != nil {
		r.bad("like", "%w", err)
		return fish.Fish{}
	}
	if named && same.Key == like.Key {
		return same
	}
	f := like
	f.Note = "What your settings do not say is that of " + like.Name + "."
	f.Scientific, f.Aliases = "", nil
	if named {
		f.Key, f.Name, f.Scientific, f.Aliases = same.Key, same.Name, same.Scientific, same.Aliases
		f.Kind, f.Salmonid, f.OpenWater, f.CanVent = same.Kind, same.Salmonid, same.OpenWater, same.CanVent
	}
	return f
}

// figures puts the figures written in the place of those begun from. The coldest
// water and the least oxygen used have no key: where what is written shows them to be
// wrong for this fish, they are not known of it.
func (r *fishReader) figures(f *fish.Fish) {
	if r.Comfort != "" {
		low, high, err := r.span(r.Comfort)
		if err != nil {
			r.bad("comfort", "%w", err)
		}
		f.ComfortLowC, f.ComfortHighC = r.figure(low), r.figure(high)
		if f.LowerUseC.Value > low {
			f.LowerUseC = fish.Figure{}
		}
	}
	for _, t := range []struct {
		key, text string
		to        *fish.Figure
	}{{"optimum", r.Optimum, &f.OptimumC}, {"use_up_to", r.UseUpTo, &f.UpperUseC}} {
		if t.text == "" {
			continue
		}
		c, err := r.degrees(t.text)
		if err != nil {
			r.bad(t.key, "%w", err)
		}
		*t.to = r.figure(c)
	}
	if r.Oxygen != "" {
		mgl, err := oxygen(r.Oxygen)
		if err != nil {
			r.bad("oxygen", "%w", err)
		}
		f.OxygenMgL = r.figure(mgl)
		if f.OxygenLeastMgL.Value > mgl {
			f.OxygenLeastMgL = fish.Figure{}
		}
	}
}

func (r *fishReader) figure(v float64) fish.Figure {
	return fish.Figure{Value: v, Known: true, Source: r.source}
}

// span reads a range of temperatures, "55 to 62 F", "13-17 C" or "55 F to 62 F", in C.
func (r *fishReader) span(text string) (low, high float64, err error) {
	a, b, ok := strings.Cut(text, "to")
	if !ok {
		a, b, _ = strings.Cut(strings.ReplaceAll(text, "–", "-"), "-")
	}
	high, scale, err := unit.ParseTemperature(b)
	if err == nil && !strings.ContainsFunc(a, unicode.IsLetter) {
		a += " " + scale.String()
	}
	if err == nil {
		low, _, err = unit.ParseTemperature(a)
	}
	switch {
	case err != nil:
		return 0, 0, fmt.Errorf("%q is not a range with its scale: write e.g. 55 to 62 F", text)
	case !likely(low) || !likely(high):
		return 0, 0, fmt.Errorf("%q is not likely for water", text)
	case low >= high:
		return 0, 0, fmt.Errorf("%q: write the colder end first, and a warmer one after it", text)
	}
	r.scale = scale
	return low, high, nil
}

// degrees reads a temperature of water with its scale, in C.
func (r *fishReader) degrees(text string) (float64, error) {
	c, scale, err := unit.ParseTemperature(text)
	if err == nil && !likely(c) {
		err = fmt.Errorf("%q is not likely for water", text)
	}
	r.scale = scale
	return c, err
}

// likely reports whether a temperature is one that the table of fishes could hold.
func likely(c float64) bool { return c >= 0 && c <= 40 }

// oxygen reads dissolved oxygen with its unit, in mg/L.
func oxygen(text string) (float64, error) {
	n, rest, ok := unit.ScanNumber(strings.TrimSpace(text), true)
	if rest = strings.ToLower(strings.TrimSpace(rest)); !ok || rest != "mg/l" && rest != "ppm" {
		return 0, fmt.Errorf("%q is not an amount of oxygen: write e.g. 6 mg/L", text)
	}
	if !(n.Value > 0 && n.Value <= 12) {
		return 0, fmt.Errorf("%q is not a likely value", text)
	}
	return n.Value, nil
}

// keys are the settings that set a figure, by its name.
var keys = map[string]string{
	fish.ComfortLow: "comfort", fish.ComfortHigh: "comfort", fish.Optimum: "optimum", fish.UseHigh: "use_up_to",
}

// order refuses a fish whose limits cross, and says which and what to write.
func (r *fishReader) order(f fish.Fish) {
	below, above, crossed := f.Misplaced()
	if !crossed {
		return
	}
	written := map[string]string{"comfort": r.Comfort, "optimum": r.Optimum, "use_up_to": r.UseUpTo}
	at, other, how := below, above, "over"
	if written[keys[at.Name]] == "" {
		at, other, how = above, below, "under"
	}
	what := map[string]string{
		fish.ComfortLow: "the low end of comfort", fish.ComfortHigh: "the high end of comfort", fish.Optimum: "the optimum",
		fish.UseHigh: "the warmest water used", fish.Lethal: "what kills them",
	}
	advice := "write them in rising order"
	if key := keys[other.Name]; key == "" {
		advice = "write less"
	} else if written[key] == "" {
		advice = "write " + key + " too"
	}
	r.bad(keys[at.Name], "%s, %s, is %s %s, %s (%s): %s", what[at.Name], r.shown(at.Value), how, what[other.Name], r.shown(other.Value), other.Source, advice)
}

// shown prints a temperature to a tenth on the scale that the fish is written in.
func (r *fishReader) shown(c float64) string {
	return unit.Exact(math.Round(r.scale.FromC(c)*10)/10) + " " + r.scale.String()
}

// alone refuses a name that another fish of the settings has already.
func (r *fishReader) alone(f fish.Fish) {
	for _, other := range r.s.Fish {
		if shared := f.Shares(other); shared != "" {
			key := "name"
			if slices.Contains(r.names, shared) {
				key = "alias"
			}
			r.bad(key, "%q means another fish of your settings already, %s: give each its own", shared, other.Key)
		}
	}
}
