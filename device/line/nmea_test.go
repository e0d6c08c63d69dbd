package line

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// The checksums of these sentences were recomputed by hand from the rule of NMEA
// 0183 (XOR between "$" and "*"); the feet and fathoms are the yard of 1959.
func TestNMEA(t *testing.T) {
	for _, c := range []struct {
		text string
		kind Kind
		v    float64 // bottom depth or surface temperature
		from Datum
		sum  Checksum
	}{
		{"$INMTW,17.9,C*1B", Surface, 17.9, 0, RightChecksum},
		{"$YXMTW,17.9,C*1D\r\n", Surface, 17.9, 0, RightChecksum},
		{"$IIMTW,17.9,C*1c", Surface, 17.9, 0, RightChecksum},
		{"$YXMTW,-0.5,C*0a", Surface, -0.5, 0, RightChecksum},
		{"$YXMTW,4.0,C", Surface, 4, 0, NoChecksum},
		{"03/15/2010,14:08:45.876,$YXMTW,18.5,C*1E", Surface, 18.5, 0, RightChecksum},
		{"$SDDPT,0.5,$SDDPT,3.6,0.0*52", Bottom, 3.6, FromTransducer, RightChecksum},
		{"$SDDPT,0.5,0.5,*7B", Bottom, 1.0, FromSurface, RightChecksum},
		{"$SDDPT,5.3,0.5,0.0*56", Bottom, 5.8, FromSurface, RightChecksum},
		{"$SDDPT,12.0,-0.4,50.0*7A", Bottom, 12, FromTransducer, RightChecksum},
		{"$SDDPT,10,*56", Bottom, 10, FromTransducer, RightChecksum},
		{"$SDDPT,2.4,,*53", Bottom, 2.4, FromTransducer, RightChecksum},
		{"$IIDBT,032.93,f,010.04,M,005.42,F*2C", Bottom, 10.04, FromTransducer, RightChecksum},
		{"$SDDBT,7.8,f,2.4,M,1.3,F*0D", Bottom, 2.4, FromTransducer, RightChecksum},
		{"$23DBS,01.9,f,0.58,M,00.3,F*21", Bottom, 0.58, FromSurface, RightChecksum},
		{"$SDDBS,,,0187.5,M,,*1A", Bottom, 187.5, FromSurface, RightChecksum},
		{"$SDDBK,12.3,f,3.7,M,2.0,F*2F", Bottom, 3.7, FromKeel, RightChecksum},
		{"$SDDBT,10.0,f,,M,,F", Bottom, 3.048, FromTransducer, NoChecksum},
		{"$SDDBT,,f,,M,2.0,F", Bottom, 3.6576, FromTransducer, NoChecksum},
	} {
		s, err := NMEA([]byte(c.text))
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		v, from := s.BottomDepthM()
		if s.Kind == Surface {
			v = s.SurfaceTempC()
		}
		if s.Kind != c.kind || !v.Known || math.Abs(v.Value-c.v) > 1e-12 || from != c.from || s.Checksum != c.sum {
			t.Errorf("%s: %v %v from %v, checksum %v", c.text, s.Kind, v.Value, from, s.Checksum)
		}
		if s.DepthM().Known || s.TempC().Known {
			t.Errorf("%s: passes for a probe's reading", c.text)
		}
	}
}

func TestXDR(t *testing.T) {
	const none = -99
	for _, c := range []struct {
		text        string
		kind        Kind
		d, temp, pa float64
	}{
		{"$YXXDR,C,11.8,C,WTEMP,D,7.0,M,WDEPTH*38", Probe, 7, 11.8, none},
		{"$YXXDR,C,11.8,C,WTEMP,D,7.00,M,WDEPTH,P,1.68,B,WPRES*48", Probe, 7, 11.8, 168000},
		{"$YXXDR,P,168700,P,ABS,C,9.2,C,PROBE*78", Probe, none, 9.2, 168700},
		{"$IIXDR,C,18.2,C,ENV_WATER_T,C,28.69,C,ENV_OUTAIR_T,P,101400,P,ENV_ATMOS_P*7C", Part, none, 18.2, none},
		{"$YXXDR,C,284.95,K,WTEMP,D,7.0,M,WDEPTH", Probe, 7, 11.8, none},
		{"$YXXDR,C,,C,WTEMP,D,7.0,M,WDEPTH", Part, 7, none, none},
		{"$YXXDR,C,11.8,C,WTEMP,", Part, none, 11.8, none},
	} {
		s, err := NMEA([]byte(c.text))
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		d, temp, pa := s.DepthM().Or(none), s.TempC().Or(none), s.PressurePa().Or(none)
		if s.Kind != c.kind || math.Abs(d-c.d)+math.Abs(temp-c.temp)+math.Abs(pa-c.pa) > 1e-9 {
			t.Errorf("%s: %v depth %v temp %v pressure %v", c.text, s.Kind, d, temp, pa)
		}
		if v, _ := s.BottomDepthM(); v.Known {
			t.Errorf("%s: passes for a bottom depth", c.text)
		}
	}
}

func TestNMEARefused(t *testing.T) {
	for _, c := range []struct {
		text string
		code Code
	}{
		// Wrong checksums that are in circulation as if they were right.
		{"$YXMTW,17.75,C*5D", BadChecksum},
		{"$YXMTW,17.8,C*1B", BadChecksum},
		{"$YXMTW,18.5,C*1F", BadChecksum},
		{"$SDDPT,2.4,,*7F", BadChecksum},
		{"$SDDBT,40.0,f,12.2,M,6.7,F*2B", BadChecksum},
		{"$IIDBT,032.93,f,010.04,M,005.42,F*22", BadChecksum},
		{"$23DBS,01.9,f,0.58,M,00.3,F*25", BadChecksum},
		{"$SDDPT,0.5,0.5,*AA", BadChecksum},
		{"$YXMTW,17.9,C*", BadChecksum},
		{"$YXMTW,17.9,C*1", BadChecksum},
		{"$YXMTW,17.9,C*1DX", BadChecksum},
		{"$YXMTW,17.9,C*1G", BadChecksum},
		{"$INMTW,x.9,C*65", BadNumber},
		{"$INMTW,17.9,x*20", BadUnit},
		{"$SDXDR,C,23.x,C,WTHI*0C", AskWhich}, // not named as water's, so not read
		{"$SDXDR,C,23.x,C,WATER", BadNumber},
		{"$SDXDR,C,23.15,C,WTHI*70", AskWhich},
		{"$SDXDR,x,23.15,C,WTHI*4b", Other},
		{"$WIXDR,C,9.7,C,2,U,24.1,N,0,U,24.4,V,1,U,3.510,V,2*46", AskWhich},
		{"$HCXDR,A,171,D,PITCH,A,-37,D,ROLL,G,367,,MAGX,G,2420,,MAGY,G,-8984,,MAGZ*41", Other},
		{"$HCXDR,A,171,D,PITCH,A,-37,D,ROLL,G,367,,MAGX,G,2420,MAGY,G,-8984,,MAGZ*6d", BadForm},
		{"$YXXDR,C,11.8,F,WTEMP,D,7.0,M,WDEPTH", BadUnit},
		{"$YXXDR,C,291,C,WTEMP,D,7.0,M,WDEPTH", OutOfRange}, // kelvins called C
		{"$YXXDR,C,11.8,C,WTEMP,C,12.0,C,WTEMP2", AskWhich},
		{"$YXXDR,C,,C,WTEMP", Empty},
		{"$IIMTW,,C*0D", Empty},
		{"$RAMTW,,C*1E", Empty},
		{"$SDDBT,,f,,M,,F*28", Empty},
		{"$SDDPT,,0.5", Empty},
		{"$SDDBT,10,f,10,M,10,F*29", Disagree},
		{"$SDDBT,7.8,F,2.4,M,1.3,F", BadUnit},
		{"$SDDPT,-1,0", OutOfRange},
		// What a sounder fills in that has lost the bottom (common practice).
		{"$SDDPT,9999,", Sentinel}, {"$SDDPT,9999.0,0.5,", Sentinel}, {"$SDDPT,9999,-0.4,", Sentinel}, {"$SDDPT,8888.00,0", Sentinel},
		{"$SDDBT,9999.0,f,,M,,F", Sentinel}, {"$SDDBT,,f,9999,M,,F", Sentinel}, {"$SDDBT,,f,,M,9999.00,F", Sentinel},
		{"$SDDBS,9999.0,f,3047.7,M,1666.5,F", Sentinel}, {"$SDDBK,9999,f,9999,M,9999,F", Sentinel}, {"$SDDBT,12001.3,f,3658.0,M,2000.2,F", Fine},
		{"$YXMTW,85.0,C", Sentinel},
		{"$YXMTW,-127,C", Sentinel},
		{"$YXMTW,NaN,C", BadNumber},
		{"$YXMTW,1e1,C", BadNumber},
		{"$GPGGA,1,2,3", Other},
		{"$", Other},
		{"", Blank},
		{"18.3", Other},
		{"$YXMTW,\x0017.9,C", Garbled},
		{"$YXMTW,17.9,C" + strings.Repeat(" ", MaxBytes), TooLong},
	} {
		s, err := NMEA([]byte(c.text))
		if CodeOf(err) != c.code || (err != nil) != (s == Sentence{}) {
			t.Errorf("%q: %v (%v), want %v", c.text, CodeOf(err), err, c.code)
		}
	}
}

func TestNMEAOverlong(t *testing.T) {
	if _, err := NMEA([]byte("$YXMTW,17.9,C," + strings.Repeat(",", 200))); err != nil {
		t.Errorf("beyond 82 characters: %v", err)
	}
}

func TestNMEAUnchecked(t *testing.T) {
	s, err := NMEAUnchecked([]byte("$YXMTW,17.75,C*5D"))
	if v := s.SurfaceTempC(); err != nil || !v.Known || v.Value != 17.75 || s.Checksum != WrongChecksum {
		t.Errorf("got %+v, %v", s, err)
	}
	_, err = NMEA([]byte("$YXMTW,17.75,C*5D"))
	if want := "the checksum says 5D, the sentence adds up to 26"; err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

// Every sentence with one character changed must fail its checksum.
func TestChecksumCatchesOneByte(t *testing.T) {
	good := "$YXXDR,C,11.8,C,WTEMP,D,7.0,M,WDEPTH*38"
	for i := 1; i < strings.IndexByte(good, '*'); i++ {
		bad := []byte(good)
		bad[i] ^= 1
		if bad[i] == '*' || bad[i] == '$' {
			continue
		}
		if _, err := NMEA(bad); CodeOf(err) != BadChecksum {
			t.Errorf("%s: %v", bad, err)
		}
	}
}

func TestField(t *testing.T) {
	for _, s := range []string{"0.1", "18.31", "-0.5", "0187.5", "123456.789", "0.062500", "+4"} {
		var want float64
		if _, err := fmt.Sscan(s, &want); err != nil {
			t.Fatal(err)
		}
		if v, err := field([]byte(s)); err != nil || !v.Known || v.Value != want {
			t.Errorf("%s: %v, %v", s, v, err)
		}
	}
	for _, s := range []string{"", "-", ".", "x", "1234567890123456"} {
		if v, err := field([]byte(s)); v.Known || (err == nil) != (s == "") {
			t.Errorf("%q is taken for a number", s)
		}
	}
}

var benchLines = [][]byte{
	[]byte("$YXMTW,17.9,C*1D\r\n"),
	[]byte("$SDDPT,5.3,0.5,0.0*56\r\n"),
	[]byte("$IIDBT,032.93,f,010.04,M,005.42,F*2C\r\n"),
	[]byte("$YXXDR,C,11.8,C,WTEMP,D,7.00,M,WDEPTH,P,1.68,B,WPRES*48\r\n"),
}

func TestNMEANoAllocation(t *testing.T) {
	for _, b := range benchLines {
		if n := testing.AllocsPerRun(100, func() { _, _ = NMEA(b) }); n != 0 {
			t.Errorf("%s: %v allocations", b, n)
		}
	}
}

func BenchmarkNMEA(b *testing.B) {
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		if _, err := NMEA(benchLines[i%len(benchLines)]); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "lines/s")
}
