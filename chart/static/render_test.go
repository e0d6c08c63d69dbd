package static

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"
	"testing"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// Every picture is the same to the byte when it is drawn again.
func TestSameBytes(t *testing.T) {
	t.Parallel()
	july := lake(t, "alder-kettle-july")
	july.Title = "Алдер 鱒 <&> " + july.Title // letters that a PDF gets as outlines
	season := seasonOf(t, 4, 2)
	for _, f := range []Format{SVG, PNG, PDF} {
		for name, draw := range map[string]func(io.Writer) error{
			"column":  func(w io.Writer) error { return Column(w, f, Phone, july) },
			"compare": func(w io.Writer) error { return Compare(w, f, Phone, []chart.Drop{july, july}) },
			"season":  func(w io.Writer) error { return DrawSeason(w, f, Phone, season) },
		} {
			var a, b bytes.Buffer
			if err := errors.Join(draw(&a), draw(&b)); err != nil {
				t.Fatalf("%s as %s: %v", name, f, err)
			}
			if a.Len() < 5000 || !bytes.Equal(a.Bytes(), b.Bytes()) {
				t.Errorf("%s as %s: %d and %d bytes, equal %v", name, f, a.Len(), b.Len(), bytes.Equal(a.Bytes(), b.Bytes()))
			}
			head := map[Format]string{SVG: "<svg ", PNG: "\x89PNG", PDF: "%PDF-"}[f]
			if !bytes.HasPrefix(a.Bytes(), []byte(head)) {
				t.Errorf("%s as %s begins with %q", name, f, a.Bytes()[:8])
			}
		}
	}
}

// svgTexts are the texts of an SVG, by element name, through a strict XML reader.
func svgTexts(t *testing.T, file []byte) map[string][]string {
	t.Helper()
	out := map[string][]string{}
	dec := xml.NewDecoder(bytes.NewReader(file))
	var at string
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			at = tok.Name.Local
			out[at] = append(out[at], "")
			if tok.Name.Space != "http://www.w3.org/2000/svg" {
				t.Errorf("an element %v that is no SVG", tok.Name)
			}
			for _, a := range tok.Attr {
				if strings.HasPrefix(a.Name.Local, "on") {
					t.Errorf("a handler: %v", a)
				}
			}
		case xml.CharData:
			if at != "" {
				out[at][len(out[at])-1] += string(tok)
			}
		case xml.EndElement:
			at = ""
		}
	}
}

// Whatever the angler called the water, it is text and nothing else.
func TestHostileNames(t *testing.T) {
	t.Parallel()
	season := seasonOf(t, 2, 9)
	for _, name := range []string{
		`</script><img src=x onerror=alert(1)>`,
		`"'><svg onload=alert(1)>&amp;<![CDATA[`,
		"bell\a, escape \x1b[31m, null \x00, bad \xff\xfe, no characters \ufffe\uffff",
		"to the left \u202e\u2066 end",
		"zalgo e" + strings.Repeat("\u0301", 500),
		`style="font-family:Liberation Sans;`,
		strings.Repeat("very long ", 10000),
		"מים שקטים", "Тихое озеро", "",
	} {
		d := lake(t, "alder-kettle-july") // afresh: the names are put into it
		d.Title, d.Short = name, name
		d.Zones[0].Name, d.Marks[0].Name, d.Readings[0].Flag, d.Answer[0] = name, name, name, name
		season.Title = name
		for _, f := range []Format{SVG, PNG, PDF} {
			var column, compare, whole bytes.Buffer
			if err := Column(&column, f, Size{200, 200, 5, 72}, d); err != nil {
				t.Fatalf("%.40q as %s: %v", name, f, err)
			}
			if f != SVG {
				continue
			}
			if err := errors.Join(Compare(&compare, f, Desk, []chart.Drop{d, d}), DrawSeason(&whole, f, Phone, season)); err != nil {
				t.Fatalf("%.40q: %v", name, err)
			}
			for _, file := range [][]byte{column.Bytes(), compare.Bytes(), whole.Bytes()} {
				got := svgTexts(t, file)
				for element := range got {
					if !strings.Contains(" svg title g path text ", " "+element+" ") {
						t.Errorf("%.40q: an element %s", name, element)
					}
				}
			}
			if got := svgTexts(t, column.Bytes())["title"]; len(got) != 1 || got[0] != drawable(name) {
				t.Errorf("title %q, want %q", got, drawable(name))
			}
		}
	}
	d := dropOf(t, "water: </script><img src=x onerror=alert(1)>\nunits: ft F\n0 70\n10 60\n20 55\n")
	got := svgTexts(t, columnBytes(t, SVG, Desk, d))
	if want := "</script><img src=x onerror=alert(1)>, for rainbow trout"; got["title"][0] != want || got["text"][0] != want {
		t.Errorf("title %q, text %q, want %q", got["title"][0], got["text"][0], want)
	}
}

func TestFallbackFont(t *testing.T) {
	file := string(columnBytes(t, SVG, Desk, lake(t, "alder-kettle-july")))
	if n, m := strings.Count(file, "<text "), strings.Count(file, `style="font-family:'Liberation Sans',sans-serif;`); n == 0 || n != m {
		t.Errorf("%d texts, %d of them with a font to fall back on", n, m)
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no room") }

func TestRefused(t *testing.T) {
	good := dropOf(t, "units: ft F\n0 70\n10 60\n")
	with := func(change func(*chart.Drop)) chart.Drop {
		d := dropOf(t, "units: ft F\n0 70\n10 60\n20 55\n")
		change(&d)
		return d
	}
	nan, inf := math.NaN(), math.Inf(1)
	for i, tc := range []struct {
		f    Format
		size Size
		drop chart.Drop
		want string
	}{
		{"gif", Desk, good, "use svg, png or pdf"},
		{SVG, Size{}, good, "200 to 4000"},
		{SVG, Size{nan, 600, 10, 96}, good, "200 to 4000"},
		{SVG, Size{600, 600, nan, 96}, good, "text of"},
		{SVG, Size{300, 600, 30, 96}, good, "text of"},
		{PNG, Size{600, 600, 10, 0}, good, "dots to the inch"},
		{PNG, Size{4000, 4000, 10, 600}, good, "million dots"},
		{SVG, Desk, chart.Drop{}, "no readings"},
		{SVG, Desk, with(func(d *chart.Drop) { d.DeepestM = nan }), "cannot be drawn"},
		{SVG, Desk, with(func(d *chart.Drop) { d.DeepestM = 0 }), "cannot be drawn"},
		{SVG, Desk, with(func(d *chart.Drop) { d.Readings[0].TempC = inf }), "cannot be drawn"},
		{SVG, Desk, with(func(d *chart.Drop) { d.Readings[0].ErrM = nan }), "cannot be drawn"},
		{SVG, Desk, with(func(d *chart.Drop) { d.Readings[0].Oxygen.Value = nan }), "cannot be drawn"},
		{SVG, Desk, with(func(d *chart.Drop) { d.Curve[3].HighC = nan }), "cannot be drawn"},
		{SVG, Desk, with(func(d *chart.Drop) { d.Zones[0].TopM = -inf }), "cannot be drawn"},
		{SVG, Desk, with(func(d *chart.Drop) { d.Marks[0].At.Low = nan }), "cannot be drawn"},
	} {
		var b bytes.Buffer
		err := Column(&b, tc.f, tc.size, tc.drop)
		if err == nil || !strings.Contains(err.Error(), tc.want) || b.Len() > 0 {
			t.Errorf("%d: %v, %d bytes; want an error with %q and nothing written", i, err, b.Len(), tc.want)
		}
	}
	if err := Column(full{}, SVG, Desk, good); err == nil || err.Error() != "no room" {
		t.Errorf("a full disk: %v", err)
	}
}

// No picture of any drop holds a number that is none.
func TestNoNaN(t *testing.T) {
	t.Parallel()
	for _, d := range drops(t) {
		for _, s := range sizes {
			for _, u := range []unit.System{{Depth: unit.Foot, Temp: unit.Fahrenheit}, {Depth: unit.Metre, Temp: unit.Celsius}, {}} {
				d.drop.Units = u
				file := columnBytes(t, SVG, s.size, d.drop)
				svgTexts(t, file)
				if bad := firstBad(file); bad != "" {
					t.Errorf("%s, %s: %s", d.name, s.name, bad)
				}
			}
		}
	}
}

func firstBad(svg []byte) string {
	for _, word := range []string{"NaN", "Inf"} {
		if i := bytes.Index(svg, []byte(word)); i >= 0 {
			return fmt.Sprintf("%s in %q", word, svg[max(i-30, 0):min(i+30, len(svg))])
		}
	}
	return ""
}
