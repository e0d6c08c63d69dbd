package format

import "bytes"

// trimLine takes blanks, the line end and a byte order mark off.
func trimLine(b []byte) []byte {
	b = bytes.TrimPrefix(b, []byte("\xef\xbb\xbf"))
	for len(b) > 0 && isBlank(b[0]) {
		b = b[1:]
	}
	for len(b) > 0 && isBlank(b[len(b)-1]) {
		b = b[:len(b)-1]
	}
	return b
}

func isBlank(c byte) bool { return c == ' ' || c == '\t' || c == '\r' || c == '\n' }

// isComment reports a line that begins as a comment does.
func isComment(b []byte) bool { return b[0] == '#' || bytes.HasPrefix(b, []byte("//")) }

// isRule reports a line of one sign, as it is printed between blocks.
func isRule(b []byte) bool {
	if len(b) < 2 || bytes.IndexByte([]byte("-=*_+~"), b[0]) < 0 {
		return false
	}
	for _, c := range b {
		if c != b[0] {
			return false
		}
	}
	return true
}

// unframe takes the angle brackets of a frame off; it is false for half a frame.
func unframe(b []byte) ([]byte, bool) {
	opens, closes := len(b) > 0 && b[0] == '<', len(b) > 0 && b[len(b)-1] == '>'
	if opens != closes || opens && len(b) == 1 {
		return b, false
	}
	if opens {
		b = trimLine(b[1 : len(b)-1])
	}
	return b, true
}

// headerCells splits a line into the names of its columns.
func headerCells(b []byte) [][]byte {
	b, _ = unframe(b)
	sep := ""
	for _, s := range []string{"\t", ";", ",", "|"} {
		if bytes.Contains(b, []byte(s)) {
			sep = s
			break
		}
	}
	var cells [][]byte
	if sep == "" {
		cells = bytes.Fields(b)
	} else {
		cells = bytes.Split(b, []byte(sep))
	}
	for i := range cells {
		cells[i] = bytes.Trim(cells[i], " \t\"'")
	}
	for len(cells) > 0 && len(cells[len(cells)-1]) == 0 {
		cells = cells[:len(cells)-1]
	}
	return cells
}
