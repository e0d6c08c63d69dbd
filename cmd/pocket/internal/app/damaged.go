package app

import (
	"path/filepath"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/plain"
)

// damagedPage is the text of a page that cannot be read.
type damagedPage struct {
	name, path, why string
	was, text       string // as it stands in the book, and in the field
}

// openPage shows the text of a page that cannot be read, named by its place in the list.
func openPage(a *App, e Event) {
	b := &a.books
	i, err := strconv.Atoi(e.Value)
	if err != nil || i < 0 || i >= len(b.heads) || b.heads[i].Err == nil {
		return
	}
	h := b.heads[i]
	text, _ := a.book.Text(h.Path)
	b.page = damagedPage{name: filepath.Base(h.Path), path: h.Path, why: unread(filepath.Base(h.Path), h.Err), was: text, text: text}
	a.goTo(pageScreen)
}

// mendPage saves a page that could not be read as it was put right, and shows its answer.
func mendPage(a *App, e Event) {
	p := &a.books.page
	if p.path == "" {
		return
	}
	p.text = strings.TrimRight(strings.ReplaceAll(e.Fields["page"], "\r\n", "\n"), "\n") + "\n"
	_, unlock, err := a.hold()
	if err != nil {
		p.why = sentence(why(err))
		a.say(p.why)
		return
	}
	defer unlock()
	o := a.reading()
	o.Unread = false
	sheets, err := a.book.Rewrite(p.path, p.was, p.text, o)
	if err != nil {
		p.why = "Not saved. " + unread(p.name, err)
		a.say(p.why)
		return
	}
	a.showAnswer(sheets[0], p.path)
	a.answer.nth = 1
	a.say("The page is saved.")
}

// pageScreen is a page that cannot be read, to be put right.
func pageScreen(a *App) []markup.Node {
	p := &a.books.page
	a.show.Title = "A page that cannot be read"
	return []markup.Node{
		markup.El("h1", "A page that cannot be read"),
		markup.El("p", markup.Class("warning"), p.why),
		markup.El("p", "Its drop counts nowhere until it can be read."),
		markup.El("form", markup.A("data-do", "mend"),
			markup.El("label", markup.A("for", "mended"), "The page, a reading or a fact on each line"),
			markup.El("textarea", markup.ID("mended"), markup.A("name", "page"), markup.A("rows", "12"), markup.A("autocomplete", "off"), markup.A("autocapitalize", "off"), markup.A("spellcheck", "false"), markup.Exact(p.text)),
			markup.El("button", markup.A("type", "submit"), markup.Class("go"), "Save the page")),
		markup.Pre(markup.ID("exact"), markup.A("hidden", ""), markup.Exact(p.was)),
		markup.El("nav", markup.Class("row"), markup.El("button", markup.A("type", "button"), markup.A("data-copy", "exact"), "Copy"),
			markup.El("button", markup.A("type", "button"), markup.A("data-save", "exact"), markup.A("data-name", plain.Line(p.name)), "Save as a file"),
			touch("back", "", "Back")),
	}
}
