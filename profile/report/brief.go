package report

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Brief is a plan at a glance: what is set up and done, each with its range, and what can
// hurt somebody today.
type Brief struct {
	Title      string
	Warnings   []string // what stands before the answer, a sentence or two each
	NoWater    string   // why there is no water to fish; "" where there is
	Rows       []Row
	Confidence string   // in one sentence, with its main reason
	Read       []string // how odd lines of the page were read
	Safety     []string // the other cautions for today, a sentence each
}

// Row is one number of a Brief: "Cast over", "17 ft", "16 to 20 ft of water, surface to
// bottom".
type Row struct {
	Label, Value string
	Detail       string // may be empty
}

// mostRead is how many odd lines of a page are told on a terminal at a glance.
const mostRead = 2

// Sentence is the answer in one sentence: "Fish 15 to 29 ft; fly 16 ft down; cast over 17
// ft; leader 21.5 ft; thermocline 14 to 16 ft.", or why there is none.
func (b Brief) Sentence() string {
	var parts []string
	for _, r := range b.Rows {
		if slices.Contains([]string{"Fish", "Fly", "Cast over", "Hole over", "Anchor over", "Leader", "Thermocline"}, r.Label) && r.Value != "none" {
			parts = append(parts, r.Label+" "+r.Value)
		}
	}
	for i := 1; i < len(parts); i++ {
		parts[i] = strings.ToLower(parts[i][:1]) + parts[i][1:]
	}
	rows := strings.Join(parts, "; ")
	if rows != "" {
		rows += "."
	}
	return strings.TrimSpace(b.NoWater + " " + rows)
}

// Columns of a Brief in a terminal: labels, and values where details stand beside them.
const (
	labelColumns = 13
	valueColumns = 19
	besideFrom   = 70 // so wide a terminal has room for details beside the values
)

// Text prints a Brief for a terminal of a width: a table with the details beside the
// numbers, or behind them where it is narrow.
func (b Brief) Text(width int) string {
	return laid(width, b.Title, b.Warnings, b.NoWater, b.Rows, slices.Concat([]string{b.Confidence}, b.oddest(), b.Safety))
}

// laid is an answer at a glance: a title, what stands first, the answer in a sentence or
// two, where there is one, its numbers, and what is said of them, a sentence each.
func laid(width int, title string, warnings []string, answer string, rows []Row, notes []string) string {
	out := WrapTo(title, width) + "\n"
	for i, w := range warnings {
		if i == 0 {
			out += "\n"
		}
		out += WrapTo(w, width) + "\n"
	}
	if answer != "" {
		out += "\n" + WrapTo(answer, width) + "\n"
	}
	out += "\n"
	for _, r := range rows {
		out += r.text(width)
	}
	if len(notes) > 0 {
		out += "\n"
	}
	for _, t := range notes {
		out += WrapTo(t, width) + "\n"
	}
	return out
}

// oddest are the first of the odd lines, those that fit a line each, and how many more
// there are.
func (b Brief) oddest() (out []string) {
	for _, t := range b.Read {
		if len(out) < mostRead && utf8.RuneCountInString(t) <= Width {
			out = append(out, t)
		}
	}
	if len(b.Read) > mostRead && len(out) == mostRead {
		out = out[:mostRead-1]
	}
	if n := len(b.Read) - len(out); n > 0 {
		out = append(out, sentence(count(n, "note")+" on how the page was read: --full"))
	}
	return out
}

// text prints a row.
func (r Row) text(width int) string {
	value := r.Value
	indent := labelColumns
	switch {
	case r.Detail == "":
	case width >= besideFrom && utf8.RuneCountInString(value) < valueColumns:
		indent += valueColumns
		head := fmt.Sprintf("%-*s%-*s", labelColumns, r.Label, valueColumns, value)
		return head + under(r.Detail, width, indent)
	default:
		stop := ", "
		if unicode.IsUpper([]rune(r.Detail)[0]) { // a sentence of its own
			stop = ". "
		}
		value += stop + r.Detail
	}
	return fmt.Sprintf("%-*s", labelColumns, r.Label) + under(value, width, indent)
}

// under breaks a text that begins at a column, its further lines under it.
func under(text string, width, column int) string {
	return strings.ReplaceAll(WrapTo(text, width-column), "\n", "\n"+strings.Repeat(" ", column)) + "\n"
}
