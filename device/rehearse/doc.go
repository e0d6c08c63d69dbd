// Package rehearse is a probe that does not exist, on a cable into a lake that was made
// up: a serial port without hardware, to learn the job on and to test readers with.
//
// The sensor is a first-order lag in water whose temperature is linear between given
// depths; the probe moves at a steady speed and prints a line at every period. All
// happens on the lake's own clock, which can run faster than the wall's. What the n-th
// line says depends on the seed, on n and on the moves up to then, on nothing else.
//
// It keeps no speed in baud and takes no commands, its cable neither drifts nor hangs at
// an angle, and the lake does not change.
package rehearse
