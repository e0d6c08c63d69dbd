package app

import (
	"regexp"
	"strconv"
	"sync"
	"unicode"
	"unicode/utf8"

	"coldseam/cmd/pocket/internal/markup"
)

// touch is a button: what it does, with a value or "", and what stands on it.
func touch(do, value string, parts ...any) markup.Node {
	all := []any{markup.A("type", "button"), markup.A("data-do", do)}
	if value != "" {
		all = append(all, markup.A("data-value", value))
	}
	return markup.El("button", append(all, parts...)...)
}

// submit is the button that sends a form.
func submit(label string) markup.Node {
	return markup.El("button", markup.A("type", "submit"), markup.Class("go"), label)
}

// field is a field of one line, with what it is for above it.
func field(id, name, label string, more ...any) markup.Node {
	return markup.El("div", markup.Class("field"), markup.El("label", markup.A("for", id), label),
		markup.El("input", append(more, markup.ID(id), markup.A("name", name), markup.A("autocomplete", "off"))...))
}

// carry is a button by which the text of an element leaves the page: how is "copy", "share"
// or "save", name that of the file, "" for none.
func carry(how, id, name, label string, more ...any) markup.Node {
	all := append(more, markup.A("type", "button"), markup.A("data-"+how, id))
	if name != "" {
		all = append(all, markup.A("data-name", name))
	}
	return markup.El("button", append(all, label)...)
}

// hidden is a text to be carried off, as it is.
func hidden(id, text string) markup.Node {
	return markup.Pre(markup.ID(id), markup.A("hidden", ""), markup.Exact(text))
}

// textArea is a field of several lines, in which nothing is put right by the phone.
func textArea(id, name string, rows int, text string, more ...any) markup.Node {
	all := append(more, markup.ID(id), markup.A("name", name), markup.A("rows", strconv.Itoa(rows)),
		markup.A("autocomplete", "off"), markup.A("autocapitalize", "off"), markup.A("spellcheck", "false"), markup.Exact(text))
	return markup.El("textarea", all...)
}

// head is the heading of a screen, and of the window.
func (a *App) head(title string) markup.Node {
	a.show.Title = title
	return markup.El("h1", dated(title)...)
}

// dated is a text whose dates are not broken into two lines.
func dated(text string) (out []any) {
	for at := dates().FindStringIndex(text); at != nil; at = dates().FindStringIndex(text) {
		out = append(out, text[:at[0]], markup.El("span", markup.Class("whole"), text[at[0]:at[1]]))
		text = text[at[1]:]
	}
	return append(out, text)
}

var dates = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\d{4}-\d\d-\d\d`) })

// wayBack is the end of a screen: where it leads on to, and the way back.
func wayBack(on ...any) markup.Node {
	return markup.El("nav", append(append([]any{markup.Class("row")}, on...), touch("back", "", "Back"))...)
}

// undoable says what came of something, with a button that takes it back, if undo does.
func undoable(text, undo string) markup.Node {
	if text == "" || undo == "" {
		return told(text)
	}
	return markup.El("div", markup.Class("note"), markup.El("p", text), touch(undo, "", "Undo"))
}

// told are lines that say what came of something; nothing where there are none.
func told(lines ...string) markup.Node {
	all := []any{markup.Class("note")}
	for _, l := range lines {
		if l != "" {
			all = append(all, markup.El("p", l))
		}
	}
	if len(all) == 1 {
		return nil
	}
	return markup.El("div", all...)
}

// warning says what is wrong; nothing where that is "".
func warning(text string) markup.Node {
	if text == "" {
		return nil
	}
	return markup.El("p", markup.Class("warning"), markup.A("role", "alert"), text)
}

func paragraphs(class string, texts []string) (out []markup.Node) {
	for _, t := range texts {
		out = append(out, markup.El("p", markup.Class(class), t))
	}
	return out
}

func items(texts []string) (out []any) {
	for _, t := range texts {
		out = append(out, markup.El("li", t))
	}
	return out
}

// capital is a text that begins a line.
func capital(s string) string {
	first, n := utf8.DecodeRuneInString(s)
	if n == 0 {
		return s
	}
	return string(unicode.ToUpper(first)) + s[n:]
}
