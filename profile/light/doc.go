// Package light says how deep useful light reaches and weeds may grow, by the Secchi
// depth, where the food shelf ends, and whether the sky, the wind and the hour speak
// for fishing shallower or deeper within the band.
//
// Depths are metres below the surface. No function returns an error: a Secchi depth
// outside MinSecchiM to MaxSecchiM, or one that is not a number, gives NaN, as in
// package water; what a page does not say, or says in words not known here, moves
// nothing.
//
// Where nobody says how high the sun stands, hours of low and of high sun are fixed
// hours of the page's clock (common practice) and wrong in a far northern June. It does
// not know the moon: a moonlit night is a night; nor which weeds grow or whether any
// do: bottom, ice and grazing decide that too. The lines for weeds are fitted on lakes
// of one region. Brown or muddy water dims the light like green water does, and a
// Secchi depth cannot tell them apart. It decides nothing about temperature or oxygen.
package light
