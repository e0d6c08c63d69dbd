package main

import (
	"bufio"
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"coldseam/profile/expect"
)

// fakeProbe is a probe that states its temperature ten times a second on a
// pseudo-terminal, under a name that stays.
type fakeProbe struct {
	t      *testing.T
	name   string
	master *os.File
	water  chan float64 // the temperature from now on
	said   atomic.Int64 // lines
	pull   chan struct{}
	done   chan struct{}
}

func plugged(t *testing.T, name string) *fakeProbe {
	t.Helper()
	master, slave := expect.Pty(t)
	os.Remove(name)
	if err := os.Symlink(slave.Name(), name); err != nil {
		t.Fatal(err)
	}
	p := &fakeProbe{t: t, name: name, master: master, water: make(chan float64), pull: make(chan struct{}), done: make(chan struct{})}
	go p.talk(slave)
	return p
}

// talk keeps our copy of the slave open until somebody else has the port: before that a
// write would have no reader.
func (p *fakeProbe) talk(slave *os.File) {
	defer close(p.done)
	tick := time.NewTicker(100 * time.Millisecond)
	defer tick.Stop()
	temp := 20.0
	for n := 0; ; n++ {
		select {
		case temp = <-p.water:
		case <-p.pull: // in the middle of a line
			fmt.Fprintf(p.master, "1")
			slave.Close()
			p.master.Close()
			return
		case <-tick.C:
			if n%7 == 3 {
				fmt.Fprintf(p.master, "\x1b[2J\x1b]0;owned\x07\r\n") // must reach no terminal
			}
			fmt.Fprintf(p.master, "%.2f\r\n", temp)
			p.said.Add(1)
		}
	}
}

// in has the probe hang in water of a temperature, and say so.
func (p *fakeProbe) in(tempC float64) {
	p.water <- tempC
	for from := p.said.Load(); p.said.Load() < from+3; {
		time.Sleep(20 * time.Millisecond)
	}
}

func (p *fakeProbe) unplug() {
	close(p.pull)
	<-p.done
}

// TestDropFromProbe takes a whole drop from a probe on a real port, whose cable is
// pulled in the middle and comes back as another device.
func TestDropFromProbe(t *testing.T) {
	t.Parallel()
	noSettings(t)
	name, dir := filepath.Join(t.TempDir(), "probe"), t.TempDir()
	probe := plugged(t, name)
	c := begin(t, "drop", "--book", dir, "--units", "m C", "--bottom", "9 m", "--port", name)
	c.wait("read as: temp C")

	status, _, errOut := runWith(t, "", "probe", "listen", "--port", name)
	if status != 1 || !strings.Contains(errOut, "busy") {
		t.Errorf("a second program: status %d, %s", status, errOut)
	}

	take := func(temp float64) {
		t.Helper()
		probe.in(temp)
		c.typeLine("")
		for {
			time.Sleep(200 * time.Millisecond) // the probe's lines come in real time
			c.typeLine("")
			if c.wait("< new", "Not yet") == 0 {
				return
			}
		}
	}
	c.wait("then Enter.")
	take(22.0)
	c.wait("then Enter.")
	take(9.5)
	c.wait("then Enter.")
	probe.unplug()
	c.wait("probe is lost")
	c.typeLine("3.5 21.3") // by hand meanwhile
	c.wait("< new")
	probe = plugged(t, name)
	c.wait("probe is back")
	take(15.5)
	c.wait("then Enter.", "Enter ends")
	c.typeLine("undo")
	c.wait("Removed: 15.5 C")
	c.wait("then Enter.")
	take(15.6)
	c.wait("then Enter.", "Enter ends")
	c.typeLine("stop")
	status, out := c.end()
	probe.unplug()
	if status != 0 || !strings.Contains(out, "2026-07-18 14:20") {
		t.Fatalf("status %d: %s%s", status, c.everything(), out)
	}
	page := pageIn(t, dir)
	for _, want := range []string{"0.5 m: 22.0 C", "3.5 m: 21.3 C", "8.5 m: 9.5 C", ": 15.6 C"} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %q:\n%s", want, page)
		}
	}
	if strings.ContainsAny(c.everything()+out, "\x1b\x07") {
		t.Error("an escape sequence of the probe came through")
	}
	logs, _ := filepath.Glob(filepath.Join(dir, "*.probe"))
	if len(logs) != 1 {
		t.Fatalf("logs %q", logs)
	}
	data, err := os.ReadFile(logs[0])
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{" 22.00\n", " 15.60\n", `\x1b[2J\x1b]0;owned\x07`, "# lost: ", "# back: "} {
		if !strings.Contains(string(data), want) {
			t.Errorf("the log lacks %q:\n%.2000s", want, data)
		}
	}
	if strings.Contains(string(data), " 1\n") {
		t.Error("the line that was torn by the cable is in the log as if it were whole")
	}
	status, out, errOut = runWith(t, "", "probe", "replay", logs[0])
	if status != 0 || !strings.Contains(out, "22.000 C") || !strings.Contains(errOut, "temp C") {
		t.Errorf("replay: status %d, %s %.500s", status, errOut, out)
	}
}

// TestDropPastAProbe: whoever does not want to wait for what the probe's lines hold types.
func TestDropPastAProbe(t *testing.T) {
	t.Parallel()
	noSettings(t)
	name, dir := filepath.Join(t.TempDir(), "probe"), t.TempDir()
	silent := plugged(t, name)
	c := begin(t, "drop", "--book", dir, "--units", "m C", "--bottom", "9 m", "--port", name, "--layout", "nmea")
	c.wait("type the readings instead")
	c.typeLine("")
	c.wait("left alone: type the readings")
	c.wait("Temperature at")
	c.typeLine("22")
	c.wait("Temperature at")
	c.typeLine("stop")
	status, out := c.end()
	silent.unplug()
	if got := readings(pageIn(t, dir)); status != 0 || len(got) != 1 {
		t.Errorf("status %d, saved %q: %s%s", status, got, c.everything(), out)
	}
}

// TestListen: each line of a probe with how it is read, until Ctrl-C.
func TestListen(t *testing.T) {
	t.Parallel()
	program, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "probe")
	probe := plugged(t, name)
	defer probe.unplug()
	cmd := exec.Command(program, "probe", "listen", "--port", name)
	cmd.Env = append(os.Environ(), "COLDSEAM_TEST_PROGRAM=1", "XDG_CONFIG_HOME="+t.TempDir())
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	var errOut bytes.Buffer
	cmd.Stderr = &errOut
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	kill := time.AfterFunc(time.Minute, func() { cmd.Process.Kill() })
	defer kill.Stop()
	heard, interrupted := "", false
	for lines := bufio.NewScanner(out); lines.Scan(); {
		heard += lines.Text() + "\n"
		if !interrupted && strings.Count(heard, "20.000 C") >= 3 && strings.Contains(heard, "refused, ") {
			interrupted = true // a second one would find a program that is ending, and kill it
			cmd.Process.Signal(os.Interrupt)
		}
	}
	if err := cmd.Wait(); err != nil || !strings.Contains(errOut.String(), "lines read") || !strings.Contains(errOut.String(), "temp C") {
		t.Errorf("%v: %s%s", err, errOut.String(), heard)
	}
	if !strings.Contains(heard, "refused, ") || strings.ContainsAny(heard+errOut.String(), "\x1b\x07") {
		t.Errorf("heard %q", heard)
	}
}

// TestListenLost: where what the probe says can no longer be shown, listening ends.
func TestListenLost(t *testing.T) {
	t.Parallel()
	name := filepath.Join(t.TempDir(), "probe")
	probe := plugged(t, name)
	defer probe.unplug()
	out, errOut, err := shell(t, t.TempDir(), "", "timeout 60 coldseam probe listen --port "+name+" > /dev/full")
	lines := strings.SplitAfter(errOut, "\n")
	if got := statusOf(t, err); got != 1 || out != "" || !oneError(strings.Join(lines[max(0, len(lines)-2):], "")) {
		t.Errorf("status %d, %q", got, errOut)
	}
}

// TestNoPort: what cannot work is refused in a line that says what to do.
func TestNoPort(t *testing.T) {
	noSettings(t)
	for _, c := range []struct {
		args   []string
		status int
		want   string
	}{
		{[]string{"drop", "--port", filepath.Join(t.TempDir(), "gone"), "--units", "ft F"}, 1, "gone"},
		{[]string{"drop", "--baud", "9600", "--units", "ft F"}, 2, "--port"},
		{[]string{"drop", "--port", "/dev/null", "--baud", "9601"}, 2, "9601"},
		{[]string{"drop", "--port", "/dev/null", "--baud", "0"}, 2, "baud"},
		{[]string{"drop", "--port", "/dev/null", "--layout", "depth"}, 2, "--layout"},
		{[]string{"probe", "listen", "--port", "/dev/null"}, 1, "/dev/null"},
		{[]string{"probe", "listen"}, 2, "port"},
		{[]string{"probe", "listen", "x.log"}, 2, "replay x.log"},
		{[]string{"probe", "listen", "--port", "/dev/null", "--air", "1 ft"}, 2, "--air"},
		{[]string{"probe", "replay", "--thermistor", "1 2"}, 2, "--thermistor"},
		{[]string{"probe", "lisen"}, 2, "lisen"},
		{[]string{"probe"}, 2, "rehearse"},
		{[]string{"probe", "list", "all"}, 2, "nothing after it"},
		{[]string{"probe", "rehearse", "--lake", "nowhere"}, 2, "alder-kettle"},
		{[]string{"probe", "rehearse", "--faults", "wind"}, 2, "wind"},
		{[]string{"probe", "rehearse", "--speed", "1000"}, 2, "--speed"},
		{[]string{"probe", "rehearse", "--units", "ft"}, 2, "--units"},
		{[]string{"probe", "replay", "gone.log"}, 2, "gone.log"},
		{[]string{"probe", "replay", "--page", "--count"}, 2, "--count"},
	} {
		status, out, errOut := runWith(t, "", append(c.args, ownBook(t, c.args)...)...)
		if status != c.status || out != "" || !strings.Contains(errOut, c.want) || strings.Count(strings.TrimSpace(errOut), "\n") > 3 {
			t.Errorf("%q: status %d, %q, %s", c.args, status, out, errOut)
		}
	}
}

// ownBook keeps a drop out of the user's own book.
func ownBook(t *testing.T, args []string) []string {
	if args[0] == "drop" {
		return []string{"--book", t.TempDir()}
	}
	return nil
}
