package format

import (
	"math"
	"reflect"
	"strings"
	"testing"
	"unicode"

	"coldseam/device/line"
	"coldseam/profile"
)

var fuzzSeeds = []struct{ layout, text string }{
	{"depth m, temp C", "depth_m,temp_c\r\n12.4,18.31\r\n12.4,\r\n,,\r\n"},
	{"T: temp C, D: depth m", "T=18.3 D=4.2\nT=NaN D=4,2\nT:18.3,D\n"},
	{"D: depth m, T: temp C", "D,4.21\n\nT,18.3\n---\nD,NaN\n"},
	{"Depth: depth m, Temp: temp F", "Depth (m):\n4.20\nTemp:\n64.5\n-----\n"},
	{"t: temp C, a.d: depth ft", "{\"t\":\"18.3 C\",\"a\":{\"d\":4.2e1},\"x\":[1,{}],\"y\":null}\n{\"t\":1e999}\n{\n"},
	{"time ms, depth mm, temp C/100", "4294967000 4120 1834\n5 4120 1834\n"},
	{"skip, skip, temp K, depth cm", "2024-07-01\t12:00:05\t291.5\t412\n"},
	{"depth m, temp C", "12,4;18,31\n<12.4,18.31>\n[I] 12.4 18.31\n12.4 ft (1) 65 deg F\n"},
	{"word, skip", "0191,1\nfff8,0x12\n91 01 4B 46 7F FF 0F 10 25,1\n"},
	{"R: ohms", "R=12490\nR=12.49k\nT1834 R12490\n"},
	{"P: pressure bar, T: temp C", "P:1.0123\nT:18.3\xb0C\n# x\nP:-1e-05\n"},
	{"nmea", "$YXMTW,17.9,C*1D\r\n$YXXDR,P,170025,P,ABS,C,9.2,C,PROBE\n!AIVDM,\n"},
	{"temp C", "\x1b[2J\n85.00\n-----\n1.2.3\n1:18.31\n18.31,OK,\n18.31 %\n"},
}

func FuzzReader(f *testing.F) {
	for _, s := range fuzzSeeds {
		f.Add(s.layout, s.text, 101325.0, true)
		f.Add(s.layout, s.text, 0.0, false)
	}
	f.Fuzz(func(t *testing.T, layout, text string, airPa float64, vouched bool) {
		l, err := Parse(layout)
		if err != nil {
			for _, b := range err.Error() {
				if !unicode.IsGraphic(b) {
					t.Fatalf("%q: unprintable error %q", layout, err)
				}
			}
			return
		}
		if back, err := Parse(l.String()); err != nil || !reflect.DeepEqual(back, l) {
			t.Fatalf("%q: %v, %v, %v", layout, l, back, err)
		}
		r := New(l, Options{AirPa: airPa, Thermistor: tenKilohm, Vouched: vouched})
		for _, b := range strings.Split(text, "\n") {
			s, err := r.Line([]byte(b))
			checkText(t, err)
			checkSample(t, s, err)
		}
	})
}

func checkSample(t *testing.T, s Sample, err error) {
	t.Helper()
	if err != nil {
		if s != (Sample{}) {
			t.Fatalf("refused, yet %+v", s)
		}
		return
	}
	if s == (Sample{}) {
		t.Fatal("taken, yet nothing is known")
	}
	for _, c := range []struct {
		o      profile.Optional
		lo, hi float64
	}{{s.DepthM, -2, 1000}, {s.TempC, -5, 50}, {s.BottomM, 0, 11000}, {s.SurfaceC, -5, 50}, {s.TimeS, 0, math.MaxFloat64}} {
		if c.o.Known && !(c.o.Value >= c.lo && c.o.Value <= c.hi) {
			t.Fatalf("out of range: %+v", s)
		}
	}
	if s.TempC.Known && (s.TempC.Value == 85 || s.BottomM.Known || s.SurfaceC.Known) {
		t.Fatalf("a reading that cannot be: %+v", s)
	}
}

func FuzzFind(f *testing.F) {
	for _, s := range fuzzSeeds {
		f.Add([]byte(s.text + s.text))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		lines := linesOf(string(text))
		found := Find(lines)
		if found.Known && len(found.Choices) > 0 || len(found.Choices) > maxChoices || found.Why == "" {
			t.Fatalf("%q: %+v", text, found)
		}
		for _, b := range found.Why + found.Example {
			if !unicode.IsGraphic(b) {
				t.Fatalf("%q: unprintable %q %q", text, found.Why, found.Example)
			}
		}
		seen := map[string]bool{}
		for _, l := range append(found.Choices, found.Layout) {
			back, err := Parse(l.String())
			if err != nil || !reflect.DeepEqual(back, l) || seen[l.String()] {
				t.Fatalf("%q: %v, %v, %v", text, l, back, err)
			}
			seen[l.String()] = true
			if len(l.Parts) == 0 {
				continue
			}
			r, taken := New(l, Options{}), 0
			for _, b := range lines {
				if _, err := r.Line(b); err == nil || line.CodeOf(err) == line.AskWhich {
					taken++
				}
			}
			if taken == 0 {
				t.Fatalf("%q: %v reads none of it", text, l)
			}
		}
		if again := Find(lines); !reflect.DeepEqual(found, again) {
			t.Fatalf("%q: %+v and then %+v", text, found, again)
		}
	})
}
