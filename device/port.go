// Package device is the probe on a cable: a serial port that prints readings, line by
// line. It finds the ports there are (Ports), opens one with settings that were checked
// (Open), and follows it (Listen): whole lines come out, a probe that is silent is told
// apart from a cable that was pulled, and a cable that comes back is taken up again.
//
// Reading goes by short polls: a port returns within about Poll when nothing came, so
// that whoever reads can stop, and nobody ever closes a port under a read.
//
// The package does not know what a line says, writes nothing to a probe, and guesses
// neither the port nor its speed. Where the serial library needs a C compiler and none
// was there (macOS, other Unix), it is built without ports; so it is with the tag noserial.
package device

import "time"

// Poll is how long one Read of a port waits for a byte: the shortest time the serial
// library can wait.
const Poll = 100 * time.Millisecond
