package main

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"
)

// call is one call of the system that the program made, as strace saw it. From start to
// end others may have begun: both count lines of the trace.
type call struct {
	name, args string
	start, end int
}

var (
	wholeCall   = regexp.MustCompile(`^\d+ +(\w+)\((.*)$`)
	resumedCall = regexp.MustCompile(`^\d+ +<\.\.\. \w+ resumed>(.*)$`)
)

// trace reads what strace wrote.
func trace(t *testing.T, path string) []call {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var calls []call
	open := map[string]int{} // by thread, the call that goes on
	for n, line := range strings.Split(string(data), "\n") {
		thread, _, _ := strings.Cut(line, " ")
		if m := resumedCall.FindStringSubmatch(line); m != nil {
			if i, ok := open[thread]; ok {
				calls[i].args, calls[i].end = calls[i].args+m[1], n
			}
			continue
		}
		m := wholeCall.FindStringSubmatch(line)
		if m == nil {
			continue
		}
		open[thread] = len(calls)
		calls = append(calls, call{m[1], strings.TrimSuffix(m[2], " <unfinished ...>"), n, n})
	}
	return calls
}

// strace gives the command that runs the program under strace.
func strace(t *testing.T, log string, args ...string) *exec.Cmd {
	t.Helper()
	if out, err := exec.Command("strace", "-f", "-o", os.DevNull, "true").CombinedOutput(); err != nil {
		missing(t, "no strace here (%v %s)", err, out)
	}
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	args = append([]string{"-f", "-y", "-s", "400", "-o", log, "--seccomp-bpf", "-e",
		"trace=openat,write,fsync,fdatasync,rename,renameat,renameat2,link,linkat,mkdir,mkdirat", program}, args...)
	c := exec.Command("strace", args...)
	c.Env = append(os.Environ(), "COLDSEAM_TEST_PROGRAM=1")
	return c
}

// first gives the first call from some line on that is of a name and holds a text.
func first(calls []call, from int, name, text string) (call, bool) {
	for _, c := range calls {
		if c.start >= from && strings.HasPrefix(c.name, name) && strings.Contains(c.args, text) {
			return c, true
		}
	}
	return call{}, false
}

// then walks through calls, each of which must begin behind the end of the one before
// and end before the line limit.
func then(calls []call, from, limit int, steps ...[2]string) (failed string) {
	for _, s := range steps {
		c, ok := first(calls, from, s[0], s[1])
		if !ok || c.end >= limit {
			return fmt.Sprintf("%s of %s", s[0], s[1])
		}
		from = c.end + 1
	}
	return ""
}

// TestSavedOnDisk: what is saved is so by the system's own account. The text of a page is
// synced, then its name, and then its folder is synced, before the next prompt; so are
// the folders above a new book. The order within the program is TestSavedBeforePrompt's.
func TestSavedOnDisk(t *testing.T) {
	t.Parallel()
	above, log := t.TempDir(), filepath.Join(t.TempDir(), "trace")
	book := filepath.Join(above, "new", "book")
	cmd := strace(t, log, "drop", "--book", book, "--units", "ft F", "--bottom", "30ft")
	cmd.Stdin = strings.NewReader("74\n52\n63\n")
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	calls := trace(t, log)
	var prompts []call
	for _, c := range calls {
		if c.name == "write" && strings.HasPrefix(c.args, "2<") && strings.Contains(c.args, "Temperature at") {
			prompts = append(prompts, c)
		}
	}
	if len(prompts) != 4 {
		t.Fatalf("%d prompts", len(prompts))
	}
	if s := then(calls, 0, prompts[0].start, [2]string{"mkdir", above + "/new\""}, [2]string{"fsync", "<" + above + ">"},
		[2]string{"mkdir", book + "\""}, [2]string{"fsync", "<" + above + "/new>"}); s != "" {
		t.Errorf("before the first prompt there is no %s", s)
	}
	for i := range 3 {
		written, ok := first(calls, prompts[i].end, "write", ".txt.part>")
		if !ok {
			t.Fatalf("no page was written after prompt %d", i)
		}
		name := "rename"
		if i == 0 {
			name = "link"
		}
		if s := then(calls, written.end+1, prompts[i+1].start, [2]string{"fsync", ".txt.part>"}, [2]string{name, ".txt\""}, [2]string{"fsync", "<" + book + ">"}); s != "" {
			t.Errorf("reading %d: before the next prompt there is no %s", i+1, s)
		}
	}
}

// TestLogOnDisk: what the probe said is synced with each reading, and its name too.
func TestLogOnDisk(t *testing.T) {
	t.Parallel()
	book, log := t.TempDir(), filepath.Join(t.TempDir(), "trace")
	cmd := strace(t, log, "probe", "rehearse", "--depth", "--speed", "100", "--book", book)
	in, errOut := pipes(t, cmd)
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	kill := time.AfterFunc(2*time.Minute, func() { cmd.Process.Kill() })
	defer kill.Stop()
	var said bytes.Buffer
	stopped := false
	for r := bufio.NewReader(errOut); ; {
		line, err := r.ReadString('\n')
		said.WriteString(line)
		if !stopped && strings.Count(said.String(), "< new") == 2 && strings.Contains(line, "hold it there") {
			stopped = true
			io.WriteString(in, "stop\n")
		}
		if err != nil {
			break
		}
	}
	if err := cmd.Wait(); err != nil || !stopped {
		t.Fatalf("%v: %s", err, said.String())
	}
	calls, from := trace(t, log), 0
	for i := range 2 {
		shown, ok := first(calls, from, "write", "< new")
		asked, okToo := first(calls, shown.end, "write", "hold it there")
		if !ok || !okToo {
			t.Fatalf("no reading %d in the trace", i+1)
		}
		steps := [][2]string{{"fsync", ".probe>"}}
		if i == 0 {
			steps = [][2]string{{"openat", ".probe\""}, {"write", ".probe>"}, {"fsync", ".probe>"}, {"fsync", "<" + book + ">"}}
		}
		if s := then(calls, from, asked.start, steps...); s != "" {
			t.Errorf("reading %d: before the next prompt there is no %s", i+1, s)
		}
		from = asked.end
	}
}
