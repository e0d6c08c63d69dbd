package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile/expect"
)

var missing = expect.Missing

// shell runs a line of the shell in a folder, with coldseam on the path.
func shell(t *testing.T, dir, stdin, line string) (out, errOut string, err error) {
	t.Helper()
	for _, need := range []string{"sh", "coldseam"} {
		if _, err := exec.LookPath(need); err != nil {
			missing(t, "%s is not on the path", need)
		}
	}
	c := exec.Command("sh", "-c", line)
	var o, e bytes.Buffer
	c.Dir, c.Stdin, c.Stdout, c.Stderr = dir, strings.NewReader(stdin), &o, &e
	err = c.Run()
	return o.String(), e.String(), err
}

func lakeCSV(columns int, name string) string {
	var b strings.Builder
	b.WriteString("profile,depth_m,temp_c\n")
	for i := range columns {
		for z, temp := range []float64{22, 22, 21.5, 17, 13, 12.5} {
			fmt.Fprintf(&b, "%s %d,%d,%g\n", name, i, z, temp)
		}
	}
	return b.String()
}

// TestBatchReadme: the line of the README that takes an archive of many files works as
// it stands there.
func TestBatchReadme(t *testing.T) {
	if _, err := exec.LookPath("xargs"); err != nil {
		missing(t, "xargs is not on the path")
	}
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	var line string
	for l := range strings.Lines(string(readme)) {
		if strings.Contains(l, "xargs") && strings.HasPrefix(l, "    ") {
			line = strings.TrimSpace(l)
		}
	}
	if line == "" {
		t.Fatal("the README has no line with xargs")
	}
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "lakes"), 0o755); err != nil {
		t.Fatal(err)
	}
	var want []string
	for i, name := range []string{"a", "b", "c"} {
		file := name + " 'north' \"deep\"\n.csv" // as a file may be called
		if err := os.WriteFile(filepath.Join(dir, "lakes", file), []byte(lakeCSV(i+1, name)), 0o644); err != nil {
			t.Fatal(err)
		}
		for k := range i + 1 {
			want = append(want, fmt.Sprintf("%s %d", name, k))
		}
	}
	if out, errOut, err := shell(t, dir, "", line); err != nil || out != "" || errOut != "" {
		t.Fatalf("%s: %v, %s%s", line, err, out, errOut)
	}
	data, err := os.ReadFile(filepath.Join(dir, "layers.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for l := range strings.Lines(string(data)) {
		var v struct{ Profile, Structure string }
		if err := json.Unmarshal([]byte(l), &v); err != nil || v.Structure != "layered" {
			t.Errorf("%v: %s", err, l)
		}
		got = append(got, v.Profile)
	}
	if fmt.Sprint(got) != fmt.Sprint(want) {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestBatchHead: a reader that has had enough ends the run without a word, by the
// signal of a broken pipe.
func TestBatchHead(t *testing.T) {
	if _, err := exec.LookPath("head"); err != nil {
		missing(t, "head is not on the path")
	}
	out, errOut, _ := shell(t, t.TempDir(), lakeCSV(20000, "Alder Kettle"), "{ coldseam batch; echo $? >&2; } | head -n 1")
	if strings.Count(out, "\n") != 1 || !strings.HasPrefix(out, `{"profile":"Alder Kettle 0",`) || errOut != "141\n" {
		t.Errorf("%q, %q", out, errOut)
	}
}

// TestBatchPipe: an input that can be read once only is not read to check it first.
func TestBatchPipe(t *testing.T) {
	if _, err := os.Stat("/dev/stdin"); err != nil {
		missing(t, "there is no /dev/stdin")
	}
	out, errOut, err := shell(t, t.TempDir(), lakeCSV(2, "Alder Kettle"), "cat | coldseam batch /dev/stdin")
	if err != nil || strings.Count(out, "\n") != 2 || errOut != "" {
		t.Errorf("%v, %s%s", err, out, errOut)
	}
}

// TestBatchErrors: what is said of the thermometer and of the depths widens the
// intervals, in any unit, and moves no best value far.
func TestBatchErrors(t *testing.T) {
	csv := lakeCSV(1, "a")
	run := func(args ...string) (all string, bestM, widthM float64) {
		status, out, errOut := runWith(t, csv, append([]string{"batch"}, args...)...)
		var v struct {
			M struct{ Best, Low, High float64 } `json:"thermocline_m"`
		}
		if err := json.Unmarshal([]byte(out), &v); status != 0 || err != nil {
			t.Fatalf("%q: status %d, %v, %s", args, status, err, errOut)
		}
		return out, v.M.Best, v.M.High - v.M.Low
	}
	_, best, width := run()
	for _, flag := range []string{"--depth-error=0.5m", "--precision=1.5C"} {
		if _, b, w := run(flag); w < 1.1*width || b < best-0.5 || b > best+0.5 {
			t.Errorf("%s: %.3f m wide about %.3f; %.3f about %.3f without it", flag, w, b, width, best)
		}
	}
	for _, same := range [][2]string{{"--depth-error=0.3048m", "--depth-error=1ft"}, {"--precision=0.5C", "--precision=0.9F"}, {"--precision=0.25C", "--depth-error=0m"}} {
		a, _, _ := run(same[0])
		if b, _, _ := run(same[1]); a != b {
			t.Errorf("%s and %s differ:\n%s%s", same[0], same[1], a, b)
		}
	}
}
