package device

import (
	"runtime"
	"slices"
	"testing"

	"coldseam/profile/plain"
)

func TestByName(t *testing.T) {
	var ports []Info
	for _, name := range []string{"COM10", "COM3", "/dev/ttyUSB10", "/dev/ttyUSB2", "/dev/cu.b", "/dev/cu.a", "/dev/ttyACM0"} {
		ports = append(ports, Info{Name: name})
	}
	byName(ports)
	var got []string
	for _, p := range ports {
		got = append(got, p.Name)
	}
	want := []string{"/dev/cu.a", "/dev/cu.b", "/dev/ttyACM0", "/dev/ttyUSB2", "/dev/ttyUSB10", "COM3", "COM10"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

func TestInfoString(t *testing.T) {
	for want, p := range map[string]Info{
		"COM3":        {Name: "COM3"},
		"p (Acme)":    {Name: "p", Maker: "Acme"},
		"p (Cable)":   {Name: "p", Product: "Cable"},
		"p (Acme XY)": {Name: "p", Maker: "Acme", Product: "XY"},
	} {
		if got := p.String(); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

// TestPorts runs on the system's own ports, whatever they are.
func TestPorts(t *testing.T) {
	if !slices.Contains([]string{"linux", "darwin", "windows"}, runtime.GOOS) {
		t.Skipf("no way to list ports on %s", runtime.GOOS)
	}
	ports, err := Ports()
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range ports {
		if p.Name == "" || p.String() != plain.Line(p.String()) {
			t.Errorf("%+q", p)
		}
		if err := (Config{Name: p.Name}).Check(); err != nil {
			t.Error(err)
		}
	}
}
