package format

import (
	"strings"
	"testing"
	"unicode"

	"coldseam/device/line"
	"coldseam/profile"
	"coldseam/profile/water"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// tenKilohm is the part whose table is in the tests of package line.
var tenKilohm = line.Thermistor{A: 1.129241e-3, B: 2.341077e-4, C: 8.775468e-8}

func parsed(t testing.TB, text string) Layout {
	t.Helper()
	l, err := Parse(text)
	if err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	return l
}

// at is a sample with a depth and a temperature, warm one with a temperature alone.
func at(depthM, tempC float64) Sample {
	return Sample{DepthM: profile.Some(depthM), TempC: profile.Some(tempC)}
}

func warm(tempC float64) Sample { return Sample{TempC: profile.Some(tempC)} }

func (s Sample) when(timeS float64) Sample {
	s.TimeS = profile.Some(timeS)
	return s
}

// readAll feeds lines and gathers the samples and the codes of the refusals.
func readAll(r *Reader, text string) (got []Sample, codes []line.Code) {
	for _, b := range strings.SplitAfter(text, "\n") {
		s, err := r.Line([]byte(b))
		if err == nil {
			got = append(got, s)
		} else {
			codes = append(codes, line.CodeOf(err))
		}
	}
	return got, codes
}

// The forms that hobby boards print (common practice). Feet are those of 1959, 5/9 is
// the definition of the scale, and 0191 is 25.0625 C by the data sheet of the DS18B20.
func TestForms(t *testing.T) {
	for _, c := range []struct {
		layout, text string
		want         []Sample
	}{
		{"depth m, temp C", "12.4,18.31\r\n12.5,18.2\r\n", []Sample{at(12.4, 18.31), at(12.5, 18.2)}},
		{"temp C, depth m", "18.31,12.4", []Sample{at(12.4, 18.31)}},
		{"depth m, temp C", "depth_m,temp_c\n12.4,18.31\n", []Sample{at(12.4, 18.31)}},
		{"skip, depth m, temp C", "Timestamp,Depth_m,Temp_C\n2024-07-01 12:00:05,12.4,18.31", []Sample{at(12.4, 18.31)}},
		{"skip, depth m, temp C", "2024-07-01T12:00:05Z,12.4,18.31\n1/7/24 3:05 PM,1,2", []Sample{at(12.4, 18.31), at(1, 2)}},
		{"T: temp C, D: depth m", "T=18.3 D=4.2\nD=4.3 T=18.4", []Sample{at(4.2, 18.3), at(4.3, 18.4)}},
		{"T: temp C, D: depth m", "T=18.3,H=55,D=4.2", []Sample{at(4.2, 18.3)}},
		{"D: depth m, T: temp C", "D,4.21\nT,18.3\nD,4.3\nT,18.4", []Sample{at(4.21, 18.3), at(4.3, 18.4)}},
		{"D: depth m, T: temp C", "D,4.21,T,18.3", []Sample{at(4.21, 18.3)}},
		{"temp: temp C, depth: depth m", "Temp: 18.31 C, Depth: 4.2 m", []Sample{at(4.2, 18.31)}},
		{"Depth: depth m, Temp: temp C", "Depth:\r\n4.20\r\nTemp:\r\n18.3\r\n-----\r\nDepth:\r\n4.30\r\nTemp:\r\n18.2\r\n", []Sample{at(4.2, 18.3), at(4.3, 18.2)}},
		{"Depth: depth m, Temp: temp C", "Depth: 4.20\nTemp: 18.3\n\nDepth: 4.30\nTemp: 18.2\n\n", []Sample{at(4.2, 18.3), at(4.3, 18.2)}},
		{"depth: depth mm, Temp: temp C", "Pressure = 1413.2hPa  depth = 4120mm\nTemp = 18.3", []Sample{at(4.12, 18.3)}},
		{"t: temp C, d: depth m", `{"t":18.3,"d":4.2}`, []Sample{at(4.2, 18.3)}},
		{"t: temp C, d: depth m", `{"id":"a1","probe":{"t":"18.3","d":4.2e0},"list":[1,{"t":2}]}`, []Sample{at(4.2, 18.3)}},
		{"probe.t: temp C, d: depth m", `{"t":99,"probe":{"t":"18.3 °C"},"d":"420cm"}`, []Sample{at(4.2, 18.3)}},
		{"time ms, depth m, temp C", "1500,4.2,18.3", []Sample{at(4.2, 18.3).when(1.5)}},
		{"skip, skip, temp C, depth m", "2024-07-01\t12:00:05\t18.31\t12.4", []Sample{at(12.4, 18.31)}},
		{"depth m, temp C", "12,4;18,31\n12;18,31\n12,4;18;", []Sample{at(12.4, 18.31), at(12, 18.31), at(12.4, 18)}},
		{"T: temp C, D: depth m", "T=18,31 D=4,2", []Sample{at(4.2, 18.31)}},
		{"bufferTemp: temp C/100", "bufferTemp 1834;", []Sample{warm(18.34)}},
		{"T: temp C/100", "T1834", []Sample{warm(18.34)}},
		{"T: temp C, D: depth m", "T18.3 D12.4", []Sample{at(12.4, 18.3)}},
		{"t1: temp C, t2: skip", "T1: 18.3, T2: 20.1", []Sample{warm(18.3)}},
		{"temp C/16", "293", []Sample{warm(18.3125)}},
		{"word", "0191\nfff8\n0x0191\n91 01 4B 46 7F FF 0F 10 25\n91014B467FFF0F1025", []Sample{warm(25.0625), warm(-0.5), warm(25.0625), warm(25.0625), warm(25.0625)}},
		{"depth m, W: word", "4.2 W=0191", []Sample{at(4.2, 25.0625)}},
		{"depth cm, word", "420,0191", []Sample{at(4.2, 25.0625)}},
		{"R: ohms", "R=12490\nR=12.49k\nR: 12490 ohm\nR 12.49 k\xce\xa9", []Sample{warm(20.0058), warm(20.0058), warm(20.0058), warm(20.0058)}},
		{"temp C", "# started\n18.31\n", []Sample{warm(18.31)}},
		{"temp C", "<18.31>", []Sample{warm(18.31)}},
		{"depth m, temp C", "<12.4,18.31>", []Sample{at(12.4, 18.31)}},
		{"temp C", "\xef\xbb\xbf18.31", []Sample{warm(18.31)}},
		{"temp C", "18.31\xc2\xb0C\n18.31\xb0C\n18.31 deg C\n64.4\xb0F\n291.15 K\n18.31 \xe2\x84\x83\n+18.31\n18.\n.5",
			[]Sample{warm(18.31), warm(18.31), warm(18.31), warm(18), warm(18), warm(18.31), warm(18.31), warm(18), warm(0.5)}},
		{"temp C", "[INFO] 18.31\nTemp (F): 64.4\nwater temp = 18.31", []Sample{warm(18.31), warm(18), warm(18.31)}},
		{"temp F, depth ft", "85.0,10", []Sample{at(3.048, 265.0/9)}}, // 85 F is a warm day
		{"depth m, temp C", "10 ft, 18\n120 in, 18\n300 cm, 18", []Sample{at(3.048, 18), at(3.048, 18), at(3, 18)}},
		{"depth m, temp C", "4.2,m,18.31,C\n4.2|18.31\n\"4.2\",\"18.31\"\n4.2 18.31\n[4.2, 18.31]\n4.2,18.31,,", []Sample{
			at(4.2, 18.31), at(4.2, 18.31), at(4.2, 18.31), at(4.2, 18.31), at(4.2, 18.31), at(4.2, 18.31)}},
		{"temp C, depth m", "18.31,OK,4.2\n18.31,OK,4.3", []Sample{at(4.2, 18.31), at(4.3, 18.31)}},
		{"probe: depth m, temp C", "probe: 4.2, 18.3", []Sample{at(4.2, 18.3)}},
		{"depth m, temp C", "-1.5e-02,18.3", []Sample{at(-0.015, 18.3)}},
		{"gauge bar, temp C", "0,18.3", []Sample{at(0, 18.3)}},
		{"Temp: temp C, Depth: depth m", "Temp: 18.31 *C Depth: 4.2 m", []Sample{at(4.2, 18.31)}},
		{"temp F, depth m", "64.4\xc2\xb0 4.2", []Sample{at(4.2, 18)}},
		{"Sensor 1: temp C", "Sensor 1: 18.31 Sensor 2: 20", []Sample{warm(18.31)}},
		{"Reading of sensor 1 (index 0) is: temp C", "Reading of sensor 1 (index 0) is: 18.31", []Sample{warm(18.31)}},
		{"T: temp C, D: skip, E: depth m", "T 18.3 D 1 E 4.2", []Sample{at(4.2, 18.3)}},
		{"T: temp C, D: depth m", "T = 1.83e+01; D = 4.2 metres", []Sample{at(4.2, 18.3)}},
		{"temp C", "18,31 \xb0C", nil}, // two whole numbers, or one
		{"skip, temp C", "18,31 \xb0C", []Sample{warm(31)}},
		{"temp C/1000, skip", "18312,7", []Sample{warm(18.312)}},
	} {
		r := New(parsed(t, c.layout), Options{Thermistor: tenKilohm})
		got, codes := readAll(r, c.text)
		if d := cmp.Diff(c.want, got, cmpopts.EquateApprox(0, 1e-4)); d != "" {
			t.Errorf("%s\n%s\n%v %s", c.layout, c.text, codes, d)
		}
	}
}

// What is exact must be exact: no rounding where the line has the unit itself.
func TestExact(t *testing.T) {
	for _, c := range []struct {
		layout, text string
		want         Sample
	}{
		{"depth m, temp C", "12.4,18.31", at(12.4, 18.31)},
		{"depth mm, temp C/100", "4120,1834", at(4.12, 18.34)},
		{"depth cm, temp C/16", "412,293", at(4.12, 18.3125)},
	} {
		s, err := New(parsed(t, c.layout), Options{}).Line([]byte(c.text))
		if err != nil || s != c.want {
			t.Errorf("%s: %+v, %v", c.text, s, err)
		}
	}
}

func TestRefused(t *testing.T) {
	for _, c := range []struct {
		layout, text string
		code         line.Code
	}{
		// Numbers and words that stand for a fault.
		{"temp C", "85", line.Sentinel}, {"temp C", "85.00", line.Sentinel}, {"temp C", "-127.00", line.Sentinel},
		{"temp F", "185", line.Sentinel}, {"temp F", "-196.60", line.Sentinel}, {"temp K", "358.15", line.Sentinel},
		{"temp C/100", "8500", line.Sentinel}, {"temp C/100", "-12700", line.Sentinel}, {"temp C/16", "1360", line.Sentinel},
		{"temp C", "185 F", line.Sentinel}, {"word", "0550", line.Sentinel},
		{"temp C", "300", line.Sentinel}, {"temp C", "302.0", line.Sentinel}, {"temp F", "304", line.Sentinel},
		{"depth m, temp C", "9999,18", line.Sentinel}, {"depth m, temp C", "4,8888", line.Sentinel},
		{"depth ft, temp C", "-999,18", line.Sentinel}, {"depth m, temp C", "300,18", line.Sentinel},
		{"D: depth m, T: temp C", "D=NaN T=18", line.Sentinel}, {"temp C", "nan", line.Sentinel}, {"T: temp C, D: depth m", "T: nan C D: 4.2 m", line.Sentinel}, {"T: temp C, D: depth m", "T: --- C D: 4.2 m", line.Sentinel},
		{"temp C", "ERROR", line.Sentinel}, {"temp C", "-----", line.Sentinel}, {"temp C", "***", line.Sentinel},
		{"depth m, temp C", "4,-----", line.Sentinel}, {"depth m, temp C", "4.2,ERR", line.Sentinel},
		{"t: temp C", `{"t":null}`, line.Sentinel}, {"t: temp C", `{"t":"NaN"}`, line.Sentinel},
		// What is missing is not zero.
		{"depth m, temp C", ",18.3", line.Empty}, {"depth m, temp C", "4.2,", line.Empty},
		{"D: depth m, T: temp C", "D=, T=18", line.Empty}, {"D: depth m, T: temp C", "D,,T,18", line.Empty},
		{"t: temp C", `{"t":""}`, line.Empty},
		// Broken numbers and units.
		{"depth m, temp C", "4.2,1x.31", line.BadNumber}, {"depth m, temp C", "4..2,18", line.BadNumber},
		{"depth m, temp C", "1.2.3,18", line.BadNumber}, {"depth m, temp C", "4.2,18.3q", line.BadNumber},
		{"temp C", "1234567890123456789", line.BadNumber}, {"temp C", "12:00:05", line.BadNumber},
		{"t: temp C", `{"t":1e999}`, line.BadNumber},
		{"depth m, temp C", "18.3 C,4.2 m", line.BadUnit}, {"temp C/100", "64.4 F", line.BadUnit},
		{"temp C", "3.7 V", line.BadUnit}, {"temp C", "1013 hPa", line.BadUnit},
		// Values no lake has.
		{"temp C", "51", line.OutOfRange}, {"temp F", "20", line.OutOfRange}, {"depth m, temp C", "-3,18", line.OutOfRange},
		{"depth m, temp C", "1001,18", line.OutOfRange}, {"temp K", "18.3", line.OutOfRange}, {"R: ohms", "R=0", line.OutOfRange},
		{"word", "07D0", line.OutOfRange}, {"word", "91 01 4B 46 7F FF 0F 10 24", line.BadChecksum},
		{"gauge Pa, temp C", "99999999,18", line.OutOfRange},
		// Lines of another form.
		{"temp C", "4.2,18.3", line.BadForm}, {"depth m, temp C", "18.3", line.BadForm}, {"depth m, temp C", "1,2,3", line.BadForm},
		{"temp C", "<18.3", line.BadForm}, {"temp C", "18.3>", line.BadForm}, {"temp C", "<", line.BadForm},
		{"t: temp C", `{"t":18.3`, line.BadForm}, {"t: temp C", `{"t":18.3}}`, line.BadForm}, {"t: temp C", "{", line.BadForm},
		{"temp C", strings.Repeat("1 ", 40), line.BadForm},
		{"temp C", "Battery: 3.7", line.Other}, {"temp C", "Battery,3.7", line.Other}, {"temp C", "XMTW,17.9,C", line.Other},
		{"temp C", "air temp 30", line.Other},
		{"temp C", "Ready.", line.Other}, {"T: temp C", "H=55", line.Other}, {"T: temp C", "18.3", line.Other},
		{"nmea", "18.3", line.Other}, {"temp C", "$GPGGA,1,2,3", line.Other},
		{"T: temp C", "T=18.3 T=18.4", line.AskWhich}, {"t: temp C", `{"a":{"t":1},"b":{"t":2}}`, line.AskWhich},
		{"t: temp C", `{"t":18.3,` + strings.Repeat(`"x":1,`, 40) + `"y":2}`, line.BadForm},
		{"t: temp C", `{"x":[[1],{"t":{}}],"y":"hello there","z":true}`, line.Other}, {"t: temp C", "{}", line.Other},
		{"t: temp C", `{"t":[18.3}`, line.BadForm}, {"t: temp C", `{"a":{"t":18.3`, line.BadForm},
		{"R: ohms", "R=ERR", line.Sentinel}, {"gauge bar, temp C", "ERR,18", line.Sentinel}, {"T: temp C", "T12..5", line.Other},
		{"ohms", "12490", line.Fine},
		// What is no line of data.
		{"temp C", "", line.Blank}, {"temp C", " \t\r\n", line.Blank}, {"temp C", "# 18.3", line.Blank}, {"temp C", "// 18.3", line.Blank},
		{"depth m, temp C", "-----", line.Blank}, {"depth m, temp C", "depth_m,temp_c", line.Header}, {"temp C", "Temp", line.Header},
		{"depth m, temp C", "Depth (m);Temp (C)", line.Header},
		{"temp C", "18.3" + strings.Repeat(" ", line.MaxBytes), line.TooLong},
		// Noise, and what would act on a terminal.
		{"temp C", "\x00\xff18.3", line.Garbled}, {"temp C", "\x1b[2J18.3", line.Garbled}, {"temp C", "\x1b]0;x\x0718.3", line.Garbled},
		{"temp C", "18.3\x9b31m", line.Garbled}, {"temp C", "18\x003", line.Garbled},
		{"t: temp C", "{\"t\":\"\\u001b[2J\"}", line.BadNumber},
	} {
		s, err := New(parsed(t, c.layout), Options{Thermistor: tenKilohm}).Line([]byte(c.text))
		if line.CodeOf(err) != c.code {
			t.Errorf("%s: %q: %v (%v), want %v", c.layout, c.text, line.CodeOf(err), err, c.code)
		}
		if err != nil && s != (Sample{}) {
			t.Errorf("%q: refused, yet %+v", c.text, s)
		}
		checkText(t, err)
	}
}

// checkText wants a refusal of this kind with text that a terminal only shows.
func checkText(t testing.TB, err error) {
	t.Helper()
	if err == nil {
		return
	}
	r, ok := err.(*line.Refusal)
	if !ok || r.Code == line.Fine || r.Text == "" || len(r.Text) > 300 {
		t.Fatalf("not a refusal with a text: %#v", err)
	}
	for _, c := range r.Text {
		if !unicode.IsGraphic(c) {
			t.Fatalf("unprintable: %q", r.Text)
		}
	}
}

// 9.80665 m/s2 times 999.10 kg/m3 (IAPWS, 15 C) is 9797.8 Pa for each metre.
func TestPressure(t *testing.T) {
	air := Options{AirPa: 101325}
	for _, c := range []struct {
		layout, text string
		o            Options
		depthM       float64
	}{
		{"pressure Pa, temp C", "199303,15", air, 10}, {"pressure hPa, temp C", "1993.03,15", air, 10},
		{"pressure mbar, temp C", "1993.03,15", air, 10}, {"pressure kPa, temp C", "199.303,15", air, 10},
		{"pressure bar, temp C", "1.99303,15", air, 10}, {"pressure hPa, temp C", "1.99303bar,15", air, 10},
		{"gauge hPa, temp C", "979.78,15", Options{}, 10}, {"gauge psi, temp C", "14.21048,15", Options{}, 10},
		{"temp C, P: pressure bar", "15 P:1.01325", air, 0},
	} {
		s, err := New(parsed(t, c.layout), c.o).Line([]byte(c.text))
		if err != nil || !cmp.Equal(s, at(c.depthM, 15), cmpopts.EquateApprox(0, 0.001)) {
			t.Errorf("%s: %s: %+v, %v", c.layout, c.text, s, err)
		}
	}
	_, err := New(parsed(t, "pressure hPa, temp C"), Options{}).Line([]byte("1993,15"))
	if line.CodeOf(err) != line.AskWhich || !strings.Contains(err.Error(), "air pressure or the altitude") {
		t.Errorf("without the air's pressure: %v", err)
	}
	// Cold water is denser, so the same pressure is a smaller depth.
	r := New(parsed(t, "gauge hPa, temp C"), Options{})
	cold, _ := r.Line([]byte("979.78,4"))
	hot, _ := r.Line([]byte("979.78,30"))
	want := water.Density(4) / water.Density(30)
	if got := hot.DepthM.Value / cold.DepthM.Value; got < want-1e-9 || got > want+1e-9 {
		t.Errorf("depths in the ratio %v, densities in %v", got, want)
	}
	if _, err := New(parsed(t, "ohms"), Options{}).Line([]byte("12490")); line.CodeOf(err) != line.AskWhich {
		t.Errorf("without the thermistor: %v", err)
	}
}

// A layout that Parse would refuse reads nothing.
func TestUnusable(t *testing.T) {
	for _, l := range []Layout{
		{[]Part{{"", Depth, "m"}}}, {[]Part{{"", Temp, ""}}}, {[]Part{{"", Temp, "bar"}}}, {[]Part{{"a:b", Temp, "C"}}}, {[]Part{{"", 99, ""}}},
	} {
		_, err := New(l, Options{}).Line([]byte("18.3"))
		if line.CodeOf(err) != line.AskWhich {
			t.Errorf("%+v: %v", l, err)
		}
		checkText(t, err)
	}
}

// The reader keeps no slice of the line.
func TestLineIsNotKept(t *testing.T) {
	r := New(parsed(t, "D: depth m, T: temp C"), Options{})
	b := []byte("D,4.21")
	if _, err := r.Line(b); line.CodeOf(err) != line.Waiting {
		t.Fatal(err)
	}
	copy(b, "xxxxxx")
	if s, err := r.Line([]byte("T,18.3")); err != nil || s != at(4.21, 18.3) {
		t.Errorf("%+v, %v", s, err)
	}
}

func BenchmarkReader(b *testing.B) {
	for _, c := range []struct{ name, layout, text string }{
		{"columns", "depth m, temp C", "12.4,18.31\r\n"},
		{"named", "T: temp C, D: depth m", "T=18.3 D=4.2\r\n"},
		{"units", "Temp: temp C, Depth: depth m", "Temp: 18.31 C, Depth: 4.2 m\r\n"},
		{"json", "t: temp C, d: depth m", "{\"t\":18.3,\"d\":4.2}\r\n"},
	} {
		b.Run(c.name, func(b *testing.B) {
			r := New(parsed(b, c.layout), Options{})
			text := []byte(c.text)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := r.Line(text); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func TestReaderAllocations(t *testing.T) {
	r := New(parsed(t, "depth m, temp C"), Options{})
	text := []byte("12.4,18.31\r\n")
	if n := testing.AllocsPerRun(100, func() { _, _ = r.Line(text) }); n > 1 {
		t.Errorf("%v allocations a line", n)
	}
}
