package main

import (
	"archive/tar"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/hex"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/chart/asset"
)

func packed(t *testing.T, files ...[2]string) []byte {
	t.Helper()
	var b bytes.Buffer
	zipped := gzip.NewWriter(&b)
	archive := tar.NewWriter(zipped)
	for _, f := range files {
		if err := archive.WriteHeader(&tar.Header{Name: f[0], Size: int64(len(f[1])), Mode: 0o644, Typeflag: tar.TypeReg}); err != nil {
			t.Fatal(err)
		}
		if _, err := archive.Write([]byte(f[1])); err != nil {
			t.Fatal(err)
		}
	}
	if err := archive.Close(); err != nil {
		t.Fatal(err)
	}
	if err := zipped.Close(); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func wanted(from, to, text string) asset.File {
	sum := sha256.Sum256([]byte(text))
	return asset.File{From: from, To: to, SHA256: hex.EncodeToString(sum[:])}
}

func TestKeep(t *testing.T) {
	files := []asset.File{wanted("package/a.js", "a.js", "one"), wanted("package/LICENSE", "a-license.txt", "two")}
	good := packed(t, [2]string{"package/other", "no"}, [2]string{"package/a.js", "one"}, [2]string{"package/LICENSE", "two"})
	for _, c := range []struct {
		name, want string
		packed     []byte
	}{
		{"as wanted", "", good},
		{"changed", "SHA-256", packed(t, [2]string{"package/a.js", "one"}, [2]string{"package/LICENSE", "too"})},
		{"one missing", "has no package/LICENSE", packed(t, [2]string{"package/a.js", "one"})},
		{"no package", "gzip", []byte("not a package at all")},
		{"cut short", "EOF", good[:len(good)/2]},
	} {
		folder := t.TempDir()
		err := keep(bytes.NewReader(c.packed), folder, files)
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		kept, _ := os.ReadDir(folder)
		if c.want != "" && len(kept) != 0 {
			t.Errorf("%s: %v was kept", c.name, kept)
		}
		if c.want == "" {
			if b, _ := os.ReadFile(filepath.Join(folder, "a.js")); string(b) != "one" || len(kept) != 2 {
				t.Errorf("%s: kept %v, %q", c.name, kept, b)
			}
		}
	}
}
