package main

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"os"
	"slices"
)

// shrink makes a program that Go compiled small, so that it does the same once unpack.js
// has put the notes of its calls right.
//
// Go's linker leaves runs of zeros out of the data, which makes some 100,000 pieces of it,
// each with its address; they pack better with the zeros in. Tables that serve nothing but
// the text of a crash are emptied.
func shrink(module []byte) ([]byte, error) {
	all, err := sections(module)
	if err != nil {
		return nil, err
	}
	for i, s := range all {
		switch s.id {
		case sectionCode:
			code := bytes.Clone(s.body)
			if err := shortenCalls(code); err != nil {
				return nil, fmt.Errorf("the code: %w", err)
			}
			all[i].body = code
		case sectionDataCount:
			return nil, errors.New("the module counts its data ahead: joining them would need that count put right")
		case sectionData:
			m, err := readData(s.body)
			if err != nil {
				return nil, fmt.Errorf("the data: %w", err)
			}
			if err := forgetLines(m); err != nil {
				fmt.Fprintln(os.Stderr, "build: names and lines of functions stay in:", err)
			}
			all[i].body = m.write()
		}
	}
	return join(all), nil
}

// memory is what a module puts into memory, from address start.
type memory struct {
	start int
	bytes []byte
}

const (
	largestMemory = 64 << 20
	i32const      = 0x41
	end           = 0x0b
)

// readData reads the data, all of which must go to fixed places that do not overlap.
func readData(b []byte) (*memory, error) {
	type piece struct {
		at    int64
		bytes []byte
	}
	var pieces []piece
	n, b, err := unsigned(b)
	if err != nil {
		return nil, err
	}
	for k := range n {
		if len(b) < 2 || b[0] != 0 || b[1] != i32const {
			return nil, fmt.Errorf("piece %d has no fixed place", k)
		}
		at, rest, err := signed(b[2:])
		if err != nil {
			return nil, err
		}
		if len(rest) == 0 || rest[0] != end {
			return nil, fmt.Errorf("piece %d has no fixed place", k)
		}
		size, rest, err := unsigned(rest[1:])
		if err != nil {
			return nil, err
		}
		if at < 0 || at > largestMemory || size > uint64(len(rest)) {
			return nil, fmt.Errorf("piece %d has %d bytes for %d", k, size, at)
		}
		pieces = append(pieces, piece{at, rest[:size]})
		b = rest[size:]
	}
	if len(b) > 0 || len(pieces) == 0 {
		return nil, fmt.Errorf("%d pieces, and %d bytes behind them", len(pieces), len(b))
	}
	slices.SortStableFunc(pieces, func(a, b piece) int { return cmp.Compare(a.at, b.at) })
	m := &memory{start: int(pieces[0].at)}
	for _, p := range pieces {
		gap := int(p.at) - m.start - len(m.bytes)
		if gap < 0 {
			return nil, fmt.Errorf("two pieces overlap at %d", p.at)
		}
		m.bytes = append(append(m.bytes, make([]byte, gap)...), p.bytes...)
	}
	return m, nil
}

// longestGap is how many zeros are written rather than left out: fewer pieces pack better,
// and a long run of zeros packs to nothing, but has to be unpacked.
const longestGap = 4096

// write gives the data as few pieces.
func (m *memory) write() []byte {
	var pieces [][2]int // from, to
	zeros := longestGap + 1
	for i, c := range m.bytes {
		if c == 0 {
			zeros++
			continue
		}
		if zeros > longestGap {
			pieces = append(pieces, [2]int{i, i})
		}
		pieces[len(pieces)-1][1] = i + 1
		zeros = 0
	}
	out := appendUnsigned(nil, uint64(len(pieces)))
	for _, p := range pieces {
		out = append(out, 0, i32const)
		out = appendSigned(out, int64(m.start+p[0]))
		out = append(out, end)
		out = appendUnsigned(out, uint64(p[1]-p[0]))
		out = append(out, m.bytes[p[0]:p[1]]...)
	}
	return out
}
