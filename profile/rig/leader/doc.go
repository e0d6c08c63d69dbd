// Package leader is the physics of a leader in water: its shape while it is towed by a
// steady retrieve, and how long it takes to sink. A Leader is line made of round parts,
// with flies, droppers and shot on it, from the tip of a floating fly line down to the
// point fly.
//
// # Towed
//
// The line is inextensible and perfectly limp, its upper end (the tip) held at the
// surface by a floating fly line and moved level at a steady speed. Each bit of it is in
// balance between its weight in water, drag across it, friction along it and the pull at
// its two ends (the theory of the towed cable: Pode 1951, David Taylor Model Basin
// Report 687):
//
//	dT/ds = w cos a + F,   T da/ds = -w sin a + N
//
// T being the tension, a the angle from the vertical, s the length from the point
// fly upward, w the weight in water per length; N, the drag across, depends on the
// speed across the line (speed * cos a) and F, the friction along, on both. Bodies
// between the parts add their weight in water and the drag of a ball of their own size.
//
// Parts and bodies may be lighter than water. Nothing rises above the surface: where
// the balance would lift a place above the tip, the highest such place is at the
// surface instead, all that lies between it and the tip is laid out flat on the
// surface, at depth zero, and what lies beyond hangs from it. A dropper on the flat
// stretch that is heavy enough to sag under the surface is not followed: its depth
// is still given as zero.
//
// The balance is solved to 0.1 %; what goes into it is known far less well. A fifth
// more drag across the line, or a fly of 0.2 g instead of 0.25, makes the speed for a
// depth a tenth lower; so does a density of 2500 instead of 4000 kg/m3 for the fly.
//
// It knows no bottom: a depth greater than the water's means that the fly drags. It
// knows no waves, no jerks and pauses (a retrieve in strips moves the fly about the
// depth of its mean speed), no current that changes with depth, no stiffness of a
// thick butt, no sag of the fly line, no coils left from the spool, and no fly that
// planes.
//
// # Sinking
//
// The leader begins straight on the surface of still water and swings down as a chain
// of links that do not stretch, from a tip that lies still or slides after it. Its weight
// in water, its drag across and along itself, the pull along it and its small inertia are
// in balance in each step of time; each step is solved for the angles of all links at
// once, as a multibody chain with a free end, so that it may be long and a sink takes
// some dozens of steps.
//
// It does not know of a leader laid in curls, which lets the fly drop faster at
// first, of wind, waves or current, of a boat that drifts, of the leader's
// stiffness, or of surface tension, which floats a greased leader: its sink times are
// those of a degreased leader in calm water.
//
// # Drag
//
// The drag coefficients of balls and of thin round line depend on the Reynolds number
// alone, re = speed * diameter / kinematic viscosity, for smooth bodies in steady flow
// without walls near. They do not know of ribbed or furry surfaces, of waves at the
// surface, or of the fall of drag beyond a Reynolds number of 2e5: a fly never gets
// there.
package leader
