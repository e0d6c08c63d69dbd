package session

import (
	"errors"
	"fmt"
	"slices"

	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/unit"
)

// offer asks whether to go on with a drop that was cut off.
func (s *Session) offer() {
	cut := s.o.Cut
	if len(cut) == 0 {
		s.askUnits()
		return
	}
	what, choices := offered(cut)
	s.open(Question{
		What: what, Choices: choices, help: helpOffer,
		choose: func(n int) {
			switch {
			case n < len(cut):
				s.goOn(cut[n])
			case n == len(cut):
				s.askUnits()
			default:
				s.endAll(cut)
			}
		},
		leave: s.askUnits,
		stop:  func() { s.end(ErrNothing) },
	})
	s.question.hangUp = s.askUnits
}

// offered is the question which drop to go on with, and the answers: one for each, to
// leave them, and to end them.
func offered(cut []Cut) (what string, choices []string) {
	named := func(c Cut) string {
		return fmt.Sprintf("%s, %s (%s)", report.WhereWhen(c.Drop), unit.Count(len(c.Drop.Readings), "reading"), plain.Line(c.Store.Name()))
	}
	leave, end := "leave it for later and begin a new one", "that drop is finished: begin a new one"
	if len(cut) == 1 {
		what, choices = "A drop was cut off: "+named(cut[0])+".", []string{"go on with it"}
	} else {
		what = fmt.Sprintf("%d drops were cut off.", len(cut))
		leave, end = "leave them for later and begin a new one", "those drops are finished: begin a new one"
		for _, c := range cut {
			choices = append(choices, "go on with "+named(c))
		}
	}
	for _, c := range cut {
		if len(c.Drop.Readings) == 0 && c.Log != "" {
			what += fmt.Sprintf(" The probe's lines are saved beside it; to read them: coldseam probe replay --page %s", plain.Line(c.Log))
		}
	}
	return what, append(choices, leave, end)
}

// endAll ends the drops that were cut off, and begins a new one.
func (s *Session) endAll(cut []Cut) {
	var steps []func()
	for _, c := range cut {
		steps = append(steps, func() {
			s.store = c.Store
			s.set(c.Drop, len(c.Drop.Readings))
			s.save(true)
		})
	}
	s.do(append(steps, func() {
		s.store, s.sitting = nil, sitting{}
		s.askUnits()
	})...)
}

// goOn goes on with a drop that was cut off; what the flags say of it wins.
func (s *Session) goOn(c Cut) {
	s.store = c.Store
	s.set(c.Drop, len(c.Drop.Readings))
	var steps []func()
	for _, h := range s.o.Flags {
		steps = append(steps, func() {
			if err := s.header(h); err != nil {
				s.end(BadInput{err})
			}
		})
	}
	s.do(append(steps, func() { s.chooseFish(true) }, s.askBottom, s.start)...)
}

// header takes a line of a page's head into the drop.
func (s *Session) header(h notebook.Header) error {
	d := s.drop
	if err := notebook.Set(&d, h.Key, h.Value); err != nil {
		return err
	}
	s.note(d)
	s.do(s.keep)
	return nil
}

// askUnits finds the units for a new drop: those of the flags, else of the settings, else
// what the angler answers.
func (s *Session) askUnits() {
	var u unit.System
	for _, h := range slices.Concat(s.o.Headers, s.o.Flags) {
		if h.Key != "units" {
			continue
		}
		said, err := unit.ParseSystem(h.Value)
		if err != nil {
			s.end(BadInput{err})
			return
		}
		if said.Depth != unit.NoLength {
			u.Depth = said.Depth
		}
		if said.Temp != unit.NoTemperature {
			u.Temp = said.Temp
		}
	}
	if u.Depth != unit.NoLength && u.Temp != unit.NoTemperature {
		s.anew(u)
		return
	}
	systems := []unit.System{{Depth: unit.Foot, Temp: unit.Fahrenheit}, {Depth: unit.Metre, Temp: unit.Celsius}, {Depth: unit.Foot, Temp: unit.Celsius}, {Depth: unit.Metre, Temp: unit.Fahrenheit}}
	s.open(Question{
		What:    s.words.units,
		Choices: []string{"feet and Fahrenheit", "metres and Celsius", "feet and Celsius", "metres and Fahrenheit"},
		asked:   true, help: helpUnits,
		choose: func(n int) { s.anew(systems[n]) },
		stop:   func() { s.end(BadInput{errors.New(s.words.noUnits)}) },
	})
}

// anew begins a drop with what the flags and the settings say.
func (s *Session) anew(u unit.System) {
	date := notebook.Header{Key: "date", Value: s.o.Now.Format("2006-01-02 15:04")}
	units := notebook.Header{Key: "units", Value: u.String(), From: "--units"}
	d, err := notebook.New(slices.Concat(s.o.Headers, []notebook.Header{date}, s.o.Flags, []notebook.Header{units})...)
	if err != nil {
		s.end(BadInput{err})
		return
	}
	s.store = s.o.New
	s.set(d, 0)
	s.do(func() { s.chooseFish(false) }, s.askBottom, s.start)
}

// chooseFish finds the fish that the drop is for. A page from elsewhere may name one that
// is not known here: its readings are worth going on with.
func (s *Session) chooseFish(resumed bool) {
	d, err := s.drop, error(nil)
	wanted := d.For
	if wanted == "" {
		wanted = fish.Usual
	}
	s.fish, err = fish.FindIn(s.o.Fish, wanted)
	switch {
	case err == nil:
	case !resumed:
		s.end(BadInput{err})
	default:
		s.tell(stopped(plain.Line(err.Error())) + " Rainbow trout is used until you type e.g. \"for: perch\".")
		d.Notes = append(slices.Clip(d.Notes), "for: "+d.For)
		d.For = ""
		s.note(d)
		if s.fish, err = fish.FindIn(s.o.Fish, fish.Usual); err != nil {
			s.end(BadInput{err})
			return
		}
		s.do(s.keep)
	}
}

// askBottom asks for the depth under the boat, which tells where to read first.
func (s *Session) askBottom() {
	if s.drop.Bottom.Known {
		return
	}
	depth := s.drop.Units.Depth
	s.open(Question{
		ask:   fmt.Sprintf(s.words.bottom, depth),
		help:  s.words.helpBottom,
		leave: func() {},
		stop:  s.finish,
		text: func(line string) {
			typed := line
			if _, _, err := unit.ParseLength(line); err != nil {
				line += " " + depth.String()
			}
			err := s.header(notebook.Header{Key: "bottom", Value: line})
			if _, _, none := unit.ParseLength(line); err != nil && none != nil {
				err = fmt.Errorf(s.words.noDepth, plain.Quote(typed, 60), depth)
			}
			if err != nil {
				s.tellAs(Wrong, plain.Line(err.Error())+".")
				s.askBottom()
			}
		},
	})
}

// start begins to take readings.
func (s *Session) start() {
	switch p := s.o.Probe; {
	case p == nil:
		s.startTyping()
	case p.Known:
		s.startProbe()
	default:
		s.mode = learning
		s.tell("Listening to " + plain.Line(p.Name) + " to learn what its lines hold... (Enter: type the readings instead)")
	}
}
