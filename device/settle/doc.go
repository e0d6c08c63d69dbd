// Package settle says when the readings of a temperature probe held still in
// water have settled, and what they will settle at before they have.
//
// The probe is taken as a first-order lag: after a step the reading runs as
// T(t) = Tw + (T0 - Tw) exp(-t/tau), Tw the water, T0 the reading at the
// start, tau the time constant (common practice; closed form). A Watcher is
// fed samples one by one and answers each with a State. For a probe lowered
// without stopping, BinCast takes the lag out and bins by depth, and MatchTau
// finds the time constant from a cast down and one up.
//
// It does not read instruments, does not follow water that itself changes
// while the probe hangs still, does not model probes with two time constants
// (a sensor inside a heavy case), and does not know that a probe was moved:
// call Reset at each new depth. All units are SI: seconds, degrees Celsius.
package settle
