package format

import (
	"testing"

	"coldseam/device/line"
	"coldseam/profile"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// The checksums are by the rule of NMEA 0183, XOR between "$" and "*".
func TestSentences(t *testing.T) {
	for _, l := range []string{"nmea", "depth m, temp C", "temp C"} {
		for _, c := range []struct {
			text string
			want Sample
		}{
			{"$YXMTW,17.9,C*1D\r\n", Sample{SurfaceC: profile.Some(17.9)}},
			{"$SDDPT,5.3,0.5,0.0*56", Sample{BottomM: profile.Some(5.8)}},
			{"12:00:05,$SDDBT,7.8,f,2.4,M,1.3,F*0D", Sample{BottomM: profile.Some(2.4)}},
			{"\xff\x00$YXMTW,17.9,C*1D", Sample{SurfaceC: profile.Some(17.9)}},
			{"$YXXDR,C,11.8,C,WTEMP,D,7.0,M,WDEPTH*38", at(7, 11.8)},
			{"$YXXDR,C,11.8,C,WTEMP,", warm(11.8)},
		} {
			s, err := New(parsed(t, l), Options{}).Line([]byte(c.text))
			if err != nil || s != c.want {
				t.Errorf("%s: %q: %+v, %v", l, c.text, s, err)
			}
		}
	}
}

func TestSentencesRefused(t *testing.T) {
	for _, c := range []struct {
		text string
		code line.Code
	}{
		{"$YXMTW,17.75,C*5D", line.BadChecksum}, {"$IIMTW,,C*0D", line.Empty}, {"$YXMTW,85.0,C", line.Sentinel},
		{"$GPGGA,1,2", line.Other}, {"!AIVDM,1,1", line.Other}, {"$YXXDR,P,168700,P,ABS", line.Empty},
	} {
		_, err := New(parsed(t, "temp C"), Options{}).Line([]byte(c.text))
		if line.CodeOf(err) != c.code {
			t.Errorf("%s: %v (%v), want %v", c.text, line.CodeOf(err), err, c.code)
		}
		checkText(t, err)
	}
	s, err := New(Layout{}, Options{Vouched: true}).Line([]byte("$YXMTW,17.75,C*5D"))
	if err != nil || !s.WrongChecksum || s.SurfaceC != profile.Some(17.75) {
		t.Errorf("vouched for: %+v, %v", s, err)
	}
}

// A sounder's depth and a hull's temperature are no reading, nor do they complete one.
func TestSentencesAreNotPaired(t *testing.T) {
	got, _ := readAll(New(parsed(t, "D: depth m, T: temp C"), Options{}), "D,1\n$YXMTW,17.9,C*1D\n$SDDPT,5.3,0.5,0.0*56\nT,18\n")
	want := []Sample{{SurfaceC: profile.Some(17.9)}, {BottomM: profile.Some(5.8)}, at(1, 18)}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// 68 700 Pa over the air's are 7.01 m of water at 9.2 C (999.76 kg/m3 by IAPWS).
func TestToldPressure(t *testing.T) {
	const (
		deep  = "$YXXDR,P,170025,P,ABS,C,9.2,C,PROBE"
		inAir = "$YXXDR,P,101325,P,ABS,C,9.2,C,PROBE"
		gauge = "$YXXDR,P,68700,P,DEPTH,C,9.2,C,PROBE"
		none  = "$YXXDR,P,0,P,DEPTH,C,9.2,C,PROBE"
	)
	const m = 68700 / (999.76 * 9.80665)
	air := Options{AirPa: 101325}
	for _, c := range []struct {
		layout, text string
		o            Options
		want         []Sample
	}{
		{"nmea", inAir + "\n" + deep, air, []Sample{at(0, 9.2), at(m, 9.2)}},
		{"nmea", none + "\n" + gauge, air, []Sample{at(0, 9.2), at(m, 9.2)}},
		{"nmea", deep, air, nil},
		{"nmea", gauge, Options{}, nil},
		{"pressure bar, temp C", deep, air, []Sample{at(m, 9.2)}},
		{"gauge bar, temp C", gauge, Options{}, []Sample{at(m, 9.2)}},
	} {
		got, codes := readAll(New(parsed(t, c.layout), c.o), c.text)
		if d := cmp.Diff(c.want, got, cmpopts.EquateApprox(0, 1e-3)); d != "" {
			t.Errorf("%s %s: %s", c.layout, c.text, d)
		}
		if c.want == nil && codes[0] != line.AskWhich {
			t.Errorf("%s: %v", c.text, codes)
		}
	}
}
