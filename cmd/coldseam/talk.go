package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strconv"
	"strings"
	"sync/atomic"
	"syscall"

	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
)

// talk is a conversation: prompts go to standard error, and lines come from standard
// input, read apart so that a probe can be listened to at the same time.
type talk struct {
	err   io.Writer
	lines <-chan string // closed at the end of input
	echo  bool          // end the prompt's line ourselves, as no terminal does
	cut   *atomic.Bool  // Ctrl-C ended the input
}

// errHungUp reports that the input ended before a question was answered.
var errHungUp = errors.New("not answered")

// talk begins to read lines, each cut to a few thousand bytes. Ctrl-C ends the lines
// too, so that what is being taken can be left in order; stop gives it back its usual
// meaning.
func (p *program) talk() (t *talk, stop func()) {
	typed, lines := make(chan string), make(chan string)
	t = &talk{err: p.err, lines: lines, echo: !p.terminal, cut: new(atomic.Bool)}
	interrupt := make(chan os.Signal, 1)
	signal.Notify(interrupt, os.Interrupt, syscall.SIGTERM)
	go func() {
		defer close(lines)
		for {
			var line string
			var ok bool
			select {
			case line, ok = <-typed:
			case <-interrupt:
				t.cut.Store(true)
			}
			if !ok {
				return
			}
			select {
			case lines <- line:
			case <-interrupt:
				t.cut.Store(true)
				return
			}
		}
	}()
	go func() {
		defer close(typed)
		in := bufio.NewReader(p.in)
		for {
			text, cut, err := in.ReadLine()
			if err != nil {
				return
			}
			line := string(text)
			for cut && err == nil { // far longer than anything typed: the rest is passed over
				_, cut, err = in.ReadLine()
			}
			typed <- line
		}
	}()
	return t, func() { signal.Stop(interrupt) }
}

// say prints a paragraph.
func (t *talk) say(format string, args ...any) {
	fmt.Fprintln(t.err, report.Wrap(fmt.Sprintf(format, args...), ""))
}

// prompt asks for a line.
func (t *talk) prompt(format string, args ...any) { fmt.Fprintf(t.err, format+" ", args...) }

// answer prompts for one line; errHungUp at the end of input.
func (t *talk) answer(format string, args ...any) (string, error) {
	t.prompt(format, args...)
	text, ok := <-t.lines
	if t.echo || !ok {
		fmt.Fprintln(t.err)
	}
	if !ok {
		return "", errHungUp
	}
	return strings.TrimSpace(text), nil
}

// choose offers choices and gives the index of the one taken; Enter alone takes the
// first.
func (t *talk) choose(what string, choices ...string) (int, error) {
	fmt.Fprintln(t.err, report.Wrap(what, ""))
	for i, c := range choices {
		fmt.Fprintln(t.err, "  "+report.Wrap(fmt.Sprintf("%d %s", i+1, c), "    "))
	}
	for {
		text, err := t.answer("Number, then Enter:")
		if err != nil {
			return 0, err
		}
		if n, ok := choice(text, len(choices)); ok {
			return n, nil
		}
	}
}

// ask puts a notebook's question.
func (t *talk) ask(q notebook.Question) (int, error) {
	printQuestion(t.err, q)
	for {
		text, err := t.answer("Number, then Enter:")
		if err != nil {
			return 0, err
		}
		if n, ok := choice(text, len(q.Choices)); ok && text != "" {
			return n, nil
		}
	}
}

// choice reads a number from 1 to most as an index; nothing is the first.
func choice(text string, most int) (int, bool) {
	if text == "" {
		return 0, true
	}
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > most {
		return 0, false
	}
	return n - 1, true
}

// printQuestion shows a line that has several meanings, and the meanings.
func printQuestion(w io.Writer, q notebook.Question) {
	if q.Line > 0 {
		fmt.Fprintf(w, "Line %d: %s\n", q.Line, plain.Line(strings.TrimSpace(q.Text)))
	}
	fmt.Fprintf(w, "%s:\n", strings.ToUpper(q.What[:1])+q.What[1:])
	for i, choice := range q.Choices {
		fmt.Fprintf(w, "  %d  %s\n", i+1, choice)
	}
}
