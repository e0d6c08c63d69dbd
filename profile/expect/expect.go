// Package expect serves tests: numbers that must be near each other, things that a test
// needs and a machine may lack, and committed tables of answers that a script beside them
// made.
package expect

import (
	"math"
	"os"
	"os/exec"
	"testing"
)

// Near fails when got is further than tol from want, or not a number.
func Near(tb testing.TB, what string, got, want, tol float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= tol) {
		tb.Errorf("%s: %.10g, want %.10g within %g", what, got, want, tol)
	}
}

// Within fails when got is further than a share of want from it, or not a number.
func Within(tb testing.TB, what string, got, want, share float64) {
	tb.Helper()
	if !(math.Abs(got-want) <= share*math.Abs(want)) {
		tb.Errorf("%s: %.10g, want %.10g within %g %%", what, got, want, 100*share)
	}
}

// Full reports whether nothing may be left out: COLDSEAM_FULL is 1.
func Full() bool { return os.Getenv("COLDSEAM_FULL") == "1" }

// Missing ends a test that lacks something: skipped, or failed when Full, so that a full
// run cannot pass by leaving tests out.
func Missing(tb testing.TB, format string, args ...any) {
	tb.Helper()
	if Full() {
		tb.Fatalf("COLDSEAM_FULL=1, but "+format, args...)
	}
	tb.Skipf(format, args...)
}

// Python gives a Python with the modules, "gsw, iapws", or ends the test.
func Python(tb testing.TB, modules string) string {
	tb.Helper()
	for _, name := range []string{"/usr/bin/python3", "python3"} {
		if exec.Command(name, "-c", "import "+modules).Run() == nil {
			return name
		}
	}
	Missing(tb, "no python3 with %s here", modules)
	return ""
}
