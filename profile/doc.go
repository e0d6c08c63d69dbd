// Package profile holds what everything else works on: the Reading, as it was
// written and as it is understood; the Drop, one lowering of the thermometer with
// what the angler noted about it; and the Column, the clean series of depths and
// temperatures that a Drop's good readings make.
//
// Everything is SI: metres below the water surface, degrees Celsius, milligrams of
// oxygen per litre, seconds, kilograms. A Column is the one gate: it cannot hold a
// NaN, an unsorted or an equal pair of depths, so that nothing behind it has to
// ask. Nothing is decided here: flags come from package check, layers from package
// layers.
package profile
