package session

import (
	"coldseam/profile"
	"coldseam/profile/plain"
	"coldseam/profile/response"
)

// Probe is what a session knows of the probe that it listens to.
type Probe struct {
	Name    string
	Known   bool           // it is known what its lines hold
	Layout  string         // and this is it
	Depths  bool           // it states its own depth
	Moving  bool           // the angler wants to lower it without a stop
	NowS    func() float64 // the clock of its lines now, s
	Counted func() string  // how many lines were read and how many were not, and why

	// Lower is told how deep the probe is wanted, m, +Inf for a cast to the bottom and
	// back; what it gives is told. nil: the angler lowers it.
	Lower func(toM float64) string
}

// Heard is one line of the probe.
type Heard struct {
	AtS    float64 // on its clock
	Raw    []byte
	TempC  profile.Optional
	DepthM profile.Optional
	Noise  string // why it is no reading, where it was meant to be one

	BottomM, SurfaceC profile.Optional // of the boat's own instruments
}

// probing is what is known of the probe while it is listened to.
type probing struct {
	watch   *response.Watch
	record  response.Record
	at      profile.Optional // where a probe without depth was said to hang, m,
	hungS   float64          // and when
	syncedS float64          // when what it said was last made durable
	live    string
	bottom  bool // told of the boat's sounder,
	surface bool // and of its thermometer
}

// Port tells what happened to the probe's port: text in words, remark for its log.
func (s *Session) Port(text, remark string, lost, back bool) {
	if s.ended {
		return
	}
	s.tell(text)
	s.logged(s.store.Remark(remark))
	if s.mode != holding || s.o.Probe.Depths {
		return
	}
	if lost { // nobody knows where it hangs now
		s.hang(profile.Optional{})
	}
	if back {
		s.todo = append(s.todo, s.askHolding)
		s.run()
	}
}

// Hear takes in a line of the probe. While a question is open nothing is taken of it but
// what it tells of the water.
func (s *Session) Hear(h Heard) {
	if s.ended || s.store == nil {
		return
	}
	s.logged(s.store.Line(h.AtS, h.Raw))
	switch s.mode {
	case holding:
		s.hearHolding(h)
	case casting:
		s.hearCasting(h)
	}
	s.run()
}

// logged tells, once, that the probe's lines can no longer be kept: the drop goes on.
func (s *Session) logged(err error) {
	if err != nil {
		s.tell("The probe's lines can no longer be saved beside the page: " + plain.Line(err.Error()) + ". Its readings are saved as before.")
	}
}
