package unit

import "strconv"

// Count is a number of things in words: "1 line", "12 lines".
func Count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
