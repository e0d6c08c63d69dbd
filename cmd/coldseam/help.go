package main

import (
	"bytes"
	"strings"

	"coldseam/profile/report"
)

// fitHelp breaks the lines of a help text that are wider than the terminal, the rest of
// each under its own column of text, and writes flags of one letter with one hyphen. What
// was set by hand for a usual terminal is set anew for a narrower one.
func fitHelp(out *bytes.Buffer, width int) {
	text := strings.TrimRight(out.String(), "\n")
	out.Reset()
	lines := strings.Split(text, "\n")
	if width < report.Width {
		lines = paragraphs(lines)
	}
	for _, line := range lines {
		if rest, ok := strings.CutPrefix(line, "   --"); ok && len(rest) > 1 && rest[1] == ' ' {
			line = "   -" + rest[:1] + " " + rest[1:]
		}
		out.WriteString(fitLine(strings.TrimRight(line, " "), width) + "\n")
	}
}

// leastText is how many columns the text beside a flag needs at least: where there are
// fewer it stands below.
const (
	leastText = 24
	below     = "      "
)

func fitLine(line string, width int) string {
	if len([]rune(line)) <= width {
		return line
	}
	head, tail := columnsOf(line)
	switch {
	case head == "":
		return report.WrapTo(tail, width)
	case strings.TrimSpace(head) == "": // a command to be copied
		return line
	case width-len(head) < leastText:
		head = strings.TrimRight(head, " ") + "\n" + below
	}
	indent := strings.Repeat(" ", len(head)-strings.LastIndex(head, "\n")-1)
	return head + strings.ReplaceAll(report.WrapTo(tail, width-len(indent)), "\n", "\n"+indent)
}

// columnsOf parts an indented line of two columns at its text; head is the indent alone
// where it has one column, and empty where it is not indented.
func columnsOf(line string) (head, tail string) {
	tail = strings.TrimLeft(line, " ")
	indent := len(line) - len(tail)
	if at := strings.Index(tail, "  "); at > 0 && indent > 0 {
		indent += at + len(tail[at:]) - len(strings.TrimLeft(tail[at:], " "))
	}
	return line[:indent], line[indent:]
}

// paragraphs joins the lines that were broken by hand.
func paragraphs(lines []string) (out []string) {
	flows := func(line string) bool {
		return line != "" && line[0] != ' ' && !strings.Contains(line, "  ") && !strings.HasSuffix(line, ":")
	}
	for i, line := range lines {
		if i > 0 && flows(lines[i-1]) && line != "" && line[0] != ' ' && !strings.Contains(line, "  ") && !endsSentence(lines[i-1], line) {
			out[len(out)-1] += " " + line
		} else {
			out = append(out, line)
		}
	}
	return out
}

// endsSentence: a line that ends well before its width with a full stop was ended so.
func endsSentence(line, next string) bool {
	word, _, _ := strings.Cut(next, " ")
	return strings.HasSuffix(line, ".") && len(line)+1+len(word) <= report.Width
}

const about = `Give it the readings of one drop, typed, pasted or in a file:

   printf '0 74\n5 73.5\n10 72\n15 65\n20 56\n25 52\n' |
      coldseam plan --units "ft F" --bottom 30ft --for rainbow -

Words it uses: the BAND is the depths whose water suits the fish. The
THERMOCLINE is the plane of steepest density change, where it turns cold
fastest; around it lies the METALIMNION, the layer of fast change. OXYGEN
UNKNOWN BELOW a depth means that it was not measured there and may be too low.`

const partsHelp = `coldseam COMMAND - {{.Usage}}

` + partsTitle

const partsTitle = `Parts (coldseam COMMAND PART --help tells more):
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
