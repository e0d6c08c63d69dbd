// Package unit is the one door between the angler's units and the SI values
// that everything inside works with: lengths in metres, temperatures in degrees
// Celsius, speeds in metres per second, masses in kilograms, times in seconds.
//
// A quantity is converted once on the way in (Parse...) and once on the way out
// (System and the Format functions). A bare number where a unit is needed is
// refused, since 15 may be feet or metres and only the angler knows; NaN,
// infinities and numbers in a programmer's notation (0x10, 1e3, 1_000) are not
// numbers here.
package unit
