package settings

import (
	"strings"
	"testing"
)

func TestProbe(t *testing.T) {
	s, err := Parse("s.toml", []byte("book = \"/drops\"\n[probe]\nport = \"COM3\"\nbaud = 4800\ndata_bits = 7\nparity = \"even\"\nlayout = \"temp C\"\nair = \"1008 hPa\"\nthermistor = [1e-3, 2e-4, 1e-7]\n"))
	if err != nil {
		t.Fatal(err)
	}
	p := s.Probe
	if s.Book != "/drops" || p.Port != "COM3" || p.Baud != 4800 || p.DataBits != 7 || p.Parity != "even" || p.Layout != "temp C" || p.AirPa != 100800 || len(p.Thermistor) != 3 {
		t.Errorf("%+v, book %q", p, s.Book)
	}
	for _, c := range []struct{ text, want string }{
		{"[probe]\nthermistor = [1e-3]\n", "s.toml:2: thermistor: 1 numbers"},
		{"[probe]\nair = \"8 hPa\"\n", "s.toml:2: air: "},
		{"[probe]\nair = \"1008\"\n", "s.toml:2: air: "},
		{"[probe]\nbuad = 9600\n", "s.toml:2: there is no setting"},
		{"book = \"drops\"\n", "s.toml:1: book: "},
	} {
		if _, err := Parse("s.toml", []byte(c.text)); err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%q: %v, want %s", c.text, err, c.want)
		}
	}
}
