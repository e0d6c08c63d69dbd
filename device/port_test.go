package device

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestOpenRefuses(t *testing.T) {
	for _, c := range []struct {
		name string
		baud int
		want string // in the error
	}{
		{"", 9600, "no port named"},
		{"/dev/ttyUSB0", 9601, "9601 baud is not a speed"},
		{filepath.Join(t.TempDir(), "gone"), 9600, "at 9600 baud cannot be opened"},
	} {
		port, err := Open(c.name, c.baud)
		if err == nil {
			port.Close()
			t.Fatalf("Open(%q, %d) opened something", c.name, c.baud)
		}
		if !strings.Contains(err.Error(), c.want) {
			t.Errorf("Open(%q, %d): %q, want %q in it", c.name, c.baud, err, c.want)
		}
	}
}
