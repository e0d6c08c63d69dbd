package main

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// The table of functions that Go's linker writes (runtime.pcHeader, runtime._func and
// runtime.functab in Go 1.20 to 1.26) tells of each instruction how high the stack is and
// what lies on it, which the runtime needs; and of which line of which file in which
// function it is, which only the text of a crash needs. A crash of the page is looked into
// by running the same pages in a terminal, so names, files and lines go.

var tableHead = []byte("\xf1\xff\xff\xff\x00\x00\x01\x08") // magic of Go 1.20, instructions of 1 byte, pointers of 8

// of a function's record, in bytes
const (
	nameAt, pcspAt, fileAt, lineAt, countAt, unitAt, startAt = 4, 16, 20, 24, 28, 32, 36
	dataCountAt                                              = 43
	recordSize                                               = 44

	argLive = 3 // which arguments a crash can print: of a function's tables this one is for that alone
)

// functions is the table, found in memory and found to be as it is known.
type functions struct {
	table   []byte // from its head to the end of memory
	names   []byte // and what goes with them, up to the tables of instructions
	tables  []byte // of instructions
	records []int  // where each function's is
}

// forgetLines empties what only crashes need. Where the table is not as it is known,
// nothing is changed, and the error says what is not.
func forgetLines(m *memory) error {
	f, err := findFunctions(m.bytes)
	if err != nil {
		return err
	}
	moved := map[uint32]uint32{0: 0} // tables that stay: where they were, and where they are
	kept := []byte{0}
	keep := func(field []byte) error {
		at := binary.LittleEndian.Uint32(field)
		to, done := moved[at]
		if !done {
			size, err := tableSize(f.tables, at)
			if err != nil {
				return err
			}
			to = uint32(len(kept))
			moved[at] = to
			kept = append(kept, f.tables[at:int(at)+size]...)
		}
		binary.LittleEndian.PutUint32(field, to)
		return nil
	}
	before := bytes.Clone(f.table)
	for _, at := range f.records {
		record := f.table[at:]
		for _, field := range []int{nameAt, fileAt, lineAt, unitAt, startAt} {
			clear(record[field : field+4])
		}
		err := keep(record[pcspAt : pcspAt+4])
		for i := range binary.LittleEndian.Uint32(record[countAt:]) {
			field := record[recordSize+4*i:][:4]
			if i == argLive {
				clear(field)
			}
			err = errors.Join(err, keep(field))
		}
		if err != nil {
			copy(f.table, before)
			return err
		}
	}
	clear(f.names)
	clear(f.tables[copy(f.tables, kept):])
	return nil
}

// findFunctions finds the table, and compares all that is known of it.
func findFunctions(memory []byte) (*functions, error) {
	at := bytes.Index(memory, tableHead)
	if at < 0 || bytes.Contains(memory[at+1:], tableHead) {
		return nil, errors.New("no table of functions as Go 1.20 to 1.26 write it")
	}
	table := memory[at:]
	if len(table) < 72 {
		return nil, errors.New("the table of functions is cut off")
	}
	word := func(i int) uint64 { return binary.LittleEndian.Uint64(table[8+8*i:]) }
	places := []uint64{72, word(3), word(4), word(5), word(6), word(7), uint64(len(table))} // of names, units, files, tables, records
	if !slices.IsSorted(places) {
		return nil, fmt.Errorf("the parts of the table of functions are out of order: %d", places)
	}
	f := &functions{table: table, names: table[word(3):word(6)], tables: table[word(6):word(7)]}
	start := int(word(7))
	index := table[start:]
	n := word(0)
	if n > uint64(len(index)/8) {
		return nil, fmt.Errorf("%d functions do not fit into their table", n)
	}
	last := uint32(0)
	for i := range int(n) {
		entry, where := binary.LittleEndian.Uint32(index[8*i:]), int(binary.LittleEndian.Uint32(index[8*i+4:]))
		if where < 8*int(n) || where+recordSize > len(index) {
			return nil, fmt.Errorf("the record of function %d is outside of the table", i)
		}
		record := index[where:]
		counts := 4 * (int64(binary.LittleEndian.Uint32(record[countAt:])) + int64(record[dataCountAt]))
		if binary.LittleEndian.Uint32(record) != entry || entry < last || recordSize+counts > int64(len(record)) || record[dataCountAt-1] != 0 {
			return nil, fmt.Errorf("the record of function %d is not as it is known", i)
		}
		last = entry
		f.records = append(f.records, start+where)
	}
	return f, nil
}

// tableSize is how long the table at a place is: pairs of numbers, the first of which is
// zero behind the last.
func tableSize(tables []byte, at uint32) (int, error) {
	if int(at) >= len(tables) {
		return 0, fmt.Errorf("a table of instructions at %d is outside of them", at)
	}
	b := tables[at:]
	for first := true; ; first = false {
		value, rest, err := unsigned(b)
		if err != nil {
			return 0, err
		}
		if value == 0 && !first {
			return len(tables) - int(at) - len(rest), nil
		}
		if _, b, err = unsigned(rest); err != nil {
			return 0, err
		}
	}
}
