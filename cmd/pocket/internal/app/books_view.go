package app

import (
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// books is the list of drops.
func books(a *App) []markup.Node {
	b := &a.books
	out := []markup.Node{a.head("Book of drops")}
	switch {
	case b.err != nil:
		return append(out, told(cannotRead(b.err)), wayBack())
	case b.all == 0 && len(b.heads) == 0 && !b.asks():
		return append(out, told(b.notice),
			markup.El("p", "No drop is saved yet. Take one with New drop, on the first screen."),
			markup.El("p", "Pages of readings that you have already, from another phone, from a computer or typed from an old notebook, can be added."),
			wayBack(touch("bring", "", "Add pages")))
	}
	if b.next() >= 0 {
		a.show.Later = "lines"
	}
	if b.all > 1 {
		out = append(out, b.search())
	}
	return append(out, told(b.notice), markup.El("p", markup.ID("count"), b.count()), b.list(), b.more(),
		wayBack(touch("bring", "", "Add pages"), touch("export", "", "Copy or send")))
}

// dropsOf is how many drops there are among heads, without pages that cannot be read.
func dropsOf(heads []book.Head) (n int) {
	for _, h := range heads {
		if h.Err == nil {
			n++
		}
	}
	return n
}

// count says how many drops there are and were found.
func (b *bookState) count() string {
	switch found := dropsOf(b.heads); {
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
		waters = markup.El("div", markup.Class("field"), markup.El("label", markup.A("for", "water"), "Water"), markup.El("select", all...))
	}
	form := markup.El("form", markup.A("role", "search"), markup.A("data-do", "find"),
		field("words", "words", "Words on the page", markup.A("type", "search"), markup.A("enterkeyhint", "search"), markup.A("value", b.words)),
		waters, submit("Find"))
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
				markup.El("b", dateOf(h.Date)), markup.El("span", markup.Class("quiet"), unread(filepath.Base(h.Path), h.Err)))))
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
