package app

import (
	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/plan"
	"coldseam/profile/report"
	"coldseam/profile/unit"
)

var homeActs = actions{
	"home":        func(a *App, _ Event) { a.homeward() },
	"home-go-on":  func(a *App, e Event) { a.begin(e.Value, nil) },
	"home-finish": homeFinish,
	"home-last":   homeLast,
}

// home is the first screen. What can be touched before the program runs comes first, and
// stays in its place then: below it stand drops that were cut off, and the last one.
func home(a *App) []markup.Node {
	out := []markup.Node{
		markup.El("h1", markup.ID("title"), "Coldseam"),
		touch("drop", "", markup.ID("drop"), markup.Class("big"), "New drop"),
		markup.El("p", "Lower a thermometer on a marked line and type what it reads: you learn how deep to fish, over what depth of water and with what leader."),
		a.pasteForm(),
	}
	out = append(out, a.warnings()...)
	out = append(out, a.cutOffs()...)
	return append(out, a.lastDrop(), markup.El("nav", markup.Class("row"), touch("book", "", "Book of drops"), touch("settings", "", "Settings")))
}

// warnings are what is wrong with this phone.
func (a *App) warnings() []markup.Node {
	var all []string
	if !a.o.Durable {
		all = append(all, "This browser keeps nothing: when this page closes, its drops are gone. Copy them out first, or use another browser, not in a private window.")
	}
	if a.setErr != nil {
		all = append(all, "The settings are not used: "+why(a.setErr)+". They can be put right under Settings.")
	}
	return paragraphs("warning", all)
}

// nameOf names a drop by its water, spot and date.
func nameOf(d profile.Drop) string {
	if name := report.WhereWhen(d); name != "" {
		return name
	}
	return "a drop without a name"
}

// cutOffs are the drops that were cut off, to be gone on with.
func (a *App) cutOffs() (out []markup.Node) {
	all, err := a.book.Unended()
	if err != nil { // the folder is not there yet
		return nil
	}
	for _, u := range all {
		if u.Err != nil { // the book shows it
			continue
		}
		name := "a drop"
		if is := report.WhereWhen(u.Drop); is != "" {
			name = "the drop of " + is
		}
		name += ", " + unit.Count(len(u.Drop.Readings), "reading")
		out = append(out, touch("home-go-on", u.Path, append(dated("Go on with "+name), markup.Class("big"))...))
		if len(u.Drop.Readings) > 0 {
			out = append(out, touch("home-finish", u.Path, markup.Class("plain"), "It is finished: show its answer"))
		}
	}
	return out
}

// homeFinish ends a drop that was cut off.
func homeFinish(a *App, e Event) {
	b, unlock, err := a.hold()
	if err != nil {
		a.fail(sentence(why(err)))
		return
	}
	defer unlock()
	u, err := cutOff(b, e.Value)
	if err == nil {
		err = u.Save(u.Drop, true)
	}
	if err != nil {
		a.fail("The drop was not ended: " + why(err) + ". What was read of it is saved.")
		return
	}
	a.homeward()
	a.showAnswer(notebook.Sheet{Name: u.Path, Drop: u.Drop}, u.Path, 0)
}

// last is the drop of the latest date that has ended.
func (a *App) last() (book.Entry, bool) {
	heads, err := a.book.Heads(a.reading())
	if err != nil {
		return book.Entry{}, false
	}
	for i := len(heads) - 1; i >= 0; i-- {
		if h := heads[i]; h.Err == nil && !h.Unended {
			e := a.book.Read(heads[i:i+1], a.reading())[0]
			return e, e.Err == nil && len(e.Drop.Readings) > 0
		}
	}
	return book.Entry{}, false
}

// lastDrop is the answer of the last drop in a sentence; a touch opens it.
func (a *App) lastDrop() markup.Node {
	e, ok := a.last()
	if !ok {
		return nil
	}
	sentence := "Open it to see what is missing for an answer."
	if in, err := a.set.Input(e.Drop); err == nil {
		if p, err := plan.Make(in); err == nil {
			sentence = report.Short(p, nil).Sentence()
		}
	}
	var again markup.Node
	if e.Drop.Water != "" {
		again = markup.El("p", touch("drop-again", "", "Another drop at "+plain.Cut(e.Drop.Water, 40)))
	}
	return markup.El("section", markup.El("h2", "Last drop"),
		markup.El("div", markup.Class("drops"), touch("home-last", e.Path,
			markup.El("b", dated(capital(nameOf(e.Drop)))...), " ", markup.El("span", sentence))), again)
}

// homeLast opens the answer of the last drop.
func homeLast(a *App, e Event) {
	if last, ok := a.last(); ok && last.Path == e.Value {
		a.showAnswer(last.Sheet, last.Path, last.Nth)
	}
}
