// Package book keeps drops in a folder, one page of the notebook a drop, from its
// first reading on, so that a drop that was killed or lost its power goes on where
// it was.
//
// Saved means that the page is whole on the disk: it is written beside the old one,
// synced, put in the old one's place, and the folder is synced too. Whoever asks for
// the next reading does so only after that.
//
// A page that is still being taken ends with a comment that says so; a reader of
// notebook pages passes it over. Every page that has it is offered or named with the
// reason why not, and none is written over that somebody else changed. Text of the angler becomes part of a file's name
// only as plain letters and digits.
//
// What was caught is added to a page as it stands, whoever wrote it, by one line, and only
// where all else on the page then reads as before.
package book
