package profile

import "coldseam/profile/unit"

// Catch is one line about fish that were taken. Text is the line as it was written, and
// alone is written out again; the other fields are what could be read in it.
type Catch struct {
	Time      string      // of the day, "18:10"; "" where not noted
	Count     int         // of fish, 1 where no number was written
	Fish      string      // as the table of fish names it, else as written; "" where not named
	Depth     Optional    // of the fly, in DepthUnit as written
	DepthUnit unit.Length // NoLength where the depth is unknown
	Rest      string      // the fly and all other words, as written
	Text      string
}

// DepthM is the depth of the fly, m.
func (c Catch) DepthM() Optional {
	if !c.Depth.Known {
		return c.Depth
	}
	return Some(round(c.DepthUnit.Metres(c.Depth.Value)))
}
