package app

import (
	"cmp"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/fish"
	"coldseam/profile/settings"
)

// setting is one field of a form: a key of the settings file, in plain words.
type setting struct {
	key, label, hint string
	metric           string                    // the hint for those who measure in metres
	kind             string                    // of the input, "" is text
	choices          func(a *App) []choice     // nil where it is typed
	shown, written   func(value string) string // between the file and the field; nil is as it stands
}

// choice is a value to choose, and its words.
type choice struct{ value, words string }

func these(list ...choice) func(*App) []choice { return func(*App) []choice { return list } }

// onWater are the settings that matter on the water.
var onWater = []setting{
	{key: "units", label: "Units", choices: these(choice{"", "as each drop says"}, choice{"ft F", "feet and °F"}, choice{"m C", "metres and °C"}, choice{"ft C", "feet and °C"}, choice{"m F", "metres and °F"})},
	{key: "for", label: "The fish you fish for", choices: fishes},
	{key: "longest_leader", label: "The longest leader you can cast", hint: "25 ft", metric: "7.5 m"},
	{key: "flies", label: "Flies on the leader", choices: these(choice{"", "one"}, choice{"2", "two"}, choice{"3", "three"})},
	{key: "fly_weight", label: "Weight of the usual fly, or its name in the box of flies", hint: "0.25 g, or 3.3 mm tungsten #12"},
	{key: "thermometer", label: "What the thermometer reads in ice water", hint: "32.5 F", metric: "0.3 C", shown: between("reads ", " in ice water"), written: around("reads ", " in ice water")},
	{key: "marks_at", label: "How far the gunwale is above the water, if you read the line's marks there", hint: "1.5 ft", metric: "0.5 m", shown: between("gunwale ", ""), written: around("gunwale ", "")},
}

// fishes are those to fish for.
func fishes(a *App) []choice {
	all := fish.All(a.set.Fish...)
	out := []choice{{"", "not said: rainbow trout"}}
	for _, f := range all {
		out = append(out, choice{f.Key, f.Name})
	}
	return out
}

// between takes words off around a value that is written with them.
func between(before, behind string) func(string) string {
	return func(v string) string {
		if inner, ok := strings.CutPrefix(v, before); ok {
			if inner, ok = strings.CutSuffix(inner, behind); ok {
				return inner
			}
		}
		return v
	}
}

// around puts words around a number; what begins with none stays as it was typed.
func around(before, behind string) func(string) string {
	return func(v string) string {
		if v == "" || !strings.ContainsAny(v[:1], "0123456789.-+") {
			return v
		}
		return before + v + behind
	}
}

// changed is the text of a file with the fields of a form in it; path is that of their
// table, "" for keys of the top.
func changed(text, path string, fields []setting, values map[string]string) (string, error) {
	for _, f := range fields {
		v, there := values[f.key]
		if v = strings.TrimSpace(v); !there || v == f.inForm(settings.Written(text, path+f.key)) {
			continue
		}
		if f.written != nil {
			v = f.written(v)
		}
		var err error
		if text, err = settings.Set(text, path+f.key, v); err != nil {
			return "", err
		}
	}
	return text, nil
}

// inForm is what the field shows of a value of the file.
func (f setting) inForm(value string) string {
	if f.shown != nil {
		value = f.shown(value)
	}
	return strings.TrimSpace(value)
}

// form is a form over keys of the file, or over what was typed into it and refused.
func (a *App) form(do string, fields []setting, path, text string) markup.Node {
	all := []any{markup.Class("settings"), markup.A("data-do", do)}
	for _, f := range fields {
		value := ""
		if path != "" || text != "" {
			value = f.inForm(settings.Written(text, path+f.key))
		}
		if typed, ok := a.settings.typed[f.key]; ok {
			value = typed
		}
		all = append(all, a.field(f, value)...)
	}
	return markup.El("form", append(all, submit("Save"))...)
}

// field is a label, its input, and what is wrong with what was typed.
func (a *App) field(f setting, value string) []any {
	id := "set-" + f.key
	attrs := []any{markup.ID(id), markup.A("name", f.key)}
	label := []any{markup.A("for", id), f.label}
	var below markup.Node
	if a.settings.key == f.key && a.settings.wrong != "" {
		below = markup.El("p", markup.Class("warning"), markup.ID(id+"-error"), a.settings.wrong)
		attrs = append(attrs, markup.A("aria-invalid", "true"), markup.A("aria-describedby", id+"-error"))
		a.show.Focus = id
	}
	var input markup.Node
	if f.choices != nil {
		input = markup.El("select", append(attrs, a.options(f, value)...)...)
	} else {
		hint := f.hint
		if f.metric != "" && strings.HasPrefix(a.units(), "m") {
			hint = f.metric
		}
		if hint != "" {
			label = append(label, " ", markup.El("span", markup.Class("quiet"), "e.g. "+hint))
		}
		input = markup.El("input", append(attrs, markup.A("type", cmp.Or(f.kind, "text")), markup.A("value", value), markup.A("autocomplete", "off"), markup.A("autocapitalize", "off"))...)
	}
	return []any{markup.El("div", markup.Class("field"), markup.El("label", label...), input, below)}
}

// options are the choices of a field, and what stands in the file where it is none of them.
func (a *App) options(f setting, value string) []any {
	var out []any
	list, at := f.choices(a), -1
	for i, c := range list {
		if c.value == value {
			at = i
		}
	}
	if known, ok := fish.Known(a.set.Fish, value); at < 0 && f.key == "for" && ok {
		for i, c := range list {
			if c.value == known.Key {
				at, list[i].value = i, value // as it is written
			}
		}
	}
	switch {
	case at < 0 && value == "": // a new one
		at = 0
	case at < 0:
		at, list = len(list), append(list[:len(list):len(list)], choice{value, value})
	}
	for i, c := range list {
		option := []any{markup.A("value", c.value), c.words}
		if i == at {
			option = append(option, markup.A("selected", ""))
		}
		out = append(out, markup.El("option", option...))
	}
	return out
}
