package app

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/report"
	"coldseam/profile/session"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

var takingActs = actions{
	"drop":         func(a *App, _ Event) { a.begin("", nil) },
	"drop-again":   takeAgain,
	"drop-here":    func(a *App, _ Event) { a.takeAfter(a.answer.sheet.Drop) },
	"take-type":    takeTyped,
	"take-line":    takeLine,
	"take-move":    func(a *App, e Event) { a.doing(func(s *session.Session) { s.Move(marks[e.Value]) }) },
	"take-keep":    func(a *App, _ Event) { a.word("skip", a.taking.view.Doubted) },
	"take-skip":    func(a *App, _ Event) { a.word("skip", !a.taking.view.Doubted) },
	"take-undo":    takeUndo,
	"take-end":     func(a *App, _ Event) { a.word("stop", true) },
	"take-choose":  takeChoose,
	"take-answer":  takeAnswer,
	"take-leave":   takeLeave,
	"take-reading": openReading,
	"take-right":   rightReading,
	"take-out":     outReading,
}

// marks are how far the buttons move the depth that is asked for.
var marks = map[string]int{"above": -1, "below": 1}

// takingState is a drop that is being taken.
type takingState struct {
	s       *session.Session // nil where none is
	view    session.View
	told    []session.Told    // what the last event had to tell
	refused string            // what was typed last, where it was not taken,
	lined   bool              // and that it was typed as a line
	page    string            // the drop to be copied, where it could not be saved
	asked   int               // how many questions there were: a late touch answers none but its own
	fixing  int               // the reading that is looked at
	units   bool              // the units were asked for: the settings keep them
	kept    bool              // the first reading is saved
	saved   []profile.Reading // those that are
	unlock  func()
}

// takeAgain begins a drop on the water of the last one.
func takeAgain(a *App, _ Event) {
	if last, ok := a.last(); ok {
		a.takeAfter(last.Drop)
	}
}

// takeAfter begins a drop with what holds from another to the next one there.
func (a *App) takeAfter(d profile.Drop) {
	a.begin("", notebook.Carried(d, "the last drop", a.set.Fish))
}

// begin goes on with the drop of a page that was cut off, or where that is "" begins one with
// what is known of it already. It is left to the first screen, whatever led to it.
func (a *App) begin(cut string, known []notebook.Header) {
	if a.taking.s != nil {
		a.homeward()
	}
	b, unlock, err := a.hold()
	var was book.Unended
	if err == nil && cut != "" {
		if was, err = cutOff(b, cut); err != nil {
			unlock()
		}
	}
	if err != nil {
		a.fail(sentence(why(err)))
		return
	}
	a.homeward()
	t := &a.taking
	t.unlock = unlock
	inBook := func(path string) string { return strings.TrimPrefix(path, a.o.Dir+"/") }
	b.Touched = func(what book.Touch, path, now string) {
		if t.s != nil {
			t.s.Tell(report.Touched(what, inBook(path), inBook(now)))
		}
	}
	o := session.Options{
		Headers: slices.Concat(a.set.Headers, known), Now: a.o.Now(), Clock: a.o.Now, New: b.Store(new(book.Log)),
		Fish: a.set.Fish, Waters: a.set.WaterNames(), Touch: true,
	}
	if cut == "" {
		t.s, t.units = session.New(o), known == nil && a.units() == ""
	} else {
		o.Cut = []session.Cut{{Drop: was.Drop, Store: was.Store(new(book.Log))}}
		t.s, t.kept = session.New(o), true
		t.s.Type("1") // the question which drop to go on with was answered by the touch
	}
	a.goTo(takingScreen)
	a.after(t.s.Drop().Readings) // saved before
}

var errNotCut = errors.New("that drop was ended or changed meanwhile")

// cutOff finds a drop that was cut off by its page.
func cutOff(b *book.Book, path string) (book.Unended, error) {
	all, err := b.Unended()
	if err != nil {
		return book.Unended{}, err
	}
	for _, u := range all {
		if u.Path == path && u.Err == nil {
			return u, nil
		}
	}
	return book.Unended{}, errNotCut
}

// leave lets go of the drop that is being taken: what was read of it is saved, and it can be
// gone on with.
func (a *App) leave() {
	if a.taking.unlock != nil {
		a.taking.unlock()
	}
	a.taking = takingState{}
}

// unsaved reports whether leaving would lose what could not be saved.
func (a *App) unsaved() bool {
	q := a.taking.view.Question
	return a.taking.s != nil && q != nil && q.Failed != nil
}

// doing has something done to the drop, and looks at what came of it.
func (a *App) doing(do func(s *session.Session)) {
	t := &a.taking
	if t.s == nil {
		return
	}
	was := t.view.Drop.Readings
	do(t.s)
	a.after(was)
}

// word is one of the words that the session hears, where it has a meaning.
func (a *App) word(word string, has bool) {
	if t := &a.taking; t.s != nil && t.view.Question == nil && has {
		a.doing(func(s *session.Session) { s.Type(word) })
	}
}

// after looks at the drop after an event; was are the readings before it.
func (a *App) after(was []profile.Reading) {
	t := &a.taking
	t.hear()
	if !a.unsaved() {
		t.saved = t.view.Drop.Readings
		if t.s.Saved() != "" && len(t.saved) > 0 {
			a.firstSaved()
		}
	}
	a.tellTaking(was)
	switch {
	case t.view.Ended:
		a.ended()
	case a.on(readingScreen) && (t.view.Question != nil || !t.wrong()):
		a.back()
	}
}

// hear takes in what the session shows: what was told for a person, and the page to be
// copied.
func (t *takingState) hear() {
	asked := t.view.Question
	t.view, t.told, t.refused, t.lined = t.s.View(), nil, "", false
	for _, told := range t.view.Told {
		switch {
		case told.Page != "":
			t.page = told.Page
		case told.Text != "" && told.Kind != session.Why && told.Column == nil:
			t.told = append(t.told, told)
		}
	}
	if q := t.view.Question; q != nil && q != asked {
		t.asked++
	}
}

// firstSaved is done once a drop is on the disk.
func (a *App) firstSaved() {
	t := &a.taking
	if !t.kept {
		t.kept, a.show.Persist = true, true
	}
	if t.units { // settings that cannot be read are not written over: saveSettings refuses
		err := a.changeSettings(func(text string) (string, error) { return settings.Set(text, "units", t.view.Drop.Units.String()) })
		if err == nil {
			t.told = append(t.told, session.Told{Text: "These units stay for the next drops, until the settings say otherwise."})
		}
	}
	t.units = false
}

// tellTaking says in a line what was done; the rest stands on the screen.
func (a *App) tellTaking(was []profile.Reading) {
	t := &a.taking
	v := t.view
	taken := ""
	if r, ok := newest(v.Drop.Readings, was); ok {
		taken = "Saved: " + valueOf(r) + " at " + depthOf(r) + "."
	}
	switch {
	case a.unsaved():
		taken = "Not saved."
	case v.Question != nil || v.Ended:
	case t.wrong():
		taken = "Not taken."
	case v.Doubted:
		taken += " It looks odd."
	case v.Wanted.Known:
		taken += " Next: " + v.Drop.Units.Shown().Marked(v.Wanted.Value) + "."
	default:
		taken += " It is enough."
	}
	a.say(strings.TrimSpace(taken))
}

// newest finds the last reading that was not there before, or was put in the place of one
// that was.
func newest(now, was []profile.Reading) (profile.Reading, bool) {
	for _, r := range slices.Backward(now) {
		if !slices.ContainsFunc(was, func(w profile.Reading) bool {
			return depthOf(w) == depthOf(r) && valueOf(w) == valueOf(r) && w.Oxygen == r.Oxygen
		}) {
			return r, true
		}
	}
	return profile.Reading{}, false
}

// ended shows the answer of a drop, or why there is none.
func (a *App) ended() {
	s := a.taking.s
	drop, path, err := s.Drop(), s.Saved(), s.Err()
	a.homeward()
	if err != nil {
		a.fail(notTaken(err, path))
		return
	}
	a.showAnswer(notebook.Sheet{Name: path, Drop: drop}, path, 0)
}

// notTaken says why a drop that ended has no answer.
func notTaken(err error, path string) string {
	var unsaved session.Unsaved
	switch {
	case !errors.As(err, &unsaved):
		return sentence(why(err))
	case path == "":
		return "The drop is not saved: " + why(unsaved.Err) + "."
	}
	return "The last of the drop is not saved: " + why(unsaved.Err) + ". What was saved of it before stays."
}

// takeTyped takes what was typed into the large field.
func takeTyped(a *App, e Event) {
	if a.taking.view.Question == nil {
		a.typed(e.Fields["temp"], "Type the temperature first.")
	}
}

// takeLine takes a line, or a whole page, as the notebook reads it.
func takeLine(a *App, e Event) {
	if t := &a.taking; t.view.Question == nil {
		a.typed(e.Fields["line"], "Type something first.")
		t.lined = true
	}
}

// takeAnswer answers the open question with a line of text.
func takeAnswer(a *App, e Event) {
	if q := a.taking.view.Question; q != nil && q.Line() != "" {
		a.typed(e.Fields["answer"], "Type the number first, or say that you do not know it.")
	}
}

// typed takes what was typed; what is not taken stays in its field.
func (a *App) typed(text, empty string) {
	t := &a.taking
	switch text = strings.TrimSpace(text); {
	case t.s == nil:
	case text == "":
		a.notYet(empty)
	default:
		a.doing(func(s *session.Session) { s.Type(text) })
		if t.wrong() {
			t.refused = text
		}
	}
}

// notYet asks for what was not typed.
func (a *App) notYet(text string) {
	a.taking.told = []session.Told{{Kind: session.Wrong, Text: text}}
	a.say(text)
}

// refusedNumber is what the number field had that was not taken.
func (t *takingState) refusedNumber() string {
	if t.lined {
		return ""
	}
	return t.refused
}

// wrong reports whether the last event was refused.
func (t *takingState) wrong() bool {
	return slices.ContainsFunc(t.told, func(told session.Told) bool { return told.Kind == session.Wrong })
}

// takeUndo takes back the reading that the button named, and the question that is open about
// it.
func takeUndo(a *App, e Event) {
	t := &a.taking
	if q := t.view.Question; t.s == nil || q != nil && !q.Undoes() || t.view.Last == nil || e.Value != t.undoes() {
		return
	}
	a.doing(func(s *session.Session) { s.Type("undo") })
}

// undoes names the reading that undo takes back.
func (t *takingState) undoes() string {
	r := t.view.Last
	return fmt.Sprintf("%d: %s, %s", len(t.view.Drop.Readings), depthOf(*r), valueOf(*r))
}

// takeChoose answers the open question with a choice: the number of the question, and of the
// choice from 0.
func takeChoose(a *App, e Event) {
	question, choice, _ := strings.Cut(e.Value, ".")
	n, err := strconv.Atoi(choice)
	t := &a.taking
	if q := t.view.Question; err != nil || q == nil || question != strconv.Itoa(t.asked) || n < 0 || n >= len(q.Choices) {
		return
	}
	a.doing(func(s *session.Session) { s.Type(strconv.Itoa(n + 1)) })
}

// takeLeave leaves the open question.
func takeLeave(a *App, e Event) {
	t := &a.taking
	if q := t.view.Question; q != nil && q.Leaves() && e.Value == strconv.Itoa(t.asked) {
		a.doing(func(s *session.Session) { s.Type("skip") })
	}
}

func depthOf(r profile.Reading) string { return unit.Exact(r.Depth) + " " + r.DepthUnit.String() }
func valueOf(r profile.Reading) string { return unit.Exact(r.Temp) + " " + r.TempUnit.String() }

// takingScreen is a drop while it is taken. With the keyboard of the phone open there is
// room for what is asked, the field and its button.
func takingScreen(a *App) []markup.Node {
	t := &a.taking
	a.show.Awake = true
	var out []markup.Node
	switch v := t.view; {
	case v.Question != nil:
		return a.questionNodes()
	case v.Doubted:
		out = a.doubtNodes()
	case v.Wanted.Known:
		out = a.askNodes()
	default:
		out = a.enoughNodes()
	}
	out = append(out, t.toldNode(), t.picture(), t.list())
	if !t.view.Doubted {
		out = append(out, t.lineForm())
	}
	return append(out, t.wayOut())
}

// wayOut leads to the first screen, which offers the drop again where it has a reading.
func (t *takingState) wayOut() markup.Node {
	if len(t.view.Drop.Readings) == 0 {
		return wayBack()
	}
	return markup.El("nav", touch("back", "", "Leave it for later"))
}
