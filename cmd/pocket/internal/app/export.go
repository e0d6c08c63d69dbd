package app

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

var exportActs = actions{
	"export":     func(a *App, e Event) { a.handOn(e.Value); a.goTo(exportScreen) },
	"export-all": func(a *App, _ Event) { a.handOn("all") },
}

// exportState is pages that are copied, sent or saved: as they stand in the book, several
// in one text.
type exportState struct {
	what  string // which drops they are of, "all", "found" or "one"
	drops int
	files []exported
	left  int // pages that are left out
	alone string
	err   error
}

// exported is one text.
type exported struct{ name, text string }

// handOn gathers what is handed on: the drop of the answer ("one"), the drops that were
// found, or "all".
func (a *App) handOn(what string) {
	x := exportState{what: what}
	heads, err := a.book.Heads(a.reading())
	switch {
	case err != nil:
	case x.what == "one":
		heads = slices.DeleteFunc(heads, func(h book.Head) bool { return h.Path != a.answer.path })
	case x.what != "all" && a.books.asks():
		x.what, heads = "found", slices.Clone(a.books.heads)
		book.ByDate(heads)
	default:
		x.what = "all"
	}
	if x.err = err; err == nil {
		x.take(a, heads)
	}
	a.books.pages = x
}

// take puts the pages of drops into as few texts as can be read again.
func (x *exportState) take(a *App, heads []book.Head) {
	names, texts, left := a.book.Pages(heads, a.reading())
	x.left, x.drops = left, dropsOf(heads)
	if len(texts) == 1 {
		x.alone = plain.Line(names[0])
		x.files = []exported{{names[0], texts[0]}}
		return
	}
	const mark = 100 // letters above a page, at most
	for from := 0; from < len(texts); {
		to, size := from, 0
		for to < len(texts) && (to == from || size+len(texts[to])+mark <= notebook.MaxPage) {
			size += len(texts[to]) + mark
			to++
		}
		x.files = append(x.files, exported{"", notebook.Pages(names[from:to], texts[from:to])})
		from = to
	}
	for i := range x.files {
		x.files[i].name = "drops-" + a.o.Now().Format("2006-01-02")
		if len(x.files) > 1 {
			x.files[i].name += "-" + strconv.Itoa(i+1)
		}
		x.files[i].name += ".txt"
	}
}

// exportScreen has the texts, hidden, and what can be done with each.
func exportScreen(a *App) []markup.Node {
	x := a.books.pages
	out := []markup.Node{a.head("Copy or send")}
	switch {
	case x.err != nil:
		return append(out, told(cannotRead(x.err)), wayBack())
	case len(x.files) == 0:
		return append(out, told("There is no page with readings to hand on."), wayBack())
	}
	out = append(out, markup.El("p", x.says()), markup.El("p", "Another phone adds it to its drops with Add pages; so does Coldseam on a computer."))
	if x.left > 0 {
		out = append(out, told(unit.Count(x.left, "page")+" left out: without readings, or not readable."))
	}
	for i, f := range x.files {
		out = append(out, x.file(i, f)...)
	}
	var all markup.Node
	if x.what == "found" {
		all = touch("export-all", "", "All drops instead")
	}
	return append(out, wayBack(all))
}

// says says what the texts are of.
func (x *exportState) says() string {
	if x.alone != "" {
		return "The page of one drop, as it was written: " + x.alone
	}
	size := 0
	for _, f := range x.files {
		size += len(f.text)
	}
	t := unit.Count(x.drops, "drop")
	if x.what == "found" {
		t = "The " + t + " you looked for"
	}
	return fmt.Sprintf("%s, in %s of %d kB.", t, unit.Count(len(x.files), "text file"), max(size/1000, 1))
}

// file is one text and its buttons.
func (x *exportState) file(i int, f exported) []markup.Node {
	id := "pages-" + strconv.Itoa(i+1)
	name, label := plain.Line(f.name), ""
	if len(x.files) > 1 {
		label = " part " + strconv.Itoa(i+1)
	}
	out := []markup.Node{
		markup.El("p", markup.Class("row"), carry("share", id, name, "Send"+label, markup.Class("go")),
			carry("save", id, name, "Save as a file"+label), carry("copy", id, name, "Copy"+label)),
		hidden(id, f.text),
	}
	if x.alone != "" {
		out = append(out, markup.Pre(markup.Class("paper"), strings.TrimRight(f.text, "\n")))
	}
	return out
}
