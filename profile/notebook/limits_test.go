package notebook

import (
	"strconv"
	"strings"
	"testing"
)

// longLines are lines of which a page may hold very many.
var longLines = []string{"5 73\n", "5 73\n\n", "0 74\n---\n", "5 73\ndate: 2026-07-18\n", "7/18/20\n", "note: windy\n", "0 5 10 15\n74 73 72 66\n", "not a reading\n", "5 " + strings.Repeat("7", 990) + "\n"}

// TestLongPages: a page of very many lines is refused in one short line.
func TestLongPages(t *testing.T) {
	for _, line := range longLines {
		_, err := Read([]byte(strings.Repeat(line, MaxPage/16/len(line))), page0(line).options())
		if err == nil || len(err.Error()) > 400 || strings.Contains(err.Error(), "\n") {
			t.Errorf("a page of %.20q: error %v", line, err)
		}
	}
	if _, err := Read(make([]byte, MaxPage+1), Options{Name: "p"}); err == nil || err.Error() != "p: is larger than 1 MiB: a page of readings is a text of a few lines" {
		t.Errorf("a larger page: %v", err)
	}
	if _, err := Read([]byte("5 ft 73 "+strings.Repeat("x", MaxLine)), Options{Name: "p"}); err == nil || !strings.Contains(err.Error(), "longer than 1000 characters") {
		t.Errorf("a longer line: %v", err)
	}
}

// page0 is a page of one line, with depths in feet by the settings.
func page0(line string) page { return page{page: line, settings: "ft"} }

// BenchmarkLongPages shows that the cost of a page grows with its lines, not with
// their square: per byte it is about the same for the smaller and the larger page.
func BenchmarkLongPages(b *testing.B) {
	for _, size := range []int{MaxPage / 64, MaxPage / 16} {
		b.Run(strconv.Itoa(size), func(b *testing.B) {
			b.SetBytes(int64(size * len(longLines)))
			for b.Loop() {
				for _, line := range longLines {
					Read([]byte(strings.Repeat(line, size/len(line))), page0(line).options())
				}
			}
		})
	}
}
