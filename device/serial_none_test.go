//go:build noserial || !(linux || windows || cgo)

package device

import (
	"errors"
	"testing"
)

// TestNoSerial: without the library a port is refused in one line that says what to do,
// after the faults of what was typed.
func TestNoSerial(t *testing.T) {
	const want = "built without a serial port: type the readings, or build coldseam again with CGO_ENABLED=1"
	if p, err := Open(Config{Name: "/dev/cu.probe"}); p != nil || err == nil || err.Error() != want || !errors.Is(err, errors.ErrUnsupported) {
		t.Errorf("%v, %v", p, err)
	}
	if _, err := Open(Config{Name: "/dev/cu.probe", Baud: 5}); err == nil || err.Error() == want {
		t.Errorf("a speed that is none: %v", err)
	}
	if err := Serial(); err == nil || err.Error() != want {
		t.Error(err)
	}
}
