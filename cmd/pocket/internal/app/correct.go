package app

import (
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/report"
)

var correctActs = actions{
	"correct":      (*App).correct,
	"correct-save": (*App).saveCorrected,
}

// correctState is a page whose text is corrected.
type correctState struct {
	was  string // the page as it stood
	text string // as it is in the field
	told string // why it was not saved
}

// correct shows the text of the answer's page, to be put right.
func (a *App) correct(Event) {
	s := &a.answer
	text, err := a.book.Text(s.path)
	if err != nil {
		a.tellAnswer("The page cannot be opened: "+why(err)+".", "Not opened.", "")
		return
	}
	s.correct = correctState{was: text, text: text}
	a.goTo(correctScreen)
}

func correctScreen(a *App) []markup.Node {
	s := &a.answer
	a.show.Title = "Correct the page"
	return []markup.Node{
		markup.El("h1", "Correct the page"),
		markup.El("p", report.WhereWhen(s.sheet.Drop)),
		told(s.correct.told),
		markup.El("form", markup.ID("correct"), markup.A("data-do", "correct-save"),
			markup.El("label", markup.A("for", "corrected"), "The page, a reading or a fact on each line"),
			markup.El("textarea", markup.ID("corrected"), markup.A("name", "page"), markup.A("rows", "12"), markup.A("autocomplete", "off"), markup.A("autocapitalize", "off"), markup.A("spellcheck", "false"), markup.Exact(s.correct.text)),
			markup.El("button", markup.A("type", "submit"), markup.Class("go"), "Save the page")),
		wayBack(),
	}
}

// saveCorrected puts the corrected text in the page's place and makes the answer of it.
func (a *App) saveCorrected(e Event) {
	s := &a.answer
	text := e.Fields["page"]
	if !strings.HasSuffix(text, "\n") {
		text += "\n"
	}
	s.correct.text = text
	wrong := func(err error) {
		s.correct.told = "Not saved: " + why(err) + "."
		a.say(s.correct.told)
	}
	b, unlock, err := a.hold()
	if err != nil {
		wrong(err)
		return
	}
	defer unlock()
	sheets, err := b.Rewrite(s.path, s.correct.was, text, a.reading())
	if err != nil {
		wrong(err)
		return
	}
	n := min(max(s.nth, 1), len(sheets))
	a.back()
	a.showAnswer(sheets[n-1], s.path)
	a.answer.nth = n
	a.tellAnswer("The page is saved.", "Saved.", "")
}
