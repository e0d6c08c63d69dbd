// Package unit is the one door between the numbers and units that people and
// instruments write and the SI values that everything inside works with: lengths in
// metres, temperatures in degrees Celsius, speeds in metres per second, masses in
// kilograms, pressures in pascals, times in seconds, resistances in ohms.
//
// There is one table of units (table.go): Named finds a unit as people write it, Printed
// as instruments print it, and SI, From, Metres, ToC and their like convert.
//
// There is one scanner of numbers (number.go), with three doors: ScanNumber for what
// people write (a decimal comma where it can be one, fractions, the step of the last
// digit), ScanDecimal for the lines of instruments (a sign, one decimal mark), and
// ParseDecimal for the cells of files (an exponent). NaN, infinities and numbers in a
// programmer's notation (0x10, 1_000) are not numbers here.
//
// A quantity is converted once on the way in (ParseLength and the other Parse functions,
// which refuse a bare number, since 15 may be feet or metres and only the angler knows)
// and once on the way out (System and the functions that print).
package unit
