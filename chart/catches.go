package chart

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"coldseam/profile/catches"
	"coldseam/profile/plain"
	"coldseam/profile/unit"
)

// Limits of the picture of catches.
const (
	catchRows   = 15 // at most, the thermocline's among them
	catchLabel  = 14 // columns of a row's depth
	catchFishes = 8  // with a letter of their own; all others share one
)

// Catches draws how far above or below the thermocline fish were taken: a row for each
// step of depth, a letter for each fish. Catches whose place is not known are not in it;
// "" where that is all of them.
func Catches(taken []catches.Taken, u unit.System, width int) string {
	taken = slices.DeleteFunc(slices.Clone(taken), func(t catches.Taken) bool { return !t.BelowM.Known })
	if len(taken) == 0 {
		return ""
	}
	marks := fishMarks(taken)
	deepest := 0.0
	for _, t := range taken {
		deepest = math.Max(deepest, math.Abs(t.BelowM.Value))
	}
	stepM := catchStep(deepest, u)
	rows := map[int]map[string]int{}
	from, to := 0, 0
	for _, t := range taken {
		r := int(math.Round(t.BelowM.Value / stepM))
		if rows[r] == nil {
			rows[r] = map[string]int{}
		}
		rows[r][marks[t.Fish]] += t.Count
		from, to = min(from, r), max(to, r)
	}
	var b strings.Builder
	for r := from; r <= to; r++ {
		fmt.Fprintf(&b, "%*s ", catchLabel, catchDepth(r, stepM, u))
		if r == 0 {
			b.WriteString("= ")
		} else {
			b.WriteString("| ")
		}
		b.WriteString(letters(rows[r], width-catchLabel-3))
		b.WriteString("\n")
	}
	return strings.ReplaceAll(b.String(), " \n", "\n")
}

// catchStep is the depth of a row: the finest step that keeps the picture low.
func catchStep(deepestM float64, u unit.System) float64 {
	steps := []float64{0.25, 0.5, 1, 2, 5, 10, 20, 50, 100, 250, 500}
	if u.Feet() {
		steps = []float64{0.3048, 2 * 0.3048, 3 * 0.3048, 5 * 0.3048, 10 * 0.3048, 20 * 0.3048, 50 * 0.3048, 100 * 0.3048, 300 * 0.3048, 1000 * 0.3048}
	}
	for _, s := range steps {
		if math.Round(deepestM/s) <= catchRows/2 {
			return s
		}
	}
	return steps[len(steps)-1]
}

func catchDepth(row int, stepM float64, u unit.System) string {
	at := math.Abs(float64(row)) * stepM
	name := unit.Exact(math.Round(u.Shown().Depth.From(at)*100)/100) + " " + u.Shown().Depth.String()
	switch {
	case row < 0:
		return name + " above"
	case row > 0:
		return name + " below"
	}
	return "thermocline"
}

// letters writes a letter for each fish of a row, or how many there were where they do not
// fit, of each if that does, else of all.
func letters(row map[string]int, width int) string {
	var marks []string
	for m := range row {
		marks = append(marks, m)
	}
	slices.Sort(marks)
	all, counts, n := "", "", 0
	for _, m := range marks {
		if row[m] <= width {
			all += strings.Repeat(m, row[m])
		} else {
			all += strings.Repeat(m, width+1)
		}
		n += row[m]
		counts += fmt.Sprintf("%s x %d  ", m, row[m])
	}
	counts = strings.TrimRight(counts, " ")
	switch {
	case len(all) <= width:
		return all
	case len(counts) <= width:
		return counts
	}
	return fmt.Sprintf("%d fish", n)
}

// otherMark is that of all fish beyond the first few, and of those not named.
const otherMark = "*"

// fishMarks gives each fish a letter, of its name where one is free; those taken most often
// first.
func fishMarks(taken []catches.Taken) map[string]string {
	marks, used := map[string]string{"": otherMark}, map[string]bool{}
	for _, t := range catches.TallyBy(taken) {
		if t.Fish == "" {
			continue
		}
		marks[t.Fish] = otherMark
		if len(used) >= catchFishes {
			continue
		}
		for _, r := range strings.ToLower(t.Fish) + "abcdefghijklmnopqrstuvwxyz" {
			if m := string(r); r < unicode.MaxASCII && unicode.IsLetter(r) && !used[m] {
				marks[t.Fish], used[m] = m, true
				break
			}
		}
	}
	return marks
}

// CatchMarks says which letter of the picture is which fish: "r rainbow, p perch".
func CatchMarks(taken []catches.Taken) string {
	taken = slices.DeleteFunc(slices.Clone(taken), func(t catches.Taken) bool { return !t.BelowM.Known })
	marks := fishMarks(taken)
	var out []string
	others := false
	for _, t := range catches.TallyBy(taken) {
		if marks[t.Fish] == otherMark {
			others = true
			continue
		}
		out = append(out, marks[t.Fish]+" "+plain.Line(t.Fish))
	}
	if others {
		out = append(out, otherMark+" others")
	}
	return strings.Join(out, ", ")
}
