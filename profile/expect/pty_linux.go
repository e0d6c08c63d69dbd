package expect

import (
	"os"
	"testing"

	"github.com/creack/pty"
)

// Pty opens a pseudo-terminal, which a sandbox may lack.
func Pty(tb testing.TB) (master, slave *os.File) {
	tb.Helper()
	master, slave, err := pty.Open()
	if err != nil {
		Missing(tb, "there are no pseudo-terminals here: %v", err)
	}
	return master, slave
}
