package main

import (
	"strings"
	"testing"

	"github.com/urfave/cli/v2"

	"coldseam/profile/report"
)

// TestHelpFits: of no command is the help wider than a terminal of 80 columns. What it is
// for, its description, whose lines are set by hand, and a flag's text that fits its line
// stand as they were written; a longer text of a flag is broken, but whole, and no break
// leaves a word alone.
func TestHelpFits(t *testing.T) {
	helpFits(t, "", &cli.Command{Description: about, Usage: "from a few water temperatures to a depth to fish", Subcommands: new(program).commands()})
}

// helpFits tries the help of a command and of its parts.
func helpFits(t *testing.T, name string, c *cli.Command) {
	status, out, _ := runWith(t, "", append(strings.Fields(name), "--help")...)
	if status != 0 || len(out) < 100 {
		t.Errorf("%s: status %d, and no help: %q", name, status, out)
	}
	for _, line := range strings.Split(out, "\n") {
		words := strings.Fields(line)
		switch n := len([]rune(line)); {
		case n > 80:
			t.Errorf("%s --help: %d columns: %s", name, n, line)
		case line != strings.TrimRight(line, " "):
			t.Errorf("%s --help: blanks at the end of %q", name, line)
		case len(words) == 1 && !strings.HasSuffix(line, ":"):
			t.Errorf("%s --help: a word stands alone: %q", name, line)
		}
	}
	stands := func(text string) {
		if !strings.Contains(out, text) {
			t.Errorf("%s --help: does not stand unbroken:\n%s\nin\n%s", name, text, out)
		}
	}
	program := strings.TrimSpace("coldseam " + name)
	stands(program + " - " + c.Usage + "\n")
	if c.Description != "" {
		stands("\n\n" + c.Description + "\n\n")
	}
	if len(c.Subcommands) == 0 {
		stands("\nUsage: " + strings.TrimSpace(program+" "+c.ArgsUsage) + "\n")
	}
	const before = len("   --time-constant          ") // of a flag's text
	whole := strings.Join(strings.Fields(out), " ")
	for _, f := range c.Flags {
		name, text := f.Names()[0], usage(f)
		hyphens := "--"
		if len(name) == 1 {
			hyphens = "-"
		}
		if len(text) <= report.Width-before {
			stands(" " + text + "\n")
		}
		if text == "" || !strings.Contains(whole, " "+hyphens+name+" "+strings.Join(strings.Fields(text), " ")+" ") && !strings.HasSuffix(whole, text) {
			t.Errorf("%s --help: --%s: not the whole of %q", program, name, text)
		}
	}
	for _, part := range c.Subcommands {
		stands("\n   " + part.Name)
		stands(" " + part.Usage + "\n")
		helpFits(t, strings.TrimSpace(name+" "+part.Name), part)
	}
}
