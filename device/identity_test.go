package device

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"testing/synctest"
)

func usb(name, product, serial, byID string) Info {
	return Info{Name: name, VendorID: "0403", ProductID: product, Serial: serial, ByID: byID}
}

func TestFind(t *testing.T) {
	probe := func(name string) Info { return usb(name, "6001", "A1", "/by-id/probe") }
	other := func(name string) Info { return usb(name, "6001", "B2", "/by-id/other") }
	bare := func(name string) Info { return usb(name, "7523", "", "") } // neither serial number nor by-id
	plug := func(name, n string) Info { return usb(name, "6011", "Q", "/by-id/quad-"+n) }

	for _, c := range []struct {
		name        string
		given       string
		then, again []Info
		want        string // "!" for an error
	}{
		{"nothing known", "p0", nil, nil, "p0"},
		{"nothing known, others come", "p0", nil, []Info{probe("p1")}, "p0"},
		{"not listed", "p0", []Info{other("p1")}, []Info{other("p1")}, "p0"},
		{"built in", "s0", []Info{{Name: "s0"}}, []Info{{Name: "s0"}}, "s0"},
		{"same name", "p0", []Info{probe("p0")}, []Info{probe("p0")}, "p0"},
		{"gone", "p0", []Info{probe("p0")}, nil, "p0"},
		{"new name", "p0", []Info{probe("p0"), other("p1")}, []Info{other("p1"), probe("p2")}, "p2"},
		{"names swapped by a hub", "p0", []Info{probe("p0"), other("p1")}, []Info{other("p0"), probe("p1")}, "p1"},
		{"another has the name", "p0", []Info{probe("p0")}, []Info{other("p0")}, "!"},
		{"another has the name, unknown", "p0", []Info{probe("p0")}, []Info{{Name: "p0"}}, "p0"},
		{"given by id", "/by-id/probe", []Info{probe("p0")}, []Info{probe("p3")}, "/by-id/probe"},
		{"by id not made yet", "p0", []Info{probe("p0")}, []Info{usb("p3", "6001", "A1", "")}, "p3"},
		{"no serial number, alone", "p0", []Info{bare("p0")}, []Info{bare("p1")}, "p1"},
		{"no serial number, two then", "p0", []Info{bare("p0"), bare("p1")}, []Info{bare("p1")}, "p0"},
		{"no serial number, two again", "p0", []Info{bare("p0"), bare("p1")}, []Info{bare("p0"), bare("p1")}, "p0"},
		{"no serial number, two now", "p0", []Info{bare("p0")}, []Info{bare("p1"), bare("p2")}, "p0"},
		{"no serial number, other product", "p0", []Info{bare("p0")}, []Info{probe("p1")}, "p0"},
		{"a plug of four", "p2", []Info{plug("p1", "0"), plug("p2", "1")}, []Info{plug("p5", "0"), plug("p6", "1")}, "p6"},
	} {
		got, err := identify(c.given, c.then).find(c.again)
		if err != nil {
			got = "!"
		}
		if got != c.want {
			t.Errorf("%s: %q (%v), want %q", c.name, got, err, c.want)
		}
	}
}

func TestFindByLink(t *testing.T) {
	dir := t.TempDir()
	device, link := filepath.Join(dir, "ttyUSB0"), filepath.Join(dir, "probe")
	if err := os.WriteFile(device, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(device, link); err != nil {
		t.Skipf("no symbolic links here: %v", err)
	}
	device, err := filepath.EvalSymlinks(device) // the folder itself may be a link
	if err != nil {
		t.Fatal(err)
	}
	who := identify(link, []Info{usb(device, "6001", "A1", "")})
	if got, err := who.find([]Info{usb(device, "6001", "A1", "")}); got != link || err != nil {
		t.Errorf("same place: %q, %v", got, err)
	}
	if got, err := who.find([]Info{usb("elsewhere", "6001", "A1", "")}); got != "elsewhere" || err != nil {
		t.Errorf("new place: %q, %v", got, err)
	}
	if got, err := who.find([]Info{usb(device, "6001", "B2", "")}); err == nil {
		t.Errorf("another device at the link: %q", got)
	}
}

// TestBackUnderANewName: after a hub was pulled the probe's name belongs to another
// device for a while, then the probe comes under a third.
func TestBackUnderANewName(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		probe, other := usb("/dev/probe", "6001", "A1", ""), usb("/dev/probe", "6001", "B2", "")
		lists := [][]Info{{probe}, nil, {other}, {other}, {other, usb("/dev/third", "6001", "A1", "")}}
		ports := func() ([]Info, error) {
			list := lists[0]
			if len(lists) > 1 {
				lists = lists[1:]
			}
			return list, nil
		}
		l, op := listen(t, Options{Ports: ports},
			&fake{steps: []step{{0, "", syscall.EIO}}}, os.ErrNotExist, &fake{steps: []step{says("\n18.4\n")}})
		next(t, l, Lost)
		if e := next(t, l, Waiting); !strings.HasPrefix(e.Text, "another device is there now: /dev/probe") {
			t.Errorf("waiting: %q", e.Text)
		}
		if e := next(t, l, Back); e.Text != "/dev/third" {
			t.Errorf("back: %q", e.Text)
		}
		wantLines(t, l, "18.4")
		if want := []string{"/dev/probe", "/dev/probe", "/dev/third"}; !slices.Equal(op.names, want) {
			t.Errorf("opened %q, want %q", op.names, want)
		}
	})
}
