package app

import (
	"path/filepath"
	"strconv"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

var outActs = actions{
	"out":     askOut,
	"out-yes": takeOut,
}

// outState is a page that is about to be taken out of the book.
type outState struct{ path, name, was string }

// askOut asks whether the page that is looked at is to be taken out.
func askOut(a *App, _ Event) {
	named := func(d profile.Drop) string {
		return nameOf(d) + ", " + unit.Count(len(d.Readings), "reading")
	}
	switch {
	case a.on(answerScreen):
		a.out = outState{path: a.answer.path, name: named(a.answer.sheet.Drop)}
	case a.on(cutScreen):
		a.out = outState{path: a.books.cut.Path, name: named(a.books.cut.Drop)}
	case a.on(pageScreen):
		a.out = outState{path: a.page.path, name: filepath.Base(a.page.path)}
	default:
		return
	}
	text, err := a.book.Text(a.out.path)
	if err != nil {
		a.fail("Not taken out: " + why(err) + ".")
		return
	}
	if sheets, _ := notebook.Read([]byte(text), a.reading()); len(sheets) > 1 && a.on(answerScreen) {
		a.fail("This page holds " + strconv.Itoa(len(sheets)) + " drops. To take one out, correct the page: leave out its lines.")
		return
	}
	a.out.was = text
	a.goTo(outScreen)
}

func outScreen(a *App) []markup.Node {
	return []markup.Node{
		a.head("Take it out of the book?"),
		markup.El("p", markup.Class("lead"), capital(a.out.name)),
		markup.El("p", "It cannot be had back unless you carried it out."),
		hidden("exact", a.out.was),
		markup.El("div", markup.Class("row"), carry("copy", "exact", "", "Copy it first"), carry("save", "exact", plain.Line(filepath.Base(a.out.path)), "Save it as a file")),
		markup.El("nav", markup.Class("row"), touch("back", "", "Keep it"), touch("out-yes", "", "Yes, take it out")),
	}
}

// takeOut takes the page out, and shows what led to it.
func takeOut(a *App, _ Event) {
	if !a.on(outScreen) {
		return
	}
	b, unlock, err := a.hold()
	if err == nil {
		defer unlock()
		err = b.TakeOut(a.out.path, a.out.was)
	}
	if err != nil {
		a.fail("Not taken out: " + why(err) + ".")
		return
	}
	a.back()
	if a.back(); !a.on(books) {
		a.homeward()
	}
	a.books.notice = capital(a.out.name) + ": taken out of the book."
	a.say(a.books.notice)
}
