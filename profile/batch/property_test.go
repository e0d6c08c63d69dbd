package batch

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/internal/measured"
	"coldseam/profile/layers"
	"coldseam/profile/report"
)

// alone is the line of one column as the rest of the program makes it.
func alone(t rapid.TB, name string, points []profile.Point, intervals bool) string {
	t.Helper()
	column, err := profile.NewColumn(points)
	if err != nil {
		t.Fatal(err)
	}
	found := layers.Find(column, layers.WithoutIntervals)
	if intervals {
		found = layers.Find(column)
	}
	data, err := json.Marshal(struct {
		Profile string `json:"profile"`
		report.LayersJSON
	}{name, report.Layers(found)})
	if err != nil {
		t.Fatal(err)
	}
	if intervals {
		return string(data)
	}
	var v map[string]any
	if err := json.Unmarshal(data, &v); err != nil {
		t.Fatal(err)
	}
	for _, key := range v {
		if estimate, ok := key.(map[string]any); ok {
			delete(estimate, "low")
			delete(estimate, "high")
		}
	}
	data, err = json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// same compares a line with that of the column alone: the same bytes, or the same
// JSON where intervals were taken out.
func same(t rapid.TB, line, want string, intervals bool) {
	t.Helper()
	if intervals {
		if line != want {
			t.Errorf("got  %s\nwant %s", line, want)
		}
		return
	}
	var a, b any
	if json.Unmarshal([]byte(line), &a) != nil || json.Unmarshal([]byte(want), &b) != nil {
		t.Fatalf("no JSON: %s", line)
	}
	if diff := cmp.Diff(b, a); diff != "" {
		t.Errorf("(-want +got): %s", diff)
	}
}

// Columns of any shape give what each gives alone, whatever the number of workers and
// the size of a chunk.
func TestAsAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := Options{
			ErrC: rapid.Float64Range(0, 1).Draw(t, "errC"), ErrM: rapid.Float64Range(0, 0.5).Draw(t, "errM"),
			Intervals: rapid.Bool().Draw(t, "intervals"), Workers: rapid.IntRange(1, 5).Draw(t, "workers"),
		}
		var in strings.Builder
		in.WriteString("profile,depth_m,temp_c\n")
		var want []string
		for i := range rapid.IntRange(1, 20).Draw(t, "columns") {
			name := fmt.Sprintf("Alder Kettle %d", i)
			var points []profile.Point
			for range rapid.IntRange(1, 30).Draw(t, "rows") {
				p := profile.Point{
					DepthM: float64(rapid.IntRange(0, 300).Draw(t, "depth")) / 10, TempC: float64(rapid.IntRange(-20, 300).Draw(t, "temp")) / 10,
					ErrC: o.ErrC, ErrM: o.ErrM,
				}
				points = append(points, p)
				fmt.Fprintf(&in, "%s,%g,%g\n", name, p.DepthM, p.TempC)
			}
			want = append(want, alone(t, name, points, o.Intervals))
		}
		var out bytes.Buffer
		if _, err := run([]Input{text("in", []byte(in.String()))}, &out, o, rapid.IntRange(1, 8).Draw(t, "full")); err != nil {
			t.Fatal(err)
		}
		got := lines(out.String())
		if len(got) != len(want) {
			t.Fatalf("%d lines of %d columns", len(got), len(want))
		}
		for i := range got {
			same(t, got[i], want[i], o.Intervals)
		}
	})
}

// The measured columns beside this module, each as it is alone.
func TestMeasured(t *testing.T) {
	for _, file := range []string{"nla_marked", "nla_unmarked", "cascade_dense", "virginia", "cascade_cases"} {
		t.Run(file, func(t *testing.T) {
			t.Parallel()
			data, err := os.ReadFile(measured.Path(t, file+".csv"))
			if err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			for _, intervals := range []bool{true, false} {
				eachAlone(t, data, rows, intervals)
			}
		})
	}
}

// eachAlone runs over a file, whose rows are given as well, and compares each line with
// that of its column alone.
func eachAlone(t *testing.T, data []byte, rows [][]string, intervals bool) {
	t.Helper()
	sum, got := answer(t, string(data), Options{ErrC: 0.25, Intervals: intervals})
	if sum.Columns != len(got) || sum.Problems > 0 {
		t.Fatalf("%+v, %d lines", sum, len(got))
	}
	n, from := 0, 1
	for from < len(rows) {
		var points []profile.Point
		to := from
		for ; to < len(rows) && rows[to][0] == rows[from][0]; to++ {
			if rows[to][3] == "" {
				continue
			}
			z, errZ := strconv.ParseFloat(rows[to][2], 64)
			temp, errT := strconv.ParseFloat(rows[to][3], 64)
			if errZ != nil || errT != nil {
				t.Fatal(to, errZ, errT)
			}
			points = append(points, profile.Point{DepthM: z, TempC: temp, ErrC: 0.25})
		}
		same(t, got[n], alone(t, rows[from][0], points, intervals), intervals)
		n, from = n+1, to
	}
	if n != len(got) {
		t.Errorf("%d lines of %d columns", len(got), n)
	}
}
