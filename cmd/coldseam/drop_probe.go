package main

import (
	"fmt"
	"math"
	"strings"

	"coldseam/device"
	"coldseam/device/line"
	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/response"
	"coldseam/profile/sampling"
	"coldseam/profile/unit"
)

// probing is a drop that is read from a probe, and from the keyboard beside it.
type probing struct {
	*dropping
	*cable
	watch  *response.Watch
	at     profile.Optional // where a probe without depth was said to hang,
	hungS  float64          // and when
	advice sampling.Advice
	live   *status
	boat   map[string]bool // what was told of the boat's instruments
}

const (
	helpDepths = "Lower the probe to about the depth asked for and hold it still: its reading is taken when it has settled. Enter takes it at once. Depth and temperature (12 68): a reading by hand. undo, skip and stop as ever."
	helpNone   = "Lower the probe to the depth asked for, then Enter; or type the depth at which it hangs, then Enter. Its reading is taken when it has settled; Enter takes it at once. Depth and temperature (12 68): a reading by hand. undo, skip and stop as ever."
)

// probed takes readings from the probe until the angler stops.
func (d *dropping) probed(c *cable) error {
	defer c.Close()
	defer c.log.Close()
	p, err := d.probing(c)
	if err != nil {
		return err
	}
	d.say("%s", p.help())
	for {
		p.ask()
		more, err := p.untilTaken()
		p.live.clear()
		if err != nil || !more {
			d.say("From the probe: %s.", c.counted())
			return err
		}
	}
}

// probing prepares for the readings of a probe.
func (d *dropping) probing(c *cable) (*probing, error) {
	watch, err := response.NewWatch(response.Options{TauS: d.take.Drop().TimeConst.Or(0)})
	if err != nil {
		return nil, refuse("the time constant: %w", err)
	}
	p := &probing{dropping: d, cable: c, watch: watch, live: newStatus(d.err), boat: map[string]bool{}}
	c.logged(d.talk, c.log.Remark(fmt.Sprintf("%s, lines read as: %s", c.name, c.layout)))
	return p, p.ownDepth()
}

func (p *probing) help() string {
	if p.depths {
		return helpDepths
	}
	return helpNone
}

// ownDepth has the depths of a probe that states them taken as they are: what is
// noted of marks and of the line's angle is for a line.
func (p *probing) ownDepth() error {
	drop := p.take.Drop()
	if !p.depths {
		return nil
	}
	lined := drop.Marks == profile.MarksAtGunwale || drop.BulbBelow.Known || drop.LineAngle.Or(0) != 0
	if lined && len(drop.Readings) > 0 {
		return refuse("this drop was begun with a line whose marks are corrected, and the probe states its own depth: end it and begin a new one")
	}
	if lined {
		p.say("The probe states its own depth: what is noted of marks, bulb and line angle is left out.")
	}
	drop.Marks, drop.BulbBelow, drop.LineAngle = profile.MarksAtWater, profile.Optional{}, profile.Some(0)
	return p.take.Note(drop)
}

// ask says what to do next.
func (p *probing) ask() {
	p.advice = p.take.Next(p.fish.LimitsC())
	u := p.take.Drop().Units.Shown()
	fmt.Fprintln(p.err)
	p.say("%s", report.Next(p.advice, u))
	switch {
	case p.advice.Enough:
		p.say("Enter ends with the plan.")
	case p.depths:
		p.say("Lower the probe to %s and hold it there.", report.Mark(p.advice.DepthM, u))
	default:
		p.say("Lower the probe to %s, then Enter.", report.Mark(p.advice.DepthM, u))
	}
	if p.sim != nil && !p.advice.Enough {
		p.say("(Rehearsal: the line runs out by itself.)")
		p.sim.Lower(p.advice.DepthM)
	}
	if !p.depths {
		p.watch.Release()
		p.at = profile.Optional{}
	}
}

// untilTaken listens to keyboard and probe until something changed the drop; more is
// false when the angler stops.
func (p *probing) untilTaken() (more bool, err error) {
	for {
		select {
		case text, ok := <-p.lines:
			p.live.clear()
			if !ok {
				return false, nil
			}
			if changed, stop, err := p.typed(text); changed || stop || err != nil {
				return !stop, err
			}
		case e := <-p.Events():
			if e.Kind == device.Cut {
				continue
			}
			if e.Kind != device.Line {
				p.live.clear()
				p.say("%s", p.told(e))
				p.logged(p.talk, p.log.Remark(e.Kind.String()+": "+e.Text))
				if p.restarted(e.Kind) {
					return true, nil
				}
				continue
			}
			if taken, err := p.heard(e); taken || err != nil {
				return true, err
			}
		}
	}
}

// restarted has a probe without depth hang nowhere once its cable was lost: nobody
// knows where it is. It is asked for anew when it is back.
func (p *probing) restarted(k device.Kind) (again bool) {
	if p.depths {
		return false
	}
	if k == device.Lost {
		p.watch.Release()
		p.at = profile.Optional{}
	}
	return k == device.Back
}

// typed does what a typed line says.
func (p *probing) typed(text string) (changed, stop bool, err error) {
	w, _ := word(text)
	switch {
	case w == "stop":
		return false, true, nil
	case w == "help":
		p.say("%s", p.help())
	case w == "skip" && p.advice.Enough:
		p.say("No depth is asked for: Enter ends the drop.")
	case w == "skip":
		p.take.Skip(p.advice.DepthM)
		return true, false, nil
	case w == "undo":
		return true, false, p.undo()
	case strings.TrimSpace(text) == "":
		return p.enter()
	case notebook.TemperatureAlone(text) && !p.depths:
		return false, false, p.hangsAt(text)
	case notebook.TemperatureAlone(text):
		p.say("The probe states depth and temperature itself; by hand type both, depth first.")
	default:
		_, err := p.taken(text, p.advice, false)
		return true, false, err
	}
	return false, false, nil
}

// enter is Enter alone: the probe hangs where it was asked for, or its reading is to
// be taken now.
func (p *probing) enter() (changed, stop bool, err error) {
	u := p.take.Drop().Units.Shown()
	now := p.watch.State()
	switch {
	case p.advice.Enough && !p.at.Known: // the prompt says so
		return false, true, nil
	case !p.depths && !p.at.Known:
		p.hang(profile.Some(p.advice.DepthM))
	case now.Phase == response.Moving:
		p.say("Not yet: the probe is still moving, or has said nothing.")
	case now.ErrC > 5*soonC:
		p.say("Not yet: too little was heard to tell. Hold it there.")
	case now.ErrC > soonC:
		p.say("Not yet: it could still be off by %s. Hold it there.", difference(2*now.ErrC, u))
	default:
		return true, false, p.accept()
	}
	return false, false, nil
}

// soonC is how sure an early reading must be to be taken, C (one standard error).
const soonC = 0.75

// hangsAt takes a typed depth at which the probe hangs.
func (p *probing) hangsAt(text string) error {
	u := p.take.Drop().Units
	m, _, err := unit.ParseLength(strings.TrimSpace(text) + " " + u.Depth.String())
	if err != nil {
		p.say("%s", plain.Line(err.Error()))
		return nil
	}
	p.hang(profile.Some(m))
	return nil
}

func (p *probing) hang(depthM profile.Optional) {
	p.at, p.hungS = depthM, p.sinceS(p.now())
	p.watch.Hold()
}

// heard takes in a line of the probe; taken reports that it brought a reading.
func (p *probing) heard(e device.Event) (taken bool, err error) {
	atS := p.sinceS(e.At)
	p.logged(p.talk, p.log.Line(atS, e.Line))
	s, err := p.decode(e.Line)
	if err != nil {
		if !aside(line.CodeOf(err)) {
			p.live.show("probe: " + err.Error())
		}
		return false, nil
	}
	p.instruments(s.BottomM, s.SurfaceC)
	if !s.TempC.Known || p.depths && !s.DepthM.Known || !p.depths && atS < p.hungS {
		return false, nil // none, or said before the probe hung where it hangs now
	}
	sample := response.Sample{TimeS: atS, TempC: s.TempC.Value}
	if p.depths {
		sample.DepthM = s.DepthM
	}
	state, err := p.watch.Add(sample)
	if err != nil { // a time twice, a value no probe has: one line lost
		return false, nil
	}
	p.live.show(p.progress())
	if state.Phase != response.Settled || p.depths && p.near(state.DepthM.Value) {
		return false, nil
	}
	return true, p.accept()
}

// near reports whether a reading of this sitting or before lies where the probe hangs.
func (p *probing) near(depthM float64) bool {
	for _, r := range p.take.Drop().Readings {
		if math.Abs(r.DepthM-depthM) < nearM {
			return true
		}
	}
	return false
}

// nearM is how near to an older reading nothing is taken without being told to.
const nearM = 0.3

// accept takes the reading of the state into the drop.
func (p *probing) accept() error {
	u := p.take.Drop().Units.Shown()
	now, depth := p.watch.State(), p.at
	if p.depths {
		depth = now.DepthM
	}
	p.live.clear()
	r := now.Reading(depth.Value, u)
	p.watch.Take()
	_, err := p.add([]profile.Reading{r})
	if err != nil {
		return err
	}
	if r.SpreadC > 0 {
		p.say("Taken early: %s %s, give or take %s.", unit.Exact(r.Temp), r.TempUnit, difference(r.SpreadC, u))
	}
	p.logged(p.talk, p.log.Sync(p.take.Saved))
	return nil
}

// progress is the line that shows what the probe does.
func (p *probing) progress() string {
	u := p.take.Drop().Units.Shown()
	s := p.watch.State()
	text := fmt.Sprintf("%.1f %s", u.Temp.FromC(s.TempC), u.Temp)
	depth := s.DepthM
	if !p.depths {
		depth = p.at
	}
	if depth.Known {
		text = fmt.Sprintf("%.1f %s  ", u.Depth.From(depth.Value), u.Depth) + text
	}
	switch s.Phase {
	case response.Moving:
		if p.depths {
			return text + "  moving"
		}
		return text + "  Enter when it hangs there"
	case response.Taken:
		return text + "  taken"
	}
	if s.Fitted && s.ErrC <= soonC {
		text += fmt.Sprintf("  settling at %.1f, give or take %s", u.Temp.FromC(s.EstimateC), difference(2*s.ErrC, u))
		if !p.advice.Enough {
			text += " (Enter takes it)"
		}
	} else {
		text += "  settling"
	}
	if s.LeftS > 0 && s.LeftS < 600 {
		text += fmt.Sprintf(", %.0f s", s.LeftS)
	}
	return text
}

// difference prints a difference of temperatures.
func difference(c float64, u unit.System) string {
	return fmt.Sprintf("%.1f %s", max(0.1, u.Temp.DiffFromC(c)), u.Temp)
}

// instruments tells, once each, what the boat's own instruments say: neither is a
// reading of the probe.
func (p *probing) instruments(bottomM, surfaceC profile.Optional) {
	u := p.take.Drop().Units.Shown()
	if bottomM.Known && !p.boat["bottom"] {
		p.boat["bottom"] = true
		p.live.clear()
		p.say("A sounder says the bottom is %s down; \"bottom: %s\" notes it.", u.Length(bottomM.Value), u.Length(bottomM.Value))
	}
	if surfaceC.Known && !p.boat["surface"] {
		p.boat["surface"] = true
		p.live.clear()
		p.say("The boat's thermometer says %s at the surface; \"0 %.1f\" notes it.", u.Degrees(surfaceC.Value), u.Temp.FromC(surfaceC.Value))
	}
}
