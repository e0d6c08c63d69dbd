package seal

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image"
	"image/png"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// pictures has one of each form, small; those of the program are tried in cmd/coldseam.
func pictures(t *testing.T) map[string][]byte {
	t.Helper()
	var dots bytes.Buffer
	if err := png.Encode(&dots, image.NewGray(image.Rect(0, 0, 3, 2))); err != nil {
		t.Fatal(err)
	}
	return map[string][]byte{
		"png":  dots.Bytes(),
		"svg":  []byte("<?xml version=\"1.0\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\"><title>startxref</title></svg>\n"),
		"js":   []byte("// A script.\nlet a = 1\n"),
		"html": []byte("<!DOCTYPE html>\n<html><body>x</body></html>"),
		"pdf":  []byte("%PDF-1.3\n1 0 obj\n<< >>\nendobj\n2 0 obj\n(startxref)\nendobj\nxref\n0 1\n0000000000 65535 f \ntrailer\n<< /Size 1 >>\nstartxref\n57\n%%EOF\n"),
	}
}

// A sealed picture is known again; with any byte changed, taken away or added it is not,
// nor is one that was never sealed.
func TestUnchanged(t *testing.T) {
	for name, picture := range pictures(t) {
		sealed := Put(picture)
		if !Unchanged(sealed) || Unchanged(picture) {
			t.Errorf("%s: sealed %t, before %t", name, Unchanged(sealed), Unchanged(picture))
		}
		if !bytes.Equal(sealed, Put(picture)) {
			t.Errorf("%s: sealed twice it differs", name)
		}
		for i := range sealed {
			other := bytes.Clone(sealed)
			other[i] ^= 1
			if Unchanged(other) {
				t.Errorf("%s: byte %d changed unnoticed", name, i)
			}
			if Unchanged(sealed[:i]) || Unchanged(append(bytes.Clone(sealed[:i]), sealed[i+1:]...)) {
				t.Errorf("%s: byte %d lost unnoticed", name, i)
			}
			if Unchanged(append(append(bytes.Clone(sealed[:i]), 'x'), sealed[i:]...)) {
				t.Errorf("%s: a byte added before %d unnoticed", name, i)
			}
		}
		if Unchanged(append(bytes.Clone(sealed), '\n')) {
			t.Errorf("%s: a line added unnoticed", name)
		}
	}
	for _, other := range []string{"", "precious\n", "<", "%PDF-", "\x89PNG\r\n\x1a\n", "units: ft F\n0 74\n"} {
		if Unchanged([]byte(other)) {
			t.Errorf("%q passes for a picture", other)
		}
	}
}

// A sealed picture is still one of its form: Go's own readers of PNG (which check each
// chunk) and of XML take it, and the table of a PDF stands where startxref says.
func TestStillAPicture(t *testing.T) {
	all := pictures(t)
	if _, err := png.Decode(bytes.NewReader(Put(all["png"]))); err != nil {
		t.Errorf("png: %v", err)
	}
	for d := xml.NewDecoder(bytes.NewReader(Put(all["svg"]))); ; {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Errorf("svg: %v", err)
			break
		}
	}
	pdf := string(Put(all["pdf"]))
	end := regexp.MustCompile(`>>\n%coldseam [0-9a-f]{32}\nstartxref\n(\d+)\n%%EOF\n$`).FindStringSubmatch(pdf)
	if end == nil {
		t.Fatalf("pdf: %q", pdf)
	}
	if at, err := strconv.Atoi(end[1]); err != nil || !strings.HasPrefix(pdf[at:], "xref\n") {
		t.Errorf("pdf: %v, %q", err, pdf)
	}
}
