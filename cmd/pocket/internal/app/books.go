package app

import (
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/unit"
)

var bookActs = actions{
	"book":  openBook,
	"find":  find,
	"older": func(a *App, _ Event) { a.books.shown += atOnce; a.books.fresh = true },
	"lines": nextLine,
	"open":  openDrop,
	"page":  openPage,
	"mend":  mendPage,
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
	fresh  bool        // they are as the book is now
	err    error       // why the book cannot be read
	notice string      // what came of the last touch
	cut    book.Entry  // a drop that has not ended, and is looked at
	page   damagedPage // one that cannot be read, and is looked at
	pages  exportState // the pages that are handed on
	bring  bringState  // the pages that come in
	spot   bool        // the message tells the spot
}

// lineOf is what the list says of a drop, once its plan was made.
type lineOf struct {
	report.BookLine
	made bool
}

// damagedPage is the text of a page that cannot be read.
type damagedPage struct {
	name, path, why string
	was, text       string // as it stands in the book, and in the field
}

// reading is how a saved page is read: as the settings have it, and nobody is asked.
func (a *App) reading() notebook.Options { return a.set.Reading() }

// openBook shows the list: the one that led here, as it was, or a new one.
func openBook(a *App, _ Event) {
	if n := len(a.before); n > 0 && reflect.ValueOf(a.before[n-1]).Pointer() == reflect.ValueOf(books).Pointer() {
		a.back()
		return
	}
	a.books = bookState{shown: atOnce}
	a.homeward()
	a.goTo(books)
}

// look looks for the drops that are asked for.
func (a *App) look() {
	b := &a.books
	b.fresh = true
	b.heads, b.lines, b.waters, b.all, b.err = nil, nil, nil, 0, nil
	all, err := a.book.Heads(a.reading())
	if err != nil {
		b.err = err
		return
	}
	for _, h := range all {
		if h.Err == nil {
			b.all++
			if h.Water != "" && !slices.ContainsFunc(b.waters, func(w string) bool { return strings.EqualFold(w, h.Water) }) {
				b.waters = append(b.waters, h.Water)
			}
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
	b.words, b.water, b.shown, b.notice = e.Fields["words"], e.Fields["water"], atOnce, ""
	a.look()
	a.say(b.count())
}

// nextLine makes the plan of one drop that is listed, for what the list says of it.
func nextLine(a *App, _ Event) {
	b := &a.books
	if i := b.next(); i >= 0 {
		e := a.book.Read(b.heads[i:i+1], a.reading())[0]
		b.lines[i].BookLine, _ = report.InBook(e, a.set.Input)
		b.lines[i].made, b.fresh = true, true
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
	a.before = append(a.before, a.screen)
	a.showAnswer(is.Sheet, is.Path)
	a.answer.nth = is.Nth
}

// cutScreen asks what is to become of a drop that has not ended.
func cutScreen(a *App) []markup.Node {
	e := a.books.cut
	a.show.Title = "Not ended"
	finish := touch("home-finish", e.Path, "It is finished: show its answer")
	if len(e.Drop.Readings) == 0 {
		finish = nil
	}
	return []markup.Node{
		markup.El("h1", "Not ended"),
		told(a.home.wrong),
		markup.El("p", capital(nameOf(e.Drop))+", "+unit.Count(len(e.Drop.Readings), "reading")+". It was cut off, or is being taken in another window."),
		touch("home-go-on", e.Path, markup.Class("big"), "Go on with it"),
		markup.El("nav", markup.Class("row"), finish, touch("back", "", "Back")),
	}
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
	b.page = damagedPage{name: filepath.Base(h.Path), path: h.Path, why: unread(h) + ".", was: text, text: text}
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
		p.why = held(err)
		a.say(p.why)
		return
	}
	defer unlock()
	o := a.reading()
	o.Unread = false
	sheets, err := a.book.Rewrite(p.path, p.was, p.text, o)
	if err != nil {
		p.why = "Not saved. " + report.Found(book.Unread(p.name, err)) + "."
		a.say(p.why)
		return
	}
	a.showAnswer(sheets[0], p.path)
	a.answer.nth = 1
	a.say("The page is saved.")
}

// unread says why a page cannot be read.
func unread(h book.Head) string {
	return report.Found(book.Unread(filepath.Base(h.Path), h.Err))
}

// books is the list of drops.
func books(a *App) []markup.Node {
	b := &a.books
	if !b.fresh { // what was done on another screen may have changed the book
		a.look()
	}
	b.fresh = false
	a.show.Title = "Your drops"
	out := []markup.Node{markup.El("h1", "Your drops")}
	switch {
	case b.err != nil:
		return append(out, told("The saved drops cannot be read: "+b.err.Error()), wayBack())
	case b.all == 0 && len(b.heads) == 0 && !b.asks():
		return append(out,
			markup.El("p", "No drop is saved yet. Take one with New drop, on the first screen."),
			markup.El("p", "Pages of readings that you have already, from another phone, from a computer or typed from an old notebook, can be added."),
			markup.El("nav", markup.Class("row"), touch("bring", "", "Add pages"), touch("back", "", "Back")))
	}
	if b.next() >= 0 {
		a.show.Later = "lines"
	}
	if b.all > 1 {
		out = append(out, b.search())
	}
	return append(out, told(b.notice), markup.El("p", markup.ID("count"), b.count()), b.list(), b.more(),
		markup.El("nav", markup.Class("row"), touch("bring", "", "Add pages"), touch("export", "", "Copy or send"), touch("back", "", "Back")))
}

// count says how many drops there are and were found.
func (b *bookState) count() string {
	found := 0
	for _, h := range b.heads {
		if h.Err == nil {
			found++
		}
	}
	switch {
	case b.asks() && found == 0:
		return "None of " + unit.Count(b.all, "drop") + " is like that."
	case b.asks():
		return strconv.Itoa(found) + " of " + unit.Count(b.all, "drop") + ", the newest first"
	}
	return unit.Count(b.all, "drop") + ", the newest first"
}

// search is the form to look for drops.
func (b *bookState) search() markup.Node {
	var waters markup.Node
	if len(b.waters) > 1 {
		all := []any{markup.ID("water"), markup.A("name", "water"), markup.El("option", markup.A("value", ""), "all waters")}
		for _, w := range b.waters {
			option := []any{markup.A("value", w), plain.Cut(w, 40)}
			if strings.EqualFold(w, b.water) {
				option = append(option, markup.A("selected", ""))
			}
			all = append(all, markup.El("option", option...))
		}
		waters = markup.El("p", markup.El("label", markup.A("for", "water"), "Water"), markup.El("select", all...))
	}
	form := markup.El("form", markup.A("role", "search"), markup.A("data-do", "find"),
		markup.El("p", markup.El("label", markup.A("for", "words"), "Words on the page"),
			markup.El("input", markup.ID("words"), markup.A("name", "words"), markup.A("type", "search"), markup.A("enterkeyhint", "search"), markup.A("autocomplete", "off"), markup.A("value", b.words))),
		waters, markup.El("button", markup.A("type", "submit"), markup.Class("go"), "Find"))
	parts := []any{markup.ID("find"), markup.El("summary", "Find a drop"), form}
	if b.asks() {
		parts = append(parts, markup.A("open", ""))
	}
	return markup.El("details", parts...)
}

// list is the drops themselves.
func (b *bookState) list() markup.Node {
	all := []any{markup.Class("drops")}
	for i, h := range b.heads[:min(b.shown, len(b.heads))] {
		if h.Err != nil {
			all = append(all, markup.El("li", touch("page", strconv.Itoa(i), markup.Class("drop"),
				markup.El("b", dateOf(h.Date)), markup.El("span", markup.Class("quiet"), unread(h)))))
			continue
		}
		all = append(all, markup.El("li", b.drop(h, b.lines[i])))
	}
	if len(all) == 1 {
		return nil
	}
	return markup.El("ol", all...)
}

// drop is the button of a drop.
func (b *bookState) drop(h book.Head, l lineOf) markup.Node {
	n := strconv.Itoa(h.Number)
	where := strings.Join(slices.DeleteFunc([]string{plain.Cut(h.Water, 40), plain.Cut(h.Spot, 40)}, func(s string) bool { return s == "" }), ", ")
	first, second := found(h, l)
	return touch("open", n, markup.Class("drop"), markup.ID("drop-"+n),
		markup.El("b", dateOf(h.Date)), " ", markup.El("span", where), " ",
		markup.El("span", markup.Class("quiet"), first), " ", markup.El("span", markup.Class("quiet"), second))
}

func dateOf(date string) string {
	if date == "" {
		return "no date"
	}
	return date
}

// found is what a drop found, as far as that is known yet, in as many lines then as later.
func found(h book.Head, l lineOf) (first, second string) {
	const blank = "\u00a0"
	switch {
	case !l.made && h.Unended:
		return "Not ended", blank
	case !l.made:
		return "...", blank
	case l.Instead != "":
		return capital(l.Instead), blank
	}
	second = "Band " + l.Band
	if l.Caught != "" {
		second += ", " + l.Caught + " caught"
	}
	return "Thermocline " + l.Thermocline, second
}

// more leads to the older drops.
func (b *bookState) more() markup.Node {
	left := len(b.heads) - b.shown
	if left <= 0 {
		return nil
	}
	return touch("older", "", "Show "+strconv.Itoa(min(left, atOnce))+" of "+unit.Count(left, "older drop"))
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
