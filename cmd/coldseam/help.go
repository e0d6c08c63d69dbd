package main

import (
	"bytes"
	"strings"

	"coldseam/profile/report"
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
		if len([]rune(line)) <= report.Width {
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
		for i, part := range strings.Split(report.WrapTo(tail, report.Width-len(head)), "\n") {
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

const about = `Give it the readings of one drop, typed, pasted or in a file:

   printf '0 74\n5 73.5\n10 72\n15 65\n20 56\n25 52\n' |
      coldseam plan --units "ft F" --bottom 30ft --for rainbow -

Three words it uses: the BAND is the depths whose water suits the fish; the
BREAK (thermocline) is where it turns cold fastest; UNPROVEN is water where the
oxygen was not measured and may be missing.`

const partsHelp = `coldseam COMMAND - {{.Usage}}

Parts (coldseam COMMAND PART --help tells more):
`

const appHelp = `coldseam - {{.Usage}}

{{.Description}}

Commands (coldseam COMMAND --help tells more):
{{range .VisibleCommands}}   {{printf "%-12s" .Name}} {{.Usage}}
{{end}}
coldseam --version says which build this is, --licences what it is made of.
Exit status: 0 done, 1 could not be done, 2 not understood.
`

const commandHelp = `coldseam COMMAND - {{.Usage}}

Usage: coldseam COMMAND{{with .ArgsUsage}} {{.}}{{end}}
{{if .Description}}
{{.Description}}
{{end}}{{if .VisibleFlagCategories}}{{range .VisibleFlagCategories}}
{{if .Name}}{{.Name}}{{else}}Flags{{end}}:
{{range .Flags}}   --{{printf "%-22s" (index .Names 0)}} {{.Usage}}
{{end}}{{end}}{{else}}
Flags:
{{range .VisibleFlags}}   --{{printf "%-22s" (index .Names 0)}} {{.Usage}}
{{end}}{{end}}`
