package session

import (
	"strconv"
	"strings"
)

// Question is one that must be answered before the drop goes on: with one of its choices,
// by number, or where it has none with a line of text.
type Question struct {
	What    string
	Choices []string
	Text    string // the typed line that it is about, where it is about one
	Meaning bool   // it asks which meaning a typed line has: Enter alone is no answer
	Failed  error  // why the drop could not be saved: what it has is nowhere but here

	ask    string            // the prompt of a line of text
	help   string            // what "help" tells
	asked  bool              // Enter alone is no answer: it tells the help
	choose func(n int)       // with an index of Choices
	text   func(line string) // with a line, not empty
	leave  func()            // skip, or Enter alone at a line of text; nil where it must be answered
	undo   func()            // nil where there is nothing to take back
	stop   func()            // nil: as leave, and then the drop ends
	hangUp func()            // nil: as leave; where that is nil as stop
}

// Line is what a line of text is asked for, "" where there are choices.
func (q *Question) Line() string { return q.ask }

// Leaves reports whether skip leaves the question, and Undoes whether undo takes back what
// led to it.
func (q *Question) Leaves() bool { return q.leave != nil }

// Undoes is told at Leaves.
func (q *Question) Undoes() bool { return q.undo != nil }

func (q *Question) prompt() string {
	if q.text != nil {
		return q.ask
	}
	return numberPrompt
}

// open puts a question.
func (s *Session) open(q Question) { s.question = &q }

// close takes the open question away, and does what its answer says.
func (s *Session) close(then func()) {
	s.question = nil
	if then != nil {
		then()
	}
}

// answer takes a typed line as the answer of the open question. undo, skip, stop and help
// are heard at any question.
func (s *Session) answer(line string) {
	q := s.question
	line = strings.TrimSpace(line)
	if n, ok := q.choice(line); ok {
		s.close(func() { q.choose(n) })
		return
	}
	switch w, _ := Word(line); {
	case w == "help", line == "" && q.asked:
		s.hint(s.helpText(q))
	case w == "stop" && q.stop != nil:
		s.close(q.stop)
	case w == "stop":
		s.stopping = true
		s.close(q.leave)
	case w == "skip" && q.leave == nil:
		s.tellAs(Wrong, mustBeAnswered)
	case w == "undo" && q.undo == nil:
		s.tellAs(Wrong, nothingToUndo)
	case w == "undo":
		s.close(q.undo)
	case w == "skip", line == "" && q.text != nil:
		s.close(q.leave)
	case q.text != nil:
		s.close(func() { q.text(line) })
	}
}

// choice reads a number from 1 as an index; nothing is the first, where it has a meaning.
func (q *Question) choice(line string) (int, bool) {
	if len(q.Choices) == 0 || line == "" && (q.Meaning || q.asked) {
		return 0, false
	}
	if line == "" {
		return 0, true
	}
	n, err := strconv.Atoi(line)
	return n - 1, err == nil && n >= 1 && n <= len(q.Choices)
}

func (s *Session) helpText(q *Question) string {
	switch {
	case s.o.Touch && q.text == nil:
		return helpTouch
	case q.help != "":
		return q.help
	}
	return helpChoice
}

// hangUp leaves the open question as it is.
func (s *Session) hangUp() {
	q := s.question
	switch {
	case q.hangUp != nil:
		s.close(q.hangUp)
	case q.leave != nil:
		s.close(q.leave)
	case q.stop != nil:
		s.close(q.stop)
	}
}

// Word finds which of undo, skip, stop and help is meant by a typed line: the start of the
// word will do, and ? is help.
func Word(line string) (word string, ok bool) {
	line = strings.ToLower(strings.TrimSpace(line))
	if line == "?" {
		return "help", true
	}
	found := 0
	for _, w := range []string{"undo", "skip", "stop", "help"} {
		if line != "" && strings.HasPrefix(w, line) {
			word = w
			found++
		}
	}
	if found > 1 {
		word = "help"
	}
	return word, found > 0
}
