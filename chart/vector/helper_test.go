package vector

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"coldseam/chart"
	"coldseam/profile/demo"
	"coldseam/profile/plan"
)

// shape is an element of a picture as it was read back.
type shape struct {
	tag, class string
	attr       map[string]string
	text       string // with that of what stands within
	spots      []at   // of a path, in order
}

// box4 is what an element takes up.
type box4 struct{ x0, y0, x1, y1 float64 }

func (a box4) meets(b box4) bool {
	return a.x0 < b.x1-0.05 && b.x0 < a.x1-0.05 && a.y0 < b.y1-0.05 && b.y0 < a.y1-0.05
}

// fataler is what tests and properties have in common.
type fataler interface {
	Helper()
	Fatalf(string, ...any)
	Errorf(string, ...any)
}

var (
	tags  = map[string]bool{"svg": true, "title": true, "desc": true, "path": true, "circle": true, "text": true, "tspan": true}
	attrs = regexp.MustCompile(`^(class|viewBox|width|height|role|aria-labelledby|id|fill|fill-opacity|stroke|stroke-width|stroke-dasharray|stroke-linejoin|font-size|font-weight|text-anchor|x|y|cx|cy|r|d)$`)
	place = regexp.MustCompile(`[ML]([-0-9.]+) ([-0-9.]+)`)
)

// read parses a picture and finds what no picture may have: markup that a strict page forbids,
// numbers that are none, anything outside of it, texts that lie on one another.
func read(t fataler, svg string) (shapes []shape, wide, high float64) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(svg))
	var open []int
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatalf("%v in %s", err, svg)
		}
		switch e := token.(type) {
		case xml.StartElement:
			s := shape{tag: e.Name.Local, attr: map[string]string{}}
			if !tags[s.tag] {
				t.Errorf("an element %s", s.tag)
			}
			for _, a := range e.Attr {
				if !attrs.MatchString(a.Name.Local) || strings.Contains(a.Value, "url(") {
					t.Errorf("an attribute %s=%q", a.Name.Local, a.Value)
				}
				s.attr[a.Name.Local] = a.Value
			}
			s.class = s.attr["class"]
			for _, m := range place.FindAllStringSubmatch(s.attr["d"], -1) {
				s.spots = append(s.spots, at{number(t, m[1]), number(t, m[2])})
			}
			shapes = append(shapes, s)
			open = append(open, len(shapes)-1)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			for _, i := range open {
				shapes[i].text += string(e)
			}
		default:
			t.Errorf("%T in a picture", token)
		}
	}
	if _, err := fmt.Sscanf(shapes[0].attr["viewBox"], "0 0 %f %f", &wide, &high); err != nil {
		t.Fatalf("%v: %s", err, svg)
	}
	var texts []shape
	for _, s := range shapes {
		for _, b := range s.boxes(t) {
			if b.x0 < -0.5 || b.y0 < -0.5 || b.x1 > wide+0.5 || b.y1 > high+0.5 {
				t.Errorf("%s %s %q is at %v, outside of %v x %v", s.tag, s.class, s.text, b, wide, high)
			}
		}
		if s.tag == "text" {
			for _, other := range texts {
				if s.boxes(t)[0].meets(other.boxes(t)[0]) {
					t.Errorf("%q lies on %q", s.text, other.text)
				}
			}
			texts = append(texts, s)
		}
	}
	return shapes, wide, high
}

// boxes are what an element takes up; of a path each of its places.
func (s shape) boxes(t fataler) (out []box4) {
	switch s.tag {
	case "path":
		for _, q := range s.spots {
			out = append(out, box4{q.x, q.y, q.x, q.y})
		}
	case "circle":
		x, y, r := number(t, s.attr["cx"]), number(t, s.attr["cy"]), number(t, s.attr["r"])
		out = append(out, box4{x - r, y - r, x + r, y + r})
	case "text":
		w := width(s.text, s.attr["font-weight"] != "")
		x, y := number(t, s.attr["x"]), number(t, s.attr["y"])-0.35*font
		switch s.attr["text-anchor"] {
		case centre:
			x -= w / 2
		case right:
			x -= w
		}
		out = append(out, box4{x, y - 7, x + w, y + 7})
	}
	return out
}

func number(t fataler, s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) || math.Abs(v) > 1e4 {
		t.Errorf("%q is no coordinate", s)
	}
	return v
}

// runs are the runs of places of a path, each of which begins anew.
func (s shape) runs() (out [][]at) {
	for i, m := range place.FindAllString(s.attr["d"], -1) {
		if m[0] == 'M' {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], s.spots[i])
	}
	return out
}

// of are the shapes of a class.
func of(shapes []shape, class string) (out []shape) {
	for _, s := range shapes {
		if s.class == "v-"+class {
			out = append(out, s)
		}
	}
	return out
}

// shows reports whether the texts of a picture, one after the other, say this.
func shows(shapes []shape, words string) bool {
	var b strings.Builder
	for _, s := range shapes {
		if s.tag == "text" {
			b.WriteString(s.text + " ")
		}
	}
	return strings.Contains(b.String(), words)
}

// dropped is a plan with the name of its page.
type dropped struct {
	name string
	plan plan.Plan
}

// plans are the demo pages, and the shapes that a lake can have.
func plans(t *testing.T) (out []dropped) {
	for _, file := range demo.Pages(t) {
		b, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, dropped{file, demo.Plan(t, string(b))})
	}
	long := "units: m C\n"
	for i := range 300 {
		z := float64(i) / 20
		long += fmt.Sprintf("%.2f %.2f\n", z, 8+14/(1+math.Pow(z/4.5, 5)))
	}
	for _, p := range [][3]string{
		{"one reading", "units: ft F\n0 70\n", "rainbow"},
		{"no band", "units: ft F\n0 80\n10 79.8\n20 79.5\n", "rainbow"},
		{"mixed", "units: m C\n0 12\n5 11.9\n10 11.9\n", "rainbow"},
		{"under ice", "units: m C\ndate: 2026-01-20\n0 0.5\n2 2\n5 3.8\n", "brook trout"},
		{"deep under ice", "units: m C\ndate: 2026-01-20\nbottom: 32 m\n0 0.5\n2 2\n5 3.0\n20 3.8\n30 4\n", "lake trout"},
		{"odd", "units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 720\n12 75\n15 65\n300 50\n18 40\n20 58\n25 54\n", "rainbow"},
		{"oxygen", "units: m C\nbottom: 12 m\ndate: 2026-08-01\n0 23 DO 8.5\n2 22.8 DO 8.6\n4 21 DO 8.8\n5 18 DO 9.1\n6 15 DO 8\n8 11 DO 6\n10 9 DO 3\n", "rainbow"},
		{"deep and clear", "units: m C\nbottom: 60 m\nsecchi: 11 m\n0 20\n5 19.8\n10 17\n12 14\n15 10\n20 7\n30 5.5\n50 4.5\n", "lake trout"},
		{"pond", "units: ft F\nbottom: 4 ft\n0 66\n2 65\n3 64\n", "rainbow"},
		{"300 readings", long, "rainbow"},
	} {
		out = append(out, dropped{p[0], demo.PlanFor(t, p[1], p[2])})
	}
	return out
}

// pictures are all pictures of a plan that has them.
func pictures(p plan.Plan) []string {
	d := chart.Of(p)
	all := []string{Scene(d), Profile(d), Growing(p.Drop, -1), Growing(p.Drop, 7.4)}
	return slices.DeleteFunc(all, func(s string) bool { return s == "" })
}
