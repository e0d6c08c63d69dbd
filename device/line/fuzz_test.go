package line

import (
	"testing"
	"unicode"
)

func FuzzLine(f *testing.F) {
	for _, b := range benchLines {
		f.Add(b)
	}
	f.Add([]byte("91 01 4B 46 7F FF 0F 10 25"))
	f.Fuzz(func(t *testing.T, b []byte) {
		check := func(s Sentence, err error) {
			if err == nil {
				if s.Kind == Nothing {
					t.Fatalf("%q is taken and says nothing", b)
				}
				return
			}
			text := err.Error()
			if CodeOf(err) == Fine || s != (Sentence{}) || len(text) == 0 || len(text) > 300 {
				t.Fatalf("%q: %v %q", b, CodeOf(err), text)
			}
			for _, c := range text {
				if !unicode.IsGraphic(c) {
					t.Fatalf("%q: unprintable text %q", b, text)
				}
			}
		}
		check(NMEA(b))
		check(NMEAUnchecked(b))
		_, _ = WordTempC(b)
		_, _ = ScratchpadTempC(b)
	})
}
