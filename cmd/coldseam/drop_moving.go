package main

import (
	"fmt"

	"coldseam/device"
	"coldseam/profile/book"
	"coldseam/profile/plain"
	"coldseam/profile/response"
)

// moving takes one cast of a probe that is lowered without stopping, until Enter.
func (d *dropping) moving(c *cable) error {
	defer c.Close()
	defer c.log.Close()
	p := &probing{dropping: d, cable: c}
	if err := p.ownDepth(); err != nil {
		return err
	}
	// a cast gives its readings at its end only: until then its lines must be on the disk
	if err := d.take.Keep(); err != nil {
		return err
	}
	c.logged(d.talk, c.log.Sync(d.take.Saved))
	d.say("Lower the probe slowly and evenly to the bottom, a foot (30 cm) in two seconds or slower, then draw it up as slowly. Enter when it is up again, or at the bottom.")
	if c.sim != nil {
		d.say("(Rehearsal: the line runs out by itself, and in again.)")
		c.sim.Lower(c.lakeM)
	}
	record, live, synced := response.Record{}, newStatus(d.err), 0.0
	for {
		select {
		case text, ok := <-d.lines:
			live.clear()
			if w, _ := word(text); ok && w == "help" {
				d.say("Enter ends the cast.")
				continue
			}
			return d.castTaken(c, &record)
		case e := <-c.Events():
			if e.Kind == device.Cut {
				continue
			}
			if e.Kind != device.Line {
				live.clear()
				d.say("%s", c.told(e))
				continue
			}
			atS := c.sinceS(e.At)
			c.logged(d.talk, c.log.Line(atS, e.Line))
			s, err := c.decode(e.Line)
			if err != nil || !s.DepthM.Known || !s.TempC.Known {
				continue
			}
			record.Add(atS, s.DepthM.Value, s.TempC.Value)
			if atS-synced > syncS {
				synced = atS
				c.logged(d.talk, c.log.Sync(d.take.Saved))
			}
			u := d.take.Drop().Units.Shown()
			live.show(fmt.Sprintf("%.1f %s  %.1f %s  (%d lines)", u.Depth.From(s.DepthM.Value), u.Depth, u.Temp.FromC(s.TempC.Value), u.Temp, record.Len()))
			if c.sim != nil && s.DepthM.Value > c.lakeM-0.1 {
				c.sim.Lower(0)
			}
		}
	}
}

// syncS is how often the lines of a cast are made durable, s.
const syncS = 2.0

// castTaken makes readings of a cast and takes them into the drop.
func (d *dropping) castTaken(c *cable, record *response.Record) error {
	drop := d.take.Drop()
	readings, trip, err := record.Readings(drop.Units, drop.TimeConst.Or(0))
	if err != nil {
		d.say("%s. What the probe said is kept in %s", plain.Line(err.Error()), plain.Line(d.take.Saved.Beside(book.LogEnding)))
		c.logged(d.talk, c.log.Sync(d.take.Saved))
		return nil
	}
	d.say("%s; %s. From the probe: %s.", counted(len(readings), "depth"), castTold(record, trip), c.counted())
	if err := d.take.AddAll(readings); err != nil {
		return err
	}
	c.logged(d.talk, c.log.Sync(d.take.Saved))
	return nil
}
