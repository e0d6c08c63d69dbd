package plain

import (
	"io"
	"unicode/utf8"
)

// Writer passes on what is graphic, and line ends; tabs too, which move nothing but the
// place of writing. All else becomes the replacement character. A character whose bytes
// come in two writes is held until it is whole, or until Flush.
type Writer struct {
	To   io.Writer
	rest []byte // begun, not whole
	out  []byte
}

func passes(r rune) bool { return Graphic(r) || r == '\n' || r == '\t' }

// Write writes p, made plain. It reports len(p) when all of it was taken.
func (w *Writer) Write(p []byte) (int, error) {
	if len(w.rest) == 0 && clean(p) {
		return w.To.Write(p)
	}
	all := append(w.rest, p...)
	w.rest, w.out = nil, w.out[:0]
	for len(all) > 0 {
		if !utf8.FullRune(all) {
			w.rest = append([]byte(nil), all...)
			break
		}
		r, n := utf8.DecodeRune(all)
		if !passes(r) {
			r = utf8.RuneError
		}
		w.out = utf8.AppendRune(w.out, r)
		all = all[n:]
	}
	if _, err := w.To.Write(w.out); err != nil {
		return 0, err
	}
	return len(p), nil
}

// Flush writes what was held: the bytes of a character that was never whole.
func (w *Writer) Flush() error {
	if len(w.rest) == 0 {
		return nil
	}
	w.rest = nil
	_, err := io.WriteString(w.To, string(utf8.RuneError))
	return err
}

// clean reports whether p is ASCII that passes as it is: nearly all output is.
func clean(p []byte) bool {
	for _, c := range p {
		if c >= utf8.RuneSelf || !passes(rune(c)) {
			return false
		}
	}
	return true
}
