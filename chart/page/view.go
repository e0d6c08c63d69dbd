package page

import (
	"bytes"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"errors"
	"fmt"
	"html/template"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"coldseam/chart"
	"coldseam/profile/plain"
)

//go:embed page.html season.html shared.html
var frameFiles embed.FS

//go:embed page.css
var styleText string

//go:embed page.js
var scriptText string

// frames are the page of drops and that of a season, with the parts that they share,
// read when a page is first written: most commands write none.
var frames = sync.OnceValue(func() *template.Template {
	return template.Must(template.ParseFS(frameFiles, "*.html"))
})

// head is what every page begins with.
type head struct {
	Title  string
	Parts  []part // of the title
	Policy string
	Style  template.CSS
}

// view is what the page's frame is filled with. Only Style, Script, Own, Licences, Data,
// Still, Scene and Narrow are trusted as they are: the first four are ours or the caller's, Data
// comes from the JSON encoder and pictures are base64.
type view struct {
	head
	Script, Own template.JS
	Licences    template.HTML
	Data        template.JS
	Still       template.URL
	Scene       template.URL
	Narrow      template.Srcset
	Lead        sheet
	Several     bool
	Drops       []sheet
	Keys        []key
	Outside     string
}

// sheet is one drop in words.
type sheet struct {
	Parts         []part // of its title
	Short         string
	Confidence    string
	Warnings      []string
	NoWater       string
	Numbers       []number
	Today         []string // cautions for today that are no warnings
	Words         []string // the answer in full
	Confirm       []string
	Read          []string // how the page was read
	Safety        []string
	Says          string // the answer in a sentence, for those who see no picture
	Depth, Temp   string // units
	Oxygen, Notes bool   // columns of the table
	Rows          []row
	Last          bool
}

// number is one number of the answer; a long one takes the page's whole width.
type number struct {
	Label, Value, Detail string
	Wide                 bool
}

// row is one reading in the table.
type row struct{ Depth, Temp, Oxygen, Note string }

// key names one kind of thing in the picture and switches it on and off.
type key struct {
	Name, Text string
	Off        bool
	Look       style
	Area       string // the fill of an area; "": it is none
	Barred     bool
}

func newView(o Options, drops []chart.Drop) (view, error) {
	last := drops[len(drops)-1]
	v := view{head: head{Title: plain.Line(o.Title), Style: template.CSS(styleText)}, Several: len(drops) > 1}
	if v.Title == "" {
		v.Title = titleOf(drops)
	}
	v.Parts = parts(v.Title, drops...)
	v.Still, v.Scene, v.Narrow = embedded(o.Still), embedded(o.Scene), template.Srcset(embedded(o.Narrow))
	for i, d := range drops {
		s := sheetOf(d)
		s.Short = shortOf(d, i)
		s.Last = i == len(drops)-1
		v.Drops = append(v.Drops, s)
	}
	v.Lead = v.Drops[len(drops)-1]
	p := newPlot(last.Units.Shown(), drops)
	if v.Keys = keysOf(p, drops); !v.Several {
		v.Outside = outside(p, last)
	}
	if len(o.Script) > 0 {
		script, err := inline(o.Script)
		if err != nil {
			return view{}, err
		}
		licences, err := inline([]byte(o.Licences))
		if err != nil {
			return view{}, fmt.Errorf("its licences: %w", err)
		}
		encoded, err := encoded(p, drops)
		if err != nil {
			return view{}, err
		}
		v.Licences = template.HTML(licences)
		v.Script, v.Own, v.Data = template.JS(script), template.JS(scriptText), template.JS(encoded)
	}
	scripts := "'none'"
	if v.Script != "" {
		scripts = hashed(string(v.Script)) + " " + hashed(string(v.Own))
	}
	v.Policy = policy("script-src " + scripts + "; ")
	return v, nil
}

// policy lets a page use its own style and show its own pictures, and nothing else from
// anywhere but what more it is given.
func policy(more string) string {
	return "default-src 'none'; " + more + "style-src " + hashed(styleText) + "; img-src data:; base-uri 'none'; form-action 'none'"
}

// embedded is the address of a picture that stands in the page.
func embedded(svg []byte) template.URL {
	if len(svg) == 0 {
		return ""
	}
	return template.URL("data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(svg))
}

// titleOf names a page that was given no title.
func titleOf(drops []chart.Drop) string {
	n := len(drops)
	if n == 1 {
		return plain.Line(drops[0].Title)
	}
	return strconv.Itoa(n) + " drops, " + shortOf(drops[0], 0) + " to " + shortOf(drops[n-1], n-1)
}

func hashed(s string) string {
	sum := sha256.Sum256([]byte(s))
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// inline makes a script ready to stand in a page. Browsers read CR LF as LF there, and
// the hash is of what they read.
func inline(script []byte) ([]byte, error) {
	script = bytes.ReplaceAll(bytes.ReplaceAll(script, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	if !utf8.Valid(script) || bytes.IndexByte(script, 0) >= 0 {
		return nil, errors.New("the script is not text in UTF-8")
	}
	low := bytes.ToLower(script)
	for _, end := range []string{"</script", "<script", "<!--"} {
		if bytes.Contains(low, []byte(end)) {
			return nil, errors.New("the script holds " + end + ", which would end it too early")
		}
	}
	return script, nil
}

func sheetOf(d chart.Drop) sheet {
	u, b := d.Units.Shown(), d.Brief
	s := sheet{
		Parts: parts(plain.Line(d.Title), d), Confidence: plain.Line(b.Confidence), Warnings: allShown(b.Warnings), NoWater: plain.Line(b.NoWater),
		Today: allShown(b.Safety), Words: allShown(d.Answer), Confirm: allShown(d.Confirm), Read: allShown(b.Read),
		Safety: append(allShown(d.Warnings), allShown(d.Cautions)...), Says: plain.Line(b.Sentence()),
		Depth: u.Depth.String(), Temp: u.Temp.String(),
	}
	for i, r := range b.Rows {
		n := number{plain.Line(r.Label), plain.Line(r.Value), plain.Line(r.Detail), false}
		n.Wide = i == 0 || len([]rune(n.Value)) > wide+4
		s.Numbers = append(s.Numbers, n)
	}
	for _, r := range d.Readings {
		w := row{deepText(u, r), warmText(u, r), "", note(r)}
		if r.Oxygen.Known {
			s.Oxygen, w.Oxygen = true, oxygenText(r.Oxygen)
		}
		s.Notes = s.Notes || w.Note != ""
		s.Rows = append(s.Rows, w)
	}
	return s
}

func allShown(texts []string) []string {
	var out []string
	for _, t := range texts {
		out = append(out, plain.Line(t))
	}
	return out
}

// keysOf names what is in the picture.
func keysOf(p plot, drops []chart.Drop) []key {
	var out []key
	if len(drops) > 1 {
		for i, d := range drops {
			out = append(out, key{Name: "d" + strconv.Itoa(i), Text: shortOf(d, i), Look: overlay(i, len(drops))})
		}
		if p.hasOxygen {
			out = append(out, key{Name: "oxygen", Text: "oxygen (thin lines)", Off: true, Look: style{Color: ink, Width: 1}})
		}
		return out
	}
	return singleKeys(p, drops[0])
}

// singleKeys names what is in the picture of one drop, in the words of the still one.
func singleKeys(p plot, d chart.Drop) []key {
	has := func(is func(r chart.Reading, off bool) bool) bool {
		return slices.ContainsFunc(d.Readings, func(r chart.Reading) bool {
			t := p.tempOf(r.TempC)
			return is(r, t > p.temp.max || t < p.temp.min)
		})
	}
	var out []key
	add := func(is bool, k key) {
		if is {
			out = append(out, k)
		}
	}
	read := key{Name: "readings", Text: chart.SaidReading, Look: readingStyle, Barred: true}
	if len(d.Readings) > chart.Crowded {
		read.Text, read.Barred = chart.SaidCrowded, false
	}
	add(has(func(r chart.Reading, _ bool) bool { return r.Used && r.Flag == "" }), read)
	add(has(func(r chart.Reading, off bool) bool { return r.Used && r.Flag != "" && !off }), key{Name: "odd", Text: chart.SaidOdd, Look: oddStyle})
	add(has(func(r chart.Reading, off bool) bool { return !r.Used && !off }), key{Name: "left", Text: chart.SaidUnused, Look: leftOutStyle})
	add(has(func(_ chart.Reading, off bool) bool { return off }), key{Name: "off", Text: chart.SaidOffScale, Look: offStyle})
	add(len(d.Curve) > 0, key{Name: "curve", Text: "temperature", Look: curveStyle})
	add(slices.ContainsFunc(d.Curve, func(q chart.Point) bool { return q.Extended }), key{Name: "assumed", Text: chart.SaidAssumed, Look: assumedStyle})
	add(len(d.Curve) > 0, key{Name: "ribbon", Text: chart.SaidDoubt, Look: style{Color: ribbonInk, Width: 1}, Area: ribbon})
	add(p.hasOxygen, key{Name: "oxygen", Text: "oxygen", Look: oxygenStyle})
	for i, l := range p.limits(d) {
		add(true, key{Name: "limit" + strconv.Itoa(i), Text: l.text, Look: l.look})
	}
	add(p.hasGradient, key{Name: "density", Text: "density rise", Look: densityStyle, Off: true})
	return out
}

// outside says which readings are in the table alone.
func outside(p plot, d chart.Drop) string {
	var deep []string
	for _, r := range d.Readings {
		if y := p.depthOf(r.DepthM); y > p.depth.max || y < 0 {
			deep = append(deep, depthText(p.u, r.DepthM))
		}
	}
	if len(deep) == 0 {
		return ""
	}
	return "Not in the picture, only in the table: " + strings.Join(deep, ", ") + "."
}
