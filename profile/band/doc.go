// Package band finds the target depth band: the depths at which the water suits
// the fish, the depth to start at, and the depth of water to cast over.
//
// For coldwater fish the band is the water no warmer than the top of their comfort
// range, with the oxygen they need where oxygen was measured; colder water never
// excludes them. For cool- and warmwater fish both edges of the comfort range
// count. Oxygen that was not measured removes no water: the band is then by
// temperature alone, and below DoubtfulBelow oxygen is unknown: BestBet is the part above
// that. Only mud that came up black takes water away without a measurement: all below that
// depth.
//
// Nothing is said about water deeper than 2 ft below the deepest reading, and a
// band is not found where there is none: too warm as far as was read, too warm down
// to the lake's bottom, or cool water without oxygen are answers of their own.
//
// That the fly belongs within a foot or two of the bottom, in water no deeper than
// about 20 ft, is common practice; so are the other depths marked so here.
package band
