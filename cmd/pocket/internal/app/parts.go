package app

import "coldseam/cmd/pocket/internal/markup"

// touch is a button: what it does, with a value or "", and what stands on it.
func touch(do, value string, parts ...any) markup.Node {
	all := []any{markup.A("type", "button"), markup.A("data-do", do)}
	if value != "" {
		all = append(all, markup.A("data-value", value))
	}
	return markup.El("button", append(all, parts...)...)
}

// wayBack is the way out at the end of a screen.
func wayBack() markup.Node {
	return markup.El("nav", markup.Class("row"), touch("back", "", "Back"))
}

// undoable says what came of something, with a button that takes it back where it can be.
func undoable(text, undo string, can bool) markup.Node {
	if text == "" || !can {
		return told(text)
	}
	return markup.El("div", markup.Class("note"), markup.El("p", text), touch(undo, "", "Undo"))
}

// told are lines that say what came of something; nothing where there are none.
func told(lines ...string) markup.Node {
	var all []any
	for _, l := range lines {
		if l != "" {
			all = append(all, markup.El("p", l))
		}
	}
	if all == nil {
		return nil
	}
	return markup.El("div", append([]any{markup.Class("note")}, all...)...)
}
