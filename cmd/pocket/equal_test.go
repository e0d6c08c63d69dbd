package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile/demo"
	"coldseam/profile/expect"
)

// The program of the page computes what the terminal computes, to the byte: the same pages
// through the code as compiled for the browser, run by the toolchain's runner, and through
// the terminal's own command.
func TestSameAnswers(t *testing.T) {
	if testing.Short() {
		t.Skip("nothing is compiled for the browser in a short run")
	}
	node, err := exec.LookPath("node")
	if err != nil {
		expect.Missing(t, "no node to run what is compiled for the browser")
	}
	pages := allPages(t)
	page := answersOf(t, node, pages)
	terminal := filepath.Join(t.TempDir(), "coldseam")
	build(t, terminal, nil, "coldseam/cmd/coldseam")
	home := t.TempDir()
	plans := 0
	for i, text := range pages {
		file := filepath.Join(home, "page")
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(terminal, "plan", "--json", "page")
		cmd.Dir, cmd.Env = home, []string{"HOME=" + home}
		var out, wrong bytes.Buffer
		cmd.Stdout, cmd.Stderr = &out, &wrong
		want := ""
		if err := cmd.Run(); err == nil {
			want = out.String()
			plans++
		}
		got := page[i]
		if strings.HasPrefix(got, "no plan: ") {
			got = ""
		}
		if got != want {
			t.Errorf("page %d:\n%s\nin the browser: %s\nin a terminal:  %s%s", i, text, around(page[i], want), around(want, page[i]), wrong.String())
		}
	}
	if plans < len(pages)*2/3 {
		t.Errorf("of %d pages only %d have a plan", len(pages), plans)
	}
	t.Logf("%d pages, %d with a plan", len(pages), plans)
}

// around is where a text first differs from another.
func around(a, b string) string {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	return fmt.Sprintf("...%q...", a[max(0, min(i-60, len(a))):min(len(a), i+40)])
}

// answersOf runs pages through the code compiled for the browser.
func answersOf(t *testing.T, node string, pages []string) (out []string) {
	program := filepath.Join(t.TempDir(), "answers.wasm")
	build(t, program, []string{"GOOS=js", "GOARCH=wasm"}, "./testdata/answers")
	in, err := json.Marshal(pages)
	if err != nil {
		t.Fatal(err)
	}
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	run := exec.Command(node, filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js"), program)
	run.Stdin, run.Stderr = bytes.NewReader(in), os.Stderr
	run.Env = []string{"PATH=" + os.Getenv("PATH")} // the arguments and these must fit a small page of memory
	said, err := run.Output()
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(said, &out); err != nil || len(out) != len(pages) {
		t.Fatalf("%v: %d answers to %d pages", err, len(out), len(pages))
	}
	return out
}

// build compiles a program with the flags of the page's.
func build(t testing.TB, to string, env []string, pkg string) {
	t.Helper()
	cmd := exec.Command("go", "build", "-o", to, pkg)
	cmd.Env = append(os.Environ(), env...)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%s: %v\n%s", pkg, err, out)
	}
}

// allPages are the demo pages, those of the tests, and 220 made up.
func allPages(t *testing.T) (pages []string) {
	for _, file := range demo.Pages(t) {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		pages = append(pages, string(text))
	}
	rng := rand.New(rand.NewPCG(16, 11))
	for range 220 {
		pages = append(pages, madeUp(rng))
	}
	return pages
}

// madeUp is a page as somebody might write one: a lake in some season, feet or metres, with
// noise, gaps, and now and then oxygen, a bottom, a wind, a fish or an odd reading.
func madeUp(rng *rand.Rand) string {
	var b strings.Builder
	feet := rng.IntN(2) == 0
	maybe := func(share float64, format string, args ...any) {
		if rng.Float64() < share {
			fmt.Fprintf(&b, format+"\n", args...)
		}
	}
	deep := 3 + 25*rng.Float64()
	long, short := 1.0, "m"
	if feet {
		long, short = 0.3048, "ft"
	}
	maybe(1, "units: %s %s", short, map[bool]string{true: "F", false: "C"}[feet])
	maybe(0.7, "water: %s", []string{"Alder Kettle", "Sedge Mere", "Marl Hole"}[rng.IntN(3)])
	maybe(0.7, "date: 2026-%02d-%02d %02d:30", 1+rng.IntN(12), 1+rng.IntN(28), rng.IntN(24))
	maybe(0.8, "bottom: %.1f %s", deep/long, short)
	maybe(0.6, "for: %s", []string{"rainbow", "perch", "lake trout", "bluegill", "pike"}[rng.IntN(5)])
	maybe(0.3, "secchi: %.1f m", 0.5+6*rng.Float64())
	maybe(0.3, "wind: %d mph %s", 1+rng.IntN(20), []string{"N", "SW", "E"}[rng.IntN(3)])
	maybe(0.2, "line angle: %d", 5+rng.IntN(30))
	maybe(0.2, "fly weight: %.2f g", 0.1+rng.Float64())
	maybe(0.2, "altitude: %d m", rng.IntN(2500))
	maybe(0.2, "clarity: clear")
	top, low, at, thick := 2+24*rng.Float64(), 4+3*rng.Float64(), deep*(0.2+0.6*rng.Float64()), 0.3+2*rng.Float64()
	step := (0.5 + 1.5*rng.Float64()) / long
	for d := 0.0; d*long <= deep; d += math.Max(1, math.Round(step)) {
		c := low + (top-low)/(1+math.Exp((d*long-at)/thick)) + 0.1*rng.NormFloat64()
		if rng.Float64() < 0.02 {
			c += 8
		}
		value := c
		if feet {
			value = 32 + 1.8*c
		}
		fmt.Fprintf(&b, "%g %.1f", d, value)
		maybe(0.15, " DO %.1f", math.Max(0, 9-9*d*long/deep))
		b.WriteString("\n")
	}
	return b.String()
}
