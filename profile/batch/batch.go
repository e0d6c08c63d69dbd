package batch

import (
	"io"
	"runtime"
	"sync"

	"coldseam/profile/layers"
)

// Options say how columns are taken.
type Options struct {
	ErrC      float64 // the thermometer's standard error, C, 0 or more
	ErrM      float64 // the error of a depth, m, 0 or more
	Intervals bool    // give the 80 % interval of each estimate
	Unsorted  bool    // the rows of a profile may stand anywhere: an input is held in memory
	Workers   int     // goroutines that find layers; 0 is as many as run at once

	// Progress, where it is not nil, is told after each lot of lines how many columns
	// are done, and how many bytes of the inputs they took.
	Progress func(columns int, bytes int64)
}

// Input is one CSV. Open is called when its turn comes, and what it gives is closed.
type Input struct {
	Name string // as messages name it
	Open func() (io.ReadCloser, error)
}

// Summary counts what was done.
type Summary struct {
	Columns  int
	Problems int    // columns that could not be read
	First    string // name of the first of them
	Problem  string // and its problem
}

// Check reads the names of a CSV's columns and says what is wrong with them, with an
// *InputError, or why they cannot be read.
func Check(name string, in io.Reader) error {
	return new(rows).reset(name, in)
}

// Run finds the layers of every column of the inputs and writes a line of JSON for
// each, in their order and as soon as it can. The bytes do not depend on the number of
// workers.
//
// A column that cannot be read is counted and no error. Run ends with an *InputError
// when an input is not a CSV of columns, and with the error of an input or of out when
// that fails; what was found before is written first. When out fails, an input may
// still be waited for by a goroutine after Run has ended.
func Run(inputs []Input, out io.Writer, o Options) (Summary, error) {
	return run(inputs, out, o, fullColumns)
}

func run(inputs []Input, out io.Writer, o Options, full int) (Summary, error) {
	if o.Workers <= 0 {
		o.Workers = runtime.GOMAXPROCS(0)
	}
	chunks := 2*o.Workers + 2
	var (
		free  = make(chan *chunk, chunks)
		work  = make(chan *chunk, chunks) // never full: there are no more chunks
		order = make(chan *chunk, chunks)
		stop  = make(chan struct{})
		bad   error // of an input; read after order is closed
	)
	for range chunks {
		free <- &chunk{done: make(chan struct{}, 1)}
	}
	s := splitter{options: o, full: full}
	s.send = func(c *chunk) {
		order <- c
		work <- c
	}
	s.fresh = func() *chunk {
		select {
		case <-stop:
			return nil
		case c := <-free:
			c.columns, c.points, c.lines, c.out, c.bytes = c.columns[:0], c.points[:0], c.lines[:0], c.out[:0], 0
			return c
		}
	}
	go func() {
		for _, in := range inputs {
			if bad = s.input(in); bad != nil {
				break
			}
		}
		close(work)
		close(order)
	}()
	var workers sync.WaitGroup
	for range o.Workers {
		workers.Go(func() {
			for c := range work {
				c.find(o)
				c.done <- struct{}{}
			}
		})
	}
	var sum Summary
	for c := range order {
		<-c.done
		sum.count(c)
		if _, err := out.Write(c.out); err != nil {
			close(stop)
			return sum, err
		}
		if o.Progress != nil {
			o.Progress(sum.Columns, c.passed)
		}
		free <- c
	}
	workers.Wait()
	return sum, bad
}

func (s *Summary) count(c *chunk) {
	s.Columns += len(c.columns)
	for _, col := range c.columns {
		if col.problem == "" {
			continue
		}
		if s.Problems++; s.Problems == 1 {
			s.First, s.Problem = col.profile, col.problem
		}
	}
}

// find finds the layers of the chunk's columns and makes their lines.
func (c *chunk) find(o Options) {
	var how []layers.Option
	if !o.Intervals {
		how = append(how, layers.WithoutIntervals)
	}
	for i := range c.columns {
		col := &c.columns[i]
		c.out = append(c.out, `{"profile":`...)
		c.out = appendText(c.out, col.profile)
		readings, err := c.column(col)
		if err == nil {
			c.out = appendLayers(c.out, layers.Find(readings, how...), o.Intervals)
		} else {
			col.problem = err.Error()
			c.out = append(c.out, `,"problem":`...)
			c.out = appendText(c.out, col.problem)
		}
		c.out = append(c.out, '}', '\n')
	}
}
