package main

// A program that Go compiled notes before each call, on its own stack, where to go on: the
// instructions i64.const and i64.store with a number of five bytes, which holds the function
// and the place in it (cmd/internal/obj/wasm). These numbers hardly repeat, but each is
// near the one before it, so what is packed is the distance, in as many bytes. unpack.js
// puts them right.

const (
	firstFunction = 0x1000 // number of the first function, by which numbers begin
	noteSize      = 9      // of the two instructions, in bytes
	noteBits      = 35     // of the number
)

// shortenCalls puts distances into a section of code. Whatever looks like a note is taken
// for one, since unpacking looks for the same bytes.
func shortenCalls(code []byte) error {
	n, b, err := unsigned(code)
	if err != nil {
		return err
	}
	for f := range n {
		size, rest, err := unsigned(b)
		if err != nil {
			return err
		}
		if size > uint64(len(rest)) {
			return errCut
		}
		body := rest[:size]
		before := (firstFunction + f) << 16
		for len(body) >= noteSize {
			if !isNote(body) {
				body = body[1:]
				continue
			}
			note := uint64(0)
			for i, c := range body[1:6] {
				note |= uint64(c&0x7f) << (7 * i)
			}
			far := (note - before) % (1 << noteBits)
			before = note
			for i := range 5 {
				body[1+i] = body[1+i]&0x80 | byte(far>>(7*i)&0x7f)
			}
			body = body[noteSize:]
		}
		b = rest[size:]
	}
	return nil
}

// isNote reports whether code begins with i64.const of five bytes and i64.store to where
// the stack ends.
func isNote(code []byte) bool {
	return code[0] == 0x42 && code[6] == 0x37 && code[7] == 3 && code[8] == 0 &&
		code[1]&code[2]&code[3]&code[4]&^code[5]&0x80 != 0
}
