package app

import (
	"errors"
	"strconv"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/notebook"
)

// asking is a page whose open questions are answered by touch: it is read again from its
// beginning with each answer.
type asking struct {
	answers []int
	open    *notebook.Question // the first that has no answer; nil where none is left
}

var errOpen = errors.New("not answered yet")

// read reads the page with the answers that there are. Where open is set afterwards, the
// error says nothing yet.
func (q *asking) read(text string, o notebook.Options) ([]notebook.Sheet, error) {
	n := 0
	q.open = nil
	o.Ask = func(is notebook.Question) (int, error) {
		if n++; n <= len(q.answers) {
			return q.answers[n-1], nil
		}
		if q.open == nil {
			q.open = &is
		}
		return 0, errOpen
	}
	return notebook.Read([]byte(text), o)
}

// answer takes the choice of a button; false where it is none.
func (q *asking) answer(value string) bool {
	n, err := strconv.Atoi(value)
	if q.open == nil || err != nil || n < 0 || n >= len(q.open.Choices) {
		return false
	}
	q.answers = append(q.answers, n)
	return true
}

// nodes are the open question and a button for each choice.
func (q *asking) nodes(do string) []markup.Node {
	out := []markup.Node{}
	if q.open.Text != "" {
		out = append(out, markup.El("p", "Line "+strconv.Itoa(q.open.Line)+":"), markup.Pre(q.open.Text))
	}
	out = append(out, markup.El("p", markup.Class("lead"), capital(q.open.What)+": which is it?"))
	choices := []any{markup.Class("row")}
	for i, c := range q.open.Choices {
		choices = append(choices, touch(do, strconv.Itoa(i), capital(c)))
	}
	return append(out, markup.El("div", choices...))
}
