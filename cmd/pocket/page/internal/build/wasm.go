package main

import (
	"bytes"
	"errors"
	"fmt"
)

// A module of WebAssembly, as far as making it small asks (WebAssembly Core Specification,
// 5.5): its sections one after the other, and the data that it puts into memory.

const (
	sectionCustom    = 0
	sectionCode      = 10
	sectionData      = 11
	sectionDataCount = 12
)

var wasmHead = []byte("\x00asm\x01\x00\x00\x00")

type section struct {
	id   byte
	body []byte
}

var errCut = errors.New("the module ends within a number")

// sections takes a module apart.
func sections(module []byte) (out []section, err error) {
	b, ok := bytes.CutPrefix(module, wasmHead)
	if !ok {
		return nil, errors.New("no WebAssembly of version 1")
	}
	for len(b) > 0 {
		id := b[0]
		n, rest, err := unsigned(b[1:])
		if err != nil {
			return nil, err
		}
		if n > uint64(len(rest)) {
			return nil, fmt.Errorf("section %d goes beyond the end of the module", id)
		}
		out = append(out, section{id, rest[:n]})
		b = rest[n:]
	}
	return out, nil
}

// join puts a module together again.
func join(all []section) []byte {
	out := bytes.Clone(wasmHead)
	for _, s := range all {
		out = append(out, s.id)
		out = appendUnsigned(out, uint64(len(s.body)))
		out = append(out, s.body...)
	}
	return out
}

// unsigned reads a number in LEB128.
func unsigned(b []byte) (n uint64, rest []byte, err error) {
	for i, c := range b {
		if i == 10 {
			break
		}
		n |= uint64(c&0x7f) << (7 * i)
		if c < 0x80 {
			return n, b[i+1:], nil
		}
	}
	return 0, nil, errCut
}

// signed reads a number in signed LEB128.
func signed(b []byte) (n int64, rest []byte, err error) {
	for i, c := range b {
		if i == 10 {
			break
		}
		n |= int64(c&0x7f) << (7 * i)
		if c < 0x80 {
			if c&0x40 != 0 && 7*i+7 < 64 {
				n |= -1 << (7*i + 7)
			}
			return n, b[i+1:], nil
		}
	}
	return 0, nil, errCut
}

func appendUnsigned(b []byte, n uint64) []byte {
	for ; n >= 0x80; n >>= 7 {
		b = append(b, byte(n)|0x80)
	}
	return append(b, byte(n))
}

func appendSigned(b []byte, n int64) []byte {
	for ; n < -0x40 || n >= 0x40; n >>= 7 {
		b = append(b, byte(n)|0x80)
	}
	return append(b, byte(n)&0x7f)
}
