package format

// clockLen is the length of a date, a time of day or both in one ("2024-07-01",
// "12:00:05.5", "01/07/24", "2024-07-01T12:00:05Z", "3:05 PM") at the start of b, or 0.
func clockLen(b []byte) int {
	n := dateLen(b)
	if n == 0 {
		n = dayTimeLen(b)
	} else if isAny(byteAt(b, n), "Tt_") {
		if m := dayTimeLen(b[n+1:]); m > 0 {
			return n + 1 + m
		}
	}
	if c := byteAt(b, n); isDigit(c) || isLetter(c) || c == '.' || c == '_' {
		return 0
	}
	return n
}

// dateLen: three numbers divided by the same - or /, or by points with a year of four
// digits.
func dateLen(b []byte) int {
	var lens [3]int
	var sep byte
	n := 0
	for k := range lens {
		if k > 0 {
			c := byteAt(b, n)
			if !isAny(c, "-/.") || k == 2 && c != sep {
				return 0
			}
			sep = c
			n++
		}
		if lens[k] = digits(b[n:]); lens[k] == 0 || lens[k] == 3 || lens[k] > 4 {
			return 0
		}
		n += lens[k]
	}
	if lens[1] > 2 || lens[0] > 2 && lens[2] > 2 || sep == '.' && lens[0] < 4 && lens[2] < 4 {
		return 0
	}
	return n
}

// dayTimeLen: hours and minutes, seconds and a zone.
func dayTimeLen(b []byte) int {
	n := digits(b)
	if n == 0 || n > 4 { // hours may count up
		return 0
	}
	groups := 0
	for byteAt(b, n) == ':' && digits(b[n+1:]) >= 2 {
		n += 3
		groups++
	}
	if groups == 0 || groups > 3 {
		return 0
	}
	if byteAt(b, n) == '.' {
		if groups == 1 {
			return 0 // 1:18.31 is channel 1
		}
		if m := digits(b[n+1:]); m > 0 {
			n += 1 + m
		}
	}
	return n + zoneLen(b[n:])
}

// zoneLen: a time zone, or the half of the day, behind a time of day.
func zoneLen(b []byte) int {
	switch c := lower(byteAt(b, 0)); {
	case c == 'z':
		return 1
	case (c == '+' || c == '-') && digits(b[1:]) >= 2:
		n := 3
		for isDigit(byteAt(b, n)) || byteAt(b, n) == ':' {
			n++
		}
		return n
	case c == ' ' && isHalfDay(b[1:]) && !isLetter(byteAt(b, 3)):
		return 3
	case isHalfDay(b):
		return 2
	}
	return 0
}

// isHalfDay reports AM or PM.
func isHalfDay(b []byte) bool {
	return isAny(lower(byteAt(b, 0)), "ap") && lower(byteAt(b, 1)) == 'm'
}
