package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestWrite(t *testing.T) {
	root := t.TempDir()
	for name, text := range map[string]string{
		"a/LICENSE": "Free\r\nfor all\xa9\n\n", "a/licence.go": "package a", "a/deep/used/NOTICE": "Thanks", "a/deep/COPYING.txt": "Deep",
		"a/unused/LICENSE": "Other", "a/THIRD_PARTY_LICENSES/x": "Third", "b/UNLICENSE": "Free\nfor all©", "c/readme": "none", "d/LICENSE": "\n",
	} {
		if err := os.MkdirAll(filepath.Dir(filepath.Join(root, name)), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(root, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	at := func(name string, folders ...string) *part {
		p := &part{name: name + " v1", root: filepath.Join(root, name)}
		for _, f := range folders {
			p.folders = append(p.folders, filepath.Join(p.root, f))
		}
		return p
	}
	got, err := write([]*part{at("a", "deep/used"), at("b")})
	if err != nil {
		t.Fatal(err)
	}
	want := `Coldseam is made of these parts. Their licences follow.

    a v1
    b v1

=== a v1, LICENSE
=== b v1, UNLICENSE

Free
for all©

=== a v1, THIRD_PARTY_LICENSES/x

Third

=== a v1, deep/COPYING.txt

Deep

=== a v1, deep/used/NOTICE

Thanks
`
	if string(got) != want {
		t.Errorf("got\n%s", got)
	}
	for name, want := range map[string]string{"c": "c v1 has no licence in ", "d": "LICENSE is empty"} {
		if _, err := write([]*part{at(name)}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", name, err, want)
		}
	}
}
