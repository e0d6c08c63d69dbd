package main

import (
	"errors"
	"fmt"
	"strconv"

	"coldseam/device"
	"coldseam/device/layout"
	"coldseam/profile/say"
)

const (
	askAfter    = 12 // lines, from which what is open is asked
	giveUpAfter = 40 // lines, none of which could be understood
)

var errNoLayout = errors.New("the probe's lines could not be understood: say what they hold with --layout, e.g. --layout \"depth m, temp C\"")

// learnt is how listening to the first lines ended.
type learnt int

const (
	stopped learnt = iota // the angler stopped
	byHand                // the angler types instead
	read                  // it is known what the lines hold
)

// learn listens to the first lines until it is known what they hold, asking what they
// leave open.
func (c *cable) learn(t *talk) (how learnt, err error) {
	if c.layout != nil && len(c.layout.Parts) > 0 {
		return read, nil
	}
	t.say("Listening to %s for what its lines hold... (Enter: type instead)", say.Shown(c.name))
	var first [][]byte
	for {
		select {
		case text, ok := <-t.lines:
			if w, _ := word(text); !ok || w == "stop" {
				return stopped, nil
			}
			t.say("Not waiting for the probe: the readings are typed.")
			return byHand, nil
		case e := <-c.Events():
			if e.Kind == device.Cut {
				c.cut = e.Line
				continue
			}
			if e.Kind != device.Line {
				t.say("%s", c.told(e))
				continue
			}
			if err := c.log.Line(c.sinceS(e), e.Line); err != nil {
				return stopped, err
			}
			first = append(first, append([]byte(nil), e.Line...))
			if known, err := c.settleLayout(t, first); known || err != nil {
				return read, err
			}
		}
	}
}

// settleLayout finds the layout of some lines, or asks for it when there are enough.
func (c *cable) settleLayout(t *talk, first [][]byte) (known bool, err error) {
	if c.layout != nil { // NMEA sentences: only they tell whether there is a depth
		s, err := layout.New(*c.layout, c.options).Line(first[len(first)-1])
		c.depths = err == nil && s.DepthM.Known
		return c.depths || len(first) >= askAfter, nil
	}
	f := c.find(first)
	switch {
	case f.Known && len(f.Layout.Parts) == 0:
		c.use(f.Layout)
		return false, nil
	case f.Known:
	case len(first) < askAfter || len(f.Choices) == 0 && len(first) < giveUpAfter:
		return false, nil
	case len(f.Choices) == 0:
		return false, errNoLayout
	default:
		if f.Layout, err = t.whichLayout(f); err != nil {
			return false, err
		}
	}
	c.use(f.Layout)
	t.say("The probe's lines are read as: %s. (--layout %s saves the finding.)", f.Layout, strconv.Quote(f.Layout.String()))
	return true, nil
}

// whichLayout asks what the lines hold.
func (t *talk) whichLayout(f layout.Found) (layout.Layout, error) {
	var texts []string
	for _, l := range f.Choices {
		texts = append(texts, l.String())
	}
	n, err := t.choose(fmt.Sprintf("The probe says %s: %s. What does such a line hold?", say.Shown(strconv.Quote(f.Example)), f.Why), texts...)
	if err != nil {
		return layout.Layout{}, errNoLayout
	}
	return f.Choices[n], nil
}

// told says what happened to the port.
func (c *cable) told(e device.Event) string {
	switch e.Kind {
	case device.Quiet:
		if c.sim != nil { // its silences are on the lake's clock
			return "The probe is silent."
		}
		return "The probe is silent: " + say.Shown(e.Text) + "."
	case device.Lost:
		return "The probe is lost: " + say.Shown(e.Text) + ". Plug the cable in again; what was read is saved."
	case device.Waiting:
		return "Still without the probe: " + say.Shown(e.Text) + "."
	case device.Back:
		return "The probe is back: " + say.Shown(e.Text) + "."
	}
	return ""
}
