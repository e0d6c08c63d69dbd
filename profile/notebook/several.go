package notebook

import "strings"

// A text may hold several pages, as when the pages of a book are handed on in one file.
// Above each stands a line that names it; nothing is taken over from the page above, which
// is how it differs from a second drop on one page.

// pageMark begins the line above a page.
const pageMark = "# page: "

// Pages puts pages into one text. A page alone stays as it is.
func Pages(names, pages []string) string {
	if len(pages) == 1 {
		return pages[0]
	}
	var b strings.Builder
	for i, page := range pages {
		if i > 0 {
			b.WriteString("\n")
		}
		b.WriteString(pageMark + strings.Join(strings.Fields(names[i]), " ") + "\n" + page)
		if !strings.HasSuffix(page, "\n") {
			b.WriteString("\n")
		}
	}
	return b.String()
}

// parted gives the lines of each page of a text. What stands above the first mark is a page
// too, unless it is blank or a comment.
func parted(raw []string) (pages [][]string, above []int) {
	from := 0
	take := func(to int) {
		if from > 0 || to == len(raw) || spoken(raw[:to]) {
			pages, above = append(pages, raw[from:to]), append(above, from)
		}
		from = to
	}
	for i, l := range raw {
		if strings.HasPrefix(l, pageMark) && i > from {
			take(i)
		}
	}
	take(len(raw))
	return pages, above
}

// spoken reports whether lines hold more than comments.
func spoken(lines []string) bool {
	for _, l := range lines {
		if clean(l) != "" {
			return true
		}
	}
	return false
}

// readAll reads each page of a text.
func readAll(raw []string, o Options) ([]Sheet, error) {
	pages, above := parted(raw)
	if len(pages) == 1 {
		return (&reader{o: o, raw: raw}).read()
	}
	var all []Sheet
	for i, lines := range pages {
		r := &reader{o: o, raw: lines, above: above[i]}
		sheets, err := r.read()
		if err != nil {
			return nil, r.onPage(err)
		}
		for _, s := range sheets {
			for n := range s.Notes {
				s.Notes[n].Line += above[i] // of the whole page: of its mark
				if s.Notes[n].Line == above[i] {
					s.Notes[n].Line++
				}
			}
			for n := range s.Drop.Readings {
				s.Drop.Readings[n].Line += above[i]
			}
			all = append(all, s)
		}
	}
	return all, nil
}

// onPage is an error about one of several pages as a whole, which its mark stands for.
func (r *reader) onPage(err error) error {
	if e, ok := err.(*Error); ok && e.Line == 0 && e.Name == r.o.Name {
		e.Line = r.above + 1
	}
	return err
}
