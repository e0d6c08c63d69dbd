package session

import (
	"errors"
	"fmt"
	"reflect"
	"strings"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/unit"
)

// startTyping has readings typed from now on.
func (s *Session) startTyping() {
	s.mode = typing
	s.hint(s.words.typeHint)
	s.askTyped()
}

// askTyped asks for the next reading. What Enter would mean stands in the prompt.
func (s *Session) askTyped() {
	if s.stopping {
		s.finish()
		return
	}
	u := s.drop.Units
	s.advice = s.next(s.fish.LimitsC())
	if !s.doubted {
		s.tell("")
		s.tellAs(Why, report.Next(s.advice, u.Shown()))
	}
	switch {
	case s.doubted:
		s.prompt = "Enter keeps it; or type it again, or undo:"
	case s.advice.Enough:
		s.prompt = "Enter ends the drop; or type a depth and a temperature:"
	default:
		s.prompt = fmt.Sprintf("Temperature at %s, %s:", u.Shown().Marked(s.advice.DepthM), u.Temp)
	}
}

// typed does what a typed line says.
func (s *Session) typed(text string) {
	text = strings.TrimSpace(text)
	w, isWord := Word(text)
	if text == "" && !s.doubted && s.advice.Enough || w == "stop" {
		s.finish()
		return
	}
	s.todo = append(s.todo, s.askTyped)
	switch {
	case text == "" && s.doubted, w == "skip" && s.doubted:
		s.doubted = false
	case text == "":
		s.tellAs(Wrong, "Nothing was typed. "+s.words.helpTyping)
	case w == "help":
		s.hint(s.words.helpTyping)
	case w == "skip":
		s.skipDepth()
	case w == "undo":
		s.doubted = false
		s.undoLast()
	case !isWord:
		s.line(text)
	}
}

// skipDepth passes the depth over that is asked for; false where there is none.
func (s *Session) skipDepth() bool {
	at := s.wanted()
	if !at.Known {
		s.tellAs(Wrong, s.words.noneAsked)
		return false
	}
	s.skip(at.Value)
	return true
}

// undoLast takes the last reading of this sitting back.
func (s *Session) undoLast() {
	r, ok := s.undo()
	if !ok {
		s.tellAs(Wrong, s.words.noneNew)
		return
	}
	s.do(func() { s.save(false) }, func() {
		s.tell(removed(r))
		s.showColumn()
	})
}

// showColumn tells the drop so far.
func (s *Session) showColumn() {
	d := s.Drop()
	s.told = append(s.told, Told{Column: &d})
}

// line takes in a typed line that is none of the words.
func (s *Session) line(text string) {
	if key, _, ok := strings.Cut(text, ":"); ok && strings.EqualFold(strings.TrimSpace(key), "units") {
		s.tellAs(Wrong, "The units of a drop cannot be changed; write the unit after a number instead: 4 m 18 C.")
		return
	}
	at, wanted := "", s.wanted()
	switch {
	case !notebook.TemperatureAlone(text):
	case s.doubted:
		last := s.drop.Readings[len(s.drop.Readings)-1]
		at = unit.Exact(last.Depth) + " " + last.DepthUnit.String()
	case !wanted.Known:
		s.tellAs(Wrong, "At which depth? Type depth and temperature.")
		return
	default:
		at = s.drop.Units.Shown().Marked(wanted.Value)
	}
	s.read(text, at, s.takeIn)
}

var errOpen = errors.New("not answered")

// read reads a typed line as the notebook would, in the drop's units; a temperature alone
// is at the depth at. take takes in what it says. answers are those to what is open in the
// line, so far.
func (s *Session) read(text, at string, take func(text string, read profile.Drop), answers ...int) {
	var open *notebook.Question
	given := 0
	ask := func(q notebook.Question) (int, error) {
		if given < len(answers) {
			given++
			return answers[given-1], nil
		}
		open = &q
		return 0, errOpen
	}
	sheet, err := notebook.ReadLine(text, at, s.Drop(), notebook.Options{Name: "typed", Ask: ask, Fish: s.o.Fish, Waters: s.o.Waters})
	if open != nil {
		notTaken := func() { s.tellAs(Wrong, "Not taken.") }
		s.open(Question{
			What: strings.ToUpper(open.What[:1]) + open.What[1:] + ":", Choices: open.Choices, Text: text, Meaning: true,
			choose: func(n int) { s.do(func() { s.read(text, at, take, append(answers, n)...) }) },
			leave:  notTaken, undo: notTaken,
			hangUp: func() { s.refuse(text, err) },
		})
		return
	}
	for _, n := range sheet.Notes {
		if n.Line == 1 && len(sheet.Drop.Readings) == 0 {
			s.tell(plain.Line(n.Text) + ".")
		}
	}
	if err == nil {
		err = s.findFish(sheet.Drop)
	}
	if err != nil {
		s.refuse(text, err)
		return
	}
	s.timeCatches(sheet.Drop.Catches)
	take(text, sheet.Drop)
}

// timeCatches puts the time of day to what was caught just now.
func (s *Session) timeCatches(read []profile.Catch) {
	if s.o.Clock == nil {
		return
	}
	for i := len(s.drop.Catches); i < len(read); i++ {
		if read[i].Time != "" {
			continue
		}
		if c, err := notebook.ReadCatch(s.o.Clock().Format("15:04")+" "+read[i].Text, s.o.Fish...); err == nil {
			read[i] = c
		}
	}
}

// refuse says why a line was not taken.
func (s *Session) refuse(text string, err error) {
	var page *notebook.Error
	if errors.As(err, &page) {
		said := page.Msg
		if page.Line > 0 && strings.Contains(text, "\n") { // which of its lines
			said = fmt.Sprintf("line %d: %s", page.Line, said)
		}
		err = errors.New(said)
	}
	s.tellAs(Wrong, "Not taken: "+stopped(plain.Line(err.Error()))+" Type it again.")
}

// findFish has a fish that was typed serve the next advice too.
func (s *Session) findFish(read profile.Drop) error {
	if read.For == s.drop.For || read.For == "" {
		return nil
	}
	f, err := fish.FindIn(s.o.Fish, read.For)
	if err == nil {
		s.fish = f
	}
	return err
}

// takeIn takes in what a typed line says: of the drop, and its readings.
func (s *Session) takeIn(text string, read profile.Drop) {
	readings := read.Readings
	noted := s.noted(read)
	var steps []func()
	if s.doubted && len(readings) > 0 { // what is typed now stands in the place of what was doubted
		s.doubted = false
		steps = append(steps, func() { s.undo(); s.save(false) })
	}
	if noted {
		steps = append(steps, func() { s.note(read); s.keep() }, func() { s.tell("Noted: " + plain.Cut(text, 200) + ".") })
	}
	if len(readings) == 0 && !noted {
		s.tellAs(Wrong, "No reading was taken.")
	}
	for _, r := range readings {
		steps = append(steps, func() { s.addOne(r) })
	}
	s.do(steps...)
}

// noted reports whether a line says something of the drop that is not noted yet.
func (s *Session) noted(read profile.Drop) bool {
	was := s.Drop()
	was.Readings, read.Readings = nil, nil
	return !reflect.DeepEqual(was, read)
}

// addOne takes a reading into the drop, shows the column, and challenges what is odd.
func (s *Session) addOne(r profile.Reading) {
	before := s.at(r)
	odd := s.add(r)
	s.do(func() { s.save(false) }, func() {
		s.tell("")
		s.showColumn()
		if len(before) > 0 {
			s.askTwice(r, before)
			return
		}
		s.challenge(r, odd)
	})
}

// challenge says what is odd now that r was taken; r itself is doubted where it is.
func (s *Session) challenge(r profile.Reading, odd []profile.Reading) {
	s.doubted = false
	for i, o := range odd {
		s.tellAs(Odd, report.Flagged(o))
		s.doubted = s.doubted || i == 0 && o.Depth == r.Depth && o.Temp == r.Temp
	}
}

// askTwice asks what a second reading of a depth is. Both are kept by then.
func (s *Session) askTwice(r profile.Reading, before []profile.Reading) {
	var was []string
	for _, b := range before {
		was = append(was, unit.Exact(b.Temp)+" "+b.TempUnit.String())
	}
	s.open(Question{
		What:    fmt.Sprintf("At %s %s it was %s before.", unit.Exact(r.Depth), r.DepthUnit, strings.Join(was, " and ")),
		Choices: []string{"the new one is right: leave the old one out", "it is a second reading: keep both"},
		help:    helpTwice,
		choose: func(n int) {
			if n == 0 {
				s.correct(r)
				s.do(func() { s.save(false) })
			}
		},
		leave: func() {},
		undo:  s.undoLast,
	})
}
