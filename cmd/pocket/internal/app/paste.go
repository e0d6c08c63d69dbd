package app

import (
	"slices"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

var pasteActs = actions{
	"paste":        func(a *App, e Event) { a.readPage(e.Fields["page"]) },
	"paste-answer": pasteAnswer,
	"paste-open":   pasteOpen,
}

// pasteState is a page that was pasted or typed on the first screen.
type pasteState struct {
	text string // as it stands in the field
	asking
	wrong string
	kept  []keptDrop
}

// pasteForm takes a page.
func (a *App) pasteForm() markup.Node {
	p := &a.paste
	return markup.El("form", markup.ID("paste"), markup.A("data-do", "paste"),
		markup.El("label", markup.A("for", "page"), "Or type or paste what you have read, e.g. 14 ft 63 F"),
		warning(p.wrong),
		textArea("page", "page", 5, p.text), markup.El("button", markup.A("type", "submit"), "Read these readings"))
}

// readPage reads a page, and keeps its drops in the book.
func (a *App) readPage(text string) {
	a.homeward()
	p := &a.paste
	*p = pasteState{text: text}
	if strings.TrimSpace(text) == "" {
		a.pasteWrong("Paste or type a page of readings first, such as: 5 71.2")
		return
	}
	a.readPaste()
}

// readPaste reads the page with the answers there are.
func (a *App) readPaste() {
	p := &a.paste
	o := a.reading()
	o.Unread = false
	sheets, err := p.read(p.text, o)
	switch {
	case p.open != nil:
		if len(p.answers) == 0 {
			a.goTo(pasteQuestion)
		}
		return
	case err != nil:
		a.pasteWrong(sentence(lineOfPage(err)))
		return
	}
	kept, err := a.keepAll(sheets)
	kept = slices.DeleteFunc(kept, func(k keptDrop) bool { return k.path == "" }) // it stood on the page twice
	if err != nil {
		wrong := "Not saved: " + why(err) + "."
		if len(kept) > 0 {
			wrong = unit.Count(len(kept), "drop") + " of this page saved, the next not: " + why(err) + ". Nothing is saved twice."
		}
		a.pasteWrong(wrong)
		return
	}
	*p = pasteState{kept: kept}
	a.homeward()
	if len(kept) == 1 {
		a.showAnswer(kept[0].sheet, kept[0].path, 0)
		return
	}
	a.goTo(pasteList)
}

// pasteWrong tells at the page's field why it was not read.
func (a *App) pasteWrong(text string) {
	a.homeward()
	a.paste.wrong = text
	a.say(text)
}

// keptDrop is a drop that came in on a page.
type keptDrop struct {
	sheet  notebook.Sheet
	path   string // of its page; "" of one that stood on the same page before
	there  bool   // it was in the book already
	number int    // of one that was
}

// keepAll keeps the drops that are not in the book yet. With an error it gives those before.
func (a *App) keepAll(sheets []notebook.Sheet) (kept []keptDrop, err error) {
	b, unlock, err := a.hold()
	if err != nil {
		return nil, err
	}
	defer unlock()
	heads, err := b.Heads(a.reading())
	if err != nil {
		return nil, err
	}
	known := b.Known(heads, a.reading())
	for _, s := range sheets {
		k := keptDrop{sheet: s}
		if k.number, k.there = known.Has(s.Drop); !k.there {
			if k.path, err = b.Add(s.Drop); err != nil {
				return kept, err
			}
			known.Added(s.Drop)
			a.show.Persist = true
		} else if i := slices.IndexFunc(heads, func(h book.Head) bool { return h.Number == k.number && h.Err == nil }); i >= 0 {
			k.path = heads[i].Path
		}
		kept = append(kept, k)
	}
	return kept, nil
}

// pasteQuestion is what the page leaves open.
func pasteQuestion(a *App) []markup.Node {
	p := &a.paste
	out := append([]markup.Node{a.head("One question on this page")}, p.nodes("paste-answer")...)
	return append(out, wayBack())
}

func pasteAnswer(a *App, e Event) {
	if a.paste.answer(e.Value) {
		a.readPaste()
	}
}

// pasteList are the drops of a page that holds several.
func pasteList(a *App) []markup.Node {
	rows := []any{markup.Class("drops")}
	for i, k := range a.paste.kept {
		what := "saved"
		if k.there {
			what = "was in the book already"
		}
		rows = append(rows, markup.El("li", touch("paste-open", strconv.Itoa(i),
			markup.El("b", dated(capital(nameOf(k.sheet.Drop)))...), " ",
			markup.El("span", markup.Class("quiet"), what))))
	}
	return []markup.Node{
		a.head(strconv.Itoa(len(a.paste.kept)) + " drops were on this page"),
		markup.El("ul", rows...),
		wayBack(),
	}
}

// pasteOpen shows the answer of one of them.
func pasteOpen(a *App, e Event) {
	n, err := strconv.Atoi(e.Value)
	if kept := a.paste.kept; err == nil && n >= 0 && n < len(kept) {
		a.showAnswer(kept[n].sheet, kept[n].path, 0)
	}
}
