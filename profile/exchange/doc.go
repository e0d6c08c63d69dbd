// Package exchange carries drops to other programs and back: CSV with one row a reading
// (long) or one a drop (wide), the columns in which water quality is exchanged in the US,
// and JSON.
//
// ReadCSV takes a table that somebody else made, too. A file is read whole or not at all:
// a row that cannot be read is an error that names its line, a column that is not known is
// told in a Note, and what has two meanings is refused with both named.
//
// The long form loses nothing: reading it gives equal drops. Its columns are drop, lake,
// site, date, time, utc_offset, the readings as they were written (depth_ft, temp_f, ...),
// the same as corrected (depth_corrected_m, temp_corrected_c), do_mgl, flag and what may
// have been meant, and a column for each other header key of the notebook that any of the
// drops has. Where the drops agree in a unit it stands in the column's name, else in a
// column beside it (depth, depth_unit).
//
// The wide form has a column for each depth (temp_f_5ft, do_mgl_5ft) and loses the corrected
// values and, of a reading, its place among the others, what was read at its depth before
// it, the range written beside it, and the step of its last digit where the digits do not
// show it.
//
// Package batch reads CSV too, of three fixed columns, as a stream, and goes on after what
// it cannot read: for an archive. Here a person waits for a table of theirs.
//
// A cell that a spreadsheet might run (it begins with = + - @, a tab or a carriage return
// and is no number) has an apostrophe put before it, which reading takes off again.
package exchange
