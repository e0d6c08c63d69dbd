package notebook

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"coldseam/profile"
	"coldseam/profile/check"
)

// FuzzRead: no page makes the reader panic; what it reads makes a Column or says
// why not, and written out and read back it makes the same Column.
func FuzzRead(f *testing.F) {
	for _, p := range pages {
		f.Add([]byte(p.page))
	}
	f.Add([]byte("units: ft F\nline angle: 20\nmarks at: gunwale 1.5 ft\nthermometer: reads 32.5 F in ice water\n0 74\n5 65 1/2\n"))
	settings := []Header{{Key: "units", Value: "ft", From: "settings"}}
	f.Fuzz(func(t *testing.T, data []byte) {
		sheets, err := Read(data, Options{Name: "p", Defaults: settings})
		if err != nil {
			if err.Error() == "" || strings.ContainsAny(err.Error(), "\n\r\x1b\x00") {
				t.Fatalf("error %q", err)
			}
			return
		}
		for _, s := range sheets {
			again(t, s.Drop)
			check.Of(s.Drop).Column()
		}
	})
}

// again writes a drop, reads it back and compares the Columns.
func again(t interface {
	Helper()
	Fatalf(string, ...any)
}, d profile.Drop) {
	t.Helper()
	if len(d.Readings) == 0 {
		t.Fatalf("a drop without readings")
	}
	page := Write(d)
	back, err := Read([]byte(page), Options{Name: "written"})
	if err != nil {
		t.Fatalf("%v\nwritten as\n%s", err, page)
	}
	if len(back) != 1 {
		t.Fatalf("%d drops of one\n%s", len(back), page)
	}
	want, wantErr := columnOf(d)
	got, gotErr := columnOf(back[0].Drop)
	if diff := cmp.Diff(want, got); diff != "" || (wantErr == "") != (gotErr == "") {
		t.Fatalf("Column (-want +got): %s%s %s\nwritten as\n%s", diff, wantErr, gotErr, page)
	}
}
