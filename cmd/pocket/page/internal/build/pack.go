package main

import (
	"bytes"

	"github.com/kjk/lzma"
)

// pack packs bytes as .lzma files have them, with their length, which unpack.js asks for.
func pack(b []byte) []byte {
	var out bytes.Buffer
	w := lzma.NewWriterSizeLevel(&out, int64(len(b)), 7)
	w.Write(b) // a bytes.Buffer takes all; what else went wrong Close tells
	if err := w.Close(); err != nil {
		panic(err)
	}
	return out.Bytes()
}
