// Package response makes readings of the water from those of a slow sensor.
//
// A probe is taken as a first-order lag: after a step the reading runs as
// T(t) = Tw + (T0 - Tw) exp(-t/tau), Tw the water, T0 the reading at the
// start, tau the time constant (common practice; closed form).
//
// A Filter follows the readings of a probe held still: it says when they have
// settled, and what they will settle at before they have. It learns the time
// constant from depth to depth, and leaves out a wild reading among good ones.
// A Watch is a Filter for a probe moved by hand, which tells by itself when the
// probe hangs still. A Record gathers what a probe says that is lowered without
// stopping, and turns the trip into readings by depth with the lag taken out.
//
// It reads no lines and opens no port, does not follow water that itself changes
// while the probe hangs still, and does not model probes with two time
// constants (a sensor inside a heavy case). All units are SI: seconds, metres,
// degrees Celsius.
package response
