package format

import (
	"strings"
	"testing"

	"coldseam/device/line"

	"github.com/google/go-cmp/cmp"
)

// A depth must never be joined with the temperature of another moment where the lines
// let it be told.
func TestBlocks(t *testing.T) {
	const dt = "D: depth m, T: temp C"
	for _, c := range []struct {
		name, layout, text string
		want               []Sample
	}{
		{"a fault spoils its block", dt, "D,4.2\nT,18.3\nD,NaN\nT,18.4\nD,4.4\nT,18.5\n", []Sample{at(4.2, 18.3), at(4.4, 18.5)}},
		{"a fault in the first block", dt, "D,NaN\nT,18.4\nD,4.4\nT,18.5\n", []Sample{at(4.4, 18.5)}},
		{"a lost line, the order being known", dt, "D,1\nT,18\nD,2\nD,3\nT,16\nT,15\nD,4\nT,14\n", []Sample{at(1, 18), at(3, 16), at(4, 14)}},
		{"joined in the middle, rules between", dt, "T,19\n---\nD,1\nT,18\n---\nD,2\nT,17\n", []Sample{at(1, 18), at(2, 17)}},
		{"joined in the middle, empty lines between", dt, "T,19\n\nD,1\nT,18\n\nD,2\nT,17\n\n", []Sample{at(1, 18), at(2, 17)}},
		{"a lost line, empty lines between", dt, "D,1\nT,18\n\nD,2\n\nD,3\nT,16\n\nD,4\nT,14\n", []Sample{at(1, 18), at(3, 16), at(4, 14)}},
		{"the other order", dt, "T,18\nD,1\n===\nT,17\nD,2\n", []Sample{at(1, 18), at(2, 17)}},
		{"an empty line behind every line", dt, "D,1\n\nT,18\n\nD,2\n\nT,17\n\nD,3\n\nT,16\n\nD,4\n\nT,15\n\n", []Sample{at(2, 17), at(3, 16), at(4, 15)}},
		{"names on lines of their own, spaced", "Depth: depth m, Temp: temp C", "Depth:\n\n1\nTemp:\n\n18\n", []Sample{at(1, 18)}},
		{"a name without its value", "Depth: depth m, Temp: temp C", "Depth:\nDepth:\n1\nTemp:\nready\n18\nTemp:\n17\n", []Sample{at(1, 17)}},
		{"a bare number that no name announced", "Depth: depth m, Temp: temp C", "7\nDepth:\n1\n2\nTemp:\n18\n", []Sample{at(1, 18)}},
		{"whole lines are not joined", "T: temp C, D: depth m", "T=18 D=1\nT=17\nD=3\nT=16 D=4\n", []Sample{at(1, 18), at(4, 16)}},
		{"half a line before a whole one", "T: temp C, D: depth m", "D=1\nT=17 D=2\n", []Sample{at(2, 17)}},
		{"half a line that lost a value", "T: temp C, D: depth m", "D= T=17\nD=2 T=16\n", []Sample{at(2, 16)}},
		{"other names between", dt, "D,1\nH,55\nT,18\n", []Sample{at(1, 18)}},
		{"time in the block", "ms: time ms, T: temp C", "ms=1000\nT=18\n", []Sample{warm(18).when(1)}},
	} {
		got, _ := readAll(New(parsed(t, c.layout), Options{}), c.text)
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("%s: %s", c.name, d)
		}
	}
}

func TestBlockCodes(t *testing.T) {
	r := New(parsed(t, "Depth: depth m, Temp: temp C"), Options{})
	for _, c := range []struct {
		text string
		code line.Code
	}{
		{"Depth:", line.Waiting}, {"4.2", line.Waiting}, {"Temp:", line.Waiting}, {"18.3", line.Fine},
		{"-----", line.Blank}, {"Depth: NaN", line.Sentinel}, {"Temp: 18.3", line.Sentinel},
		{"Depth: 4.3 m", line.Waiting}, {"Temp: 99", line.OutOfRange}, {"Depth: 4.3 m", line.Waiting}, {"Temp: 18.2 C", line.Fine},
	} {
		_, err := r.Line([]byte(c.text))
		if line.CodeOf(err) != c.code {
			t.Errorf("%s: %v (%v), want %v", c.text, line.CodeOf(err), err, c.code)
		}
		checkText(t, err)
	}
}

// 2^32 ms are 4 294 967.296 s.
func TestTime(t *testing.T) {
	for _, c := range []struct {
		layout, text string
		want         []float64 // -1: unknown
	}{
		{"time ms, temp C", "1000,18\n2500,18", []float64{1, 2.5}},
		{"time ms, temp C", "4294967000,18\n704,18\n1704,18", []float64{4294967, 4294968, 4294969}},
		{"time ms, temp C", "50000,18\n61000,18\n12,18\n1012,18", []float64{50, 61, 0.012, 1.012}},
		{"time ms, temp C", "4294967000,18\n704,18\n5704,18\n20,18", []float64{4294967, 4294968, 4294973, 0.02}},
		{"time us, temp C", "4294967000,18\n704,18", []float64{4294.967, 4294.968}},
		{"time s, temp C", "4294967,18\n0.704,18", []float64{4294967, 4294968}},
		{"time min, temp C", "1.5,18\n0,18", []float64{90, 0}},
		{"time ms, temp C", ",18\n2024-07-01 12:00:05,18\nERR,18\n7 s,18", []float64{-1, -1, -1, 7}},
	} {
		r := New(parsed(t, c.layout), Options{})
		for i, text := range strings.Split(c.text, "\n") {
			s, err := r.Line([]byte(text))
			got := s.TimeS.Or(-1)
			if err != nil || got < c.want[i]-1e-6 || got > c.want[i]+1e-6 {
				t.Errorf("%s, line %d: %v s, %v, want %v", c.text, i+1, got, err, c.want[i])
			}
		}
	}
	for _, text := range []string{"1x00,18", "-5,18", "7 m,18"} {
		if _, err := New(parsed(t, "time ms, temp C"), Options{}).Line([]byte(text)); err == nil {
			t.Errorf("%s: taken", text)
		}
	}
}
