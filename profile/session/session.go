// Package session is a drop while it is taken. Events go in: a typed line, a sample of the
// probe, the end of the input. What there is to see comes out as a View: what was told,
// what is asked for and why, an open question with its choices, the live line of a probe,
// and whether the drop has ended. What must be kept goes through a Store.
//
// It has no input, no output, no clock and no thread of its own, so that a terminal, a
// page and a test take a drop in the same way. An event does all that can be done without
// another answer, and returns. Every reading is in the Store before the View that asks for
// the next one.
package session

import (
	"errors"
	"time"

	"coldseam/profile"
	"coldseam/profile/fish"
	"coldseam/profile/notebook"
	"coldseam/profile/response"
	"coldseam/profile/sampling"
)

// Store keeps one drop as it is taken. Its errors are told to the angler, so they say in
// a few words what went wrong.
type Store interface {
	// Save makes the drop durable before it returns.
	Save(d profile.Drop, ended bool) error
	// Remove takes away what was saved.
	Remove() error
	// Name is where the drop is kept, "" before it was saved.
	Name() string

	// Line and Remark keep what a probe said, as it came, atS seconds after the drop
	// began, and what happened to it. After the first error no more is kept, and no
	// other error given.
	Line(atS float64, raw []byte) error
	Remark(text string) error
	// Sync makes what the probe said durable.
	Sync() error
	// Log is where what the probe said is kept.
	Log() string
}

// Options are what is known when a drop is begun.
type Options struct {
	Headers   []notebook.Header // of the settings, for a new drop
	Flags     []notebook.Header // which win over them, and over those of a drop gone on with
	Now       time.Time
	Clock     func() time.Time                        // for what is caught meanwhile; nil: its time is not noted
	Cut       []Cut                                   // drops that were cut off
	New       Store                                   // for a new drop
	Elsewhere func(where string) (s Store, err error) // another place to keep a drop, as it was typed; nil: there is none
	Fish      []fish.Fish                             // the angler's own
	Waters    []string                                // the angler's, by name
	Probe     *Probe                                  // nil: everything is typed
	Touch     bool                                    // answers are touched: what is told speaks of no key, no flag and no system
}

// Cut is a drop that was cut off and can be gone on with.
type Cut struct {
	Drop  profile.Drop
	Store Store
	Log   string // where what its probe said can be read again, "" where it said nothing
}

// Session is a drop that is being taken. It is not safe for concurrent use.
type Session struct {
	o     Options
	words words
	store Store // nil before the drop has begun
	sitting
	fish     fish.Fish
	advice   sampling.Advice
	mode     mode
	doubted  bool // the last reading was: what is typed next takes its place
	probe    probing
	shown    string // the page that was last told to be copied down
	told     []Told
	prompt   string
	question *Question
	todo     []func()
	stopping bool // once the open question is left, the drop ends
	ended    bool
	err      error
}

// mode is where readings come from.
type mode int

const (
	beginning mode = iota
	typing
	learning // listening to the probe's first lines
	holding  // a probe that is held at one depth after the other
	casting  // one that is lowered without a stop
)

// ErrNothing is the error of a drop that ended without a reading.
var ErrNothing = errors.New("no reading was taken, so there is no plan and nothing was saved")

// Unsaved is the error of a drop that could not be saved, and was shown to be copied
// down. What was saved before stays.
type Unsaved struct{ Err error }

func (u Unsaved) Error() string { return "the drop could not be saved: " + u.Err.Error() }

// Unwrap gives the Store's error.
func (u Unsaved) Unwrap() error { return u.Err }

// BadInput is the error of a drop that could not be begun with what was said of it.
type BadInput struct{ Err error }

func (b BadInput) Error() string { return b.Err.Error() }

// Unwrap gives what is wrong with it.
func (b BadInput) Unwrap() error { return b.Err }

// New begins: it goes on with a drop that was cut off, or begins a new one, and asks what
// it needs for that.
func New(o Options) *Session {
	s := &Session{o: o, words: typedWords}
	if o.Touch {
		s.words = touchedWords
	}
	s.do(s.offer)
	s.run()
	return s
}

// View is what there is to see after an event. What was told is given once.
type View struct {
	Told      []Told
	Question  *Question // open, or nil
	Prompt    string    // of the line that is waited for; "" where none is asked for
	Live      string    // what the probe does, to be written over; "" for nothing new
	Drop      profile.Drop
	Advice    sampling.Advice  // where to read next
	Wanted    profile.Optional // the depth at which a temperature alone is read, m: the one advised, or the one moved to; unknown where there is none
	Doubted   bool             // the last reading is odd: it is kept, typed again or taken back
	Last      *profile.Reading // the one that undo takes back; nil for none
	Listening bool             // the probe's lines are wanted
	Ended     bool
}

// Told is one thing that was told: a paragraph, "" for an empty line, or the drop so far
// as a column or as its page.
type Told struct {
	Kind   Kind
	Text   string
	Column *profile.Drop
	Page   string
}

// Kind is what a paragraph is for.
type Kind int

// The kinds of paragraphs.
const (
	Said  Kind = iota // what was done
	Why               // where to read next and why
	Hint              // what can be typed or touched
	Wrong             // why something was not taken or not saved
	Odd               // what is odd about a reading
)

// View gives what there is to see.
func (s *Session) View() View {
	v := View{Told: s.told, Question: s.question, Prompt: s.prompt, Live: s.probe.live, Drop: s.Drop(), Advice: s.advice, Listening: s.mode > typing, Ended: s.ended}
	v.Wanted, v.Doubted, v.Last = s.wanted(), s.doubted, s.last()
	s.told, s.probe.live = nil, ""
	if s.question != nil {
		v.Prompt = s.question.prompt()
	}
	if s.ended {
		v.Question, v.Prompt = nil, ""
	}
	return v
}

// Err is why an ended drop gives no plan: ErrNothing, an Unsaved or a BadInput; nil where
// it gives one.
func (s *Session) Err() error { return s.err }

// Saved is where the drop is kept, "" where it is not yet.
func (s *Session) Saved() string {
	if s.store == nil {
		return ""
	}
	return s.store.Name()
}

// Tell adds what happened outside to what is told.
func (s *Session) Tell(text string) { s.tell(text) }

func (s *Session) tell(text string) { s.tellAs(Said, text) }

func (s *Session) tellAs(kind Kind, text string) {
	s.told = append(s.told, Told{Kind: kind, Text: text})
}

// hint tells what can be typed; those who touch see it.
func (s *Session) hint(text string) {
	if text != "" {
		s.tellAs(Hint, text)
	}
}

// do puts steps before what is still to be done. A step that opens a question leaves the
// rest waiting for its answer.
func (s *Session) do(steps ...func()) { s.todo = append(append([]func(){}, steps...), s.todo...) }

// run does what is to be done, up to a question or the end.
func (s *Session) run() {
	for !s.ended && s.question == nil && len(s.todo) > 0 {
		step := s.todo[0]
		s.todo = s.todo[1:]
		step()
	}
}

// end ends the session without a plan.
func (s *Session) end(err error) {
	s.ended, s.err, s.question, s.todo = true, err, nil, nil
}

// finish saves the drop as ended.
func (s *Session) finish() {
	s.prompt = ""
	s.do(s.leaveProbe, func() { s.save(true) }, func() {
		if len(s.drop.Readings) == 0 {
			s.end(ErrNothing)
			return
		}
		s.end(nil)
	})
}

// Type takes in a typed line; "" is Enter alone.
func (s *Session) Type(text string) {
	if s.ended {
		return
	}
	switch {
	case s.question != nil:
		s.answer(text)
	case s.mode == typing:
		s.typed(text)
	case s.mode == learning:
		s.typedLearning(text)
	case s.mode == holding:
		s.typedHolding(text)
	case s.mode == casting:
		s.typedCasting(text)
	}
	s.run()
}

// HangUp says that nothing more will be typed. An open question is left as it is, and at
// the next one the drop ends as with stop.
func (s *Session) HangUp() {
	switch {
	case s.ended:
	case s.question != nil:
		s.hangUp()
	case s.mode == casting:
		s.castTaken()
	default:
		s.finish()
	}
	s.run()
}

// estimate is what is known of the water where the probe hangs.
func (s *Session) estimate() response.State {
	if s.probe.watch == nil {
		return response.State{}
	}
	return s.probe.watch.State()
}
