package main

import (
	"fmt"
	"strconv"

	"coldseam/device"
	"coldseam/device/format"
	"coldseam/profile/plain"
)

const (
	askAfter    = 12 // lines, from which what is open is asked
	giveUpAfter = 40 // lines, none of which could be understood
)

// learnt is how listening to the first lines ended.
type learnt int

const (
	stopped learnt = iota // the angler stopped
	byHand                // the angler types instead
	read                  // it is known what the lines hold
)

// learn listens to the first lines until it is known what they hold, asking what they
// leave open. Where that fails, the readings are typed.
func (c *cable) learn(t *talk) learnt {
	if c.layout != nil && len(c.layout.Parts) > 0 {
		return read
	}
	t.say("Listening to %s for what its lines hold... (Enter: type instead)", plain.Line(c.name))
	var first [][]byte
	for {
		select {
		case text, ok := <-t.lines:
			if w, _ := word(text); !ok || w == "stop" {
				return stopped
			}
			t.say("Not waiting for the probe: the readings are typed.")
			return byHand
		case e := <-c.Events():
			if e.Kind == device.Cut {
				c.cut = e.Line
				continue
			}
			if e.Kind != device.Line {
				t.say("%s", c.told(e))
				continue
			}
			c.logged(t, c.log.Line(c.sinceS(e.At), e.Line))
			first = append(first, append([]byte(nil), e.Line...))
			if how, ended := c.settleLayout(t, first); ended {
				return how
			}
		}
	}
}

// settleLayout finds the layout of some lines, or asks for it when there are enough;
// ended is false while more lines are wanted.
func (c *cable) settleLayout(t *talk, first [][]byte) (how learnt, ended bool) {
	if c.layout != nil { // NMEA sentences: only they tell whether there is a depth
		s, err := format.New(*c.layout, c.options).Line(first[len(first)-1])
		c.depths = err == nil && s.DepthM.Known
		return read, c.depths || len(first) >= askAfter
	}
	f := c.find(first)
	switch {
	case f.Known && len(f.Layout.Parts) == 0:
		c.use(f.Layout)
		return read, false
	case f.Known:
	case len(first) < askAfter || len(f.Choices) == 0 && len(first) < giveUpAfter:
		return read, false
	case len(f.Choices) == 0:
		t.say("The probe's lines could not be understood, so the readings are typed. What the lines hold can be said with --layout, e.g. --layout \"depth m, temp C\".")
		return byHand, true
	default:
		var err error
		if f.Layout, err = t.whichLayout(f); err != nil {
			return stopped, true
		}
	}
	c.use(f.Layout)
	t.say("The probe's lines are read as: %s. (--layout %s saves the finding.)", f.Layout, strconv.Quote(f.Layout.String()))
	return read, true
}

// whichLayout asks what the lines hold.
func (t *talk) whichLayout(f format.Found) (format.Layout, error) {
	var texts []string
	for _, l := range f.Choices {
		texts = append(texts, l.String())
	}
	n, err := t.choose(fmt.Sprintf("The probe says %s: %s. What does such a line hold?", plain.Line(strconv.Quote(f.Example)), f.Why), texts...)
	if err != nil {
		return format.Layout{}, err
	}
	return f.Choices[n], nil
}

// logged tells, once, that the probe's lines can no longer be kept: the drop goes on.
func (c *cable) logged(t *talk, err error) {
	if err != nil {
		t.say("What the probe says can no longer be kept beside the page: %s. Its readings are saved as before.", plain.Line(cause(err)))
	}
}

// told says what happened to the port.
func (c *cable) told(e device.Event) string {
	switch e.Kind {
	case device.Quiet:
		if c.sim != nil { // its silences are on the lake's clock
			return "The probe is silent."
		}
		return "The probe is silent: " + plain.Line(e.Text) + "."
	case device.Lost:
		return "The probe is lost: " + plain.Line(e.Text) + ". Plug the cable in again; what was read is saved."
	case device.Waiting:
		return "Still without the probe: " + plain.Line(e.Text) + "."
	case device.Back:
		return "The probe is back: " + plain.Line(e.Text) + "."
	}
	return ""
}
