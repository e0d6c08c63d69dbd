package licence

import (
	"runtime/debug"
	"testing"
)

// A program built from other modules than the licences were gathered for is found out.
func TestLacks(t *testing.T) {
	text := "a 1.0\n\n=== a v1.0, LICENSE\n=== b v2.0, COPYING\n\nFree.\n"
	for _, c := range []struct {
		modules []*debug.Module
		want    string
	}{
		{nil, ""},
		{[]*debug.Module{{Path: "a", Version: "v1.0"}, {Path: "b", Version: "v2.0"}}, ""},
		{[]*debug.Module{{Path: "a", Version: "v1.1"}}, "a v1.1"},
		{[]*debug.Module{{Path: "a", Version: "v1"}}, "a v1"},
		{[]*debug.Module{{Path: "c", Version: "v1.0"}}, "c v1.0"},
		{[]*debug.Module{{Path: "c", Version: "v1.0", Replace: &debug.Module{Path: "b", Version: "v2.0"}}}, ""},
	} {
		if got := lacks(text, c.modules); got != c.want {
			t.Errorf("%v: %q, want %q", c.modules, got, c.want)
		}
	}
}
