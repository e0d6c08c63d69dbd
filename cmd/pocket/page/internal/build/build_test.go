package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"coldseam/profile/expect"
)

const scripts = "../.." // of the page

// node runs a script of testdata, and gives what it says.
func node(t *testing.T, args ...string) string {
	t.Helper()
	path, err := exec.LookPath("node")
	if err != nil {
		expect.Missing(t, "no node to run the scripts of the page")
	}
	cmd := exec.Command(path, args...)
	cmd.Env = []string{"PATH=" + os.Getenv("PATH")}
	var wrong bytes.Buffer
	cmd.Stderr = &wrong
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("node %q: %v\n%s%s", args, err, out, &wrong)
	}
	return string(out)
}

// Whatever was packed is unpacked by the page to the byte; cut off, damaged or with more
// behind it, it is refused, and nothing runs for ever.
func TestUnpack(t *testing.T) {
	if testing.Short() {
		t.Skip("node is not raced")
	}
	rng := rand.New(rand.NewPCG(4, 2))
	noise := make([]byte, 70_000)
	for i := range noise {
		noise[i] = byte(rng.Uint32())
	}
	var mixed []byte
	for len(mixed) < 300_000 {
		switch from := rng.IntN(len(mixed) + 1); rng.IntN(4) {
		case 0:
			mixed = append(mixed, noise[:rng.IntN(200)]...)
		case 1:
			mixed = append(mixed, bytes.Repeat([]byte{byte(from)}, rng.IntN(600))...)
		case 2:
			mixed = append(mixed, mixed[from:min(len(mixed), from+rng.IntN(400))]...)
		default:
			mixed = binary.LittleEndian.AppendUint32(mixed, uint32(len(mixed)*3))
		}
	}
	own, err := os.ReadFile("build_test.go")
	if err != nil {
		t.Fatal(err)
	}
	inputs := map[string][]byte{
		"empty": {}, "one": {7}, "tiny": []byte("ab"), "zeros": make([]byte, 100_000), "noise": noise,
		"text": own, "again": bytes.Repeat([]byte("abcabcabd"), 9000), "mixed": mixed,
		"far": append(append(bytes.Clone(noise), bytes.Repeat(own, 30)...), noise...),
	}
	folder := t.TempDir()
	whole, damage := []string{"testdata/unpack.js", scripts, "--lzma"}, []string{"testdata/unpack.js", scripts, "--damage"}
	for name, b := range inputs {
		file := filepath.Join(folder, name)
		if err := os.WriteFile(file, pack(b), 0o600); err != nil {
			t.Fatal(err)
		}
		whole = append(whole, file)
		if len(b) > 1000 && len(b) < 80_000 || len(b) == 0 { // a byte or two, damaged, may as well be others
			damage = append(damage, file)
		}
	}
	node(t, whole...)
	for name, want := range inputs {
		if got, err := os.ReadFile(filepath.Join(folder, name+".out")); err != nil || !bytes.Equal(got, want) {
			t.Errorf("%s: %v, %d bytes, want %d", name, err, len(got), len(want))
		}
	}
	said := strings.Split(strings.TrimSpace(node(t, damage...)), "\n")
	if len(said) != len(damage)-3 {
		t.Fatalf("%q", said)
	}
	for i, line := range said {
		var tried, taken int
		if _, err := fmt.Sscanf(line, "%d tried, %d taken", &tried, &taken); err != nil || tried < 15 || taken > 0 {
			t.Errorf("%s: %s", filepath.Base(damage[3+i]), line)
		}
	}
}

// A program made small does the same as before, and is small.
func TestShrink(t *testing.T) {
	if testing.Short() {
		t.Skip("a program is not made small in a short run")
	}
	program, err := compile("coldseam/cmd/pocket/page/internal/build/testdata/program")
	if err != nil {
		t.Fatal(err)
	}
	small, err := shrink(program)
	if err != nil {
		t.Fatal(err)
	}
	plain, packed := len(pack(program)), pack(small)
	if len(packed) > plain*4/5 {
		t.Errorf("%d bytes packed, %d without being made small", len(packed), plain)
	}
	folder := t.TempDir()
	before, after := filepath.Join(folder, "before"), filepath.Join(folder, "after")
	if os.WriteFile(before, program, 0o600) != nil || os.WriteFile(after, packed, 0o600) != nil {
		t.Fatal("no room")
	}
	node(t, "testdata/unpack.js", scripts, "--all", after)
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		t.Fatal(err)
	}
	runner := filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec_node.js")
	want, got := node(t, runner, before), node(t, runner, after+".out")
	if got != want || strings.Count(want, "\n") != 5 {
		t.Errorf("made small it says\n%s\nand before\n%s", got, want)
	}
	restored, err := os.ReadFile(after + ".out")
	if err != nil || bytes.Equal(restored, small) {
		t.Errorf("%v: unpacking changed nothing", err)
	}
	for _, gone := range []string{"main.grow", "program/main.go"} {
		if bytes.Contains(small, []byte(gone)) || !bytes.Contains(program, []byte(gone)) {
			t.Errorf("%q stands in it", gone)
		}
	}
}

// What is not as Go's linker writes it today is refused, or left as it is, and never spoilt.
func TestShrinkUnknown(t *testing.T) {
	piece := func(at int64, b string) []byte {
		return append(appendUnsigned(append(appendSigned([]byte{0, i32const}, at), end), uint64(len(b))), b...)
	}
	data := func(n uint64, pieces ...[]byte) []byte {
		return append(appendUnsigned(nil, n), bytes.Join(pieces, nil)...)
	}
	for what, module := range map[string][]byte{
		"no module":          []byte("\x00asn\x01\x00\x00\x00"),
		"too long a section": append(bytes.Clone(wasmHead), 1, 9, 0),
		"no end of a number": append(bytes.Clone(wasmHead), 1, 0x80),
		"a count of data":    join([]section{{sectionDataCount, []byte{1}}}),
		"overlapping":        join([]section{{sectionData, data(2, piece(100, "abc"), piece(102, "d"))}}),
		"no fixed place":     join([]section{{sectionData, data(1, []byte{1, 1, 'a'})}}),
		"more behind":        join([]section{{sectionData, append(data(1, piece(1, "a")), 0)}}),
		"cut code":           join([]section{{sectionCode, []byte{1, 9, 0}}}),
	} {
		if got, err := shrink(module); err == nil {
			t.Errorf("%s: %q", what, got)
		}
	}
	module := join([]section{{sectionData, data(3, piece(300, "c"), piece(200, "ab"), piece(10_000, "d"))}})
	want := join([]section{{sectionData, data(2, piece(200, "ab"+strings.Repeat("\x00", 98)+"c"), piece(10_000, "d"))}})
	if got, err := shrink(module); err != nil || !bytes.Equal(got, want) {
		t.Errorf("%v, %q, want %q", err, got, want)
	}
}

// A table of functions that is not as it is known stays to the byte.
func TestForgetLinesUnknown(t *testing.T) {
	program, err := compile("coldseam/cmd/pocket/page/internal/build/testdata/program")
	if err != nil {
		t.Fatal(err)
	}
	all, err := sections(program)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range all {
		if s.id != sectionData {
			continue
		}
		known, err := readData(s.body)
		if err != nil {
			t.Fatal(err)
		}
		at := bytes.Index(known.bytes, tableHead)
		start := at + int(binary.LittleEndian.Uint64(known.bytes[at+64:]))
		first := start + int(binary.LittleEndian.Uint32(known.bytes[start+4:]))
		for what, where := range map[string]int{
			"magic": at, "pad": at + 4, "pointer": at + 7, "number": at + 14, "names": at + 37, "tables": at + 60,
			"index": start + 7, "entry": first + 1, "stack": first + pcspAt + 3, "count": first + countAt + 3, "pad of a record": first + dataCountAt - 1,
		} {
			m := &memory{known.start, bytes.Clone(known.bytes)}
			m.bytes[where] ^= 0x7f
			before := bytes.Clone(m.bytes)
			if err := forgetLines(m); err == nil || !bytes.Equal(m.bytes, before) {
				t.Errorf("%s: %v, changed %t", what, err, !bytes.Equal(m.bytes, before))
			}
		}
		if err := forgetLines(known); err != nil {
			t.Error(err)
		}
	}
}
