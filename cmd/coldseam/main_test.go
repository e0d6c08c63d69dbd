package main

import (
	"bytes"
	"errors"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/urfave/cli/v2"

	"coldseam/profile/settings"
)

func TestMain(m *testing.M) {
	if os.Getenv("COLDSEAM_TEST_PROGRAM") != "" { // a test runs this binary as the program
		main()
		return
	}
	testscript.Main(unsettled{m}, map[string]func(){"coldseam": main})
}

// unsettled runs the tests without the settings and the book of the machine's user, for all of them
// at once: a test that changes the environment could not run beside others.
type unsettled struct{ *testing.M }

func (m unsettled) Run() int {
	dir, err := os.MkdirTemp("", "coldseam")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	os.Setenv("XDG_CONFIG_HOME", dir)
	os.Setenv("XDG_DATA_HOME", dir)
	cli.HelpFlag, cli.VersionFlag = ownFlag{cli.HelpFlag.(*cli.BoolFlag)}, ownFlag{cli.VersionFlag.(*cli.BoolFlag)}
	flag.Set("test.parallel", "8") // they mostly wait: for a disk, for a probe
	return m.M.Run()
}

// ownFlag is a flag that the library shares between programs, and writes to in each: in
// one process, side by side, each needs its own.
type ownFlag struct{ *cli.BoolFlag }

func (f ownFlag) Apply(set *flag.FlagSet) error {
	own := *f.BoolFlag
	return own.Apply(set)
}

// TestCommands runs the scripts of testdata: each types commands as a user does and
// states what comes out. No settings of the machine's user are read.
func TestCommands(t *testing.T) {
	t.Parallel()
	pages, err := filepath.Abs("../../testdata")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			// binary FILE writes bytes that are no text.
			"binary": func(ts *testscript.TestScript, _ bool, args []string) {
				ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte{0x7f, 'E', 'L', 'F', 0, 1, 2, 3, 0, 0, 0xfe}, 0o644))
			},
		},
		Setup: func(env *testscript.Env) error {
			env.Setenv("XDG_CONFIG_HOME", filepath.Join(env.WorkDir, "config"))
			env.Setenv("XDG_DATA_HOME", filepath.Join(env.WorkDir, "data"))
			env.Setenv("PAGES", pages)
			return nil
		},
	})
}

// runWith runs the program on a text as standard input.
func runWith(t *testing.T, stdin string, args ...string) (status int, out, errOut string) {
	t.Helper()
	var o, e bytes.Buffer
	status = run(append([]string{"coldseam"}, args...), strings.NewReader(stdin), &o, &e)
	return status, o.String(), e.String()
}

// noSettings makes sure that a test reads no settings.
func noSettings(t *testing.T) {
	t.Helper()
	path, err := settings.Path()
	if err == nil {
		_, err = os.Stat(path)
	}
	if !errors.Is(err, fs.ErrNotExist) {
		t.Fatalf("%s: %v", path, err)
	}
}

// TestReadmeExample: the page printed in the README is what its first command
// prints, to the byte, and the settings shown there are read.
func TestReadmeExample(t *testing.T) {
	noSettings(t)
	data, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	readme := string(data)
	const command = "    go run ./cmd/coldseam plan testdata/alder-kettle-july.txt\n"
	if !strings.Contains(readme, command) {
		t.Fatalf("the README lacks its command %q", command)
	}
	status, out, errOut := runWith(t, "", "plan", "../../testdata/alder-kettle-july.txt")
	if status != 0 {
		t.Fatalf("status %d: %s", status, errOut)
	}
	shown := ""
	for _, line := range strings.Split(strings.TrimRight(out, "\n"), "\n") {
		shown += strings.TrimRight("    "+line, " ") + "\n"
	}
	if !strings.Contains(readme, "\n\n"+shown+"\n") {
		t.Errorf("the README does not show, whole,\n%s", shown)
	}
	_, after, _ := strings.Cut(readme, "```toml\n")
	toml, _, _ := strings.Cut(after, "```")
	dir := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", dir)
	if err := os.MkdirAll(filepath.Join(dir, "coldseam"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "coldseam", "settings.toml"), []byte(toml), 0o644); err != nil {
		t.Fatal(err)
	}
	status, out, errOut = runWith(t, "", "plan", "../../testdata/alder-kettle-july.txt")
	if status != 0 || !strings.Contains(out, "This water allows no leader over") {
		t.Errorf("the README's settings give status %d, %s%s", status, errOut, out)
	}
}

// TestPlainOutput: every demo page gives lines of at most 80 columns, no control
// characters, and the same bytes each time.
func TestPlainOutput(t *testing.T) {
	noSettings(t)
	pages, err := filepath.Glob("../../testdata/*.txt")
	if err != nil || len(pages) < 4 {
		t.Fatalf("demo pages: %v, %v", pages, err)
	}
	for _, page := range pages {
		status, out, errOut := runWith(t, "", "plan", "--full", page)
		if status != 0 || errOut != "" {
			t.Errorf("%s: status %d, %s", page, status, errOut)
		}
		for _, line := range strings.Split(out, "\n") {
			if n := len([]rune(line)); n > 80 {
				t.Errorf("%s: %d columns: %s", page, n, line)
			}
			if strings.ContainsFunc(line, func(r rune) bool { return r < ' ' }) {
				t.Errorf("%s: a control character in %q", page, line)
			}
		}
		if _, again, _ := runWith(t, "", "plan", "--full", page); again != out {
			t.Errorf("%s: two runs differ", page)
		}
	}
}

// TestControlCharacters: what an angler's file holds is never sent to the terminal
// raw.
func TestControlCharacters(t *testing.T) {
	noSettings(t)
	_, out, _ := runWith(t, "water: A\x1b[31mB\nspot: \u202eX\nunits: ft F\n0 74\n5 73\n10 60\n", "plan")
	if strings.ContainsAny(out, "\x1b\u202e") {
		t.Errorf("a control character came through: %q", out)
	}
	status, _, errOut := runWith(t, "units: ft F\n0 74\n5 \x1b[2J73\n", "plan")
	if status != 2 || strings.Contains(errOut, "\x1b") {
		t.Errorf("status %d, %q", status, errOut)
	}
}

// TestAsk: at a terminal a page with two meanings is asked about, and the answer is
// echoed.
func TestAsk(t *testing.T) {
	noSettings(t)
	page := filepath.Join(t.TempDir(), "page.txt")
	if err := os.WriteFile(page, []byte("0 39\n5 38\n10 37.5\n15 37\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	var prompts bytes.Buffer
	p := &program{in: strings.NewReader("what\n9\n1\n1\n"), err: &prompts, terminal: true}
	if err := p.main([]string{"coldseam", "plan", page}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"The depths' unit is not stated", "1  feet", "1  Fahrenheit", "Number, then Enter: "} {
		if !strings.Contains(prompts.String(), want) {
			t.Errorf("no %q in %q", want, prompts.String())
		}
	}
	if !strings.Contains(p.out.String(), "Fahrenheit, as you said") {
		t.Errorf("the answer is not echoed:\n%s", p.out.String())
	}
	p = &program{in: strings.NewReader(""), err: &prompts, terminal: true}
	if err := p.main([]string{"coldseam", "plan", page}); err == nil {
		t.Error("an unanswered question gave a plan")
	}
}

// brokenPipe is an output that nobody reads.
type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) { return 0, os.ErrClosed }

func TestOutputLost(t *testing.T) {
	noSettings(t)
	var e bytes.Buffer
	if status := run([]string{"coldseam", "fish"}, strings.NewReader(""), brokenPipe{}, &e); status != 1 {
		t.Errorf("status %d, want %d", status, 1)
	}
}
