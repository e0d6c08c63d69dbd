package batch

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
)

// FuzzBatch: no input makes the reader panic. One line of JSON comes out for each run
// of equal names, in order, and the same bytes for any number of workers and any size
// of a chunk. The runs are found here in the plainest way: every line by itself
// through encoding/csv.
func FuzzBatch(f *testing.F) {
	for _, s := range []string{
		"profile,depth_m,temp_c\na,0,20\na,1,20\na,2,15\nb,0,4\n",
		"\ufeffTEMP_C,x,profile,depth_m\r\n20,,a,0\r\n,,a,1\r\n\r\n,,,\r\n9,\"q\",a,2\r\n1e999,,b,0\r\n",
		"profile,depth_m,temp_c\n\"a \"\"x\"\",\",0,NaN\n\"a,0,20\na\"b,1,20\na,-1,20\na,1\n,1,2\n",
		"profile,depth_m,temp_c\na,0,20\na,0.01,21\na,1,0x10\nb,1e9,2\nc,1,-400\nd,2,\n\xff,1,2\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var first []byte
		for i, o := range []Options{{ErrC: 0.25, Workers: 1, Intervals: true}, {ErrC: 0.25, Workers: 4, Intervals: true}} {
			var out bytes.Buffer
			sum, err := run([]Input{text("in", data)}, &out, o, 1+i*2)
			if err != nil {
				if !errors.As(err, new(*InputError)) || out.Len() > 0 || strings.ContainsAny(err.Error(), "\n\r\x1b\x00") {
					t.Fatalf("%q with %q", err, out.String())
				}
				return
			}
			if i == 0 {
				first = out.Bytes()
				checkLines(t, data, first, sum)
			} else if !bytes.Equal(first, out.Bytes()) {
				t.Fatalf("one worker\n%s\nfour\n%s", first, out.Bytes())
			}
		}
		var out bytes.Buffer
		sum, err := Run([]Input{text("in", data)}, &out, Options{ErrC: 0.25})
		if err != nil {
			t.Fatal(err)
		}
		checkLines(t, data, out.Bytes(), sum)
	})
}

func checkLines(t *testing.T, data, out []byte, sum Summary) {
	t.Helper()
	var got []string
	problems := 0
	for _, line := range bytes.SplitAfter(out, []byte("\n")) {
		if len(line) == 0 {
			continue
		}
		var v struct {
			Profile   *string
			Problem   *string
			Structure *string
		}
		if err := json.Unmarshal(line, &v); err != nil || line[len(line)-1] != '\n' || v.Profile == nil || (v.Problem == nil) == (v.Structure == nil) {
			t.Fatalf("%v: line %q", err, line)
		}
		got = append(got, *v.Profile)
		if v.Problem != nil {
			problems++
		}
	}
	if sum.Columns != len(got) || sum.Problems != problems {
		t.Fatalf("%+v, %d lines, %d problems", sum, len(got), problems)
	}
	if want := runs(data); fmt.Sprintf("%q", got) != fmt.Sprintf("%q", want) {
		t.Fatalf("names %q\nwant %q\nof %q", got, want, data)
	}
}

// runs are the names of the runs of rows, as JSON gives them back.
func runs(data []byte) []string {
	var names, out []string
	at, unknown, last := -1, false, ""
	for i, line := range strings.Split(string(data), "\n") {
		if i == 0 {
			line = strings.TrimPrefix(line, "\ufeff")
		}
		r := csv.NewReader(strings.NewReader(line + "\n"))
		r.FieldsPerRecord = -1
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			continue
		}
		if names == nil {
			names = cells
			at = slices.IndexFunc(names, func(n string) bool { return strings.EqualFold(strings.TrimSpace(n), "profile") })
			continue
		}
		whole := err == nil && len(cells) == len(names)
		if whole && strings.Join(cells, "") == "" {
			continue
		}
		if !whole && !named(cells, at, err != nil, len(out) > 0, last) {
			unknown = true
			continue
		}
		if len(out) == 0 || cells[at] != last {
			last = cells[at]
			out = append(out, string([]rune(last)))
		}
	}
	if unknown && len(out) == 0 {
		out = append(out, "")
	}
	return out
}

// named reports whether the profile of a row that is not whole is known: before a wrong
// quote, where it stands first, or where it is that of the row before.
func named(cells []string, at int, quote, before bool, last string) bool {
	return at < len(cells) && cells[at] != "" && (quote || at == 0 || before && cells[at] == last)
}
