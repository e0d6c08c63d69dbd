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
		s.tell("Enter ends the drop and shows the plan.")
	case p.Depths:
		s.tell("Lower the probe to " + u.Marked(s.advice.DepthM) + " and hold it there.")
	default:
		s.tell("Lower the probe to " + u.Marked(s.advice.DepthM) + ", then Enter.")
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
		s.tell("The probe gives depth and temperature itself; to add a reading by hand, type both, depth first.")
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
		s.tell("Not yet: the probe is still moving, or nothing has come from it.")
	case now.ErrC > 5*soonC:
		s.tell("Not yet: too few lines have come. Hold it there.")
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
		return text + "  Enter once it hangs there"
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
		s.tell(fmt.Sprintf("The sounder says the bottom is at %s; type \"bottom: %s\" to note it.", u.Length(h.BottomM.Value), u.Length(h.BottomM.Value)))
	}
	if h.SurfaceC.Known && !s.probe.surface {
		s.probe.surface = true
		s.tell(fmt.Sprintf("The boat's thermometer says %s at the surface; type \"0 %.1f\" to note it.", u.Degrees(h.SurfaceC.Value), u.Temp.FromC(h.SurfaceC.Value)))
	}
}

// leaveProbe tells what was read of a probe that was held.
func (s *Session) leaveProbe() {
	if s.mode == holding {
		s.tell("From the probe: " + s.o.Probe.Counted() + ".")
		s.mode = typing
	}
}
