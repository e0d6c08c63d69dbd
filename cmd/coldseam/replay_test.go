package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"coldseam/device/rehearse"
	"coldseam/profile/notebook"
)

func TestReplay(t *testing.T) {
	noSettings(t)
	for _, c := range []struct {
		name, text string
		args       []string
		out        []string // in this order
		err        string
	}{
		{"a row of names, faults", "boot v1\r\ndepth_m,temp_c\r\n1.0,20.1\r\n2.0,85.00\r\n2.5,19.5\r\n", nil,
			[]string{"refused, other", "names of columns", "depth 1.000 m, 20.100 C", "refused, sentinel: 85 C", "depth 2.500 m"}, "Lines are read as: depth m, temp C"},
		{"faults in F", "depth_ft,temp_f\n3.0,68.1\n3.0,185.0\n3.0,-196.6\n3.0,85.0\n", nil, // 85 F is a hot day, 185 F a sensor without its first reading
			[]string{"20.056 C", "refused, sentinel", "refused, sentinel", "29.444 C"}, "2 sentinel"},
		{"a sounder that lost the bottom", "$SDDPT,9999.0,0.5*46\n$SDDBT,9999.0,f,,M,,F\n$SDDPT,3.6,0.0*52\n", nil,
			[]string{"refused, ", "refused, ", "bottom under the boat 3.60 m"}, "1 line read"},
		{"the boat's instruments", "$SDDPT,3.6,0.0*52\n$YXMTW,17.75,C*5D\n$YXMTW,,C*2C\n", nil,
			[]string{"bottom under the boat 3.60 m", "surface 17.75 C (the boat's), though its checksum is wrong", "refused, "}, "2 lines read"},
		{"open", "1.0,20.1\n2.0,19.5\n", nil, []string{"depth 1.000 m, 20.100 C"}, "--layout \"depth ft, temp C\""},
		{"told", "20,1;1,5\n19,5;2,5\n", []string{"--layout", "temp C, depth ft"}, []string{"depth 0.457 m, 20.100 C"}, "2 lines read"},
		{"pressure", "1413.2 12.0\n", []string{"--layout", "pressure hPa, temp C", "--air", "1013.25 hPa"}, []string{"depth 4.080 m, 12.000 C"}, ""},
		{"ohms", "R=12490\nR=19900\n", []string{"--thermistor", "1.129241e-3, 2.341077e-4 8.775468e-8"}, []string{"20.006 C", "10.003 C"}, ""},
		{"pressure without the air's", "1413.2 12.0\n", []string{"--layout", "pressure hPa, temp C"}, []string{"refused, ask which"}, ""},
		{"nothing", "", nil, nil, "0 lines read"},
		{"escape sequences", "\x1b[2J18.2\n18.1\n18.0\n", nil, []string{"�[2J18.2", "18.100 C"}, ""},
		{"count", "1\n18.1\n18.0\n", []string{"--count"}, nil, "3 lines read"},
	} {
		status, out, errOut := runWith(t, c.text, append([]string{"probe", "replay"}, c.args...)...)
		if status != 0 || !strings.Contains(errOut, c.err) || len(c.out) == 0 && out != "" {
			t.Errorf("%s: status %d, %q, %s", c.name, status, out, errOut)
		}
		rest := out
		for _, want := range c.out {
			_, after, ok := strings.Cut(rest, want)
			if !ok {
				t.Errorf("%s: no %q, or too early, in:\n%s", c.name, want, out)
				break
			}
			rest = after
		}
		if strings.ContainsAny(out+errOut, "\x1b\x07") {
			t.Errorf("%s: a control character came through", c.name)
		}
	}
}

// TestReplayPage: a page made of a record is one that plan reads, with the temperatures
// of the record.
func TestReplayPage(t *testing.T) {
	noSettings(t)
	var record strings.Builder
	record.WriteString("depth_m,temp_c\n")
	for i := range 200 { // down at 0.1 m a line, through a thermocline at 5 m
		z := float64(i) / 20
		temp := 20.0
		if z > 5 {
			temp = 20 - 5*min(z-5, 2)
		}
		fmt.Fprintf(&record, "%.2f,%.2f\n", z, temp)
	}
	status, page, errOut := runWith(t, record.String(), "probe", "replay", "--page", "--units", "m C")
	if status != 0 {
		t.Fatalf("status %d: %s", status, errOut)
	}
	sheets, err := notebook.Read([]byte(page), notebook.Options{})
	if err != nil || len(sheets) != 1 || len(sheets[0].Drop.Readings) < 35 {
		t.Fatalf("%v: %s", err, page)
	}
	for _, r := range sheets[0].Drop.Readings {
		want := 20 - 5*min(max(r.DepthM-5, 0), 2)
		if d := r.TempC - want; d > 0.3 || d < -0.3 {
			t.Errorf("%.1f C at %.2f m, want %.2f", r.TempC, r.DepthM, want)
		}
	}
	if status, out, errOut := runWith(t, page, "plan", "--full", "-"); status != 0 || !strings.Contains(out, "The thermocline is between") {
		t.Errorf("plan: status %d, %s%s", status, errOut, out)
	}
	for _, c := range []struct{ text, want string }{
		{"1.0,20.1\n2.0,19.5\n", "--layout \"depth m, temp C\""},
		{"18.1\n18.0\n17.9\n", "hold no depth"},
		{"\n\n", "what the lines hold"},
		{"", "no line"},
	} {
		status, out, errOut := runWith(t, c.text, "probe", "replay", "--page")
		if status != 2 || out != "" || !strings.Contains(errOut, c.want) {
			t.Errorf("%q: status %d, %q, %s", c.text, status, out, errOut)
		}
	}
}

// TestRehearsal takes whole drops with the simulated probe, as fast as its clock goes,
// with everything going wrong.
func TestRehearsal(t *testing.T) {
	t.Parallel()
	noSettings(t)
	for _, c := range []struct {
		name string
		args []string
	}{
		{"depth stated", []string{"--depth"}},
		{"temperature alone, all faults", []string{"--faults", "boot,garbage,torn,sentinel,quiet"}},
		{"metric, mixed", []string{"--depth", "--lake", "thimble-flat", "--units", "m C"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			k := begin(t, append([]string{"probe", "rehearse", "--speed", "100", "--book", dir}, c.args...)...)
			for n := 0; ; n++ {
				which := k.wait("Enter ends the drop", "then Enter.", "and hold it there.")
				if which == 0 {
					break
				}
				if n == 12 {
					t.Fatalf("no end of readings:\n%s", k.everything())
				}
				if which == 1 {
					k.typeLine("")
				}
				k.wait("< new")
			}
			k.typeLine("")
			status, out := k.end()
			if status != 0 || !strings.Contains(out, "a rehearsal") {
				t.Fatalf("status %d: %s%s", status, k.everything(), out)
			}
			if page := pageIn(t, dir); strings.Contains(page, "not ended") || len(readings(page)) < 3 {
				t.Errorf("page %s", page)
			}
		})
	}
}

// TestRehearsalMoving: a cast down and up gives the lake's temperatures, the lag taken
// out.
func TestRehearsalMoving(t *testing.T) {
	t.Parallel()
	noSettings(t)
	dir := t.TempDir()
	k := begin(t, "probe", "rehearse", "--speed", "20", "--moving", "--book", dir, "--units", "m C")
	k.wait("and in again.")
	// nothing is read off yet, and what the probe says is on the disk all the same
	if page := pageIn(t, dir); !strings.Contains(page, "not ended") || len(readings(page)) != 0 {
		t.Errorf("page %s", page)
	}
	time.Sleep(3 * time.Second) // a minute of the lake's clock: down and up again
	logs, _ := filepath.Glob(filepath.Join(dir, "*.probe"))
	if len(logs) != 1 {
		t.Fatalf("logs %q", logs)
	}
	if said, err := os.ReadFile(logs[0]); err != nil || strings.Count(string(said), "\n") < 60 {
		t.Errorf("the log of a cast that goes on: %v, %.300s", err, said)
	}
	k.typeLine("")
	status, out := k.end()
	if status != 0 || !strings.Contains(k.everything(), "depths; the probe's lag (time constant") {
		t.Fatalf("status %d: %s%s", status, k.everything(), out)
	}
	sheets, err := notebook.Read([]byte(pageIn(t, dir)), notebook.Options{})
	if err != nil || len(sheets[0].Drop.Readings) < 30 {
		t.Fatalf("%v: %s", err, pageIn(t, dir))
	}
	for _, r := range sheets[0].Drop.Readings {
		if d := r.TempC - rehearse.Kettle().TempC(r.DepthM); r.DepthM > 0.5 && (d > 0.6 || d < -0.6) {
			t.Errorf("%.1f C at %.2f m, off by %.2f", r.TempC, r.DepthM, d)
		}
	}
}

// lines gives a line over and over, to a number of lines.
type lines struct {
	text []byte
	left int
	at   int
}

func (l *lines) Read(b []byte) (n int, err error) {
	for n < len(b) && l.left > 0 {
		k := copy(b[n:], l.text[l.at:])
		n, l.at = n+k, l.at+k
		if l.at == len(l.text) {
			l.at, l.left = 0, l.left-1
		}
	}
	if n == 0 {
		return 0, io.EOF
	}
	return n, nil
}

// TestReplayMemory: a replay allocates next to nothing a line, so that it may be as long
// as it likes.
func TestReplayMemory(t *testing.T) {
	noSettings(t)
	for _, text := range []string{"$YXMTW,17.9,C*1D\r\n", "12.4,18.31\n", "T=18.31 D=12.4\n"} {
		const n = 200_000
		in := &lines{text: []byte(text), left: n}
		args := []string{"coldseam", "probe", "replay", "--count"}
		if text[0] == '1' {
			args = append(args, "--layout", "depth m, temp C")
		}
		if text[0] == 'T' {
			args = append(args, "--layout", "T: temp C, D: depth m")
		}
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		var out, errOut bytes.Buffer
		if status := run(args, in, &out, &errOut); status != 0 || !strings.Contains(errOut.String(), "200000 lines read") {
			t.Fatalf("status %d: %s", status, errOut.String())
		}
		runtime.ReadMemStats(&after)
		if perLine := float64(after.Mallocs-before.Mallocs) / n; perLine > 0.05 {
			t.Errorf("%q: %.2f allocations a line", text, perLine)
		}
	}
}

func BenchmarkReplay(b *testing.B) {
	b.Setenv("XDG_CONFIG_HOME", filepath.Join(os.TempDir(), "coldseam-none"))
	for _, c := range []struct{ name, text string }{{"NMEA", "$YXMTW,17.9,C*1D\r\n"}, {"plain", "18.31\n"}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			var out, errOut bytes.Buffer
			if run([]string{"coldseam", "probe", "replay", "--count"}, &lines{text: []byte(c.text), left: b.N + 20}, &out, &errOut) != 0 {
				b.Fatal(errOut.String())
			}
			b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "lines/s")
		})
	}
}
