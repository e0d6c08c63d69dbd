// Package method says what each published method makes of one column of
// temperatures: the depth of the mixed layer, of the thermocline, and the edges of
// the metalimnion, side by side. It does not ask whether the column is layered, takes
// no skin off it, and gives no intervals of doubt.
//
// None of them is what this module answers with: that is package layers, whose
// comment has a table of their errors beside its own. Only the centre of a fitted step
// is used by it, as a warning: see ApartM.
package method
