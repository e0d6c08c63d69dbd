package main

import (
	"fmt"
	"io"

	"coldseam/device/format"
	"coldseam/device/line"
	"coldseam/device/probe"
	"coldseam/profile"
	"coldseam/profile/plain"
)

// longestRaw is how much of a raw line is shown.
const longestRaw = 60

// explainer shows lines and how they are read. Lines that come before it is known what
// they hold wait for it.
type explainer struct {
	out, err io.Writer
	k        *probe.Decoder
	first    [][]byte
}

func (e *explainer) line(b []byte) {
	if e.k.Layout != nil {
		e.show(b)
		return
	}
	e.first = append(e.first, append([]byte(nil), b...))
	f := e.k.Find(e.first)
	if !f.Known && len(e.first) < probe.AskAfter {
		return
	}
	e.useLayout(f)
}

// useLayout goes on with what was found in the first lines, or with the first of what
// they may hold.
func (e *explainer) useLayout(f format.Found) {
	switch {
	case f.Known:
		fmt.Fprintf(e.err, "Lines are read as: %s.\n", f.Layout)
	case len(f.Choices) > 0:
		f.Layout = f.Choices[0]
		fmt.Fprintf(e.err, "What the lines hold is not settled: %s. Shown here as: %s. It could also be:\n", plain.Line(f.Why), f.Layout)
		for _, l := range f.Choices[1:] {
			fmt.Fprintf(e.err, "   --layout \"%s\"\n", l)
		}
	default:
		fmt.Fprintf(e.err, "What the lines hold is not known: %s. Tell it with --layout, e.g. --layout \"depth m, temp C\".\n", plain.Line(f.Why))
	}
	e.k.Use(f.Layout)
	first := e.first
	e.first = nil
	for _, b := range first {
		e.show(b)
	}
}

func (e *explainer) show(b []byte) {
	s, err := e.k.Read(b)
	if e.out == nil { // only counted
		return
	}
	fmt.Fprintf(e.out, "%-32s  %s\n", plain.Cut(string(b), longestRaw), e.meaning(s, err))
}

// end shows what is still waiting.
func (e *explainer) end() {
	if len(e.first) > 0 {
		e.useLayout(e.k.Find(e.first))
	}
}

// meaning says how a line was read, or why not.
func (e *explainer) meaning(s format.Sample, err error) string {
	switch code := line.CodeOf(err); {
	case code == line.Fine:
	case probe.Aside(code):
		return "- " + err.Error()
	default:
		return "refused, " + code.String() + ": " + err.Error()
	}
	text := ""
	add := func(o profile.Optional, format string) {
		if o.Known {
			if text != "" {
				text += ", "
			}
			text += fmt.Sprintf(format, o.Value)
		}
	}
	add(s.DepthM, "depth %.3f m")
	add(s.TempC, "%.3f C")
	add(s.BottomM, "bottom under the boat %.2f m (a sounder's)")
	add(s.SurfaceC, "surface %.2f C (the boat's)")
	if s.WrongChecksum {
		text += ", though its checksum is wrong"
	}
	return text
}
