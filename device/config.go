package device

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"coldseam/profile/plain"
)

// Config says which port to open and how the probe talks on it. One stop bit and no
// flow control are taken for granted (common practice for probes).
type Config struct {
	Name     string // /dev/ttyUSB0, a name in /dev/serial/by-id, COM3; must be given
	Baud     int    // speed in bits a second, 1200 to 115200; 0 is 9600
	DataBits int    // 7 or 8; 0 is 8
	Parity   string // "none", "even" or "odd"; "" is none
}

var (
	bauds    = []int{1200, 2400, 4800, 9600, 19200, 38400, 57600, 115200} // taken by every system's driver
	dataBits = []int{7, 8}                                                // fewer carry no text
	parities = []string{"none", "even", "odd"}
)

// filled is c with the defaults where a field is zero.
func (c Config) filled() Config {
	if c.Baud == 0 {
		c.Baud = 9600
	}
	if c.DataBits == 0 {
		c.DataBits = 8
	}
	if c.Parity == "" {
		c.Parity = "none"
	}
	return c
}

// Check reports the first field that no port can be opened with, in one line that
// says what is allowed. Zero values but for the name are fine.
func (c Config) Check() error {
	c = c.filled()
	switch {
	case c.Name == "":
		return errors.New("no port named: give one such as /dev/ttyUSB0 or COM3")
	case !utf8.ValidString(c.Name) || plain.Line(c.Name) != c.Name:
		return fmt.Errorf("the name %+q is not the name of a port: it holds signs that cannot be printed", c.Name)
	case !slices.Contains(bauds, c.Baud):
		return fmt.Errorf("%d baud is not a speed of a probe: use %s", c.Baud, oneOf(bauds))
	case !slices.Contains(dataBits, c.DataBits):
		return fmt.Errorf("%d data bits are not possible: use %s", c.DataBits, oneOf(dataBits))
	case !slices.Contains(parities, c.Parity):
		return fmt.Errorf("parity %+q is not possible: use %s", c.Parity, oneOf(parities))
	}
	return nil
}

// oneOf writes a list as "a, b or c".
func oneOf[T any](list []T) string {
	var b strings.Builder
	for i, v := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			b.WriteString(" or ")
		default:
			b.WriteString(", ")
		}
		fmt.Fprint(&b, v)
	}
	return b.String()
}
