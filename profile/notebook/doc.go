// Package notebook turns a page of readings, as an angler writes or pastes it,
// into drops, and writes a drop out so that reading it back gives the same Column.
//
// A page is header lines ("bottom: 31 ft"), then readings in whatever shape they
// were jotted down: "5ft 71.2", "10-68", "72@3", "surf 74", tables, ditto marks.
// What has one meaning is read; what has two is asked about, or refused with both
// readings named when there is nobody to ask; the rest is refused by line number.
// Nothing is guessed silently: every line that took more than plain reading leaves
// a Note that says how it was read.
//
// While a drop is taken, ReadLine reads one typed line, New begins the drop of its headers
// and Set takes one header into it: nothing is written out to be read again.
//
// The steps, a file each: clean (characters), token (numbers, units, words), line
// (what one line says by itself), table (header rows), wide (tables written across),
// title (dates without a key), words (a line with words of its own: what is known in it
// is taken, the rest is a note) with facts (keys without a colon, lengths), place (water
// and spot), wind and date, page (line by line), columns (the order of the
// columns, a third column), drops (where a second drop begins, units), build
// (readings), header, write; several, for a text that holds several pages.
package notebook
