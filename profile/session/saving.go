package session

import (
	"slices"

	"coldseam/profile/notebook"
	"coldseam/profile/plain"
)

// keep saves the drop when there is something to save.
func (s *Session) keep() {
	if !s.empty() || s.store.Name() != "" {
		s.save(false)
	}
}

// save saves the drop, and asks what to do where that fails. A drop that ends with nothing
// on it leaves no page.
func (s *Session) save(ended bool) {
	var err error
	switch {
	case !ended:
		err = s.store.Save(s.drop, false)
	case s.store == nil || s.store.Name() == "":
	case s.empty():
		if err := s.store.Remove(); err != nil {
			s.end(Unsaved{err})
		}
	default:
		err = s.store.Save(s.drop, true)
	}
	if err == nil {
		return
	}
	if !s.o.Touch { // a page says it in its own words
		s.tellAs(Wrong, "SAVING FAILED: "+plain.Line(err.Error())+". Copy this down if it cannot be fixed:")
	}
	if page := notebook.Write(s.drop); page != s.shown {
		s.shown = page
		s.told = append(s.told, Told{Page: page})
	}
	s.askFailed(err, ended)
}

// askFailed asks what to do when the drop could not be saved. All of it was shown before,
// so that it can be copied down.
func (s *Session) askFailed(err error, ended bool) {
	again := func() { s.save(ended) }
	giveUp := func() { s.end(Unsaved{err}) }
	elsewhere := func() { s.askElsewhere(func() { s.askFailed(err, ended) }, again) }
	choices := []string{"try again", "save it in another folder", "I have copied it down: end the drop"}
	do := []func(){again, elsewhere, giveUp}
	if s.o.Elsewhere == nil {
		choices, do = slices.Delete(choices, 1, 2), slices.Delete(do, 1, 2)
	}
	s.open(Question{
		What: "What now?", Choices: choices, Failed: err, help: helpFailed,
		choose: func(n int) { s.do(do[n]) },
		stop:   giveUp,
	})
}

// askElsewhere asks for another place to keep the drop.
func (s *Session) askElsewhere(back, again func()) {
	s.open(Question{
		ask:   "Which folder?",
		help:  helpFolder,
		leave: back,
		undo:  back,
		stop:  back, // nothing is given up by a word at this question
		text: func(where string) {
			other, err := s.o.Elsewhere(where)
			if err != nil {
				s.tellAs(Wrong, plain.Line(err.Error())+".")
				back()
				return
			}
			s.store = other // what was saved before stays where it is
			s.do(again)
		},
	})
}
