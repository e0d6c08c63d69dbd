package app

import (
	"path/filepath"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/plain"
	"coldseam/profile/report"
)

var pageActs = actions{
	"correct":   correctPage,
	"page":      mendPage,
	"page-save": savePage,
}

// pageState is a page of the book whose text is put right.
type pageState struct {
	path, title, about string
	was, text          string // as it stands in the book, and in the field
	wrong              string
	nth                int // the drop of the page whose answer is shown then
}

// correctPage shows the page of the answer.
func correctPage(a *App, _ Event) {
	s := &a.answer
	a.openPage(pageState{path: s.path, title: "Correct this drop", about: report.WhereWhen(s.sheet.Drop), nth: s.nth})
}

// mendPage shows a page that cannot be read, named by its place in the list.
func mendPage(a *App, e Event) {
	i, err := strconv.Atoi(e.Value)
	if err != nil || i < 0 || i >= len(a.books.heads) || a.books.heads[i].Err == nil {
		return
	}
	h := a.books.heads[i]
	a.openPage(pageState{
		path: h.Path, title: "A page that cannot be read", about: "Its drop counts nowhere until it can be read.",
		wrong: unread(filepath.Base(h.Path), h.Err),
	})
}

func (a *App) openPage(p pageState) {
	text, err := a.book.Text(p.path)
	if err != nil {
		a.fail("The page cannot be opened: " + why(err) + ".")
		return
	}
	p.was, p.text = text, text
	a.page = p
	a.goTo(pageScreen)
}

// savePage puts the text in the page's place and shows the answer of it.
func savePage(a *App, e Event) {
	p := &a.page
	if !a.on(pageScreen) {
		return
	}
	p.text = strings.TrimRight(strings.ReplaceAll(e.Fields["page"], "\r\n", "\n"), "\n") + "\n"
	wrong := func(err error) {
		p.wrong = "Not saved: " + lineOfPage(err) + "."
		a.say(p.wrong)
	}
	b, unlock, err := a.hold()
	if err != nil {
		wrong(err)
		return
	}
	defer unlock()
	sheets, err := b.Rewrite(p.path, p.was, p.text, a.reading())
	if err != nil {
		wrong(err)
		return
	}
	n := min(max(p.nth, 1), len(sheets))
	a.back()
	if a.on(answerScreen) {
		a.back()
	}
	a.showAnswer(sheets[n-1], p.path, n)
	a.tellAnswer("The page is saved.", "Saved.", "")
}

// pageScreen is the text of a page, to be put right.
func pageScreen(a *App) []markup.Node {
	p := &a.page
	return []markup.Node{
		a.head(p.title),
		markup.El("p", p.about),
		warning(p.wrong),
		markup.El("form", markup.A("data-do", "page-save"),
			markup.El("label", markup.A("for", "whole"), "The page, a reading or a fact on each line"),
			textArea("whole", "page", 12, p.text),
			submit("Save the page")),
		hidden("exact", p.was),
		wayBack(carry("copy", "exact", "", "Copy"),
			carry("save", "exact", plain.Line(filepath.Base(p.path)), "Save as a file")),
		touch("out", "", markup.Class("plain"), "Take this page out of the book"),
	}
}
