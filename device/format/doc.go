// Package format turns the plain lines that home-made probes print into samples, and
// finds from the first lines how they are laid out.
//
// A Layout says which value of a line is the depth and which the temperature, and in
// what unit. It is written as text ("depth m, temp C"), found by Find, or asked of the
// angler from the choices that Find leaves. A Reader takes one line after another.
//
// Find goes this way: the scanner splits the lines into values, which make columns
// (columns.go); each column is judged by its name, its unit and its numbers (meaning.go,
// judge.go) for the ways to read it (ways.go, count.go); a temperature with a depth beside
// it makes a layout (solve.go), and a Reader tries each on the lines (find.go). What is
// said about it is in why.go.
//
// The package opens no port, smooths nothing, and guesses neither the unit of a depth
// nor a column that could be two things. Whatever a line says, a number that stands for
// a fault never becomes a sample, and an empty field is not zero.
package format
