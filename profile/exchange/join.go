package exchange

import "time"

// joinTimes makes one drop of rows with times of their own, as a logger writes them: what
// goes on downward at the same place within a quarter of an hour.
func (b *builder) joinTimes() {
	var out []*cast
	var whole *cast
	last := "" // the time of its last row
	for _, c := range b.casts {
		if whole == nil || !whole.goesOn(last, c) {
			out = append(out, c)
			whole, last = c, c.id.clock
			continue
		}
		in := b.in
		in.line = whole.line
		in.skip("rows have times of their own: what goes on downward within 15 minutes is read as one drop")
		for _, p := range c.percent {
			p.index += len(whole.d.Readings)
			whole.percent = append(whole.percent, p)
		}
		whole.waiting = append(whole.waiting, c.waiting...)
		whole.d.Readings = append(whole.d.Readings, c.d.Readings...)
		last = c.id.clock
	}
	b.casts = out
}

// goesOn reports whether next is the same drop further down; last is the time of c's last row.
func (c *cast) goesOn(last string, next *cast) bool {
	const apart = 15 * time.Minute
	place := next.id
	place.clock = c.id.clock
	from, err := time.Parse("15:04", last)
	to, errTo := time.Parse("15:04", next.id.clock)
	if c.id != place || err != nil || errTo != nil || to.Before(from) || to.Sub(from) > apart || len(c.d.Readings) == 0 || len(next.d.Readings) == 0 {
		return false
	}
	a, b := c.d.Readings[len(c.d.Readings)-1], next.d.Readings[0]
	return a.DepthUnit.Metres(a.Depth) < b.DepthUnit.Metres(b.Depth)
}
