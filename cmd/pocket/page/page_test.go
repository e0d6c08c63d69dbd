package page_test

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"image/png"
	"strconv"
	"strings"
	"testing"

	"coldseam/chart/seal"
	"coldseam/cmd/pocket/page"
	"coldseam/profile/expect"
)

// file is the page as it is given out.
func file(t testing.TB) []byte {
	t.Helper()
	b, err := page.File()
	if err != nil {
		expect.Missing(t, "%v", err)
	}
	return b
}

// site is the site, by the names of its files.
func site(t testing.TB) map[string][]byte {
	t.Helper()
	parts, err := page.Site()
	if err != nil {
		expect.Missing(t, "%v", err)
	}
	out := map[string][]byte{}
	for _, p := range parts {
		out[p.Name] = p.Bytes
	}
	return out
}

// The page is small enough to be sent from a boat ramp.
func TestSize(t *testing.T) {
	const largest, largestSent = 2_500_000, 1_400_000 // bytes
	b := file(t)
	var sent bytes.Buffer
	w, err := gzip.NewWriterLevel(&sent, gzip.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	w.Write(b)
	w.Close()
	t.Logf("%d bytes, %d as sent with gzip", len(b), sent.Len())
	if len(b) > largest || sent.Len() > largestSent {
		t.Errorf("%d bytes, at most %d; %d as sent, at most %d", len(b), largest, sent.Len(), largestSent)
	}
}

// The file is made the same each time, may be replaced by its next version, carries the
// licences of its parts, and names no other place that a browser would ask.
func TestFile(t *testing.T) {
	b := file(t)
	if again := file(t); !bytes.Equal(b, again) || !seal.Unchanged(b) {
		t.Error("it differs from one time to the next, or has no seal")
	}
	for _, want := range []string{"The Go Authors", "gonum", "pelletier/go-toml", "default-src 'none'", "'wasm-unsafe-eval'"} {
		if !bytes.Contains(b, []byte(want)) {
			t.Errorf("no %q", want)
		}
	}
	for _, never := range []string{"{{", "unsafe-inline", "'unsafe-eval'", " src=\"", "<link", "@import", "manifest-src", "'self'"} {
		if i := bytes.Index(b, []byte(never)); i >= 0 {
			t.Errorf("%q: %.80q", never, b[max(0, i-40):])
		}
	}
}

// What a phone asks of a page before it offers to install it (W3C, Web Application Manifest).
func TestManifest(t *testing.T) {
	files := site(t)
	var m struct {
		Name, Description, Start, Scope, Display, Background, Theme string
		Short                                                       string `json:"short_name"`
		StartURL                                                    string `json:"start_url"`
		BackgroundColour                                            string `json:"background_color"`
		ThemeColour                                                 string `json:"theme_color"`
		Icons                                                       []struct{ Src, Sizes, Type, Purpose string }
	}
	if err := json.Unmarshal(files["manifest.webmanifest"], &m); err != nil {
		t.Fatal(err)
	}
	if m.Name == "" || m.Short == "" || len(m.Short) > 12 || m.Description == "" || m.StartURL != "./" || m.Scope != "./" ||
		m.Display != "standalone" || len(m.BackgroundColour) != 7 || len(m.ThemeColour) != 7 {
		t.Errorf("%+v", m)
	}
	has := map[string]bool{}
	for _, i := range m.Icons {
		has[i.Sizes+" "+i.Purpose] = true
		picture, err := png.Decode(bytes.NewReader(files[i.Src]))
		if err != nil || i.Type != "image/png" {
			t.Errorf("%s: %v, %s", i.Src, err, i.Type)
			continue
		}
		side, _, _ := strings.Cut(i.Sizes, "x")
		size := picture.Bounds().Size()
		if strconv.Itoa(size.X) != side || size.X != size.Y {
			t.Errorf("%s is %v, not %s", i.Src, size, i.Sizes)
		}
		_, _, _, corner := picture.At(0, 0).RGBA()
		if solid := corner == 0xffff; solid != (i.Purpose == "maskable") { // a phone cuts its own shape out of a maskable one
			t.Errorf("%s, %s: opaque in the corner: %t", i.Src, i.Purpose, solid)
		}
	}
	for _, want := range []string{"192x192 any", "512x512 any", "512x512 maskable"} {
		if !has[want] {
			t.Errorf("no icon %s", want)
		}
	}
	for name, b := range files {
		if name != "manifest.webmanifest" && !seal.Unchanged(b) {
			t.Errorf("%s has no seal", name)
		}
	}
}
