package notebook

import (
	std "cmp"
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"coldseam/profile"
	"coldseam/profile/check"
	"coldseam/profile/internal/drawn"
)

// TestPagesAgain: every page of the tables that is read gives the same Column when
// it is written out and read back.
func TestPagesAgain(t *testing.T) {
	for _, p := range pages {
		sheets, err := Read([]byte(p.page), p.options())
		if err != nil {
			continue
		}
		for _, s := range sheets {
			t.Run(p.name, func(t *testing.T) { again(t, s.Drop) })
		}
	}
}

// TestCheckedAgain: the checks find the same on a page written out as on the page,
// whatever the order in which its readings were noted.
func TestCheckedAgain(t *testing.T) {
	for _, p := range slices.Concat(pages, []page{
		{name: "swapped", page: "0 74\n5 73\n72 10\n15 66\n20 58", settings: "ft"},
		{name: "swapped, from the bottom up", page: "20 58\n15 66\n72 10\n5 73\n0 74", settings: "ft"},
		{name: "a digit left out", page: "0 74\n5 73\n10 2\n15 66\n20 58", settings: "ft"},
	}) {
		sheets, err := Read([]byte(p.page), p.options())
		if err != nil {
			continue
		}
		for _, s := range sheets {
			back, err := Read([]byte(Write(s.Drop)), Options{Name: "written"})
			if err != nil {
				t.Fatal(err)
			}
			want, wantErr := check.Of(s.Drop).Column()
			got, gotErr := check.Of(back[0].Drop).Column()
			if diff := cmp.Diff(want.Points(), got.Points()); diff != "" || fmt.Sprint(wantErr) != fmt.Sprint(gotErr) {
				t.Errorf("%s (-want +got):\n%s%s %s", p.name, diff, wantErr, gotErr)
			}
		}
	}
}

// TestRoundTrip: so does any drop, and every header key and every reading comes back
// as it was.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDrop(t)
		again(t, d)
		back, err := Read([]byte(Write(d)), Options{Name: "written"})
		if err != nil {
			t.Fatal(err)
		}
		slices.SortStableFunc(d.Readings, func(a, b profile.Reading) int { return std.Compare(metres(a), metres(b)) }) // written from the surface down
		if diff := cmp.Diff(d, back[0].Drop, cmpopts.IgnoreFields(profile.Reading{}, "Line", "Text")); diff != "" {
			t.Fatalf("(-want +got):\n%s\nwritten as\n%s", diff, Write(d))
		}
	})
}

// drawDrop makes a drop of any kind, with what anglers write of a fish.
func drawDrop(t *rapid.T) profile.Drop {
	var caught []profile.Catch
	for _, c := range catches {
		for _, more := range []string{"", " Größe ½ ″"} {
			if read, err := ReadCatch(c.text + more); err == nil {
				caught = append(caught, read)
			}
		}
	}
	return drawn.Drop(t, caught)
}
