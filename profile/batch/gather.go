package batch

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
)

// gathered is a row that waits in memory for the others of its profile.
type gathered struct {
	line, profile     int // profile: the place of its name among the names
	text              int // where its depth begins in the text, its temperature after it
	depthLen, tempLen int
	problem           string
}

// gather reads an input to its end and then makes chunks of it, the rows of each profile
// together, profiles in the order of their first rows and rows in that of the input. A
// row whose profile is not known might be any one's: the input is refused.
func (s *splitter) gather() error {
	var (
		names []string
		place = map[string]int{}
		all   []gathered
		text  []byte
	)
	before := ""
	for {
		r, err := s.rows.read(before)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return err
		}
		if r.nameless {
			return s.rows.refuse("line %d: %s; it may be a row of any profile, so mend it first", r.line, r.problem)
		}
		n, known := place[string(r.profile)]
		if !known {
			n = len(names)
			names = append(names, string(r.profile))
			place[names[n]] = n
		}
		before = names[n]
		all = append(all, gathered{r.line, n, len(text), len(r.depth), len(r.temp), r.problem})
		text = append(append(text, r.depth...), r.temp...)
	}
	slices.SortStableFunc(all, func(a, b gathered) int { return cmp.Compare(a.profile, b.profile) })
	size := s.rows.taken
	for i, g := range all {
		s.rows.taken = size * int64(i+1) / int64(len(all)) // what is behind, as if it were read now
		temp := g.text + g.depthLen
		if !s.add(row{g.line, []byte(names[g.profile]), text[g.text:temp], text[temp : temp+g.tempLen], g.problem, false}) {
			return errStopped
		}
	}
	s.open = false
	s.handOver()
	return nil
}

// comesBack is the problem of a profile that comes back.
func (s *splitter) comesBack(line int) string {
	return fmt.Sprintf("%srows of this profile stood further up too: sort the rows by profile, or use --unsorted", s.at(line))
}
