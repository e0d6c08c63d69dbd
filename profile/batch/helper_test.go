package batch

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"
)

// text is an input of a text.
func text(name string, data []byte) Input {
	return Input{name, func() (io.ReadCloser, error) { return io.NopCloser(bytes.NewReader(data)), nil }}
}

// answer runs over a text, and gives its lines.
func answer(t *testing.T, data string, o Options) (Summary, []string) {
	t.Helper()
	var out bytes.Buffer
	sum, err := Run([]Input{text("in", []byte(data))}, &out, o)
	if err != nil {
		t.Fatalf("%v\n%s", err, data)
	}
	return sum, lines(out.String())
}

func lines(s string) []string {
	return strings.Split(strings.TrimSuffix(s, "\n"), "\n")
}

// manyColumns makes columns of 14 rows, each with a thermocline at another depth.
func manyColumns(n int) []byte {
	var b bytes.Buffer
	b.WriteString("profile,date,depth_m,temp_c,oxygen_mgl\n")
	for i := range n {
		for z := range 14 {
			fmt.Fprintf(&b, "Alder Kettle %d,2026-07-18,%d,%.1f,8.5\n", i, z, 15-8*math.Tanh(float64(z)-4-float64(i%50)/10))
		}
	}
	return b.Bytes()
}
