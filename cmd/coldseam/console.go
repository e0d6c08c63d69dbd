package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strconv"
	"strings"
	"sync/atomic"
	"syscall"

	"coldseam/chart"
	"coldseam/profile/notebook"
	"coldseam/profile/plain"
	"coldseam/profile/report"
	"coldseam/profile/session"
)

// console is a session at a terminal: what it tells goes to standard error, and lines
// come from standard input, read apart so that a probe can be listened to meanwhile.
type console struct {
	err   io.Writer
	lines <-chan string // closed at the end of input
	echo  bool          // end the prompt's line ourselves, as no terminal does
	cut   *atomic.Bool  // Ctrl-C ended the input
	live  *status
	asked *session.Question // shown already
	open  bool              // the cursor stands behind a prompt
}

// console begins to read lines, each cut to a few thousand bytes. Ctrl-C ends the lines
// too, so that what is being taken can be left in order; stop gives it back its usual
// meaning.
func (p *program) console() (c *console, stop func()) {
	typed, lines := make(chan string), make(chan string)
	c = &console{err: p.err, lines: lines, echo: !p.terminal, cut: new(atomic.Bool), live: newStatus(p.err)}
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
				c.cut.Store(true)
			}
			if !ok {
				return
			}
			select {
			case lines <- line:
			case <-interrupt:
				c.cut.Store(true)
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
	return c, func() { signal.Stop(interrupt) }
}

// width is that of the terminal that is talked to.
func (c *console) width() int {
	w, _ := columns(c.err)
	return w
}

// say prints a paragraph.
func (c *console) say(text string) { fmt.Fprintln(c.err, report.WrapTo(text, c.width())) }

// show prints what there is to see, and the prompt where a line is waited for.
func (c *console) show(v session.View) {
	if len(v.Told) > 0 || v.Prompt != "" || v.Ended {
		c.live.clear()
	}
	if len(v.Told) > 0 && c.open { // something happened beside what was asked
		fmt.Fprintln(c.err)
		c.open = false
	}
	for _, t := range v.Told {
		switch {
		case t.Column != nil:
			fmt.Fprint(c.err, chart.Growing(*t.Column))
		case t.Page != "":
			fmt.Fprint(c.err, t.Page)
		default:
			c.say(t.Text)
		}
	}
	if v.Question != nil && v.Question != c.asked {
		c.question(*v.Question)
	}
	c.asked = v.Question
	if v.Prompt != "" && !c.open {
		fmt.Fprint(c.err, report.WrapTo(v.Prompt, c.width()-1)+" ")
		c.open = true
	}
	if v.Live != "" {
		c.live.show(v.Live)
	}
}

// question prints an open question and its choices.
func (c *console) question(q session.Question) {
	switch {
	case q.What == "":
		return
	case q.Meaning:
		printChoices(c.err, q.What, q.Choices)
		return
	}
	fmt.Fprintln(c.err, report.WrapTo(q.What, c.width()))
	for i, choice := range q.Choices {
		fmt.Fprintln(c.err, "  "+report.Wrap(fmt.Sprintf("%d %s", i+1, choice), "    ", c.width()-2))
	}
}

// answered ends the line of a prompt; typed is false at the end of input.
func (c *console) answered(typed bool) {
	if c.open && (c.echo || !typed) {
		fmt.Fprintln(c.err)
	}
	c.open = false
}

// choice reads a number from 1 to most as an index.
func choice(text string, most int) (int, bool) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 1 || n > most {
		return 0, false
	}
	return n - 1, true
}

// printQuestion shows a line of a page that has several meanings, and the meanings.
func printQuestion(w io.Writer, q notebook.Question) {
	if q.Line > 0 {
		fmt.Fprintf(w, "Line %d: %s\n", q.Line, plain.Line(strings.TrimSpace(q.Text)))
	}
	printChoices(w, strings.ToUpper(q.What[:1])+q.What[1:]+":", q.Choices)
}

func printChoices(w io.Writer, what string, choices []string) {
	width, _ := columns(w)
	fmt.Fprintln(w, report.WrapTo(what, width))
	for i, choice := range choices {
		fmt.Fprintf(w, "  %d  %s\n", i+1, report.Wrap(choice, "     ", width-5))
	}
}
