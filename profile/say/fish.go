package say

import (
	"fmt"
	"strings"

	"coldseam/profile/fish"
	"coldseam/profile/unit"
)

// FishTable prints the fishes and their needs, a line each.
func FishTable(all []fish.Fish, u unit.System) string {
	u = u.Shown()
	var b strings.Builder
	fmt.Fprintf(&b, "%-12s %-10s %13s %9s %9s %10s\n", "fish", "kind", "comfort, "+u.Temp.String(), "limit, "+u.Temp.String(), "best, "+u.Temp.String(), "oxygen")
	for _, f := range all {
		comfort := degree(f.ComfortLowC, u) + " to " + degree(f.ComfortHighC, u)
		oxygen := ""
		if f.OxygenMgL.Known {
			oxygen = number(f.OxygenMgL.Value) + " mg/L"
		}
		fmt.Fprintf(&b, "%-12s %-10s %13s %9s %9s %10s\n", f.Key, f.Kind, comfort, degree(f.UpperUseC, u), degree(f.OptimumC, u), oxygen)
	}
	b.WriteString("\n" + Wrap("comfort: where they are found most; limit: the warmest they use; best: of growth or of choice; oxygen: the least worth fishing. Sources: coldseam fish NAME.", "") + "\n")
	return b.String()
}

// degree prints a figure as a bare number on the scale, a dash where unknown.
func degree(f fish.Figure, u unit.System) string {
	if !f.Known {
		return "-"
	}
	s := u.Degrees(f.Value)
	return s[:strings.IndexByte(s, ' ')]
}

// Fish explains one fish, each figure with its source.
func Fish(f fish.Fish, u unit.System) string {
	u = u.Shown()
	var b strings.Builder
	fmt.Fprintf(&b, "%s (%s), %s\n\n", f.Name, f.Scientific, f.Kind)
	temps := []struct {
		name string
		f    fish.Figure
	}{{"comfortable from", f.ComfortLowC}, {"comfortable up to", f.ComfortHighC}, {"used up to", f.UpperUseC}, {"best", f.OptimumC}}
	for _, t := range temps {
		figure(&b, t.name, t.f, u.Degrees(t.f.Value))
	}
	figure(&b, "oxygen at least", f.OxygenMgL, number(f.OxygenMgL.Value)+" mg/L")
	if f.Note != "" {
		fmt.Fprintln(&b, "\n"+Wrap(f.Note, ""))
	}
	if f.Salmonid {
		fmt.Fprintln(&b, Wrap("In a top layer of "+u.Degrees(21.1)+" or more it is likely to die if released.", ""))
	}
	if !f.CanVent {
		fmt.Fprintln(&b, Wrap("It cannot let gas out of its swim bladder: do not fish for it deep to release it.", ""))
	}
	return b.String()
}

// figure prints one figure with its source, which is wrapped under itself.
func figure(b *strings.Builder, name string, f fish.Figure, value string) {
	if !f.Known {
		fmt.Fprintf(b, "  %-20s not known\n", name)
		return
	}
	const indent = 33
	source := strings.Split(Wrap(strings.Repeat("x", indent)+" "+f.Source, strings.Repeat(" ", indent)), "\n")
	source[0] = strings.TrimLeft(source[0], "x ")
	fmt.Fprintf(b, "  %-20s %-8s  %s\n", name, value, strings.Join(source, "\n"))
}
