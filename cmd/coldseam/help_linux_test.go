package main

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// TestHelpWidth: at narrow terminals the help is set anew for their width, whole, with no
// word alone on a line in the middle of a sentence; only a command that is to be copied
// stays on its line.
func TestHelpWidth(t *testing.T) {
	t.Parallel()
	words := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	batch := onTerminal(t, 60, 24, "", "batch", "--help")
	for _, want := range []string{
		"profile,\ndepth_m and temp_c in any order, others are ignored. Rows of\none",
		"\n   --unsorted               rows of a profile may stand\n                            anywhere in their file, which is\n",
	} {
		if !strings.Contains(batch, want) {
			t.Errorf("no %q in\n%s", want, batch)
		}
	}
	for _, args := range [][]string{{"--help"}, {"batch", "--help"}, {"drop", "--help"}} {
		usual := onTerminal(t, 80, 24, "", args...)
		for _, columns := range []int{40, 60, 100} {
			shown := onTerminal(t, columns, 24, "", args...)
			if words(shown) != words(usual) {
				t.Errorf("%v at %d columns: other words\n%s", args, columns, shown)
			}
			for _, line := range strings.Split(shown, "\n") {
				if utf8.RuneCountInString(line) > columns && !strings.HasPrefix(line, "   printf") && !strings.HasPrefix(line, "      coldseam") {
					t.Errorf("%v at %d columns: %q", args, columns, line)
				}
			}
		}
	}
}
