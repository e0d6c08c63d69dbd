package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldseam/profile/expect"
	"coldseam/profile/plain"
)

// TestProgress: after a second a long job says on the terminal how far it is and how long
// the rest takes at that pace, nothing before it, and takes the line away at its end.
func TestProgress(t *testing.T) {
	master, slave := expect.Pty(t)
	defer master.Close()
	defer slave.Close()
	began := time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC)
	for _, c := range []struct {
		spent       time.Duration
		done, total int64
		want        string
	}{
		{999 * time.Millisecond, 1, 2, ""},
		{4 * time.Second, 3, 4, "75 %, some seconds left: 7 drops"},
		{30 * time.Second, 50, 100, "50 %, about 30 s left: 7 drops"},
		{60 * time.Second, 1, 3, "33 %, about 2 min left: 7 drops"},
		{time.Hour, 1, 3, "33 %, about 2 hours left: 7 drops"},
		{30 * time.Second, 50, 0, "7 drops"}, {30 * time.Second, 0, 50, "7 drops"}, {30 * time.Second, 60, 50, "7 drops"},
	} {
		g := &progress{live: newStatus(&plain.Writer{To: slave}), began: began, now: func() time.Time { return began.Add(c.spent) }}
		g.show("7 drops", c.done, c.total)
		slave.WriteString("#")
		g.end()
		slave.WriteString("#")
		var got strings.Builder
		for b := make([]byte, 1); strings.Count(got.String(), "#") < 2; got.Write(b) {
			if _, err := master.Read(b); err != nil {
				t.Fatal(err)
			}
		}
		shown, end, _ := strings.Cut(got.String(), "#")
		if strings.TrimPrefix(shown, "\r") != c.want || strings.Trim(end, "\r #") != "" || c.want != "" && strings.Count(end, " ") != len(c.want) {
			t.Errorf("%v, %d of %d: %q and %q, want %q", c.spent, c.done, c.total, shown, end, c.want)
		}
	}
}

// Where standard error is no terminal, nothing is shown, however long the job takes.
func TestProgressPiped(t *testing.T) {
	file := filepath.Join(t.TempDir(), "lake.csv")
	if err := os.WriteFile(file, []byte(lakeCSV(300, "Alder Kettle")), 0o600); err != nil {
		t.Fatal(err)
	}
	var out, errOut bytes.Buffer
	clock := time.Now()
	p := &program{in: strings.NewReader(""), stdout: &out, err: &errOut, now: func() time.Time { clock = clock.Add(time.Minute); return clock }}
	if status := p.run([]string{"coldseam", "batch", "--no-intervals", file}); status != 0 || errOut.Len() > 0 || strings.Count(out.String(), "\n") != 300 {
		t.Errorf("status %d, %q", status, errOut.String())
	}
}
