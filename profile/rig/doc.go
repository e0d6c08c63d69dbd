// Package rig answers how to reach a depth: which rig, how long a
// leader, cut from which pieces of the angler's stock, within the water's rules.
//
// The rigs are the long leader (a floating line and a leader somewhat longer than
// the water is deep), the hung fly (under an indicator, fixed or sliding, on level line),
// the sinking line, the line straight down under the boat, and the jig through the ice. The
// long leader is worked out for the retrieve that the angler states (package leader), or
// else it is the trade's rule, the depth of water plus a quarter (common practice), with
// the retrieves at which that holds; how long the fly takes to its depth is worked out
// too.
//
// It does not know the angler's units: lengths are metres, and the step to which
// pieces are cut is given by the caller.
package rig
