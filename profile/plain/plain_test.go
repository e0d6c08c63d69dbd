package plain

import (
	"bytes"
	"encoding/json"
	"io"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

// What a terminal may act on, or what turns or hides text: the controls of ECMA-48 (C0,
// DEL and C1, which stand for ESC and a letter), and of Unicode chapter 23 (separators,
// marks of direction, invisible operators, tags, noncharacters, private use).
var unsafe = []rune{
	0, 7, 8, 9, 0xb, 0xc, '\r', '\n', 0x1b, 0x7f, 0x80, 0x84, 0x85, 0x90, 0x9b, 0x9d, 0x9f,
	0xad, 0x61c, 0x180e, 0x200b, 0x200e, 0x200f, 0x2028, 0x2029, 0x202a, 0x202b, 0x202c, 0x202d, 0x202e,
	0x2060, 0x2066, 0x2067, 0x2068, 0x2069, 0xfeff, 0xfff9, 0xe000, 0xfdd0, 0xffff, 0xe0001, 0xe0041, 0xf0000, 0x10ffff,
}

func TestLine(t *testing.T) {
	for _, r := range unsafe {
		want := "a\ufffdb"
		if r == '\t' {
			want = "a b"
		}
		if got := Line("a" + string(r) + "b"); got != want {
			t.Errorf("%U: %q, want %q", r, got, want)
		}
	}
	for in, want := range map[string]string{
		"":                 "",
		"Kabel für 5 °C":   "Kabel für 5 °C",
		"אגם 湖 see 🐟":      "אגם 湖 see 🐟",
		"e\u0301 a\u00a0b": "e\u0301 a\u00a0b",
		"a\xffb\x9b":       "a\ufffdb\ufffd",
		"\xed\xa0\x80":     "\ufffd\ufffd\ufffd", // half of a pair, no UTF-8
	} {
		if got := Line(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

func TestCut(t *testing.T) {
	for _, c := range []struct {
		in   string
		most int
		want string
	}{
		{" Alder Kettle\n", 12, "Alder Kettle"},
		{"Alder Kettle", 11, "Alder Kettl..."},
		{"Alder Kettle", 6, "Alder..."},
		{"äöü\x1b", 3, "äöü..."},
		{"äöü\x1b", 4, "äöü\ufffd"},
		{strings.Repeat("\xff", 9), 2, "\ufffd\ufffd..."},
		{"", 3, ""},
	} {
		if got := Cut(c.in, c.most); got != c.want {
			t.Errorf("%q to %d: %q, want %q", c.in, c.most, got, c.want)
		}
		if got := Quote(c.in, c.most); got != `"`+c.want+`"` {
			t.Errorf("quoted %q", got)
		}
	}
}

// Whatever comes in whatever pieces, what passes is the whole text made plain, with its
// line ends and tabs.
func TestWriter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := string(rapid.SliceOf(rapid.Byte()).Draw(t, "bytes")) + rapid.String().Draw(t, "text")
		for range rapid.IntRange(0, 5).Draw(t, "more") {
			text += string(rapid.SampledFrom(unsafe).Draw(t, "unsafe")) + rapid.String().Draw(t, "text")
		}
		var got bytes.Buffer
		w := &Writer{To: &got}
		for rest := []byte(text); len(rest) > 0; {
			n := rapid.IntRange(1, len(rest)).Draw(t, "n")
			if k, err := w.Write(rest[:n]); k != n || err != nil {
				t.Fatal(k, err)
			}
			rest = rest[n:]
		}
		w.Flush()
		var lines []string
		for _, l := range strings.Split(text, "\n") {
			var cells []string
			for _, cell := range strings.Split(l, "\t") {
				cells = append(cells, Line(cell))
			}
			lines = append(lines, strings.Join(cells, "\t"))
		}
		want := strings.Join(lines, "\n")
		if !utf8.ValidString(text) { // where bytes are none, only their number may differ
			squeeze := func(s string) string {
				return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == utf8.RuneError }), "\ufffd")
			}
			if squeeze(got.String()) != squeeze(want) {
				t.Fatalf("%q: %q, want %q", text, got.String(), want)
			}
			return
		}
		if got.String() != want {
			t.Fatalf("%q: %q, want %q", text, got.String(), want)
		}
	})
}

// What is held of a character that is never whole is seen to have been there, and an
// output that fails is told of: also of a text that had to be changed.
func TestWriterEnds(t *testing.T) {
	var got bytes.Buffer
	w := &Writer{To: &got}
	w.Write([]byte("5 \xc2"))
	if w.Flush(); got.String() != "5 \ufffd" {
		t.Errorf("%q", got.String())
	}
	lost := &Writer{To: failing{}}
	for _, text := range []string{"5 C", "5 °C", "\x1b"} {
		if n, err := lost.Write([]byte(text)); n != 0 || err != io.ErrClosedPipe {
			t.Errorf("%q: %d, %v", text, n, err)
		}
	}
	lost.Write([]byte("\xc2"))
	if err := lost.Flush(); err != io.ErrClosedPipe {
		t.Errorf("flushed: %v", err)
	}
}

// failing is an output that nobody reads.
type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// A script reads the text as it was; the bytes are plain.
func TestJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		for range rapid.IntRange(0, 5).Draw(t, "more") {
			text += string(rapid.SampledFrom(unsafe).Draw(t, "unsafe")) + rapid.String().Draw(t, "text")
		}
		encoded, err := json.Marshal(map[string]string{text: text})
		if err != nil {
			t.Fatal(err)
		}
		out := JSON(append(encoded, '\n'))
		for _, r := range strings.TrimSuffix(string(out), "\n") {
			if !Graphic(r) {
				t.Fatalf("%U in %q", r, out)
			}
		}
		var back map[string]string
		if err := json.Unmarshal(out, &back); err != nil || back[text] != text || len(back) != 1 {
			t.Fatalf("%q: %v, %v", out, back, err)
		}
	})
}
