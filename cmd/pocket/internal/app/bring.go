package app

import (
	"fmt"
	"slices"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/unit"
)

var bringActs = actions{
	"bring":        func(a *App, _ Event) { a.books.bring = bringState{}; a.goTo(bringScreen) },
	"import":       func(a *App, e Event) { a.bring(e.Fields["name"], e.Value) },
	"bring-text":   func(a *App, e Event) { a.bring(pasted, e.Fields["text"]) },
	"bring-answer": bringAnswer,
	"bring-leave":  bringLeave,
}

// pasted is what a text without a file is called.
const pasted = "The pasted text"

// bringState is pages that come in, file by file.
type bringState struct {
	waiting []exported // the first is being read
	asking
	lines []string // what came of each drop or file
	notes []string // how lines were read
}

// bring takes one more file.
func (a *App) bring(name, text string) {
	b := &a.books.bring
	name = plain.Cut(name, 60)
	if strings.TrimSpace(text) == "" && name == pasted {
		b.lines = []string{"There is nothing to add: paste a page of readings first."}
		a.say(b.lines[0])
		return
	}
	if len(b.waiting) == 0 {
		b.lines, b.notes = nil, nil
	}
	b.waiting = append(b.waiting, exported{name, text})
	if len(b.waiting) == 1 {
		a.bringOn()
	}
}

// bringOn reads what waits, up to a question.
func (a *App) bringOn() {
	b := &a.books.bring
	for len(b.waiting) > 0 {
		f := b.waiting[0]
		o := a.set.Adding()
		o.Name = f.name
		sheets, err := b.asking.read(f.text, o)
		if b.open != nil {
			a.say(capital(b.open.What) + ": which is it?")
			return
		}
		b.waiting, b.asking = b.waiting[1:], asking{}
		from := len(b.lines)
		if err != nil {
			b.lines = append(b.lines, unread(f.name, err), "Nothing of it was added.")
		} else {
			a.add(f.name, sheets)
		}
		a.say(b.lines[from])
	}
}

func bringAnswer(a *App, e Event) {
	if a.books.bring.answer(e.Value) {
		a.bringOn()
	}
}

// bringLeave leaves out the file that asks something.
func bringLeave(a *App, _ Event) {
	b := &a.books.bring
	if b.open == nil {
		return
	}
	b.lines = append(b.lines, b.waiting[0].name+" was left out.")
	b.waiting, b.asking = b.waiting[1:], asking{}
	a.bringOn()
}

// mostLines and mostNotes are those shown of a long file.
const (
	mostLines = 8
	mostNotes = 5
)

// add saves the drops of a file that are not in the book.
func (a *App) add(name string, sheets []notebook.Sheet) {
	b := &a.books.bring
	kept, err := a.keepAll(sheets)
	var lines []string
	there := 0
	for _, k := range kept {
		if k.there {
			there++
			lines = append(lines, report.AlreadyIn(k.sheet.Drop, k.number))
			continue
		}
		lines = append(lines, report.Added(k.sheet.Drop, ""))
		for _, n := range k.sheet.Notes {
			if text := report.ReadSo(k.sheet.Name, n.Line, n.Text); n.Text != notebook.SecondDrop && !slices.Contains(b.notes, text) {
				b.notes = append(b.notes, text)
			}
		}
	}
	added := len(kept) - there
	lines = firstOf(lines, mostLines, "more drop")
	switch {
	case err != nil && added == 0:
		lines = append(lines, name+": nothing was added. "+sentence(why(err)))
	case err != nil:
		lines = append(lines, fmt.Sprintf("%s: %s added, the next not: %s. Add the same file again then: nothing is added twice.", name, unit.Count(added, "drop"), why(err)))
	case len(sheets) > 1 || there > 0:
		lines = append([]string{report.AddedInAll(added, there, "", false)}, lines...)
	}
	b.lines = append(b.lines, lines...)
}

// bringScreen takes files and pasted pages, and tells what came of them.
func bringScreen(a *App) []markup.Node {
	b := &a.books.bring
	out := []markup.Node{a.head("Add pages")}
	if b.open != nil {
		out = append(out, markup.El("p", b.waiting[0].name+" can be read in two ways."))
		out = append(out, b.nodes("bring-answer")...)
		return append(out, wayBack(touch("bring-leave", "", "Leave this one out")))
	}
	if len(b.lines) > 0 {
		out = append(out, told(b.lines...), b.how())
	} else {
		out = append(out, markup.El("p", "Readings from another phone, from a computer or out of an old notebook. A drop that is here already is not added again."))
	}
	return append(out,
		markup.El("p", markup.El("label", markup.A("for", "file"), "Text files"),
			markup.El("input", markup.ID("file"), markup.A("type", "file"), markup.A("data-file", "import"), markup.A("multiple", ""), markup.A("accept", ".txt,text/plain"))),
		markup.El("form", markup.A("data-do", "bring-text"),
			markup.El("p", markup.El("label", markup.A("for", "pasted"), "Or paste pages here"),
				textArea("pasted", "text", 6, "", markup.A("data-once", ""))),
			submit("Add")),
		wayBack())
}

// how tells how lines were read where that took more than plain reading.
func (b *bringState) how() markup.Node {
	if len(b.notes) == 0 {
		return nil
	}
	return markup.El("details", markup.El("summary", "How lines were read"), markup.El("ul", items(firstOf(b.notes, mostNotes, "more note"))...))
}

// firstOf are the first lines of a long list, and how many more there are.
func firstOf(lines []string, most int, more string) []string {
	if len(lines) <= most {
		return lines
	}
	return append(lines[:most:most], "and "+unit.Count(len(lines)-most, more))
}
