package app

import (
	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/notebook"
	"coldseam/profile/plan"
	"coldseam/profile/report"
)

var answerActs = actions{}

// answerState is the answer that is seen.
type answerState struct {
	sheet notebook.Sheet
	path  string // of its page in the book
	plan  plan.Plan
	err   error // why there is no plan
}

// showAnswer shows the answer of a drop. It does not make a step that back leads to: a drop
// that has ended is not gone back to.
func (a *App) showAnswer(sheet notebook.Sheet, path string) {
	a.answer = answerState{sheet: sheet, path: path}
	in, err := a.set.Input(sheet.Drop)
	if err == nil {
		for _, d := range a.book.Caught(a.reading()) {
			in.Taken = append(in.Taken, plan.TakenOn(d)...)
		}
		a.answer.plan, err = plan.Make(in)
	}
	a.answer.err = err
	a.screen = answerScreen
}

func answerScreen(a *App) []markup.Node {
	if err := a.answer.err; err != nil {
		return []markup.Node{markup.El("h1", "No answer"), markup.El("p", err.Error())}
	}
	b := report.Short(a.answer.plan, a.answer.sheet.Notes)
	return []markup.Node{markup.El("h1", b.Title), markup.El("p", b.Sentence())}
}
