package format

// StatesDepth reports whether the lines state the probe's depth, or a pressure from
// which it follows. Of NMEA sentences only the lines themselves tell.
func (l Layout) StatesDepth() bool {
	for _, p := range l.Parts {
		if p.Quantity == Depth || p.Quantity == Pressure || p.Quantity == Gauge {
			return true
		}
	}
	return false
}
