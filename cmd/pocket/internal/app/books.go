package app

import (
	"slices"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
	"coldseam/profile/unit"
)

var bookActs = actions{
	"book":  openBook,
	"find":  find,
	"older": func(a *App, _ Event) { a.books.shown += atOnce },
	"lines": nextLine,
	"open":  openDrop,
}

// atOnce is how many drops are listed at first, and more with each touch.
const atOnce = 20

// bookState is the list of drops that is seen.
type bookState struct {
	words, water string // what is looked for
	shown        int    // how many drops at most

	heads  []book.Head // those found, the newest first, and pages that cannot be read in their place
	lines  []lineOf    // of each head
	all    int         // drops of the book
	waters []string    // their waters, by name
	err    error       // why the book cannot be read
	notice string      // what came of the last touch
	cut    book.Entry  // a drop that has not ended, and is looked at
	pages  exportState // the pages that are handed on
	bring  bringState  // the pages that come in
}

// lineOf is what the list says of a drop, once its plan was made.
type lineOf struct {
	report.BookLine
	made bool
}

// reading is how a saved page is read: as the settings have it, and nobody is asked.
func (a *App) reading() notebook.Options { return a.set.Reading() }

// openBook shows the list: the one that led here, with what was looked for, or a new one.
func openBook(a *App, _ Event) {
	led := slices.ContainsFunc(a.before, func(s screen) bool { return same(s, books) })
	if !led {
		a.books = bookState{shown: atOnce}
	}
	a.homeward()
	a.goTo(books)
}

// look looks for the drops that are asked for.
func (a *App) look() {
	b := &a.books
	b.heads, b.lines, b.waters, b.all, b.err, b.notice = nil, nil, nil, 0, nil, ""
	all, err := a.book.Heads(a.reading())
	if err != nil {
		b.err = err
		return
	}
	b.all = dropsOf(all)
	for _, h := range all {
		if h.Water != "" && !slices.ContainsFunc(b.waters, func(w string) bool { return strings.EqualFold(w, h.Water) }) {
			b.waters = append(b.waters, h.Water)
		}
	}
	slices.Sort(b.waters)
	if q := (book.Query{Water: b.water, Words: strings.Fields(b.words)}); b.asks() {
		if all, b.err = a.book.Find(q, a.reading()); b.err != nil {
			return
		}
		all = slices.DeleteFunc(all, func(h book.Head) bool { return h.Err != nil })
	}
	book.ByDate(all)
	slices.Reverse(all)
	b.heads, b.lines = all, make([]lineOf, len(all))
}

// asks reports whether some of the drops are looked for.
func (b *bookState) asks() bool { return b.water != "" || strings.TrimSpace(b.words) != "" }

// find looks for drops.
func find(a *App, e Event) {
	b := &a.books
	b.words, b.water, b.shown = e.Fields["words"], e.Fields["water"], atOnce
	a.look()
	a.say(b.count())
}

// nextLine makes the plan of one drop that is listed, for what the list says of it.
func nextLine(a *App, _ Event) {
	b := &a.books
	if i := b.next(); i >= 0 {
		e := a.book.Read(b.heads[i:i+1], a.reading())[0]
		b.lines[i].BookLine, _ = report.InBook(e, a.set.Input)
		b.lines[i].made = true
	}
}

// next is the first drop that is listed without its plan, -1 where there is none.
func (b *bookState) next() int {
	for i := range min(b.shown, len(b.heads)) {
		if !b.lines[i].made && b.heads[i].Err == nil {
			return i
		}
	}
	return -1
}

// openDrop shows the answer of a drop, named by its number.
func openDrop(a *App, e Event) {
	b := &a.books
	i := slices.IndexFunc(b.heads, func(h book.Head) bool { return h.Err == nil && strconv.Itoa(h.Number) == e.Value })
	if i < 0 {
		return
	}
	is := a.book.Read(b.heads[i:i+1], a.reading())[0]
	if is.Err != nil {
		a.look()
		b.notice = "This drop was changed or removed meanwhile. The list is new."
		a.say(b.notice)
		return
	}
	if is.Unended {
		b.cut = is
		a.goTo(cutScreen)
		return
	}
	a.showAnswer(is.Sheet, is.Path, is.Nth)
}

// cutScreen asks what is to become of a drop that has not ended.
func cutScreen(a *App) []markup.Node {
	e := a.books.cut
	finish := touch("home-finish", e.Path, "It is finished: show its answer")
	if len(e.Drop.Readings) == 0 {
		finish = nil
	}
	return []markup.Node{
		a.head("Not ended"),
		markup.El("p", capital(nameOf(e.Drop))+", "+unit.Count(len(e.Drop.Readings), "reading")+". It was cut off, or is being taken in another window."),
		touch("home-go-on", e.Path, markup.Class("big"), "Go on with it"),
		wayBack(finish),
		touch("out", "", markup.Class("plain"), "Take this drop out of the book"),
	}
}
