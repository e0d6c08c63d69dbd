package app

import (
	"errors"
	"reflect"
	"slices"
	"strconv"

	"coldseam/chart"
	"coldseam/chart/vector"
	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/report"
)

var answerActs = actions{
	"check": (*App).check,
}

// answerState is the answer that is seen.
type answerState struct {
	sheet   notebook.Sheet
	path    string // of its page in the book
	nth     int    // which drop of the page, from 1; 0 where it is not known yet
	plan    plan.Plan
	err     error          // why there is no plan
	caught  []profile.Drop // those of the book on which something was caught
	told    string         // what came of what was done last
	undo    string         // the action that takes it back, "" for none
	checked string         // what the reading at the anchor says
	spot    bool           // the message tells the spot
	fish    string         // that it is for, "" for that of the drop
	timer   timerState
	catch   catchState
}

// showAnswer shows the answer of a drop: the n-th of its page, from 1, or 0 where that is not
// known.
func (a *App) showAnswer(sheet notebook.Sheet, path string, nth int) {
	a.answer = answerState{sheet: sheet, path: path, nth: nth}
	a.answer.plan, a.answer.err = a.planOf(sheet)
	a.goTo(answerScreen)
}

// planOf makes the plan of a drop, with the settings and what was caught before.
func (a *App) planOf(sheet notebook.Sheet) (plan.Plan, error) {
	a.answer.caught = a.book.Caught(a.reading())
	if a.answer.fish != "" {
		sheet.Drop.For = a.answer.fish
	}
	in, err := a.set.Input(sheet.Drop)
	if err != nil {
		return plan.Plan{Drop: sheet.Drop}, err
	}
	for _, d := range a.answer.caught {
		in.Taken = append(in.Taken, plan.TakenOn(d)...)
	}
	return plan.Make(in)
}

// entry is the answer's drop as it stands in the book now.
func (a *App) entry() (book.Entry, error) {
	heads, err := a.book.Heads(a.reading())
	if err != nil {
		return book.Entry{}, err
	}
	heads = slices.DeleteFunc(heads, func(h book.Head) bool { return h.Err != nil || h.Path != a.answer.path })
	all := a.book.Read(heads, a.reading())
	for _, e := range all {
		if e.Err == nil && (e.Nth == a.answer.nth || a.answer.nth == 0 && (len(all) == 1 || reflect.DeepEqual(e.Drop, a.answer.sheet.Drop))) {
			return e, nil
		}
	}
	return book.Entry{}, errGone
}

// tellAnswer says something above the answer, short for those who listen; undo is the action
// that takes it back, or "".
func (a *App) tellAnswer(text, short, undo string) {
	a.answer.told, a.answer.undo = text, undo
	a.say(short)
}

func answerScreen(a *App) []markup.Node {
	s := &a.answer
	if s.err != nil {
		return a.noAnswer()
	}
	b := report.Short(s.plan, s.sheet.Notes)
	out := []markup.Node{a.head(b.Title), undoable(s.told, s.undo)}
	out = append(out, paragraphs("warning", b.Warnings)...)
	if b.NoWater != "" {
		first, rest := report.Lead(b.NoWater)
		out = append(out, markup.El("p", markup.Class("lead"), first), markup.El("p", rest))
	}
	out = append(out, rows(b.Rows), markup.El("p", markup.Class("confidence"), b.Confidence), told(unused(s.plan.Drop)...))
	out = append(out, paragraphs("caution", b.Safety)...)
	out = append(out, a.next())
	out = append(out, pictures(chart.Of(s.plan))...)
	return append(out, a.sections()...)
}

// unused says which readings were left out of the answer, and why.
func unused(d profile.Drop) (out []string) {
	for _, r := range d.Readings {
		if !r.Used() {
			out = append(out, report.Flagged(r))
		}
	}
	return firstOf(out, mostUnused, "more reading")
}

// mostUnused are those named above the pictures.
const mostUnused = 3

// rows are the numbers of an answer.
func rows(all []report.Row) markup.Node {
	list := []any{markup.Class("rows")}
	for _, r := range all {
		value := "value"
		if r.Value != "" && r.Value[0] >= '0' && r.Value[0] <= '9' { // to be read at arm's length
			value = "value far"
		}
		row := []any{markup.El("dt", markup.Class("label"), r.Label), markup.El("dd", markup.Class(value), r.Value)}
		if r.Detail != "" {
			row = append(row, markup.El("dd", markup.Class("detail"), r.Detail))
		}
		list = append(list, markup.El("div", row...))
	}
	return markup.El("dl", list...)
}

// next is what can be done with an answer.
func (a *App) next() markup.Node {
	list := []any{markup.Class("row"), markup.A("aria-label", "Next")}
	if t, ok := report.SinkTime(a.answer.plan); ok {
		list = append(list, touch("timer", "", markup.Class("big"), "Sink timer, "+strconv.Itoa(t.Best)+" s"))
	}
	list = append(list, touch("caught", "", markup.Class("big"), "Caught one"), touch("message", "", "Message"), touch("fish", "", "For another fish"))
	return markup.El("nav", append(list, a.onward()...)...)
}

// onward is where else to go from a drop, with an answer or without.
func (a *App) onward() []any {
	return []any{touch("drop", "", "New drop"), touch("book", "", "Book of drops")}
}

// atEnd is the way on after reading down.
func (a *App) atEnd() []markup.Node {
	back := "To the first screen"
	switch n := len(a.before) - 1; {
	case same(a.before[n], books):
		back = "To the book"
	case same(a.before[n], pasteList):
		back = "To the drops of the page"
	}
	return []markup.Node{
		markup.El("nav", markup.Class("row"), markup.A("aria-label", "On from here"),
			touch("drop-here", "", markup.Class("go"), "Another drop here"), touch("export", "one", "Send a copy"),
			touch("correct", "", "Correct this drop"), touch("back", "", back)),
		touch("out", "", markup.Class("plain"), "Take this drop out of the book"),
	}
}

// pictures are the drawing to scale, where there is water to fish, and the column with its
// readings.
func pictures(d chart.Drop) (out []markup.Node) {
	for _, svg := range []string{vector.Scene(d), vector.Profile(d)} {
		if svg != "" {
			out = append(out, markup.El("figure", markup.Picture(svg)))
		}
	}
	return out
}

// sections are what stands behind the answer: what to confirm as a list to tick off, a
// reading at the anchor, and the reasons, folded.
func (a *App) sections() (out []markup.Node) {
	for i, s := range report.Sections(a.answer.plan, a.answer.sheet.Notes) {
		if s.Title == report.ConfirmTitle {
			out = append(out, ticks(s), a.checkForm())
			continue
		}
		out = append(out, folded("part-"+strconv.Itoa(i), s))
	}
	return append(out, a.atEnd()...)
}

// ticks is a list to tick off; the page alone knows what was ticked.
func ticks(s report.Section) markup.Node {
	var list []any
	for i, t := range s.Items {
		box := markup.El("input", markup.A("type", "checkbox"), markup.ID("tick-"+strconv.Itoa(i)))
		list = append(list, markup.El("li", markup.El("label", markup.Class("tick"), box, markup.El("span", t))))
	}
	return markup.El("section", markup.El("h2", s.Title), markup.El("ul", append(list, markup.Class("ticks"))...))
}

// folded is a part of the whole answer, opened by a touch.
func folded(id string, s report.Section) markup.Node {
	return markup.El("details", markup.ID(id), markup.El("summary", s.Title), markup.El("ul", items(s.Items)...))
}

// noAnswer says why there is no answer, and what to do.
func (a *App) noAnswer() []markup.Node {
	s := &a.answer
	title := report.WhereWhen(s.sheet.Drop)
	if title == "" {
		title = "This drop"
	}
	out := []markup.Node{a.head(title), undoable(s.told, s.undo), markup.El("p", markup.Class("lead"), sentence("no answer: "+why(s.err)))}
	what := "Correct it: something in it is not as the water was."
	if errors.As(s.err, new(fish.Unknown)) {
		what = "Write the fish in another way, or take it out of the page."
	}
	out = append(out, markup.El("p", what), markup.El("nav", append([]any{markup.Class("row"), markup.A("aria-label", "Next"), touch("correct", "", markup.Class("big"), "Correct this drop"), touch("caught", "", "Caught one")}, a.onward()...)...))
	readings := report.AsRead(s.plan, s.sheet.Notes)
	return append(append(out, markup.El("h2", "Your readings"), markup.El("ul", items(readings)...)), a.atEnd()...)
}
