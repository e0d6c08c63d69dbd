package page

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"coldseam/chart"
	"coldseam/profile"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/unit"
)

const evil = "</script><img src=x onerror=alert(1)>__f__<!--\u2028\u202e\x00{b}&amp;\""

// hostile is a figure whose every text would run as script, if it could.
func hostile(t testing.TB) chart.Drop {
	d := lake(t, "alder-kettle-july")
	d.Title, d.Short, d.Date, d.Sure = evil, evil, evil, evil
	d.Answer = []string{evil}
	d.Cautions, d.Confirm, d.Warnings = []string{evil}, []string{evil}, []string{evil}
	d.Water, d.Spot, d.Fish = evil, evil, evil
	d.Brief = report.Brief{Title: evil, Warnings: []string{evil}, NoWater: evil, Rows: []report.Row{{Label: evil, Value: evil, Detail: evil}},
		Confidence: evil, Read: []string{evil}, Safety: []string{evil}}
	for i := range d.Zones {
		d.Zones[i].Name = evil
	}
	for i := range d.Marks {
		d.Marks[i].Name = evil
	}
	for i := range d.Readings {
		d.Readings[i].Flag = evil
	}
	return d
}

// No text becomes markup or script, and none is lost.
func TestHostile(t *testing.T) {
	d := hostile(t)
	for _, drops := range [][]chart.Drop{{d}, {d, d}} {
		usual := make([]chart.Drop, len(drops))
		for i := range usual {
			usual[i] = lake(t, "alder-kettle-july")
		}
		o := Options{Script: stub, Still: stillSVG, Title: evil}
		page, tame := written(t, o, drops...), written(t, Options{Script: stub, Still: stillSVG}, usual...)
		for _, tag := range []string{"<script", "</script", "<img", "<!--", "\u2028", "\u202e", "\x00"} {
			if a, b := strings.Count(page, tag), strings.Count(tame, tag); a != b {
				t.Errorf("%q stands %d times in the page, %d without the names", tag, a, b)
			}
		}
		if !strings.Contains(page, "__f__") || !utf8.ValidString(page) {
			t.Error("a name was lost")
		}
		got := dataOf(t, page)
		if z := got.Drops[0].Zones[0].Name; z != plain.Line(evil) || !strings.Contains(z, "</script>") {
			t.Errorf("a zone is called %q", z)
		}
		wellFormed(t, page)
	}
}

// Whatever number is none, the figure is refused and nothing is written.
func TestNotANumber(t *testing.T) {
	for name, spoil := range map[string]func(*chart.Drop, float64){
		"depth of the picture":   func(d *chart.Drop, v float64) { d.DeepestM = v },
		"depth of a reading":     func(d *chart.Drop, v float64) { d.Readings[1].DepthM = v },
		"temperature":            func(d *chart.Drop, v float64) { d.Readings[1].TempC = v },
		"error of a depth":       func(d *chart.Drop, v float64) { d.Readings[1].ErrM = v },
		"error of a temperature": func(d *chart.Drop, v float64) { d.Readings[1].ErrC = v },
		"oxygen":                 func(d *chart.Drop, v float64) { d.Readings[1].Oxygen = profile.Optional{Value: v, Known: true} },
		"depth of the curve":     func(d *chart.Drop, v float64) { d.Curve[5].DepthM = v },
		"curve":                  func(d *chart.Drop, v float64) { d.Curve[5].TempC = v },
		"low":                    func(d *chart.Drop, v float64) { d.Curve[5].LowC = v },
		"high":                   func(d *chart.Drop, v float64) { d.Curve[5].HighC = v },
		"rise":                   func(d *chart.Drop, v float64) { d.Curve[5].RisePerM = v },
		"top of a zone":          func(d *chart.Drop, v float64) { d.Zones[0].TopM = v },
		"foot of a zone":         func(d *chart.Drop, v float64) { d.Zones[0].BottomM = v },
		"mark":                   func(d *chart.Drop, v float64) { d.Marks[0].At.Best = v },
		"low of a mark":          func(d *chart.Drop, v float64) { d.Marks[0].At.Low = v },
		"high of a mark":         func(d *chart.Drop, v float64) { d.Marks[0].At.High = v },
	} {
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			d := lake(t, "alder-kettle-july")
			spoil(&d, v)
			for _, drops := range [][]chart.Drop{{d}, {d, lake(t, "sedge-mere-august")}} {
				var b bytes.Buffer
				if err := Write(&b, Options{Script: stub}, drops); err == nil || !strings.Contains(err.Error(), "no number") || b.Len() > 0 {
					t.Errorf("%s %v: %v, %d bytes", name, v, err, b.Len())
				}
			}
		}
	}
}

// A number that becomes none on its way is refused by the encoder.
func TestTooLarge(t *testing.T) {
	d := lake(t, "alder-kettle-july")
	d.Curve[3].HighC = math.MaxFloat64
	var b bytes.Buffer
	if err := Write(&b, Options{Script: stub}, []chart.Drop{d}); err == nil || b.Len() > 0 {
		t.Errorf("%v, %d bytes", err, b.Len())
	}
}

func TestRefused(t *testing.T) {
	d := lake(t, "alder-kettle-july")
	if err := Write(io.Discard, Options{}, nil); err == nil {
		t.Error("a page of nothing")
	}
	for _, script := range []string{"a </ScRipt> b", "<!-- a", "a<script>", "a\xffb", "a\x00b"} {
		if err := Write(io.Discard, Options{Script: []byte(script)}, []chart.Drop{d}); err == nil {
			t.Errorf("%q was taken", script)
		}
	}
	if err := Write(io.Discard, Options{Script: stub, Licences: "</script>"}, []chart.Drop{d}); err == nil {
		t.Error("licences that end their element were taken")
	}
	full := errors.New("full")
	if err := Write(failing{full}, Options{}, []chart.Drop{d}); !errors.Is(err, full) {
		t.Errorf("a full disk: %v", err)
	}
}

type failing struct{ error }

func (f failing) Write([]byte) (int, error) { return 0, f.error }

var (
	inScript = regexp.MustCompile(`(?s)<(script|style)[^>]*>(.*?)</(?:script|style)>`)
	loads    = regexp.MustCompile(`(?i)\b(?:src|href|action|data|poster|srcset)\s*=\s*"([^"]*)"`)
)

// wellFormed reads a page as tags that open and close in order.
func wellFormed(t *testing.T, page string) {
	t.Helper()
	r := xml.NewDecoder(strings.NewReader(inScript.ReplaceAllString(page, "<$1></$1>")))
	r.Strict, r.AutoClose, r.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	open := 0
	for {
		token, err := r.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		switch token.(type) {
		case xml.StartElement:
			open++
		case xml.EndElement:
			open--
		}
	}
	if open != 0 {
		t.Errorf("%d elements are left open", open)
	}
}

// A page stands alone: nothing in it comes from elsewhere, its policy allows nothing
// else, and what it allows is what is in it.
func TestStandsAlone(t *testing.T) {
	crlf := []byte("var a;\r\nvar b;\rvar c;")
	for _, o := range []Options{{}, {Still: stillSVG}, {Script: crlf, Licences: "Apache License & <others>", Still: stillSVG}} {
		for _, drops := range [][]chart.Drop{{lake(t, "sedge-mere-august")}, three(t)} {
			page := written(t, o, drops...)
			wellFormed(t, page)
			for _, m := range loads.FindAllStringSubmatch(inScript.ReplaceAllString(page, ""), -1) {
				if !strings.HasPrefix(m[1], "data:") {
					t.Errorf("the page loads %q", m[1])
				}
			}
			if strings.Contains(page, "://") && strings.Contains(strings.ReplaceAll(page, "path://", ""), "://") {
				t.Error("the page names an address")
			}
			policy := strings.ReplaceAll(page, "&#43;", "+") // as a browser reads it
			for _, m := range inScript.FindAllStringSubmatch(page, -1) {
				if strings.Contains(m[0], "application/json") || strings.Contains(m[0], "text/plain") {
					continue
				}
				if want := strings.ReplaceAll(hashed(m[2]), "'", "&#39;"); !strings.Contains(policy, want) || strings.Contains(m[2], "\r") {
					t.Errorf("%.60q is not allowed by the policy", m[0])
				}
			}
			for _, want := range []string{"default-src &#39;none&#39;", "img-src data:"} {
				if !strings.Contains(page, want) {
					t.Errorf("no %q", want)
				}
			}
			if strings.Contains(page, "unsafe") || strings.Contains(page, " style=") || strings.Contains(page, " on") && regexp.MustCompile(`\son\w+=`).MatchString(inScript.ReplaceAllString(page, "")) {
				t.Error("the page holds script or style that the policy would refuse")
			}
			if has := strings.Contains(page, "<script"); has != (o.Script != nil) {
				t.Errorf("script: %v", has)
			}
			if has := strings.Contains(policy, base64.StdEncoding.EncodeToString(stillSVG)); has != (o.Still != nil) {
				t.Errorf("still picture: %v", has)
			}
		}
	}
}

// The script's licences stand in the source of the page, word for word, and only where the
// script does; a browser shows nothing of them.
func TestLicencesInSource(t *testing.T) {
	o := Options{Script: stub, Licences: "Apache License\n & NOTICE <1>", Still: stillSVG}
	want := "<script type=\"text/plain\" id=\"licences\">\n" + o.Licences + "\n</script>"
	if !strings.Contains(written(t, o, lake(t, "alder-kettle-july")), want) {
		t.Errorf("no %q in the page", want)
	}
	o.Script = nil
	if strings.Contains(written(t, o, lake(t, "alder-kettle-july")), "Apache") {
		t.Error("licences of a script that is not there")
	}
}

// Whatever the numbers and names of a figure are, its page is well formed and its data
// can be read, or the figure is refused.
func TestAnyFigure(t *testing.T) {
	number := rapid.OneOf(rapid.Float64Range(-40, 400), rapid.Float64Range(-1e300, 1e300), rapid.Just(0.0))
	name := rapid.OneOf(rapid.String(), rapid.Just(evil))
	rapid.Check(t, func(r *rapid.T) {
		var drops []chart.Drop
		for range rapid.IntRange(1, 3).Draw(r, "drops") {
			d := chart.Drop{Title: name.Draw(r, "title"), Short: name.Draw(r, "short"), DeepestM: number.Draw(r, "deepest"),
				Units: unit.System{Depth: unit.Length(rapid.IntRange(0, 5).Draw(r, "depth")), Temp: unit.Temperature(rapid.IntRange(0, 2).Draw(r, "temp"))}}
			for range rapid.IntRange(0, 3).Draw(r, "readings") {
				d.Readings = append(d.Readings, chart.Reading{DepthM: number.Draw(r, "z"), TempC: number.Draw(r, "t"), Used: rapid.Bool().Draw(r, "used"),
					Flag: name.Draw(r, "flag"), Oxygen: profile.Optional{Value: number.Draw(r, "oxygen"), Known: rapid.Bool().Draw(r, "known")}})
			}
			for range rapid.IntRange(0, 4).Draw(r, "points") {
				d.Curve = append(d.Curve, chart.Point{DepthM: number.Draw(r, "z"), TempC: number.Draw(r, "t"), LowC: number.Draw(r, "low"), HighC: number.Draw(r, "high"), RisePerM: number.Draw(r, "rise")})
			}
			d.Zones = []chart.Zone{{Kind: chart.Band, Name: name.Draw(r, "zone"), TopM: number.Draw(r, "top"), BottomM: number.Draw(r, "foot")}}
			d.Marks = []chart.Mark{{Kind: chart.Start, Name: name.Draw(r, "mark"), At: profile.Exactly(number.Draw(r, "at"))}}
			drops = append(drops, d)
		}
		var b bytes.Buffer
		if err := Write(&b, Options{Script: stub}, drops); err != nil {
			if b.Len() > 0 {
				r.Fatal("a page that was refused was written")
			}
			return
		}
		wellFormed(t, b.String())
		if got := dataOf(t, b.String()); len(got.Drops) != len(drops) {
			r.Fatalf("%d drops", len(got.Drops))
		}
	})
}
