package vector

import (
	"strings"
	"testing"

	"coldseam/profile"
	"coldseam/profile/demo"
)

// A drop being taken: a dot for each reading at its place, a ring about the last one taken, a line
// at the next depth where there is one, and the same said in words.
func TestGrowing(t *testing.T) {
	d := demo.Input(t, "units: ft F\nbottom: 31 ft\n0 74\n30 51\n10 72\n20 58\n", "rainbow").Drop
	shapes, _, high := read(t, Growing(d, 15*0.3048))
	if high > 150 {
		t.Errorf("%v high", high)
	}
	down := scaleOf(t, shapes, right, func(q at) float64 { return q.y })
	across := scaleOf(t, shapes, centre, func(q at) float64 { return q.x })
	dots, rings := of(shapes, "dot"), of(shapes, "ring")
	if len(dots) != 4 || len(rings) != 1 {
		t.Fatalf("%d dots, %d rings", len(dots), len(rings))
	}
	for i, want := range [][2]float64{{0, 74}, {10, 72}, {20, 58}, {30, 51}} {
		if x, y := number(t, dots[i].attr["cx"]), number(t, dots[i].attr["cy"]); !near(x, across(want[1])) || !near(y, down(want[0])) {
			t.Errorf("%v is drawn at %v, %v", want, x, y)
		}
	}
	if y := number(t, rings[0].attr["cy"]); !near(y, down(20)) {
		t.Errorf("the ring is at %v", y)
	}
	if next := of(shapes, "flyline"); len(next) != 1 || !near(next[0].spots[0].y, down(15)) || !shows(shapes, "next 15 ft") || !shows(shapes, "bottom 31 ft") {
		t.Errorf("the next: %v", next)
	}
	if want := "4 readings, the last one 58 F at 20 ft. Next: 15 ft."; shapes[2].text != want {
		t.Errorf("%q, want %q", shapes[2].text, want)
	}
	shapes, _, _ = read(t, Growing(d, -1))
	if len(of(shapes, "flyline")) > 0 || shows(shapes, "next") || strings.Contains(shapes[2].text, "Next") {
		t.Error("a next depth where there is none")
	}
}

// What is asked for at a quarter of a metre is named so, as it is where it is asked.
func TestGrowingMarks(t *testing.T) {
	d := demo.Input(t, "units: m C\nbottom: 9.25 m\n0 22\n6.75 9\n", "rainbow").Drop
	shapes, _, _ := read(t, Growing(d, 4.75))
	if !shows(shapes, "next 4.75 m") || !shows(shapes, "bottom 9.25 m") || shapes[2].text != "2 readings, the last one 9 C at 6.75 m. Next: 4.75 m." {
		t.Errorf("%q", shapes[2].text)
	}
}

// The line goes through what is used alone.
func TestGrowingUnused(t *testing.T) {
	d := demo.Plan(t, "units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 720\n15 65\n20 58\n25 54\n").Drop
	shapes, _, _ := read(t, Growing(d, -1))
	used := 0
	for _, r := range d.Readings {
		if r.Used() {
			used++
		}
	}
	if run := of(shapes, "curve")[0].spots; len(run) != used || used != len(d.Readings)-1 {
		t.Errorf("a line through %d of %d readings, %d are used", len(run), len(d.Readings), used)
	}
	if n := len(of(shapes, "ring")); n != 1 { // about the last
		t.Errorf("%d rings", n)
	}
	down := scaleOf(t, shapes, right, func(q at) float64 { return q.y })
	if head := of(shapes, "paper"); len(head) != 1 || !near(head[0].spots[0].y, down(10)) || head[0].spots[1].x >= head[0].spots[0].x {
		t.Errorf("no arrow to the right at 10 ft for what is off the scale: %v", head)
	}
	odd := demo.Plan(t, "units: ft F\nbottom: 31 ft\n0 74\n5 73\n10 56\n15 66\n20 58\n25 54\n").Drop
	if shapes, _, _ := read(t, Growing(odd, -1)); odd.Readings[2].Used() || len(of(shapes, "ring")) != 2 || len(of(shapes, "paper")) != 0 {
		t.Errorf("%d rings of one that is not used, and about the last", len(of(shapes, "ring")))
	}
	if s := Growing(profile.Drop{Readings: d.Readings[:1]}, -1); s == "" {
		t.Error("no picture of one reading without units")
	}
}
