package session

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/response"
	"coldseam/profile/unit"
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

// Learnt says what the probe's lines hold. tell says that the angler did not know it.
func (s *Session) Learnt(layout string, depths, tell bool) {
	p := s.o.Probe
	if s.ended || s.mode != learning {
		return
	}
	p.Known, p.Layout, p.Depths = true, layout, depths
	if tell {
		s.tell(fmt.Sprintf("The probe's lines are read as: %s. (--layout %q saves the finding.)", layout, layout))
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
		What:    fmt.Sprintf("The probe says %s: %s. What does such a line hold?", plain.Line(fmt.Sprintf("%q", line)), why),
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
		s.tell("What the probe says can no longer be kept beside the page: " + plain.Line(err.Error()) + ". Its readings are saved as before.")
	}
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

// startProbe begins to take readings from the probe.
func (s *Session) startProbe() {
	p := s.o.Probe
	if p.Moving && p.Depths {
		s.startCasting()
		return
	}
	if p.Moving {
		s.tell(mustState)
	}
	watch, err := response.NewWatch(response.Options{TauS: s.drop.TimeConst.Or(0)})
	if err != nil {
		s.end(BadInput{fmt.Errorf("the time constant: %w", err)})
		return
	}
	s.mode, s.probe.watch, s.prompt = holding, watch, ""
	s.logged(s.store.Remark(fmt.Sprintf("%s, lines read as: %s", p.Name, p.Layout)))
	s.do(s.ownDepth, func() { s.tell(s.probeHelp()) }, s.askHolding)
}

func (s *Session) probeHelp() string {
	if s.o.Probe.Depths {
		return helpDepths
	}
	return helpHung
}

// ownDepth has the depths of a probe that states them taken as they are: what is noted of
// marks and of the line's angle is for a line.
func (s *Session) ownDepth() {
	d := s.drop
	if !s.o.Probe.Depths {
		return
	}
	lined := d.Marks == profile.MarksAtGunwale || d.BulbBelow.Known || d.LineAngle.Or(0) != 0
	if lined && len(d.Readings) > 0 {
		s.end(BadInput{errors.New("this drop was begun with a line whose marks are corrected, and the probe states its own depth: end it and begin a new one")})
		return
	}
	if lined {
		s.tell(lineLeftOut)
	}
	d.Marks, d.BulbBelow, d.LineAngle = profile.MarksAtWater, profile.Optional{}, profile.Some(0)
	s.note(d)
	s.do(s.keep)
}

// askHolding says where the probe is wanted next.
func (s *Session) askHolding() {
	if s.stopping {
		s.finish()
		return
	}
	s.advice, s.doubted = s.next(s.fish.LimitsC()), false
	p, u := s.o.Probe, s.drop.Units.Shown()
	s.tell("")
	s.tell(report.Next(s.advice, u))
	switch {
	case s.advice.Enough:
		s.tell("Enter ends with the plan.")
	case p.Depths:
		s.tell("Lower the probe to " + report.Mark(s.advice.DepthM, u) + " and hold it there.")
	default:
		s.tell("Lower the probe to " + report.Mark(s.advice.DepthM, u) + ", then Enter.")
	}
	if !s.advice.Enough {
		s.lower(s.advice.DepthM)
	}
	if !p.Depths {
		s.hang(profile.Optional{})
	}
}

func (s *Session) lower(toM float64) {
	if s.o.Probe.Lower != nil {
		if text := s.o.Probe.Lower(toM); text != "" {
			s.tell(text)
		}
	}
}

// hang says where a probe without depth hangs from now on: unknown while it is moved.
func (s *Session) hang(atM profile.Optional) {
	s.probe.at = atM
	if !atM.Known {
		s.probe.watch.Release()
		return
	}
	s.probe.hungS = s.o.Probe.NowS()
	s.probe.watch.Hold()
}

// typedHolding does what a typed line says while a probe is listened to.
func (s *Session) typedHolding(text string) {
	changed := true
	switch w, _ := Word(text); {
	case w == "stop":
		s.finish()
		return
	case w == "help":
		s.tell(s.probeHelp())
		changed = false
	case w == "skip":
		changed = s.skipDepth()
	case w == "undo":
		s.undoLast()
	case strings.TrimSpace(text) == "":
		changed = s.enter()
	case notebook.TemperatureAlone(text) && !s.o.Probe.Depths:
		s.hangsAt(text)
		changed = false
	case notebook.TemperatureAlone(text):
		s.tell("The probe states depth and temperature itself; by hand type both, depth first.")
		changed = false
	default:
		s.line(text)
	}
	if changed {
		s.todo = append(s.todo, s.askHolding)
	}
}

// enter is Enter alone: the probe hangs where it was asked for, or its reading is to be
// taken now, which changes the drop.
func (s *Session) enter() (changed bool) {
	now := s.estimate()
	switch {
	case s.advice.Enough && !s.probe.at.Known: // as was told
		s.finish()
		return false
	case !s.o.Probe.Depths && !s.probe.at.Known:
		s.hang(profile.Some(s.advice.DepthM))
	case now.Phase == response.Moving:
		s.tell("Not yet: the probe is still moving, or has said nothing.")
	case now.ErrC > 5*soonC:
		s.tell("Not yet: too little was heard to tell. Hold it there.")
	case now.ErrC > soonC:
		s.tell("Not yet: it could still be off by " + difference(2*now.ErrC, s.drop.Units.Shown()) + ". Hold it there.")
	default:
		s.accept()
		return true
	}
	return false
}

// soonC is how sure an early reading must be to be taken, C (one standard error).
const soonC = 0.75

// hangsAt takes a typed depth at which the probe hangs.
func (s *Session) hangsAt(text string) {
	m, _, err := unit.ParseLength(strings.TrimSpace(text) + " " + s.drop.Units.Depth.String())
	if err != nil {
		s.tell(plain.Line(err.Error()))
		return
	}
	s.hang(profile.Some(m))
}

// hearHolding takes in a line of a probe that is held.
func (s *Session) hearHolding(h Heard) {
	if h.Noise != "" {
		s.probe.live = "probe: " + h.Noise
		return
	}
	s.instruments(h)
	depths := s.o.Probe.Depths
	if !h.TempC.Known || depths && !h.DepthM.Known || !depths && h.AtS < s.probe.hungS {
		return // none, or said before the probe hung where it hangs now
	}
	sample := response.Sample{TimeS: h.AtS, TempC: h.TempC.Value}
	if depths {
		sample.DepthM = h.DepthM
	}
	now, err := s.probe.watch.Add(sample)
	if err != nil || s.question != nil { // a time twice, a value no probe has: one line lost
		return
	}
	s.probe.live = s.progress()
	if now.Phase == response.Settled && !(depths && s.near(now.DepthM.Value)) {
		s.accept()
		s.todo = append(s.todo, s.askHolding)
	}
}

// near reports whether a reading of this sitting or before lies where the probe hangs.
func (s *Session) near(depthM float64) bool {
	for _, r := range s.drop.Readings {
		if math.Abs(r.DepthM-depthM) < nearM {
			return true
		}
	}
	return false
}

// nearM is how near to an older reading nothing is taken without being told to.
const nearM = 0.3

// accept takes what is known of the water as a reading.
func (s *Session) accept() {
	u := s.drop.Units.Shown()
	now, depth := s.estimate(), s.probe.at
	if s.o.Probe.Depths {
		depth = now.DepthM
	}
	r := now.Reading(depth.Value, u)
	s.probe.watch.Take()
	s.probe.live = ""
	s.do(func() { s.addOne(r) }, func() {
		if r.SpreadC > 0 {
			s.tell(fmt.Sprintf("Taken early: %s %s, give or take %s.", unit.Exact(r.Temp), r.TempUnit, difference(r.SpreadC, u)))
		}
		s.logged(s.store.Sync())
	})
}

// progress is the line that shows what the probe does.
func (s *Session) progress() string {
	u, now, depth := s.drop.Units.Shown(), s.estimate(), s.probe.at
	depths := s.o.Probe.Depths
	if depths {
		depth = now.DepthM
	}
	text := fmt.Sprintf("%.1f %s", u.Temp.FromC(now.TempC), u.Temp)
	if depth.Known {
		text = fmt.Sprintf("%.1f %s  ", u.Depth.From(depth.Value), u.Depth) + text
	}
	switch {
	case now.Phase == response.Moving && depths:
		return text + "  moving"
	case now.Phase == response.Moving:
		return text + "  Enter when it hangs there"
	case now.Phase == response.Taken:
		return text + "  taken"
	case now.Fitted && now.ErrC <= soonC:
		text += fmt.Sprintf("  settling at %.1f, give or take %s", u.Temp.FromC(now.EstimateC), difference(2*now.ErrC, u))
		if !s.advice.Enough {
			text += " (Enter takes it)"
		}
	default:
		text += "  settling"
	}
	if now.LeftS > 0 && now.LeftS < 600 {
		text += fmt.Sprintf(", %.0f s", now.LeftS)
	}
	return text
}

// difference prints a difference of temperatures.
func difference(c float64, u unit.System) string {
	return fmt.Sprintf("%.1f %s", max(0.1, u.Temp.DiffFromC(c)), u.Temp)
}

// instruments tells, once each, what the boat's own instruments say: neither is a reading
// of the probe.
func (s *Session) instruments(h Heard) {
	u := s.drop.Units.Shown()
	if h.BottomM.Known && !s.probe.bottom {
		s.probe.bottom = true
		s.tell(fmt.Sprintf("A sounder says the bottom is %s down; \"bottom: %s\" notes it.", u.Length(h.BottomM.Value), u.Length(h.BottomM.Value)))
	}
	if h.SurfaceC.Known && !s.probe.surface {
		s.probe.surface = true
		s.tell(fmt.Sprintf("The boat's thermometer says %s at the surface; \"0 %.1f\" notes it.", u.Degrees(h.SurfaceC.Value), u.Temp.FromC(h.SurfaceC.Value)))
	}
}

// leaveProbe tells what was read of a probe that was held.
func (s *Session) leaveProbe() {
	if s.mode == holding {
		s.tell("From the probe: " + s.o.Probe.Counted() + ".")
		s.mode = typing
	}
}
