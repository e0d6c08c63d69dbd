package main

import (
	"errors"
	"fmt"
	"io"

	"github.com/urfave/cli/v2"

	"coldseam/profile"
	"coldseam/profile/notebook"
	"coldseam/profile/response"
	"coldseam/profile/settings"
	"coldseam/profile/unit"
)

// castTold says what was done to a cast.
func castTold(r *response.Record, trip response.Trip) string {
	how := "the probe's lag is not taken out: its time constant is not known, and there is no way up to find it from"
	if trip.TauS > 0 {
		from := "as given"
		if trip.Matched {
			from = "from the way down and the way up"
		}
		how = fmt.Sprintf("the probe's lag (time constant %.0f s, %s) is taken out", trip.TauS, from)
	}
	if r.Full {
		how += fmt.Sprintf("; only the first %d lines count", response.MaxSamples)
	}
	return how
}

// replayPage makes a page of a recording.
func (p *program) replayPage(c *cli.Context, set settings.Settings, k *decoder, in io.Reader, name string) error {
	u, tauS, err := pageOptions(c, set)
	if err != nil {
		return err
	}
	var first [][]byte
	var times []float64
	var record response.Record
	counted, clocked := 0, false
	take := func(atS float64, b []byte) {
		s, err := k.decode(b)
		if err != nil {
			return
		}
		counted++
		switch {
		case atS >= 0:
			clocked = true
		case s.TimeS.Known:
			atS, clocked = s.TimeS.Value, true
		default:
			atS = float64(counted)
		}
		if s.DepthM.Known && s.TempC.Known {
			record.Add(atS, s.DepthM.Value, s.TempC.Value)
		}
	}
	flush := func() error {
		if k.layout == nil {
			if err := k.findLayout(first, name); err != nil {
				return err
			}
		}
		for i, b := range first {
			take(times[i], b)
		}
		first = nil
		return nil
	}
	err = eachLine(in, func(atS float64, b []byte) error {
		if k.layout != nil && first == nil {
			take(atS, b)
			return nil
		}
		first, times = append(first, append([]byte(nil), b...)), append(times, atS)
		if len(first) == giveUpAfter {
			return flush()
		}
		return nil
	})
	if err == nil && first != nil {
		err = flush()
	}
	if errors.As(err, new(refused)) {
		return err
	}
	if err != nil {
		return refuse("%s: cannot be read: %s", name, cause(err))
	}
	if k.layout == nil {
		return refuse("%s: there is no line in it", name)
	}
	if !k.layout.StatesDepth() && record.Len() == 0 {
		return refuse("%s: these lines state no depth, so there is no page in them: take a drop with coldseam drop --port", name)
	}
	if !clocked { // no lag can be told without the time
		tauS = 0
	}
	readings, trip, err := record.Readings(u, tauS)
	if err != nil {
		return refuse("%s: %w", name, err)
	}
	drop := profile.Drop{Units: u, Marks: profile.MarksAtWater, LineAngle: profile.Some(0), Readings: readings, Notes: []string{"read from a probe's record: " + castTold(&record, trip)}}
	p.out.WriteString(notebook.Write(drop))
	fmt.Fprintf(p.err, "%s.\n", k.counted())
	return nil
}

// pageOptions are the units of a page and the probe's time constant, s.
func pageOptions(c *cli.Context, set settings.Settings) (u unit.System, tauS float64, err error) {
	u = unit.System{Depth: unit.Metre, Temp: unit.Celsius}
	for _, h := range set.Headers {
		if h.Key == "units" {
			if u, err = unit.ParseSystem(h.Value); err != nil {
				return u, 0, refused{err}
			}
		}
	}
	if c.IsSet("units") {
		if u, err = unit.ParseSystem(c.String("units")); err != nil {
			return u, 0, refuse("--units: %w", err)
		}
	}
	if u.Depth == unit.NoLength || u.Temp == unit.NoTemperature {
		return u, 0, refuse("--units names both units, \"ft F\" or \"m C\"")
	}
	if text := c.String("time-constant"); text != "" {
		if tauS, err = unit.ParseDuration(text); err != nil {
			return u, 0, refuse("--time-constant: %w", err)
		}
		if !(tauS > 0 && tauS <= 600) {
			return u, 0, refuse("--time-constant: %q is not a likely value", text)
		}
	}
	return u, tauS, nil
}
