// Package probe is a probe on its port, from the events of the port to samples: what its
// lines hold is learnt from the first of them, asking the caller what they leave open; then
// each line is read. It replays recordings in the same way.
//
// It does not know what a sample is for: when a reading has settled is package response's,
// and what becomes of it is the drop's.
package probe

import (
	"fmt"
	"time"

	"coldseam/device"
	"coldseam/device/format"
	"coldseam/device/line"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

const (
	AskAfter    = 12 // lines, from which what is open in them is asked
	giveUpAfter = 40 // lines, none of which could be understood
)

// Options say where a probe is and what is known of it.
type Options struct {
	Port   device.Config
	Listen device.Options
	Layout *format.Layout // nil: to be learnt
	Format format.Options
	Now    func() time.Time // the clock of its lines; nil is the wall's
}

// Probe is a probe that is listened to. It is not safe for concurrent use.
type Probe struct {
	*Decoder
	*device.Listener

	name  string
	now   func() time.Time
	begun time.Time // on its clock
	first [][]byte  // lines from which it is learnt what they hold
	known bool
	asked []format.Layout // what the caller was asked to choose from
}

// Open opens the port and begins to listen.
func Open(o Options) (*Probe, error) {
	if o.Now == nil {
		o.Now = time.Now
	}
	o.Listen.Cut = true
	p := &Probe{Decoder: NewDecoder(o.Layout, o.Format), name: o.Port.Name, now: o.Now, begun: o.Now()}
	p.known = o.Layout != nil && len(o.Layout.Parts) > 0 // only their lines tell whether NMEA sentences have a depth
	var err error
	if p.Listener, err = device.Listen(o.Port, o.Listen); err != nil {
		return nil, err
	}
	return p, nil
}

// Name is that of the port.
func (p *Probe) Name() string { return p.name }

// Known reports whether it is known what the lines hold.
func (p *Probe) Known() bool { return p.known }

// NowS is the probe's clock, s since it was opened.
func (p *Probe) NowS() float64 { return p.now().Sub(p.begun).Seconds() }

// Outcome is what an event of the port brought.
type Outcome struct {
	device.Event
	AtS    float64 // when, as NowS
	Sample format.Sample
	Err    error // why a line is no sample, or nil
	Noise  bool  // and it was meant to be one

	Learnt bool          // it is known from this line on what the lines hold,
	Told   bool          // and that it was found rather than said beforehand
	Open   *format.Found // it must be chosen: see Choose
	Lost   bool          // nothing can be made of the lines
}

// Take takes in an event of the port.
func (p *Probe) Take(e device.Event) Outcome {
	s := Outcome{Event: e, AtS: e.At.Sub(p.begun).Seconds()}
	switch {
	case e.Kind == device.Cut:
		p.Cut(e.Line)
	case e.Kind != device.Line:
	case p.known:
		s.Sample, s.Err = p.Read(e.Line)
		s.Noise = s.Err != nil && !Aside(line.CodeOf(s.Err))
	case p.asked == nil:
		p.first = append(p.first, append([]byte(nil), e.Line...))
		p.learn(&s)
	}
	return s
}

// learn finds what the lines hold, or asks for it when there are enough of them.
func (p *Probe) learn(s *Outcome) {
	n := len(p.first)
	if p.Layout != nil {
		sample, err := format.New(*p.Layout, p.options).Line(p.first[n-1])
		p.Depths = err == nil && sample.DepthM.Known
		p.known = p.Depths || n >= AskAfter
		s.Learnt = p.known
		return
	}
	f := p.Find(p.first)
	switch {
	case f.Known:
		p.Use(f.Layout)
		p.known = len(f.Layout.Parts) > 0
		s.Learnt, s.Told = p.known, true
	case n < AskAfter || len(f.Choices) == 0 && n < giveUpAfter:
	case len(f.Choices) == 0:
		s.Lost = true
	default:
		p.asked, s.Open = f.Choices, &f
	}
}

// Choose reads lines by the n-th of the layouts that were open.
func (p *Probe) Choose(n int) {
	p.Use(p.asked[n])
	p.known = true
}

// Counted says how many lines were read and how many were not, and why.
func (p *Probe) Counted() string {
	n := p.Counts()
	text := p.Decoder.Counted()
	add := func(n int, what string) {
		if n > 0 {
			text += fmt.Sprintf(", %d %s", n, what)
		}
	}
	add(n.Torn, "torn")
	add(n.TooLong, "without an end")
	if n.Lost > 0 {
		text += "; the cable was lost " + unit.Count(n.Lost, "time")
	}
	return text
}

// Told says in a sentence what happened to the port.
func Told(e device.Event) string {
	switch text := plain.Line(e.Text); e.Kind {
	case device.Quiet:
		return "The probe is silent: " + text + "."
	case device.Lost:
		return "The probe is lost: " + text + ". Plug the cable in again; what was read is saved."
	case device.Waiting:
		return "Still no probe: " + text + "."
	case device.Back:
		return "The probe is back: " + text + "."
	}
	return ""
}
