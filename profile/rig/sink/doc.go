// Package sink answers how long a leader and its flies take to sink in still water,
// from a floating line whose tip lies still or slides after them.
//
// The leader begins straight on the surface and swings down as a chain of links
// that do not stretch. Its weight in water, its drag across and along itself (package
// drag), the pull along it and its small inertia are in balance in each step of time;
// each step is solved for the angles of all links at once, as a multibody chain with
// a free end, so that it may be long and a sink takes some dozens of steps.
//
// It does not know of a leader laid in curls, which lets the fly drop faster at
// first, of wind, waves or current, of a boat that drifts, of the leader's
// stiffness, or of surface tension, which floats a greased leader: its waits are
// those of a degreased leader in calm water.
package sink
