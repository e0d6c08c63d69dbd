// Package seal marks the pictures and pages that this program makes, and tells whether a
// file is one of them and unchanged since. Only such a file may be written over without
// being asked: a picture can be made again, but not what somebody else wrote or added.
//
// The seal is a digest of all other bytes, so that the same picture has the same bytes.
// Each form carries it where its readers pass over it: a comment after the end of SVG and
// HTML, a comment before startxref in PDF (ISO 32000-1, 7.2.4), a text chunk before the
// end of PNG (ISO/IEC 15948, 11.3.4.3), a comment after the end of a script.
package seal

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"hash/crc32"
)

// Put gives a picture with its seal. What is none of these forms stays as it is.
func Put(picture []byte) []byte {
	at, mark := place(picture)
	if mark == nil {
		return picture
	}
	out := append([]byte(nil), picture[:at]...)
	out = append(out, mark(digest(picture[:at], picture[at:]))...)
	return append(out, picture[at:]...)
}

// Unchanged reports whether data is what Put gave, to the byte.
func Unchanged(data []byte) bool {
	at, mark := place(data)
	if mark == nil {
		return false
	}
	from := at - len(mark(digest()))
	return from >= 0 && bytes.Equal(data[from:at], mark(digest(data[:from], data[at:])))
}

// place is where the seal ends, or belongs, and how it is written there.
func place(data []byte) (at int, mark func(digest string) []byte) {
	switch {
	case bytes.HasPrefix(data, []byte("%PDF-")):
		if at = bytes.LastIndex(data, []byte("startxref")); at >= 0 {
			return at, func(d string) []byte { return []byte("%coldseam " + d + "\n") }
		}
	case bytes.HasPrefix(data, []byte("\x89PNG\r\n\x1a\n")) && bytes.HasSuffix(data, []byte(pngEnd)):
		return len(data) - len(pngEnd), func(d string) []byte { return chunk("tEXt", "Software\x00coldseam "+d) }
	case bytes.HasPrefix(data, []byte("// ")):
		return len(data), func(d string) []byte { return []byte("// coldseam " + d + "\n") }
	case bytes.HasPrefix(data, []byte("<")):
		return len(data), func(d string) []byte { return []byte("<!-- coldseam " + d + " -->\n") }
	}
	return 0, nil
}

// pngEnd is the last chunk of every PNG: no data, and the checksum of its name.
const pngEnd = "\x00\x00\x00\x00IEND\xae\x42\x60\x82"

// chunk is one of PNG's: length, name, data, checksum.
func chunk(name, data string) []byte {
	out := binary.BigEndian.AppendUint32(nil, uint32(len(data)))
	out = append(out, name+data...)
	return binary.BigEndian.AppendUint32(out, crc32.ChecksumIEEE(out[4:]))
}

// digest is of all that a picture is but its seal.
func digest(parts ...[]byte) string {
	sum := sha256.Sum256(bytes.Join(parts, nil))
	return hex.EncodeToString(sum[:16])
}
