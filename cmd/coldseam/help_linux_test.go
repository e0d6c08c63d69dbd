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
			if columns == 40 && len(args) == 1 && !strings.Contains(shown, "Give it the readings of one drop, typed,\npasted or in a file:\n") {
				t.Errorf("broken twice:\n%s", shown)
			}
		}
	}
}
