package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"coldseam/profile/book"
	"coldseam/profile/notebook"
)

// dropWith takes a drop from typed lines into a book, at a fixed time.
func dropWith(t *testing.T, dir, typed string, args ...string) (status int, out, errOut string) {
	t.Helper()
	var o, e bytes.Buffer
	p := &program{in: strings.NewReader(typed), stdout: &o, err: &e, disk: book.System{}, now: fixedNow}
	status = p.run(append([]string{"coldseam", "drop", "--book", dir}, args...))
	return status, o.String(), e.String()
}

func fixedNow() time.Time { return time.Date(2026, 7, 18, 14, 20, 0, 0, time.UTC) }

// pageIn gives the text of the one page of a book.
func pageIn(t *testing.T, dir string) string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "*.txt"))
	if err != nil || len(names) != 1 {
		t.Fatalf("pages: %q, %v", names, err)
	}
	data, err := os.ReadFile(names[0])
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

func readings(page string) []string {
	return regexp.MustCompile(`(?m)^[\d.]+ (?:ft|m): .*$`).FindAllString(page, -1)
}

// TestDropTyped types whole drops, and looks at what was saved.
func TestDropTyped(t *testing.T) {
	noSettings(t)
	feet := []string{"--units", "ft F", "--bottom", "30ft"}
	for _, c := range []struct {
		name, typed string
		args        []string
		want        []string // readings saved
		says        []string // on standard error
	}{
		{"as asked for", "74\n52\n63\n70\n", feet,
			[]string{"1 ft: 74 F", "10 ft: 70 F", "14 ft: 63 F", "29 ft: 52 F"}, []string{"Read 10 ft next", "Saved: "}},
		{"asked for units and bottom", "1\n30\n74\n52\n", nil,
			[]string{"1 ft: 74 F", "29 ft: 52 F"}, []string{"Which units", "How deep is the water here, in ft?"}},
		{"metric, decimal comma", "9\n23,4\n11,2\n", []string{"--units", "m C"},
			[]string{"0.5 m: 23.4 C", "8.5 m: 11.2 C"}, nil},
		{"a depth of one's own, units written", "74\n12 68\n20ft 58F\n8 m 11 C\n", feet,
			[]string{"1 ft: 74 F", "12 ft: 68 F", "20 ft: 58 F", "8 m: 11 C"}, nil},
		{"undo, skip, stop", "74\nundo\n73.5\nskip\nsk\n15 66\nstop\n99\n", feet,
			[]string{"1 ft: 73.5 F", "15 ft: 66 F"},
			// the mark that was passed over is not tried again a foot higher: from there it
			// goes down step by step, as where the bottom is not known
			[]string{"Removed: 74 F at 1 ft", "Read 8 ft next", "Read 15 ft next"}},
		{"nothing to take back", "undo\n74\n", feet, []string{"1 ft: 74 F"}, []string{"There is no new reading"}},
		{"a slip is challenged and typed again", "74\n52\n36\n63\nstop\n", feet,
			[]string{"1 ft: 74 F", "14 ft: 63 F", "29 ft: 52 F"}, []string{"Enter keeps it"}},
		{"a slip is kept", "74\n52\n36\n\nstop\n", feet,
			[]string{"1 ft: 74 F", "14 ft: 36 F", "29 ft: 52 F"}, []string{"Enter keeps it"}},
		{"put right", "74\n52\n1 73\n1\nstop\n", feet,
			[]string{"1 ft: 73 F", "29 ft: 52 F"}, []string{"At 1 ft it was 74 F before"}},
		{"read twice", "74\n52\n1 73.8\n2\nstop\n", feet,
			[]string{"1 ft: 74 F", "1 ft: 73.8 F", "29 ft: 52 F"}, nil},
		{"typed again with its depth", "74\n12 86\n12 68\nstop\n", feet,
			[]string{"1 ft: 74 F", "12 ft: 68 F"}, []string{"Enter keeps it"}},
		{"a depth under the bottom", "74\n68 12\n1\n12 68\nstop\n", feet,
			[]string{"1 ft: 74 F", "12 ft: 68 F"}, []string{"the bottom was noted at 30 ft"}},
		{"half a word", "s\n74\n", feet, []string{"1 ft: 74 F"}, []string{"skip passes this"}},
		{"not understood", "warm\n74\n7 4 4 4 x\n?\n\nu\n73\n", feet,
			[]string{"1 ft: 73 F"}, []string{"Not taken", "Nothing was typed", "Type the temperature"}},
		{"noted", "74\nbottom: 24 ft\nsecchi: 9\nunits: m C\nwind: much\n52\n", feet,
			[]string{"1 ft: 74 F", "23 ft: 52 F"}, []string{"Noted: bottom: 24 ft", "The units of a drop"}},
		{"oxygen", "74 DO 8.1\n52 do 0.4\n", feet,
			[]string{"1 ft: 74 F  DO 8.1 mg/L", "29 ft: 52 F  DO 0.4 mg/L"}, nil},
		{"enough, then Enter", "74\n73.9\n74\n\n12 70\n", feet,
			[]string{"1 ft: 74 F", "14 ft: 74 F", "29 ft: 73.9 F"}, []string{"Enough: hardly any change", "Enter ends the drop"}},
		{"enough, then a number alone", "74\n73.9\n74\n70\n12 73.9\n\n", feet,
			[]string{"1 ft: 74 F", "12 ft: 73.9 F", "14 ft: 74 F", "29 ft: 73.9 F"}, []string{"At which depth?"}},
		{"escape sequences", "74\n\x1b[2J\x1b]0;x\x07 52\n52\n", feet,
			[]string{"1 ft: 74 F", "29 ft: 52 F"}, []string{"Not taken"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			status, out, errOut := dropWith(t, dir, c.typed, c.args...)
			if status != 0 || !strings.Contains(out, "2026-07-18 14:20") {
				t.Fatalf("status %d: %s%s", status, errOut, out)
			}
			page := pageIn(t, dir)
			if got := readings(page); !slices.Equal(got, c.want) {
				t.Errorf("saved %q, want %q\n%s", got, c.want, errOut)
			}
			if strings.Contains(page, "not ended") {
				t.Errorf("the page has not ended: %s", page)
			}
			for _, s := range c.says {
				if !strings.Contains(strings.Join(strings.Fields(errOut), " "), s) {
					t.Errorf("does not say %q:\n%s", s, errOut)
				}
			}
			if strings.ContainsAny(errOut, "\x1b\x07") {
				t.Errorf("a control character came through: %q", errOut)
			}
			for _, line := range strings.Split(errOut, "\n") {
				if n := len([]rune(line)); n > 80 && !strings.Contains(line, dir) {
					t.Errorf("%d columns: %s", n, line)
				}
			}
		})
	}
}

func TestDropRefuses(t *testing.T) {
	noSettings(t)
	for _, c := range []struct {
		typed string
		args  []string
		want  string
	}{
		{"", nil, "the units were not given"},
		{"", []string{"--units", "ft F"}, "no reading was taken"},
		{"74\nundo\n", []string{"--units", "ft F", "--bottom", "9ft"}, "no reading was taken"},
		{"", []string{"page.txt"}, "drop reads no file"},
		{"", []string{"--units", "ft F", "--for", "dragon"}, "dragon"},
		{"", []string{"--units", "ft F", "--bottom", "30"}, "--bottom"},
	} {
		dir := t.TempDir()
		status, out, errOut := dropWith(t, dir, c.typed, c.args...)
		if status == 0 || out != "" || !strings.Contains(errOut, c.want) {
			t.Errorf("%v: status %d, %q, %s", c.args, status, out, errOut)
		}
		if names, _ := filepath.Glob(filepath.Join(dir, "*.txt")); len(names) != 0 {
			t.Errorf("%v left %q", c.args, names)
		}
	}
}

// TestProbeLeftAtHome: a probe named in the settings that is not there does not keep
// anyone from typing.
func TestProbeLeftAtHome(t *testing.T) {
	config := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", config)
	if err := os.MkdirAll(filepath.Join(config, "coldseam"), 0o755); err != nil {
		t.Fatal(err)
	}
	toml := fmt.Sprintf("units = \"ft F\"\nbook = %q\n[probe]\nport = %q\n", filepath.Join(config, "drops"), filepath.Join(config, "gone"))
	if err := os.WriteFile(filepath.Join(config, "coldseam", "settings.toml"), []byte(toml), 0o644); err != nil {
		t.Fatal(err)
	}
	status, out, errOut := runWith(t, "30\n74\n52\n", "drop")
	if status != 0 || !strings.Contains(errOut, "Type the readings instead") || !strings.Contains(out, "for rainbow trout") {
		t.Errorf("status %d: %s%s", status, errOut, out)
	}
	if got := readings(pageIn(t, filepath.Join(config, "drops"))); len(got) != 2 {
		t.Errorf("saved %q", got)
	}
}

// TestDropGoesOn: a drop that was cut off is offered, gone on with, left or ended.
func TestDropGoesOn(t *testing.T) {
	noSettings(t)
	begin := func(t *testing.T) (string, string) {
		dir := t.TempDir()
		b, err := book.Open(dir, book.System{})
		if err != nil {
			t.Fatal(err)
		}
		sheets, err := notebook.Read([]byte("water: Alder Kettle\ndate: 2026-07-18 13:00\nunits: ft F\nbottom: 30 ft\n1 74\n29 52\n"), notebook.Options{})
		if err != nil {
			t.Fatal(err)
		}
		page, err := b.Begin(sheets[0].Drop)
		if err != nil {
			t.Fatal(err)
		}
		return dir, page.Path
	}
	t.Run("go on", func(t *testing.T) {
		dir, path := begin(t)
		status, out, errOut := dropWith(t, dir, "1\nundo\n63\nstop\n")
		if status != 0 || !strings.Contains(out, "Alder Kettle, 2026-07-18 13:00") || !strings.Contains(errOut, "There is no new reading") {
			t.Errorf("status %d: %s%s", status, errOut, out)
		}
		data, err := os.ReadFile(path)
		if got, want := readings(string(data)), []string{"1 ft: 74 F", "14 ft: 63 F", "29 ft: 52 F"}; err != nil || !slices.Equal(got, want) {
			t.Errorf("saved %q, %v", got, err)
		}
	})
	t.Run("put right what was read before", func(t *testing.T) {
		dir, path := begin(t)
		dropWith(t, dir, "1\n1 73\n1\nundo\nundo\nstop\n")
		data, _ := os.ReadFile(path)
		if got, want := readings(string(data)), []string{"29 ft: 52 F"}; !slices.Equal(got, want) {
			t.Errorf("saved %q", got)
		}
	})
	t.Run("leave", func(t *testing.T) {
		dir, path := begin(t)
		status, out, errOut := dropWith(t, dir, "2\n30\n70\nstop\n", "--units", "ft F")
		if status != 0 || strings.Contains(out, "Alder Kettle") {
			t.Errorf("status %d: %s%s", status, errOut, out)
		}
		if data, _ := os.ReadFile(path); !strings.Contains(string(data), "not ended") {
			t.Errorf("the left drop: %s", data)
		}
	})
	t.Run("end it", func(t *testing.T) {
		dir, path := begin(t)
		dropWith(t, dir, "3\n30\n70\nstop\n", "--units", "ft F")
		if data, _ := os.ReadFile(path); strings.Contains(string(data), "not ended") {
			t.Errorf("the drop has not ended: %s", data)
		}
	})
}
