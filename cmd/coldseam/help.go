package main

import (
	"bytes"
	"strings"

	"coldseam/profile/say"
)

// fitHelp breaks the lines of a help text that are wider than a terminal, the rest of
// each under its own column of text, and writes flags of one letter with one hyphen.
func fitHelp(out *bytes.Buffer) {
	text := out.String()
	out.Reset()
	for _, line := range strings.SplitAfter(text, "\n") {
		if rest, ok := strings.CutPrefix(line, "   --"); ok && len(rest) > 1 && rest[1] == ' ' {
			line = "   -" + rest[:1] + " " + rest[1:]
		}
		line = strings.TrimSuffix(line, "\n")
		if len([]rune(line)) <= say.Width {
			out.WriteString(line + "\n")
			continue
		}
		head, tail := "", line
		if at := strings.Index(strings.TrimLeft(line, " "), "  "); at > 0 && strings.HasPrefix(line, "   ") {
			at += len(line) - len(strings.TrimLeft(line, " "))
			for line[at] == ' ' {
				at++
			}
			head, tail = line[:at], line[at:]
		}
		indent := strings.Repeat(" ", len(head))
		for i, part := range strings.Split(say.WrapTo(tail, say.Width-len(head)), "\n") {
			if i > 0 {
				head = indent
			}
			out.WriteString(head + part + "\n")
		}
	}
	if n := out.Len(); n > 0 && !strings.HasSuffix(text, "\n\n") && strings.HasSuffix(out.String(), "\n\n") {
		out.Truncate(n - 1) // SplitAfter gave an empty last line
	}
}
