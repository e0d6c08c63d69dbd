package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
	"coldseam/profile/unit"
)

// order records what is done to the disk and what is printed, in one list.
type order struct {
	book.System
	steps []string
}

type orderedFile struct {
	book.File
	o *order
}

func (o *order) Create(path string, mode fs.FileMode) (book.File, error) {
	f, err := o.System.Create(path, mode)
	return orderedFile{f, o}, err
}
func (f orderedFile) Write(b []byte) (int, error) {
	f.o.steps = append(f.o.steps, fmt.Sprintf("write %d", len(readings(string(b)))))
	return f.File.Write(b)
}
func (f orderedFile) Sync() error { f.o.steps = append(f.o.steps, "sync"); return f.File.Sync() }
func (o *order) Move(a, b string) error {
	o.steps = append(o.steps, "name")
	return o.System.Move(a, b)
}
func (o *order) Rename(a, b string) error {
	o.steps = append(o.steps, "name")
	return o.System.Rename(a, b)
}
func (o *order) SyncFolder(path string) error {
	o.steps = append(o.steps, "sync folder")
	return o.System.SyncFolder(path)
}

// Write is standard error: prompts are recorded.
func (o *order) Write(b []byte) (int, error) {
	if bytes.Contains(b, []byte("Temperature at")) {
		o.steps = append(o.steps, "prompt")
	}
	return len(b), nil
}

// TestSavedBeforePrompt: write, sync, name, sync of the folder, and only then the
// next prompt. A killed process does not prove this, since the system keeps what was
// written without a sync.
func TestSavedBeforePrompt(t *testing.T) {
	noSettings(t)
	o := &order{}
	p := &program{in: strings.NewReader("74\n52\n63\n"), stdout: io.Discard, err: o, disk: o, now: fixedNow}
	if status := p.run([]string{"coldseam", "drop", "--book", t.TempDir(), "--units", "ft F", "--bottom", "30ft"}); status != 0 {
		t.Fatalf("status %d", status)
	}
	want := "prompt"
	for i := 1; i <= 3; i++ {
		want += fmt.Sprintf(", write %d, sync, name, sync folder, prompt", i)
	}
	want += ", write 3, sync, name, sync folder" // ended
	if got := strings.Join(o.steps, ", "); got != want {
		t.Errorf("order: %s\nwant:  %s", got, want)
	}
}

// full is a disk that has room for some pages, and then has none for some.
type full struct {
	book.System
	left, then int
}

func (f *full) Create(path string, mode fs.FileMode) (book.File, error) {
	if f.left--; f.left < 0 && f.then > 0 {
		f.then--
		return nil, &fs.PathError{Op: "create", Path: path, Err: errors.New("no space left on device")}
	}
	return f.System.Create(path, mode)
}

// TestDiskFull: what could not be saved is printed, and what was saved stays.
func TestDiskFull(t *testing.T) {
	noSettings(t)
	dir := t.TempDir()
	var o, e bytes.Buffer
	p := &program{in: strings.NewReader("74\n52\n63\n"), stdout: &o, err: &e, disk: &full{left: 1, then: 99}, now: fixedNow}
	if status := p.run([]string{"coldseam", "drop", "--book", dir, "--units", "ft F", "--bottom", "30ft"}); status != 1 || o.Len() > 0 {
		t.Errorf("status %d, %s", status, o.String())
	}
	if got := readings(e.String()); !slices.Equal(got, []string{"1 ft: 74 F", "29 ft: 52 F"}) || !strings.Contains(e.String(), "could not be saved: no space left") {
		t.Errorf("printed %q: %s", got, e.String())
	}
	if got := readings(pageIn(t, dir)); !slices.Equal(got, []string{"1 ft: 74 F"}) {
		t.Errorf("saved %q", got)
	}
}

// TestKilled kills drops at random moments: whatever was taken before the last
// prompt is in the page, the page reads back, and the drop is offered again.
func TestKilled(t *testing.T) {
	t.Parallel()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	runs := 200
	if testing.Short() {
		runs = 40
	}
	var cut, taken atomic.Int64
	const side = 4 // by side: most of the time is the disk's
	t.Run("by side", func(t *testing.T) {
		for n := range side {
			t.Run(strconv.Itoa(n), func(t *testing.T) {
				t.Parallel()
				random := rand.New(rand.NewPCG(1, uint64(n)))
				for range runs / side {
					if readings, ok := killed(t, program, random); ok {
						cut.Add(1)
						taken.Add(int64(readings))
					}
				}
			})
		}
	})
	t.Logf("%d drops were cut off with a page, %d readings in all", cut.Load(), taken.Load())
	if cut.Load() < int64(runs*3/4) {
		t.Errorf("only %d of %d drops had begun: the moments prove nothing", cut.Load(), runs)
	}
}

// killed kills one drop, and looks at its page; ok is false where it had none yet.
func killed(t *testing.T, program string, random *rand.Rand) (taken int, ok bool) {
	t.Helper()
	dir := t.TempDir()
	cmd := exec.Command(program, "drop", "--book", dir, "--units", "ft F", "--bottom", "60ft")
	cmd.Env = append(os.Environ(), "COLDSEAM_TEST_PROGRAM=1", "XDG_CONFIG_HOME="+dir)
	in, errOut := pipes(t, cmd)
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	go func() {
		for i := range 15 {
			fmt.Fprintf(in, "%d %.1f\n", i+1, 74-float64(i)/2)
		}
	}()
	// the moment: some time behind one of the prompts
	after, wait := random.IntN(13), time.Duration(random.IntN(3000))*time.Microsecond
	said, killed := "", false
	for buf := make([]byte, 4096); ; {
		n, err := errOut.Read(buf)
		said += string(buf[:n])
		if !killed && asked(said) > after {
			killed = true
			time.Sleep(wait)
			cmd.Process.Kill()
		}
		if err != nil {
			break
		}
	}
	cmd.Wait()
	prompts := asked(said)
	names, _ := filepath.Glob(filepath.Join(dir, "*.txt"))
	if len(names) == 0 {
		if prompts > 1 {
			t.Fatalf("%d prompts and no page", prompts)
		}
		return 0, false
	}
	page := pageIn(t, dir)
	sheets, err := notebook.Read([]byte(page), notebook.Options{})
	if err != nil {
		t.Fatalf("%v\n%s", err, page)
	}
	got := sheets[0].Drop.Readings
	if len(got) < prompts-1 || len(got) > 15 {
		t.Fatalf("%d prompts, and %d readings in the page", prompts, len(got))
	}
	for i, r := range got {
		if r.Depth != float64(i+1) || r.Temp != 74-float64(i)/2 {
			t.Fatalf("reading %d is %v at %v", i, r.Temp, r.Depth)
		}
	}
	if strings.Contains(page, "not ended") {
		_, _, errOut := dropWith(t, dir, "1\nstop\n")
		if want := unit.Count(len(got), "reading"); !strings.Contains(errOut, want) || strings.Contains(pageIn(t, dir), "not ended") {
			t.Fatalf("not offered with %s: %s", want, errOut)
		}
	}
	return len(got), true
}

// TestCtrlC: the drop says in one line where it is, with another status than a plan's,
// and is offered again; no reading is lost.
func TestCtrlC(t *testing.T) {
	t.Parallel()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	for _, readings := range []int{0, 2} {
		dir := t.TempDir()
		cmd := exec.Command(program, "drop", "--book", dir, "--units", "ft F", "--bottom", "60ft")
		cmd.Env = append(os.Environ(), "COLDSEAM_TEST_PROGRAM=1", "XDG_CONFIG_HOME="+dir)
		in, errOut := pipes(t, cmd)
		var out bytes.Buffer
		cmd.Stdout = &out
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		kill := time.AfterFunc(time.Minute, func() { cmd.Process.Kill() })
		defer kill.Stop()
		for i := range readings {
			fmt.Fprintf(in, "%d %d\n", i+1, 74-i)
		}
		said, sent := "", false
		for buf := make([]byte, 4096); ; {
			n, err := errOut.Read(buf)
			said += string(buf[:n])
			if !sent && asked(said) == readings+1 {
				sent = true
				cmd.Process.Signal(os.Interrupt)
			}
			if err != nil {
				break
			}
		}
		cmd.Wait()
		lines := strings.Split(strings.TrimSpace(said), "\n")
		last := lines[len(lines)-1]
		if cmd.ProcessState.ExitCode() != 1 || out.Len() > 0 {
			t.Errorf("%d readings: status %d, %s", readings, cmd.ProcessState.ExitCode(), out.String())
		}
		if readings == 0 {
			if last != "coldseam: interrupted before the first reading: nothing was saved" {
				t.Errorf("says %q", last)
			}
			continue
		}
		if !strings.HasPrefix(last, "coldseam: interrupted: 2 readings saved in "+dir) {
			t.Errorf("says %q", last)
		}
		if _, _, errOut := dropWith(t, dir, "1\nstop\n"); !strings.Contains(errOut, "2 readings") {
			t.Errorf("not offered again: %s", errOut)
		}
	}
}

// asked counts the prompts for a reading.
func asked(said string) int {
	return strings.Count(said, "Temperature at") + strings.Count(said, "Enter ends the drop")
}

// pipes gives the ends of what a program will read and of what it will say.
func pipes(t *testing.T, cmd *exec.Cmd) (in io.WriteCloser, errOut io.ReadCloser) {
	t.Helper()
	in, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	errOut, err = cmd.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	return in, errOut
}
