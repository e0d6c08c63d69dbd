package format

// clockLen is the length of a date, a time of day or both in one ("2024-07-01",
// "12:00:05.5", "01/07/24", "2024-07-01T12:00:05Z", "3:05 PM") at the start of b, or 0.
func clockLen(b []byte) int {
	n := dateLen(b)
	if n > 0 {
		if n < len(b) && (b[n] == 'T' || b[n] == 't' || b[n] == '_') {
			if m := dayTimeLen(b[n+1:]); m > 0 {
				return n + 1 + m
			}
		}
	} else if n = dayTimeLen(b); n == 0 {
		return 0
	}
	if n < len(b) && (isDigit(b[n]) || isLetter(b[n]) || b[n] == '.' || b[n] == '_') {
		return 0
	}
	return n
}

// dateLen: three numbers divided by the same - or /, or by points with a year of four
// digits.
func dateLen(b []byte) int {
	var lens [3]int
	n := 0
	var sep byte
	for k := range lens {
		for n < len(b) && isDigit(b[n]) {
			n++
			lens[k]++
		}
		if lens[k] == 0 || lens[k] == 3 || lens[k] > 4 {
			return 0
		}
		if k == 2 {
			break
		}
		if n == len(b) || b[n] != '-' && b[n] != '/' && b[n] != '.' || k == 1 && b[n] != sep {
			return 0
		}
		sep = b[n]
		n++
	}
	if lens[1] > 2 || lens[0] > 2 && lens[2] > 2 || sep == '.' && lens[0] < 4 && lens[2] < 4 {
		return 0
	}
	return n
}

// dayTimeLen: hours and minutes, seconds and a zone.
func dayTimeLen(b []byte) int {
	n := 0
	for n < len(b) && isDigit(b[n]) {
		n++
	}
	if n == 0 || n > 4 { // hours may count up
		return 0
	}
	groups := 0
	for n+2 < len(b) && b[n] == ':' && isDigit(b[n+1]) && isDigit(b[n+2]) {
		n += 3
		groups++
	}
	if groups == 0 || groups > 3 {
		return 0
	}
	if groups == 1 && n < len(b) && b[n] == '.' {
		return 0 // 1:18.31 is channel 1
	}
	if n+1 < len(b) && b[n] == '.' && isDigit(b[n+1]) {
		for n++; n < len(b) && isDigit(b[n]); n++ {
		}
	}
	switch {
	case n < len(b) && (b[n] == 'Z' || b[n] == 'z'):
		n++
	case n+2 < len(b) && (b[n] == '+' || b[n] == '-') && isDigit(b[n+1]) && isDigit(b[n+2]):
		n += 3
		for n < len(b) && (isDigit(b[n]) || b[n] == ':') {
			n++
		}
	case n+2 < len(b) && b[n] == ' ' && (lower(b[n+1]) == 'a' || lower(b[n+1]) == 'p') && lower(b[n+2]) == 'm' &&
		(n+3 == len(b) || !isLetter(b[n+3])):
		n += 3
	case n+1 < len(b) && (lower(b[n]) == 'a' || lower(b[n]) == 'p') && lower(b[n+1]) == 'm':
		n += 2
	}
	return n
}

// hexLen is the length at the start of b of a DS18B20's word (four hexadecimal digits)
// or scratchpad (eighteen, or nine pairs with blanks between), or 0.
func hexLen(b []byte) int {
	n := 0
	for n < len(b) && isHex(b[n]) {
		n++
	}
	if n == 4 || n == 18 {
		if n < len(b) && (isLetter(b[n]) || b[n] == '.' || b[n] == '_' || b[n] == ':' || b[n] == '=') {
			return 0
		}
		return n
	}
	if n != 2 {
		return 0
	}
	for range 8 {
		if n+2 >= len(b) || b[n] != ' ' || !isHex(b[n+1]) || !isHex(b[n+2]) {
			return 0
		}
		n += 3
	}
	if n < len(b) && (isHex(b[n]) || b[n] == '.') {
		return 0
	}
	return n
}

func isHex(c byte) bool { c = lower(c); return isDigit(c) || c >= 'a' && c <= 'f' }
