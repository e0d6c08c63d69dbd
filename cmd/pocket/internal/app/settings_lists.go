package app

import (
	"fmt"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/plain"
	"coldseam/profile/settings"
)

// list is a kind of tables of the settings file: the box of flies and the like.
type list struct {
	table        string // [[fly]]
	title, about string
	one, another string
	first        []string // keys that each entry begins with, one of which it needs
	fields       []setting
}

var lists = []list{
	{"water", "Rules of a water", "What the law or the fishery allows there, as you read it yourself. The answer keeps to it.", "Water", "Another water", []string{"name"}, []setting{
		{key: "name", label: "The water, by the name that your drops give it"},
		{key: "max_leader", label: "Longest leader allowed", hint: "18 ft", metric: "5.5 m"},
		{key: "max_flies", label: "Most flies allowed", choices: these(choice{"", "not said"}, choice{"1", "one"}, choice{"2", "two"}, choice{"3", "three"})},
		{key: "added_weight", label: "Weight added to the leader", choices: allowed},
		{key: "indicator", label: "Strike indicator", choices: allowed},
		{key: "checked", label: "When you looked the rules up", kind: "date"},
		{key: "note", label: "Note", hint: "closed in May"},
	}},
	{"fly", "Box of flies", "A fly's weight decides how fast the leader sinks. The answer names the fly of the box that it is reckoned with.", "Fly", "Another fly", []string{"name", "weight"}, []setting{
		{key: "name", label: "Name", hint: "black midge"},
		{key: "weight", label: "Weight, or its bead and hook", hint: "0.2 g, or 3.3 mm tungsten #12"},
	}},
	{"stock", "Leader material", "The leader is put together from what you have. Without a list the usual material is assumed.", "Leader material", "More material", []string{"kind", "length"}, []setting{
		{key: "kind", label: "What it is", choices: these(choice{"tippet", "tippet"}, choice{"butt", "butt"}, choice{"tapered", "tapered leader"}, choice{"bite", "bite tippet"})},
		{key: "name", label: "Name", hint: "0.020 in nylon"},
		{key: "x", label: "Size, X", hint: "4", kind: "number"},
		{key: "diameter", label: "or its diameter", hint: "0.020 in", metric: "0.5 mm"},
		{key: "length", label: "Length of a tapered leader", hint: "9 ft", metric: "2.7 m"},
		{key: "material", label: "Material", choices: these(choice{"", "not said"}, choice{"nylon", "nylon"}, choice{"fluorocarbon", "fluorocarbon"}, choice{"wire", "wire, of a bite tippet"})},
	}},
}

func allowed(*App) []choice {
	return []choice{{"", "not said"}, {"false", "not allowed"}, {"true", "allowed"}}
}

// count is how many there are, for the button that leads there.
func (l list) count(text string) string {
	if n := settings.Tables(text, l.table); n > 0 {
		return fmt.Sprintf(" (%d)", n)
	}
	return ""
}

// path is that of the keys of the n-th entry.
func (l list) path(n int) string { return fmt.Sprintf("%s.%d.", l.table, n) }

// entry is what the list says of an entry.
func (l list) entry(text string, n int) string {
	var parts []string
	for _, f := range l.fields {
		v := settings.Written(text, l.path(n)+f.key)
		if v == "" {
			continue
		}
		switch f.key {
		case "x":
			v += "X"
		case "max_leader":
			v = "leader up to " + v
		case "max_flies":
			v = "flies: " + v
		case "added_weight":
			v = map[string]string{"false": "no added weight", "true": "added weight allowed"}[v]
		case "indicator":
			v = map[string]string{"false": "no indicator", "true": "indicator allowed"}[v]
		case "checked":
			v = "looked up " + v
		}
		parts = append(parts, v)
	}
	return plain.Cut(strings.Join(parts, ", "), 160)
}

func openList(a *App, e Event) {
	for _, l := range lists {
		if l.table == e.Value {
			a.settings = settingsState{list: l}
			a.goTo(listScreen)
		}
	}
}

// listScreen is the entries of a list.
func listScreen(a *App) []markup.Node {
	l := a.settings.list
	out := []markup.Node{a.head(l.title), told(a.settings.notice), markup.El("p", l.about)}
	text, err := a.settingsText()
	if err != nil {
		return append(out, told(sentence(why(err))), wayBack())
	}
	var items []any
	for n := range settings.Tables(text, l.table) {
		items = append(items, markup.El("li", touch("settings-entry", strconv.Itoa(n), l.entry(text, n))))
	}
	if items != nil {
		out = append(out, markup.El("ul", append([]any{markup.Class("drops")}, items...)...))
	}
	return append(out, wayBack(touch("settings-entry", "new", l.another)))
}

func openEntry(a *App, e Event) {
	text, _ := a.settingsText()
	n, err := strconv.Atoi(e.Value)
	switch {
	case e.Value == "new":
		n = -1
	case err != nil || n < 0 || n >= settings.Tables(text, a.settings.list.table):
		return
	}
	a.settings = settingsState{list: a.settings.list, entry: n}
	a.goTo(entryScreen)
}

// entryScreen is the form of one entry.
func entryScreen(a *App) []markup.Node {
	s := &a.settings
	out := []markup.Node{a.head(s.list.one), s.wrongAbove()}
	text, err := a.settingsText()
	if err != nil {
		return append(out, told(sentence(why(err))), wayBack())
	}
	if s.entry < 0 {
		return append(out, a.form("settings-keep", s.list.fields, "", ""), wayBack())
	}
	return append(out, a.form("settings-keep", s.list.fields, s.list.path(s.entry), text),
		markup.El("details", markup.El("summary", "Remove"), touch("settings-remove", "", "Remove it from the list")), wayBack())
}

// keepEntry saves the form of an entry.
func keepEntry(a *App, e Event) {
	l, n := a.settings.list, a.settings.entry
	a.kept(e, func(text string) (string, error) {
		var err error
		if n < 0 {
			n = settings.Tables(text, l.table)
			var values []settings.Value
			for _, key := range l.first {
				values = append(values, settings.Value{Key: key, Value: strings.TrimSpace(e.Fields[key])})
			}
			if text, err = settings.Append(text, l.table, values...); err != nil {
				return "", err
			}
		}
		return changed(text, l.path(n), l.fields, e.Fields)
	})
}

// removeEntry takes an entry out of its list.
func removeEntry(a *App, e Event) {
	a.kept(e, func(text string) (string, error) {
		return settings.Remove(text, a.settings.list.table, a.settings.entry)
	})
}

// kept changes the settings and goes back to the list, or tells what is wrong.
func (a *App) kept(e Event, change func(text string) (string, error)) {
	if err := a.changeSettings(change); err != nil {
		a.refused(err, e.Fields, a.settings.list.fields)
		return
	}
	a.saved()
	a.back()
}
