// Package response says when the readings of a temperature probe held still in
// water have settled, and what they will settle at before they have.
//
// The probe is taken as a first-order lag: after a step the reading runs as
// T(t) = Tw + (T0 - Tw) exp(-t/tau), Tw the water, T0 the reading at the
// start, tau the time constant (common practice; closed form). A Watcher is
// fed samples one by one and answers each with a State; it learns the time
// constant from depth to depth, and leaves out a wild reading among good ones.
// For a probe lowered without stopping, Bins turns the record of one trip into
// temperatures by depth with the lag taken out; Split, MatchTau and BinCast are
// its parts.
//
// It does not read instruments, does not follow water that itself changes
// while the probe hangs still, and does not model probes with two time
// constants (a sensor inside a heavy case). It does not know that a probe was
// moved: call Reset at each new depth. All units are SI: seconds, metres,
// degrees Celsius.
package response
