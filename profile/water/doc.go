// Package water holds the physics of fresh water that the rest of the program
// stands on: density and viscosity against temperature, depth against pressure, air
// pressure against altitude, and oxygen at saturation.
//
// Everything is SI, with degrees Celsius (ITS-90) for temperature and milligrams
// per litre for oxygen. No function returns an error, so that each can stand in a
// formula; an argument outside the range a function states gives NaN, and so does
// a NaN argument. A caller who wants words for what is wrong checks the range
// before asking.
//
// The package does not treat sea water, ice, dissolved matter or the compressibility of
// water (6 mm in 50 m of depth). It decides nothing about layers and knows nothing of
// readings.
package water
