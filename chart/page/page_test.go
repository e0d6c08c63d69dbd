package page

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"coldseam/chart"
	"coldseam/profile/unit"
)

// stub stands for the script where only the page around it matters.
var stub = []byte("window.echarts = null;")

var stillSVG = []byte(`<svg xmlns="http://www.w3.org/2000/svg" width="360" height="480" viewBox="0 0 360 480"><rect width="360" height="480" fill="#ffffff"/><path d="M300 20C300 250 60 150 60 460" fill="none" stroke="#0a3a6e" stroke-width="4"/></svg>`)

// readBack is what the tests take out of a page.
type readBack struct {
	Option struct {
		Series []struct {
			ID       string            `json:"id"`
			Data     []json.RawMessage `json:"data"`
			MarkArea struct {
				Data [][]struct {
					Name  string    `json:"name"`
					Coord []float64 `json:"coord"`
				} `json:"data"`
			} `json:"markArea"`
		} `json:"series"`
	} `json:"option"`
	Drops []under `json:"drops"`
}

var dataElement = regexp.MustCompile(`(?s)<script type="application/json" id="data">(.*?)</script>`)

func dataOf(t *testing.T, page string) readBack {
	t.Helper()
	m := dataElement.FindStringSubmatch(page)
	if m == nil {
		t.Fatal("the page has no data")
	}
	var out readBack
	if err := json.Unmarshal([]byte(m[1]), &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// points gives the points of a series, whether they have names or not.
func (r readBack) points(t *testing.T, id string) [][]float64 {
	t.Helper()
	for _, s := range r.Option.Series {
		if s.ID != id {
			continue
		}
		var out [][]float64
		for _, raw := range s.Data {
			var named item
			if err := json.Unmarshal(raw, &named.Value); err != nil {
				if err := json.Unmarshal(raw, &named); err != nil {
					t.Fatal(err)
				}
			}
			out = append(out, named.Value)
		}
		return out
	}
	t.Fatalf("no series %q", id)
	return nil
}

// The numbers in a page are the figure's, in the angler's units.
func TestNumbers(t *testing.T) {
	for _, name := range []string{"alder-kettle-july", "sedge-mere-august", "alder-kettle-january"} {
		d := lake(t, name)
		u := d.Units.Shown()
		got := dataOf(t, written(t, Options{Script: stub}, d))
		same := func(what string, got, want float64) {
			t.Helper()
			if !(math.Abs(got-want) <= 5.1e-5) { // four decimals
				t.Errorf("%s: %s is %v, want %v", name, what, got, want)
			}
		}
		readings := got.points(t, "readings")
		if len(readings) != len(d.Readings) {
			t.Fatalf("%s: %d readings, want %d", name, len(readings), len(d.Readings))
		}
		for i, r := range d.Readings {
			same("temperature", readings[i][0], u.Temp.FromC(r.TempC))
			same("depth", readings[i][1], u.Depth.From(r.DepthM))
			if text := strings.Join(got.Drops[0].Readings[i].Lines, "\n"); !strings.Contains(text, fmt.Sprintf("read %.1f ± ", u.Temp.FromC(r.TempC))) || !strings.Contains(text, fmt.Sprintf(" at %.4g ", u.Depth.From(r.DepthM))) {
				t.Errorf("%s: reading %d says %q", name, i, text)
			}
		}
		var curve [][]float64
		for i := range runs(d.Curve) {
			part := got.points(t, "curve"+strconv.Itoa(i))
			if i > 0 {
				part = part[1:] // runs meet in a point
			}
			curve = append(curve, part...)
		}
		ring := got.points(t, "ribbon")
		rise := got.points(t, "density")
		n := len(d.Curve)
		if len(curve) != n || len(ring) != 2*n+1 || len(rise) != n || len(got.Drops[0].Curve) != n {
			t.Fatalf("%s: %d, %d, %d, %d points of %d", name, len(curve), len(ring), len(rise), len(got.Drops[0].Curve), n)
		}
		for i, q := range d.Curve {
			z := u.Depth.From(q.DepthM)
			same("curve", curve[i][0], u.Temp.FromC(q.TempC))
			same("depth of curve", curve[i][1], z)
			same("low", ring[i][0], u.Temp.FromC(q.LowC))
			same("depth of low", ring[i][1], z)
			same("high", ring[2*n-1-i][0], u.Temp.FromC(q.HighC))
			same("depth of high", ring[2*n-1-i][1], z)
			same("rise of density", rise[i][0], q.RisePerM*u.Depth.Metres(1))
			under := got.Drops[0].Curve[i]
			for k, want := range []float64{z, u.Temp.FromC(q.TempC), u.Temp.FromC(q.LowC), u.Temp.FromC(q.HighC), q.RisePerM * u.Depth.Metres(1)} {
				same("under the finger", under[k], want)
			}
		}
		for _, s := range got.Option.Series {
			if s.ID != "lanes" {
				continue
			}
			if len(s.MarkArea.Data) != len(d.Zones) {
				t.Fatalf("%s: %d areas, want %d", name, len(s.MarkArea.Data), len(d.Zones))
			}
			for i, z := range d.Zones {
				a := s.MarkArea.Data[i]
				if len(a) != 2 || a[0].Name != z.Name {
					t.Fatalf("%s: area %+v, want %s by two corners", name, a, z.Name)
				}
				same("top of "+z.Name, a[0].Coord[1], u.Depth.From(z.TopM))
				same("foot of "+z.Name, a[1].Coord[1], u.Depth.From(z.BottomM))
			}
		}
		for i, m := range d.Marks {
			for _, at := range got.points(t, "mark"+strconv.Itoa(i)) {
				same(m.Name, at[1], u.Depth.From(m.At.Best))
			}
		}
	}
}

// Oxygen keeps its own numbers and axis.
func TestOxygen(t *testing.T) {
	d := lake(t, "sedge-mere-august")
	got := dataOf(t, written(t, Options{Script: stub}, d)).points(t, "oxygen")
	if len(got) != len(d.Readings) {
		t.Fatalf("%d values", len(got))
	}
	for i, r := range d.Readings {
		if math.Abs(got[i][0]-r.Oxygen.Value) > 5.1e-5 {
			t.Errorf("oxygen %v, want %v", got[i][0], r.Oxygen.Value)
		}
	}
}

// The numbers first and large are those of the answer at a glance, and those who see no
// picture are told them in its place.
func TestNumbersFirst(t *testing.T) {
	for _, name := range []string{"alder-kettle-july", "sedge-mere-august", "alder-kettle-january"} {
		d := lake(t, name)
		page := written(t, Options{Script: stub, Still: stillSVG, Scene: stillSVG}, d)
		for _, r := range d.Brief.Rows {
			want := "<dt>" + htmlText(r.Label) + "</dt><dd>" + htmlText(r.Value) + "</dd>"
			if r.Detail != "" {
				want += `<dd class="detail">` + htmlText(r.Detail) + "</dd>"
			}
			if !strings.Contains(page, want) {
				t.Errorf("%s: no %s", name, want)
			}
		}
		alts := regexp.MustCompile(`(?:alt|aria-label)="([^"]*)"`).FindAllStringSubmatch(page, -1)
		said := 0
		for _, a := range alts {
			if strings.Contains(a[1], htmlText(d.Brief.Sentence())) {
				said++
			}
		}
		if said != 3 { // the drawing, the still picture and the moving one
			t.Errorf("%s: %d of 3 pictures say the answer", name, said)
		}
	}
}

func TestSameBytes(t *testing.T) {
	for _, o := range []Options{{}, {Script: stub, Still: stillSVG, Title: "a lake"}} {
		for _, drops := range [][]chart.Drop{{lake(t, "alder-kettle-july")}, three(t)} {
			if first := written(t, o, drops...); first != written(t, o, drops...) {
				t.Error("two pages differ")
			}
		}
	}
}

// A page is small without its script.
func TestSize(t *testing.T) {
	b := written(t, Options{Script: stub}, lake(t, "alder-kettle-july"))
	t.Logf("%d bytes without script and still picture", len(b))
	if len(b) > 200_000 {
		t.Errorf("%d bytes", len(b))
	}
}

// The numbers stand first, then the drawing to scale, temperature against depth, what to
// confirm at the anchor, the readings, all of them, and the cautions.
func TestOrder(t *testing.T) {
	d := figureOf(t, odd)
	page := written(t, Options{Script: stub, Scene: stillSVG}, d)
	at := -1
	for _, want := range []string{d.Title, `class="numbers"`, `class="scene`, `id="picture"`, d.Brief.Confidence, d.Confirm[0], "<table>", d.Cautions[0], d.Answer[0]} {
		i := strings.Index(inScript.ReplaceAllString(page, ""), htmlText(want))
		if i <= at {
			t.Errorf("%q stands at %d, after %d", want, i, at)
		}
		at = i
	}
	for _, want := range []string{"720.0 ± ", "slipped digit, left out", ">300 ", "warmer below", "only in the table: 300 ft"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q", want)
		}
	}
	if n := strings.Count(page, "<tr><th scope=\"row\">"); n != len(d.Readings) {
		t.Errorf("%d rows, want %d", n, len(d.Readings))
	}
	for _, r := range dataOf(t, page).points(t, "off") {
		if r[0] > 90 || r[2] < 700 {
			t.Errorf("the reading that was left out stands at %v", r)
		}
	}
	drops := three(t)
	page = written(t, Options{Script: stub}, drops...)
	if n := strings.Count(page, "<details"); n != 3 || strings.Count(page, "<table>") != 3 || strings.Count(page, "<details open") != 1 {
		t.Errorf("%d parts", n)
	}
}

func htmlText(s string) string {
	if strings.HasPrefix(s, "id=") || strings.HasPrefix(s, "class=") || strings.HasPrefix(s, "<") {
		return s
	}
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", "'", "&#39;", `"`, "&#34;", "+", "&#43;").Replace(s)
}

// Columns with little in them make a page too.
func TestFewReadings(t *testing.T) {
	drops := []chart.Drop{{}, {Units: unit.System{Depth: unit.Foot, Temp: unit.Fahrenheit}, Short: "empty"}}
	for _, page := range []string{"units: ft F\n0 70\n", "units: m C\n0 0.5\n2 2\n5 3.8\n", "units: ft F\n0 80\n10 79.8\n", odd, "units: m C\n0 20 DO 0\n5 10 DO 0\n"} {
		drops = append(drops, figureOf(t, page))
	}
	for _, d := range drops {
		got := dataOf(t, written(t, Options{Script: stub}, d))
		for _, p := range got.points(t, "readings") {
			if p[1] < 0 {
				t.Errorf("%+v", p)
			}
		}
	}
	page := written(t, Options{Script: stub}, drops...)
	for i, u := range dataOf(t, page).Drops { // one without a date is called by its place
		if u.Name == "" || !strings.Contains(page, "<summary>"+u.Name+"</summary>") {
			t.Errorf("drop %d is called %q", i, u.Name)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	script, err := os.ReadFile("../asset/echarts.min.js")
	if err != nil {
		script = bytes.Repeat([]byte("var a = 1;\n"), 90_000) // about as long
	}
	d := lake(b, "alder-kettle-july")
	b.ReportAllocs()
	for b.Loop() {
		if err := Write(io.Discard, Options{Script: script, Still: stillSVG}, []chart.Drop{d}); err != nil {
			b.Fatal(err)
		}
	}
}
