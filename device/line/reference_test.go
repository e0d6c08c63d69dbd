package line

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/expect"
)

// reference is what the reference library makes of a sentence.
type reference struct {
	Checksum string `json:"checksum"` // right, wrong, none, not read
	Fields   []any  `json:"fields"`   // numbers, words, nil for an empty number
}

// readByReference has Debian's pynmea2 read the sentences.
func readByReference(t *testing.T, sentences []string) []reference {
	t.Helper()
	cmd := exec.Command(expect.Python(t, "pynmea2"), filepath.Join("testdata", "nmea_check.py"))
	cmd.Stdin = strings.NewReader(strings.Join(sentences, "\n") + "\n")
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, stderr.Bytes())
	}
	var refs []reference
	for dec := json.NewDecoder(bytes.NewReader(out)); dec.More(); {
		var r reference
		if err := dec.Decode(&r); err != nil {
			t.Fatal(err)
		}
		refs = append(refs, r)
	}
	if len(refs) != len(sentences) {
		t.Fatalf("%d answers for %d sentences", len(refs), len(sentences))
	}
	return refs
}

// TestNMEAAgainstReference compares verdicts on checksums and values, exactly, with
// those of pynmea2 on sentences made at random.
func TestNMEAAgainstReference(t *testing.T) {
	r := rand.New(rand.NewSource(183))
	var sentences []string
	for range 4000 {
		sentences = append(sentences, randomSentence(r))
	}
	checksums, codes := map[string]int{}, map[Code]int{}
	for i, ref := range readByReference(t, sentences) {
		text := sentences[i]
		checksums[ref.Checksum]++
		strict, err := NMEA([]byte(text))
		if bad := ref.Checksum == "wrong" || ref.Checksum == "not read"; bad != (CodeOf(err) == BadChecksum) {
			t.Errorf("%s: reference says %s, here %v", text, ref.Checksum, err)
		}
		if ref.Checksum == "not read" { // a checksum of one digit: nothing to compare
			continue
		}
		want, code := expected(text[3:6], ref.Fields)
		codes[code]++
		got, err := NMEAUnchecked([]byte(text))
		if CodeOf(err) != code {
			t.Errorf("%s: %v, want %v of the reference's %v", text, err, code, ref.Fields)
			continue
		}
		if err != nil {
			continue
		}
		if want.Checksum = map[string]Checksum{"right": RightChecksum, "wrong": WrongChecksum, "none": NoChecksum}[ref.Checksum]; got != want {
			t.Errorf("%s: %+v, want %+v", text, got, want)
		}
		if ref.Checksum != "wrong" && strict != got {
			t.Errorf("%s: NMEA gives %+v, NMEAUnchecked %+v", text, strict, got)
		}
	}
	t.Logf("checksums %v; codes %v", checksums, codes)
	for _, c := range []string{"right", "wrong", "none", "not read"} {
		if checksums[c] < 200 {
			t.Errorf("only %d sentences with checksum %s", checksums[c], c)
		}
	}
	for _, c := range []Code{Fine, Empty, BadNumber, BadUnit, OutOfRange, Disagree, AskWhich, Other} {
		if codes[c] < 10 {
			t.Errorf("only %d sentences of code %v", codes[c], c)
		}
	}
}

// expected is what the package documents for the fields that the reference read.
func expected(formatter string, fields []any) (Sentence, Code) {
	s := Sentence{Formatter: formatter}
	fields = append(fields, nil, nil, nil, nil, nil) // fields left out are empty
	switch formatter {
	case "MTW":
		c, code := wanted(fields[0])
		switch {
		case code != Fine:
			return s, code
		case fields[1] != "C":
			return s, BadUnit
		case c < -5 || c > 50:
			return s, OutOfRange
		}
		s.Kind, s.temp = Surface, profile.Some(c)
		return s, Fine
	case "DPT":
		m, code := wanted(fields[0])
		if code != Fine {
			return s, code
		}
		if up, code := wanted(fields[1]); code == BadNumber {
			return s, code
		} else if up > 0 {
			m, s.datum = m+up, FromSurface
		}
		return bottom(s, m)
	case "XDR":
		return expectedXDR(s, fields[:len(fields)-5])
	}
	s.datum = map[string]Datum{"DBT": FromTransducer, "DBS": FromSurface, "DBK": FromKeel}[formatter]
	var m [3]profile.Optional
	for i, u := range []struct {
		letter string
		metres float64
	}{{"f", 0.3048}, {"M", 1}, {"F", 1.8288}} {
		v, code := wanted(fields[2*i])
		if code == BadNumber {
			return s, code
		}
		if code == Empty {
			continue
		}
		if fields[2*i+1] != u.letter {
			return s, BadUnit
		}
		m[i] = profile.Some(v * u.metres)
	}
	best := m[1]
	for _, v := range []profile.Optional{m[0], m[2]} {
		if !v.Known {
			continue
		}
		if !best.Known {
			best = v
		}
		if off := max(v.Value-best.Value, best.Value-v.Value); off > 0.2+0.05*max(best.Value, -best.Value) {
			return s, Disagree
		}
	}
	if !best.Known {
		return s, Empty
	}
	return bottom(s, best.Value)
}

// expectedXDR knows the few names that randomSentence uses.
func expectedXDR(s Sentence, fields []any) (Sentence, Code) {
	unnamed, empty := false, false
	for i := 0; i+3 < len(fields); i += 4 {
		kind, unit := fields[i], fields[i+2]
		var slot *profile.Optional
		factor, shift, lo, hi := 1.0, 0.0, 0.0, 0.0
		switch fields[i+3] {
		case "WTEMP":
			slot, lo, hi = &s.temp, -5, 50
			if unit == "K" {
				shift = -273.15
			} else if unit != "C" {
				factor = 0
			}
		case "WDEPTH":
			slot, lo, hi = &s.depth, -2, 1000
			if unit != "M" {
				factor = 0
			}
		case "WPRES":
			slot, lo, hi = &s.pressure, 0, 1e7
			if unit == "B" {
				factor = 1e5
			} else if unit != "P" {
				factor = 0
			}
		default: // of the air, or of nothing that is read
			unnamed = unnamed || kind == "C" && fields[i+3] != "OUTAIR"
			continue
		}
		v, code := wanted(fields[i+1])
		switch {
		case code == Empty:
			empty = true
			continue
		case code != Fine:
			return s, code
		case slot.Known:
			return s, AskWhich
		case factor == 0:
			return s, BadUnit
		}
		if v = v*factor + shift; v < lo || v > hi {
			return s, OutOfRange
		}
		*slot = profile.Some(v)
	}
	switch {
	case s.temp.Known && (s.depth.Known || s.pressure.Known):
		s.Kind = Probe
	case s.temp.Known || s.depth.Known || s.pressure.Known:
		s.Kind = Part
	case empty:
		return s, Empty
	case unnamed:
		return s, AskWhich
	default:
		return s, Other
	}
	return s, Fine
}

func wanted(field any) (float64, Code) {
	switch v := field.(type) {
	case nil:
		return 0, Empty
	case float64:
		return v, Fine
	}
	return 0, BadNumber
}

func bottom(s Sentence, m float64) (Sentence, Code) {
	if m < 0 || m > 11000 {
		return s, OutOfRange
	}
	s.Kind, s.depth = Bottom, profile.Some(m)
	return s, Fine
}

// randomSentence makes a sentence, mostly whole, with a checksum that is right,
// wrong, missing or a digit short.
func randomSentence(r *rand.Rand) string {
	pick := func(words ...string) string { return words[r.Intn(len(words))] }
	number := func(lo, hi float64) string {
		switch r.Intn(20) {
		case 0:
			return ""
		case 1:
			return pick("x", "1.2.3", "-", "12,5", "--3")
		}
		format := pick("%.0f", "%.1f", "%.2f", "%05.1f", "%.4f", "%+.1f", " %.1f ", "%.9f")
		return fmt.Sprintf(format, lo+(hi-lo)*r.Float64())
	}
	formatter := pick("MTW", "DPT", "DBT", "DBS", "DBK", "XDR")
	body := pick("SD", "YX", "II", "IN", "23") + formatter
	switch formatter {
	case "MTW":
		body += "," + number(-8, 55) + "," + pick("C", "C", "C", "C", "C", "C", "C", "F", "")
	case "DPT":
		body += "," + number(-1, 60) + "," + pick(number(-1, 2), number(-1, 2), "") + pick("", ","+number(0, 100), ",")
	case "XDR":
		for range 1 + r.Intn(4) {
			switch r.Intn(6) {
			case 0, 1:
				body += ",C," + number(-8, 55) + "," + pick("C", "C", "C", "C", "K") + ",WTEMP"
			case 2:
				body += ",D," + number(-3, 40) + "," + pick("M", "M", "M", "M", "f") + ",WDEPTH"
			case 3:
				body += ",P," + number(-0.1, 4) + "," + pick("B", "B", "P", "X") + ",WPRES"
			case 4:
				body += ",C," + number(-8, 55) + ",C," + pick("OUTAIR", "THREE")
			case 5:
				body += ",A," + number(-90, 90) + ",D,PITCH"
			}
		}
		body = strings.ReplaceAll(body, "12,5", "12;5") // keep the groups whole
	default:
		m := 40 * r.Float64()
		f, fm := m/0.3048, m/1.8288
		if r.Intn(8) == 0 {
			f *= 1.5
		}
		body += fmt.Sprintf(pick(",%.1f,f,%.1f,M,%.1f,F", ",%.2f,f,%.3f,M,%.2f,F", ",%05.1f,f,%05.2f,M,%05.2f,F"), f, m, fm)
		switch r.Intn(8) {
		case 0:
			body = strings.Replace(body, fmt.Sprintf("%.1f", m), "", 1)
		case 1:
			body = body[:6] + number(0, 60) + ",f,,M,,F"
		case 2:
			body = body[:6] + ",f,,M," + number(0, 20) + "," + pick("F", "M")
		case 3:
			body = body[:6] + ",,,,,"
		}
	}
	var sum byte
	for _, c := range []byte(body) {
		sum ^= c
	}
	switch r.Intn(8) {
	case 0:
		return "$" + body
	case 1:
		return fmt.Sprintf("$%s*%02X", body, sum^byte(1+r.Intn(255)))
	case 2:
		return fmt.Sprintf("$%s*%X", body, sum>>4)
	case 3:
		return fmt.Sprintf("$%s*%02x\r", body, sum)
	}
	return fmt.Sprintf("$%s*%02X", body, sum)
}

// TestNMEADiffersFromReference lists where the package and pynmea2 differ on
// purpose.
func TestNMEADiffersFromReference(t *testing.T) {
	cases := []struct {
		text, checksum string // what the reference says
		code           Code   // what NMEA says
		why            string
	}{
		{"03/15/2010,14:08:45.876,$YXMTW,18.5,C*1E", "not read", Fine, "a logger's time stamp stands before the sentence"},
		{"$SDDPT,0.5,$SDDPT,3.6,0.0*52", "wrong", Fine, "a sentence that was cut off stands before a whole one"},
		{"YXMTW,17.9,C*1D", "right", Other, "without $ the start may be lost"},
		{"$yxmtw,17.9,C*3D", "right", Other, "formatters are in upper case"},
		{"$YXMTW,1.79E1,C", "none", BadNumber, "no instrument sends exponents"},
		{"$YXMTW,NaN,C", "none", BadNumber, "NaN is no temperature"},
		{"$YXMTW,1_7,C", "none", BadNumber, "an underscore is noise"},
		{"$YXMTW,64.2,F", "none", BadUnit, "the sentence is defined in C alone"},
		{"$YXMTW,85.0,C", "none", Sentinel, "a sensor that has not measured"},
		{"$SDDBT,10,f,10,M,10,F*29", "right", Disagree, "one depth in three units must agree"},
		{"$HCXDR,A,171,D,PITCH,A,-37,D,ROLL,G,367,,MAGX,G,2420,MAGY,G,-8984,,MAGZ*6d", "right", BadForm, "a group too short shifts the rest"},
		{"$HCHDM,181.2,M", "none", Other, "no depth, no temperature"},
	}
	var sentences []string
	for _, c := range cases {
		sentences = append(sentences, c.text)
	}
	for i, ref := range readByReference(t, sentences) {
		c := cases[i]
		if _, err := NMEA([]byte(c.text)); ref.Checksum != c.checksum || CodeOf(err) != c.code {
			t.Errorf("%s (%s): reference %s, here %v", c.text, c.why, ref.Checksum, err)
		}
	}
}
