package session

import (
	"fmt"
	"strings"

	"coldseam/profile/plain"
)

// Learnt says what the probe's lines hold. tell says that the angler did not know it.
func (s *Session) Learnt(layout string, depths, tell bool) {
	p := s.o.Probe
	if s.ended || s.mode != learning {
		return
	}
	p.Known, p.Layout, p.Depths = true, layout, depths
	if tell {
		s.tell(fmt.Sprintf("The probe's lines are read as: %s. (With --layout %q they are known next time.)", layout, layout))
	}
	s.do(s.startProbe)
	s.run()
}

// AskLayout asks what the probe's lines hold, where that is open: why, and between which
// layouts. chosen is called with the index of the one that was chosen.
func (s *Session) AskLayout(line, why string, layouts []string, chosen func(n int)) {
	if s.ended || s.mode != learning {
		return
	}
	byHand := func() { s.tell(notWaiting); s.startTyping() }
	s.open(Question{
		What:    fmt.Sprintf("The probe sends %s: %s. What is in such a line?", plain.Line(fmt.Sprintf("%q", line)), why),
		Choices: layouts, choose: chosen, leave: byHand, stop: s.finish, hangUp: s.finish,
	})
}

// NotUnderstood says that the probe's lines tell nothing: the readings are typed.
func (s *Session) NotUnderstood() {
	if s.ended || s.mode != learning {
		return
	}
	s.tell(notUnderstood)
	s.do(s.startTyping)
	s.run()
}

// typedLearning does what a typed line says while the probe's first lines are listened to.
func (s *Session) typedLearning(text string) {
	switch w, _ := Word(text); w {
	case "stop":
		s.finish()
	case "help":
		s.tell(listenHelp)
	case "undo", "skip":
		s.tell(nothingToUndo)
	default:
		s.tell(notWaiting)
		s.startTyping()
		if strings.TrimSpace(text) != "" {
			s.typed(text)
		}
	}
}
