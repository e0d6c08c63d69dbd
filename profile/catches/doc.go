// Package catches tells from what was caught before at what depth and temperature, and in
// which part of the band, a fish was taken, and what that says of where to begin today.
//
// Fish are taken where a fly was. What was never tried is not in a book, and an angler who
// follows the plan confirms it; so catches are a second opinion and no more, and it is
// weighed so:
//
//   - Of a fish, only catches count whose depth was noted and whose temperature the drop of
//     that day tells. A line counts for no more than three fish, however many were taken:
//     they came from one place at one time.
//   - From eight on they have a say, those of this water alone if there are eight, else
//     those of all waters.
//   - The usual range is the shortest one that holds three catches in four; the usual
//     temperature is the median. Neither is moved by a few odd fish. Where the usual range
//     is wider than 4 C (7 F) the catches contradict each other and say nothing.
//   - A catch whose temperature is in doubt by e C, by that drop's own readings and by half
//     a foot in the depth of the fly, counts 1/(1 + e2). The sum of those is n, and the
//     weight of the opinion is n/(n + 8): eight sure catches are worth as much as the
//     table of fish, and it takes many to be worth more than three times as much.
//
// Eight, three in four, three fish a line and 4 C are choices of this program, tested with
// invented books; that the middle half and the median are robust is textbook knowledge.
package catches
