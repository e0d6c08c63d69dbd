// Package device is the probe on a cable: a serial port that prints readings, line
// by line. So far it opens a port with settings that were checked; decoding of
// lines, settling and reconnecting belong here too.
//
// It reads by short polls: the port returns within Poll when nothing came, so that
// whoever reads can stop, and tells a quiet probe from a lost one by its own clock.
package device

import (
	"fmt"
	"io"
	"slices"
	"time"

	"github.com/tarm/serial"
)

// Poll is how long one Read of a port waits for a byte: the shortest time the
// serial library can wait.
const Poll = 100 * time.Millisecond

// bauds are the speeds that every system's driver takes.
var bauds = []int{1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200}

// CheckBaud reports an error that names the speeds which are possible.
func CheckBaud(baud int) error {
	if !slices.Contains(bauds, baud) {
		return fmt.Errorf("%d baud is not a speed of a probe: use one of %v", baud, bauds)
	}
	return nil
}

// Open opens the port called name (a path such as /dev/ttyUSB0, or COM3) at a speed
// in baud, with eight data bits, no parity and one stop bit. Bytes that came before
// are thrown away. A Read that returns 0 bytes and io.EOF within about Poll means
// silence, not the end.
func Open(name string, baud int) (io.ReadWriteCloser, error) {
	if name == "" {
		return nil, fmt.Errorf("no port named: give one such as /dev/ttyUSB0 or COM3")
	}
	if err := CheckBaud(baud); err != nil {
		return nil, err
	}
	port, err := serial.OpenPort(&serial.Config{Name: name, Baud: baud, ReadTimeout: Poll})
	if err != nil {
		return nil, fmt.Errorf("%s at %d baud cannot be opened: %w", name, baud, err)
	}
	if err := port.Flush(); err != nil {
		port.Close()
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return port, nil
}
