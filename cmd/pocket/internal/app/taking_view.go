package app

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"coldseam/chart/vector"
	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/session"
)

// askNodes ask for the temperature at a depth.
func (a *App) askNodes() []markup.Node {
	t := &a.taking
	u := t.view.Drop.Units.Shown()
	depth := u.Marked(t.view.Wanted.Value)
	number, length, _ := strings.Cut(depth, " ")
	a.show.Title, a.show.Focus = depth, "temp"
	why := report.Next(t.view.Advice, u)
	switch advice := t.view.Advice; {
	case advice.Enough:
		why = "Your own choice: enough is read already."
	case t.view.Wanted.Value != advice.DepthM:
		why = "Your own choice: " + u.Marked(advice.DepthM) + " is advised."
	}
	return []markup.Node{
		markup.El("h1", markup.Class("depth"), markup.ID("asked"), number, markup.El("small", "\u00a0"+length)),
		t.wrongNode(),
		t.field("Temperature at " + depth + ", " + u.Temp.String()),
		markup.El("p", markup.Class("why"), why),
		t.moveButtons(),
		markup.El("div", markup.Class("row"),
			touch("take-skip", "", "Skip "+depth), t.undoButton(), t.endButton()),
	}
}

// enoughNodes say that no depth needs to be read any more.
func (a *App) enoughNodes() []markup.Node {
	t := &a.taking
	u := t.view.Drop.Units.Shown()
	return []markup.Node{
		a.head("Enough is read"),
		t.wrongNode(),
		markup.El("p", markup.Class("why"), sentence(report.NextAsJSON(t.view.Advice, u).Reason)),
		touch("take-end", "", markup.Class("big"), "Show the answer"),
		markup.El("p", markup.Class("label"), "Or read on"),
		t.moveButtons(),
		markup.El("div", markup.Class("row"), t.undoButton()),
	}
}

// doubtNodes challenge a reading that looks odd.
func (a *App) doubtNodes() []markup.Node {
	t := &a.taking
	a.show.Focus = "temp"
	r := t.view.Drop.Readings[len(t.view.Drop.Readings)-1]
	return []markup.Node{
		a.head("Is that right?"),
		markup.El("p", markup.Class("question"), report.Flagged(r)), t.wrongNode(),
		t.field("Type it again, in " + r.TempUnit.String()),
		markup.El("div", markup.Class("row"), touch("take-keep", "", "Keep "+valueOf(r)), t.undoButton()),
	}
}

// field is the one large field, with its button.
func (t *takingState) field(label string) markup.Node {
	return numberForm("take-type", "temp", label, "Save", t.refusedNumber())
}

// numberForm asks for a number: the keyboard has digits, and a point or comma.
func numberForm(do, name, label, button, said string) markup.Node {
	in := []any{markup.ID(name), markup.A("name", name), markup.A("type", "text"), markup.A("inputmode", "decimal"),
		markup.A("autocomplete", "off"), markup.A("enterkeyhint", "done"), markup.A("data-once", "")}
	if said != "" {
		in = append(in, markup.A("value", said))
	}
	return markup.El("form", markup.Class("number"), markup.A("data-do", do),
		markup.El("label", markup.A("for", name), label),
		markup.El("input", in...),
		submit(button))
}

// moveButtons ask for the depths beside the one that is asked for. They keep their places
// where there is none, so that a thumb that goes on finds no other button there.
func (t *takingState) moveButtons() markup.Node {
	pair := []any{markup.Class("pair")}
	for _, way := range []string{"above", "below"} {
		if to := t.s.Beside(marks[way]); to.Known && to != t.view.Wanted {
			pair = append(pair, touch("take-move", way, capital(way)+": "+t.view.Drop.Units.Shown().Marked(to.Value)))
		} else {
			pair = append(pair, touch("take-move", way, markup.A("disabled", ""), capital(way)))
		}
	}
	return markup.El("div", pair...)
}

func (t *takingState) undoButton() markup.Node {
	if t.view.Last == nil {
		return nil
	}
	return touch("take-undo", t.undoes(), "Undo "+valueOf(*t.view.Last))
}

// endButton ends the drop, where there is a reading.
func (t *takingState) endButton() markup.Node {
	if len(t.view.Drop.Readings) == 0 {
		return nil
	}
	return touch("take-end", "", "End the drop")
}

// wrongNode is why the last event was refused: it stands by the field.
func (t *takingState) wrongNode() markup.Node { return t.toldOf("warning", session.Wrong) }

// toldNode is what else the last event had to tell.
func (t *takingState) toldNode() markup.Node {
	kinds := []session.Kind{session.Said, session.Hint}
	if !t.view.Doubted {
		kinds = append(kinds, session.Odd)
	}
	return t.toldOf("note", kinds...)
}

func (t *takingState) toldOf(class string, kinds ...session.Kind) markup.Node {
	all := []any{markup.Class(class)}
	for _, told := range t.told {
		if slices.Contains(kinds, told.Kind) {
			all = append(all, markup.El("p", told.Text))
		}
	}
	if len(all) == 1 {
		return nil
	}
	if class == "warning" {
		all = append(all, markup.A("role", "alert"))
	}
	return markup.El("div", all...)
}

// picture is the column as far as it is read.
func (t *takingState) picture() markup.Node {
	svg := vector.Growing(t.view.Drop, t.view.Wanted.Or(-1))
	if svg == "" {
		return nil
	}
	return markup.El("figure", markup.Picture(svg))
}

// list are the readings from the surface down, each a button.
func (t *takingState) list() markup.Node {
	rs := t.view.Drop.Readings
	if len(rs) == 0 {
		return nil
	}
	order := make([]int, len(rs))
	for i := range rs {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(rs[i].DepthM, rs[j].DepthM) })
	rows := []any{markup.Class("column")}
	for _, i := range order {
		r, remark := rs[i], ""
		if r.Oxygen.Known {
			remark = "oxygen " + strconv.FormatFloat(r.Oxygen.Value, 'f', -1, 64) + " mg/L"
		}
		if r.Flag != "" {
			remark = strings.TrimPrefix(remark+", ", ", ") + string(r.Flag)
			if !r.Used() {
				remark += ", not used"
			}
		} else if i == len(rs)-1 && t.view.Last != nil && remark == "" {
			remark = "last"
		}
		class := "fine"
		if r.Flag != "" {
			class = "odd"
		}
		rows = append(rows, markup.El("li", markup.Class(class), touch("take-reading", strconv.Itoa(i),
			markup.El("span", markup.Class("at"), depthOf(r)), " ",
			markup.El("span", markup.Class("value"), valueOf(r)), " ",
			markup.El("span", markup.Class("remark"), remark))))
	}
	return markup.El("section",
		markup.El("h2", "Your readings"),
		markup.El("p", markup.Class("quiet"), "Touch one to correct it."),
		markup.El("ul", rows...))
}

// lineForm takes anything else.
func (t *takingState) lineForm() markup.Node {
	said := ""
	if t.lined {
		said = t.refused
	}
	like := `"caught rainbow 16 ft" or "12 68"`
	if !t.view.Drop.Units.Shown().Feet() {
		like = `"caught rainbow 5 m" or "4 18,5"`
	}
	return markup.El("form", markup.A("data-do", "take-line"),
		markup.El("label", markup.A("for", "line"), "Anything else"),
		markup.El("p", markup.ID("like"), markup.Class("quiet"), `As in a notebook: "wind light S", `+like+"; or a whole page."),
		textArea("line", "line", 2, said, markup.A("aria-describedby", "like"), markup.A("data-once", "")),
		markup.El("button", markup.A("type", "submit"), "Note it"))
}

// readingScreen is one reading, to be corrected or taken out.
func readingScreen(a *App) []markup.Node {
	t := &a.taking
	a.show.Awake = true
	r := t.view.Drop.Readings[t.fixing]
	name := valueOf(r) + " at " + depthOf(r)
	a.show.Focus = "right"
	out := []markup.Node{a.head(name), t.wrongNode()}
	out = append(out, numberForm("take-right", "right", "The right temperature at "+depthOf(r)+", "+r.TempUnit.String(), "Save", t.refused))
	if r.Flag != "" {
		out = append(out, markup.El("p", markup.Class("note"), report.Flagged(r)))
	}
	return append(out,
		markup.El("div", markup.Class("row"), touch("take-out", "", "Take it out")),
		markup.El("nav", touch("back", "", "Leave it as it is")))
}

// questionNodes are the question that is open.
func (a *App) questionNodes() []markup.Node {
	t := &a.taking
	q, n := t.view.Question, strconv.Itoa(t.asked)
	if q.Failed != nil {
		return a.failedNodes()
	}
	what := q.What
	if what == "" {
		what = q.Line()
	}
	if q.Meaning {
		what += " which is it?"
	}
	a.show.Title = what
	a.show.Focus = "asked"
	out := []markup.Node{markup.El("h1", markup.ID("asked"), what), t.wrongNode(), t.toldNode()}
	if q.Text != "" {
		out = append(out, markup.Pre(markup.Class("line"), plain.Cut(q.Text, 300)))
	}
	if q.Line() != "" {
		a.show.Focus = "answer"
		out = append(out, numberForm("take-answer", "answer", "In "+t.view.Drop.Units.Shown().Depth.String()+", or with its unit", "Next", t.refused))
	}
	for i, choice := range q.Choices {
		out = append(out, touch("take-choose", n+"."+strconv.Itoa(i), markup.Class("choice"), capital(choice)))
	}
	switch {
	case q.Line() != "" && q.Leaves():
		out = append(out, touch("take-leave", n, markup.Class("choice"), "I do not know"))
	case q.Meaning:
		out = append(out, touch("take-leave", n, markup.Class("choice"), "Leave this line out"))
	}
	if q.Undoes() && t.view.Last != nil && !q.Meaning {
		out = append(out, touch("take-undo", t.undoes(), markup.Class("choice"), "Undo "+valueOf(*t.view.Last)))
	}
	return append(out, t.wayOut())
}

// failedNodes say what could not be saved, and have the drop copied out.
func (a *App) failedNodes() []markup.Node {
	t := &a.taking
	q, n := t.view.Question, strconv.Itoa(t.asked)
	a.show.Title, a.show.Focus = "Not saved", "asked"
	what, rs := "what you did last", t.view.Drop.Readings
	if len(rs) == len(t.saved)+1 {
		what = valueOf(rs[len(rs)-1]) + " at " + depthOf(rs[len(rs)-1])
	}
	wrong := sentence(what + " is not saved: " + why(q.Failed))
	if len(t.saved) > 0 {
		wrong += " The readings before it stay saved."
	}
	out := []markup.Node{
		markup.El("h1", markup.ID("asked"), "Not saved"),
		warning(wrong),
	}
	for i, choice := range q.Choices {
		class := "big"
		if i > 0 { // what gives up stands behind what saves
			out = append(out, markup.El("p", "Or copy the drop out, as it stands here:"), markup.El("div", markup.Class("row"),
				carry("copy", "unsaved", "", "Copy the page"), carry("share", "unsaved", "drop.txt", "Send the page")),
				hidden("unsaved", t.page), markup.Pre(t.page))
			class = "plain"
		}
		out = append(out, touch("take-choose", n+"."+strconv.Itoa(i), markup.Class(class), capital(choice)))
	}
	return out
}
