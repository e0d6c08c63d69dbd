// Package tow works out the shape of a leader that is drawn steadily through still
// water: how deep each fly lies, how far behind the tip of the fly line, and how
// long a leader or how slow a retrieve puts the point fly at a depth.
//
// # The model
//
// The leader is an inextensible, perfectly limp line made of round parts, its upper
// end (the tip) held at the surface by a floating fly line and moved level at a
// steady speed. Each bit of it is in balance between its weight in water, drag
// across it, friction along it and the pull at its two ends (the theory of the towed
// cable: Pode 1951, David Taylor Model Basin Report 687):
//
//	dT/ds = w cos a + F,   T da/ds = -w sin a + N
//
// T being the tension, a the angle from the vertical, s the length from the point
// fly upward, w the weight in water per length; N, the drag across, depends on the
// speed across the line (speed * cos a) and F, the friction along, on both, by the
// correlations of package drag. Flies, droppers and shot between the parts add their
// weight in water and the drag of a ball of their own size.
//
// # What floats
//
// Parts and bodies may be lighter than water. Nothing rises above the surface: where
// the balance would lift a place above the tip, the highest such place is at the
// surface instead, all that lies between it and the tip is laid out flat on the
// surface, at depth zero, and what lies beyond hangs from it. A dropper on the flat
// stretch that is heavy enough to sag under the surface is not followed: its depth
// is still given as zero.
//
// # How sure it is
//
// The balance is solved to 0.1 %; what goes into it is known far less well. A fifth
// more drag across the line, or a fly of 0.2 g instead of 0.25, makes the speed for a
// depth a tenth lower; so does a density of 2500 instead of 4000 kg/m3 for the fly.
//
// # What it does not do
//
// It knows no bottom: a depth greater than the water's means that the fly drags. It
// knows no waves, no jerks and pauses (a retrieve in strips moves the fly about the
// depth of its mean speed), no current that changes with depth, no stiffness of a
// thick butt, no sag of the fly line, no coils left from the spool, and no fly that
// planes.
package tow
