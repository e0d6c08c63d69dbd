package notebook

import (
	"regexp"
	"sync"
)

// pattern is a regular expression. Together they take longer to compile than a page to
// read, so each is compiled when a line first needs it.
type pattern func() *regexp.Regexp

func lazy(text string) pattern {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) })
}
