package line

// maxDigits is how many significant digits are kept: up to here a whole number and
// a power of ten are both exact, and one division rounds correctly.
const maxDigits = 15

var powers = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12,
	1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// ScanNumber reads a number from the start of b: an optional sign and digits with an
// optional decimal part after the byte point. It returns how many bytes it took, 0
// where b does not begin with a number. Exponents, NaN and infinities are none.
func ScanNumber(b []byte, point byte) (v float64, n int) {
	neg := false
	if n < len(b) && (b[n] == '-' || b[n] == '+') {
		neg = b[n] == '-'
		n++
	}
	var mantissa uint64
	digits, kept, after := 0, 0, 0
	seenPoint := false
	for ; n < len(b); n++ {
		c := b[n]
		if c == point && !seenPoint {
			seenPoint = true
			continue
		}
		if c < '0' || c > '9' {
			break
		}
		digits++
		if kept >= maxDigits || after >= len(powers)-1 {
			if !seenPoint {
				return 0, 0 // no instrument counts this far
			}
			continue
		}
		mantissa = mantissa*10 + uint64(c-'0')
		if mantissa > 0 {
			kept++
		}
		if seenPoint {
			after++
		}
	}
	if digits == 0 {
		return 0, 0
	}
	v = float64(mantissa) / powers[after]
	if neg {
		v = -v
	}
	return v, n
}

// field reads a whole field as a number; an empty field has none.
func field(b []byte) (value, error) {
	b = trim(b)
	if len(b) == 0 {
		return value{}, nil
	}
	v, n := ScanNumber(b, '.')
	if n != len(b) {
		return value{}, refuse(BadNumber, Shown(b)+" is not a number")
	}
	return value{v, true}, nil
}

func trim(b []byte) []byte {
	for len(b) > 0 && (b[0] <= ' ') {
		b = b[1:]
	}
	for len(b) > 0 && (b[len(b)-1] <= ' ') {
		b = b[:len(b)-1]
	}
	return b
}

func upper(c byte) byte {
	if c >= 'a' && c <= 'z' {
		c -= 'a' - 'A'
	}
	return c
}

// contains finds a word in upper case, without a copy.
func contains(b []byte, word string) bool {
	for i := 0; i+len(word) <= len(b); i++ {
		j := 0
		for j < len(word) && upper(b[i+j]) == word[j] {
			j++
		}
		if j == len(word) {
			return true
		}
	}
	return false
}

func containsAny(b []byte, words []string) bool {
	for _, w := range words {
		if contains(b, w) {
			return true
		}
	}
	return false
}

func hexDigit(c byte) (byte, bool) {
	switch c = upper(c); {
	case c >= '0' && c <= '9':
		return c - '0', true
	case c >= 'A' && c <= 'F':
		return c - 'A' + 10, true
	}
	return 0, false
}
