package fish

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"coldseam/profile/plain"
)

// Entry is a fish as it is written in TOML, as a [[fish]] of the table or of an angler's
// settings. What is not written is that of the fish of the table of this name, or of the
// one that Like names.
type Entry struct {
	Name       string // the Key
	FullName   string `toml:"full_name"`
	Scientific string
	Alias      aliases
	Like       string
	Kind       kind
	CanVent    *bool `toml:"can_vent"`
	OpenWater  *bool `toml:"open_water"`
	Teeth      *bool
	FlyWeight  sourced[grams] `toml:"fly_weight"`

	UseFrom     sourced[degrees] `toml:"use_from"`
	Comfort     sourced[span]    // both ends at once
	ComfortLow  sourced[degrees] `toml:"comfort_low"`
	ComfortHigh sourced[degrees] `toml:"comfort_high"`
	Optimum     sourced[degrees]
	UseUpTo     sourced[degrees] `toml:"use_up_to"`
	Lethal      sourced[degrees]
	OxygenLeast sourced[oxygen] `toml:"oxygen_least"`
	Oxygen      sourced[oxygen]

	Source string // of the figures that name none
	Note   string
}

// EntryError is what is wrong with an entry, and under which key.
type EntryError struct {
	Key string
	Err error
}

func (e *EntryError) Error() string { return e.Key + ": " + e.Err.Error() }
func (e *EntryError) Unwrap() error { return e.Err }

func wrong(key, format string, args ...any) *EntryError {
	return &EntryError{key, fmt.Errorf(format, args...)}
}

// Most letters of a source and of a note.
const (
	longestSource = 69
	longestNote   = 400
)

// Own makes the fish of an entry of an angler's settings; own are the fishes of the
// entries before it. An error is an *EntryError.
func (e Entry) Own(own []Fish) (Fish, error) {
	e.Source = cmp.Or(strings.TrimSpace(e.Source), "your settings")
	if err := e.texts(); err != nil {
		return Fish{}, err
	}
	begun, err := e.begin(own)
	if err != nil {
		return Fish{}, err
	}
	f := e.over(begun)
	for _, check := range []error{e.order(f), e.alone(f, own)} {
		if check != nil {
			return Fish{}, check
		}
	}
	return f, nil
}

// texts refuses what could not be typed or shown as a name, a source or a note.
func (e Entry) texts() error {
	type text struct {
		key, text, example string // no example: it is no name
		most               int
	}
	if strings.TrimSpace(e.Name) == "" {
		return wrong("name", `each [[fish]] needs it, e.g. name = "rainbow"`)
	}
	list := []text{{"name", e.Name, `name = "rainbow"`, longestName}}
	for _, a := range e.Alias {
		list = append(list, text{"alias", a, `alias = ["bow"]`, longestName})
	}
	list = append(list, text{"full_name", e.FullName, "", longestName}, text{"scientific", e.Scientific, "", longestName},
		text{"source", e.Source, "", longestSource}, text{"note", e.Note, "", longestNote})
	list = append(list, text{"fly_weight", e.FlyWeight.Source, "", longestSource})
	for _, w := range e.written() {
		list = append(list, text{w.key, w.source, "", longestSource})
	}
	for _, t := range list {
		switch {
		case plain.Line(t.text) != t.text:
			return wrong(t.key, "%q has a character that cannot be shown: leave it out", t.text)
		case len([]rune(t.text)) > t.most:
			return wrong(t.key, "%q... is too long: write at most %d letters", string([]rune(t.text)[:20]), t.most)
		case t.example != "" && !strings.ContainsFunc(t.text, func(c rune) bool { return unicode.IsLetter(c) || unicode.IsDigit(c) }):
			return wrong(t.key, "%q is no name: write one, e.g. %s", t.text, t.example)
		}
	}
	return nil
}

// begin finds the fish to begin from: the one it is said to be like, else the table's of
// that name, else none. A fish that the table names keeps its names and its body,
// whatever it is like. A fish without a scientific name is one that the table lacks.
func (e Entry) begin(own []Fish) (Fish, error) {
	same, err := Find(e.Name)
	named := err == nil
	if e.Like == "" && named {
		return same, nil
	}
	if e.Like == "" {
		for _, need := range []struct {
			key, example string
			written      bool
		}{
			{"kind", "coldwater", e.Kind.known},
			{"comfort", "55 to 62 F", e.Comfort.Value.low.known || e.ComfortLow.Value.known && e.ComfortHigh.Value.known},
			{"oxygen", "6 mg/L", e.Oxygen.Value.known},
		} {
			if !need.written {
				return Fish{}, wrong(need.key, "a fish that the table lacks needs it, e.g. %s = %q, or like = \"rainbow\" to take what is not written from that fish", need.key, need.example)
			}
		}
		return Fish{Note: "The figures are yours. A coldwater fish of yours is taken to be of the salmon family, with an open swim bladder, and another not."}, nil
	}
	like, err := FindIn(own, e.Like)
	if err != nil {
		return Fish{}, &EntryError{"like", err}
	}
	if named && same.Key == like.Key {
		return same, nil
	}
	f := like
	f.Note = "What your settings do not say is that of " + like.Name + "."
	f.Scientific, f.Aliases = "", nil
	if named {
		f.Key, f.Name, f.Scientific, f.Aliases = same.Key, same.Name, same.Scientific, same.Aliases
		f.Kind, f.Salmonid, f.OpenWater, f.CanVent = same.Kind, same.Salmonid, same.OpenWater, same.CanVent
		f.Teeth, f.FlyG = same.Teeth, same.FlyG
	}
	return f, nil
}

// over puts what is written in the place of what it is begun from.
func (e Entry) over(f Fish) Fish {
	if e.Kind.known {
		f.Kind = e.Kind.is
	}
	if f.Key == "" { // a fish begun from none
		f.Salmonid, f.CanVent = f.Kind == Coldwater, f.Kind == Coldwater
	}
	if f.Scientific == "" { // one that the table lacks
		f.Name = strings.Join(strings.Fields(e.Name), " ")
		f.Key = strings.ToLower(f.Name)
	}
	f.Name = cmp.Or(e.FullName, f.Name)
	f.Scientific = cmp.Or(e.Scientific, f.Scientific)
	f.Note = cmp.Or(e.Note, f.Note)
	f.Aliases = append(slices.Clone(f.Aliases), e.Alias...)
	for _, is := range []struct{ written, to *bool }{{e.CanVent, &f.CanVent}, {e.OpenWater, &f.OpenWater}, {e.Teeth, &f.Teeth}} {
		if is.written != nil {
			*is.to = *is.written
		}
	}
	if fly := e.FlyWeight.Value; fly.known {
		f.FlyG = Figure{Value: fly.value, Known: true, Source: cmp.Or(e.FlyWeight.Source, e.Source)}
	}
	to := map[string]*Figure{
		UseLow: &f.LowerUseC, ComfortLow: &f.ComfortLowC, Optimum: &f.OptimumC, ComfortHigh: &f.ComfortHighC,
		UseHigh: &f.UpperUseC, Lethal: &f.LethalC, OxygenLeast: &f.OxygenLeastMgL, Oxygen: &f.OxygenMgL,
	}
	for _, w := range e.written() {
		*to[w.name] = Figure{Value: w.amount.value, Known: true, Source: cmp.Or(w.source, e.Source)}
	}
	// Where what is written shows the coldest water or the least oxygen of the fish begun
	// from to be wrong for this one, it is not known.
	if f.LowerUseC.Value > f.ComfortLowC.Value && !e.UseFrom.Value.known {
		f.LowerUseC = Figure{}
	}
	if f.OxygenLeastMgL.Value > f.OxygenMgL.Value && !e.OxygenLeast.Value.known {
		f.OxygenLeastMgL = Figure{}
	}
	return f
}

// written is a figure of an entry: the key it stands under, its name among Figures, and
// its source, "" for that of the entry.
type written struct {
	key, name string
	amount    amount
	source    string
}

// written are the figures that e gives, temperatures first.
func (e Entry) written() []written {
	return slices.DeleteFunc([]written{
		{"use_from", UseLow, e.UseFrom.Value.amount, e.UseFrom.Source},
		{"comfort", ComfortLow, e.Comfort.Value.low, e.Comfort.Source},
		{"comfort", ComfortHigh, e.Comfort.Value.high, e.Comfort.Source},
		{"comfort_low", ComfortLow, e.ComfortLow.Value.amount, e.ComfortLow.Source},
		{"comfort_high", ComfortHigh, e.ComfortHigh.Value.amount, e.ComfortHigh.Source},
		{"optimum", Optimum, e.Optimum.Value.amount, e.Optimum.Source},
		{"use_up_to", UseHigh, e.UseUpTo.Value.amount, e.UseUpTo.Source},
		{"lethal", Lethal, e.Lethal.Value.amount, e.Lethal.Source},
		{"oxygen_least", OxygenLeast, e.OxygenLeast.Value.amount, e.OxygenLeast.Source},
		{"oxygen", Oxygen, e.Oxygen.Value.amount, e.Oxygen.Source},
	}, func(w written) bool { return !w.amount.known })
}
