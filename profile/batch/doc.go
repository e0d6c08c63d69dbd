// Package batch finds the layers of many columns: CSV in, one line of JSON per column
// out, in the order of the input.
//
// The CSV has a row of names first, then one row per reading. The columns profile,
// depth_m (metres) and temp_c (degrees Celsius) are needed, in any order and case;
// others are passed over. The rows of one profile stand together: a profile ends where
// its name changes, and one that comes back among the next 65,536 gets a line with that
// problem, since its rows were torn apart. (With Options.Unsorted they may stand anywhere,
// and an input is held in memory.) Each input has profiles of its own. A row
// without a temperature (a depth with oxygen only) is passed over, and so is a row
// whose cells are all empty.
//
// What cannot be read gives its column a line with the problem instead of its layers,
// and the run goes on. A row that is no CSV, or too long, may hide the name it belongs
// to; it is then a problem of the column before it and of the one after it, so that no
// column is answered with a reading missing. A quoted cell ends on its own line, since
// a quote that is never closed would otherwise swallow the rest of the archive.
//
// Else memory does not grow with the input: columns are handed on in chunks, of which a
// fixed number exist, and the rows of a column and the length of a line are capped.
//
// Readings are taken as they are: the flags of package check, which ask an angler to
// read again, have no place in an archive.
package batch
