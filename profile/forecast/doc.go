// Package forecast expects where the thermocline and a temperature will lie on a day to
// come, from the drops of one water: this season's, and those of earlier years.
//
// Through the warm half of the year layers sink, faster in early summer than late. That
// rate, from measured lakes, is the whole forecast of a temperature. The thermocline jumps
// between steps of nearly the same steepness, and so the last drop alone is a poor guide
// to it: four fifths of the way it is moved to the steepest metre of the mean column, that
// of this season's drops, the younger the heavier, each sunk by the time since. What earlier
// years had on that day counts for some percent.
//
// The intervals, of 80 %, come from how far the lakes lay from their forecasts: they are
// wider where this water has jumped about before, where the drop itself left doubt, and,
// of a temperature, with every day ahead. A line through the last drops is worse than no
// forecast at all, and is not drawn. Weather between is not asked for: none was recorded
// beside the lakes, so there is nothing to show that it would help.
package forecast
