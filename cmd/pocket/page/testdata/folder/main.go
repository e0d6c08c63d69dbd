//go:build js

// Folder is a program for a page that does with files in the browser what tests ask for.
package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"syscall/js"
	"time"

	"coldseam/cmd/pocket/page/testdata/folder/same"
	"coldseam/profile/book"
	"coldseam/profile/notebook"
)

var host = js.Global().Get("pocket")

const dir = "/book"

func main() {
	for {
		e := await(host.Call("next"))
		out := answer{}
		out.do(e.Get("do").String(), e.Get("value").String())
		text, err := json.Marshal(out)
		if err != nil {
			panic(err)
		}
		host.Call("show", map[string]any{"id": e.Get("fields").Get("id"), "out": string(text)})
	}
}

// answer is what came of something.
type answer struct {
	Err      string
	Is       string // of the error: full, in use, there already, not there
	Lines    []string
	Files    map[string]string
	Millis   []float64
	From, To float64 // ms since 1970
	N        int
}

func (a *answer) failed(err error) {
	if err == nil {
		return
	}
	a.Err = err.Error()
	for what, e := range map[string]error{"full": syscall.ENOSPC, "in use": book.ErrInUse, "there already": fs.ErrExist, "not there": fs.ErrNotExist} {
		if errors.Is(err, e) {
			a.Is = what
		}
	}
}

func (a *answer) do(what, value string) {
	var err error
	word, rest, _ := strings.Cut(value, "\n")
	switch what {
	case "durable":
		ready := await(js.Global().Get("pocketFolder").Get("ready"))
		a.Lines = []string{fmt.Sprint(host.Get("durable").Bool()), ready.Get("why").String()}
	case "system":
		root := filepath.Join("/tmp", value)
		if err = os.Mkdir(root, 0o700); err == nil {
			a.Lines = same.System(root)
		}
	case "book":
		root := filepath.Join("/tmp", value)
		if err = os.Mkdir(root, 0o700); err == nil {
			a.Files, err = same.Book(root)
		}
	case "files":
		a.Files, err = same.Files(dir)
	case "cut off":
		err = a.cutOff()
	case "take":
		err = a.take(value)
	case "begin":
		err = a.begin(value)
	case "fill":
		err = fill()
	case "heads":
		err = a.heads()
	case "write":
		err = a.timed(func() error { return replace(word, rest) })
	case "read":
		var data []byte
		err = a.timed(func() error { data, err = os.ReadFile(word); return err })
		a.Lines = []string{string(data)}
	case "read at once":
		err = a.atOnce(word)
	case "lock":
		err = lock()
	case "unlock":
		unlock()
	case "script":
		a.Lines = []string{js.Global().Call("eval", value).String()}
	default:
		err = errors.New("what is " + what)
	}
	a.failed(err)
}

func now() float64 {
	p := js.Global().Get("performance")
	return p.Get("timeOrigin").Float() + p.Call("now").Float()
}

func (a *answer) timed(do func() error) error {
	a.From = now()
	err := do()
	a.To = now()
	a.Millis = append(a.Millis, a.To-a.From)
	return err
}

// take takes a drop, and tells after each reading that it was saved, for as long as it may.
func (a *answer) take(water string) error {
	b := book.At(dir, book.System{})
	var p *book.Page
	for n := 1; n <= 40; n++ {
		err := a.timed(func() (err error) {
			if p == nil {
				p, err = b.Begin(same.Drop(water, n))
				return err
			}
			return p.Save(same.Drop(water, n), false)
		})
		if err != nil {
			return err
		}
		host.Call("show", map[string]any{"saved": n})
	}
	return nil
}

// begin begins drops of one water and date, one after the other.
func (a *answer) begin(spot string) error {
	b := book.At(dir, book.System{})
	for range 25 {
		d := same.Drop("Same Mere", 2)
		d.Spot = spot
		p, err := b.Begin(d)
		if err == nil {
			err = p.Save(d, true)
		}
		if err != nil {
			return err
		}
		a.Lines = append(a.Lines, p.Path)
	}
	return nil
}

func (a *answer) cutOff() error {
	cut, err := book.At(dir, book.System{}).Unended()
	for _, u := range cut {
		if u.Err != nil {
			return u.Err
		}
		a.Lines = append(a.Lines, fmt.Sprintf("%s %d", u.Drop.Water, len(u.Drop.Readings)))
	}
	return err
}

func fill() error {
	for i := range 1000 {
		d := same.Drop(fmt.Sprintf("Lake %d", i%40), 10)
		d.Date = fmt.Sprintf("%d-%02d-%02d %02d:%02d", 1990+i%30, 1+i/28%12, 1+i%28, i%24, i%60)
		if err := os.WriteFile(fmt.Sprintf("%s/%s-%d.txt", dir, d.Date[:10], i), []byte(notebook.Write(d)), 0o600); err != nil {
			return err
		}
	}
	return nil
}

func (a *answer) heads() error {
	return a.timed(func() error {
		heads, err := book.At(dir, book.System{}).Heads(notebook.Options{Unread: true})
		for _, h := range heads {
			if h.Err != nil {
				return h.Err
			}
		}
		a.N = len(heads)
		return err
	})
}

// replace puts a file in another's place as a page is saved.
func replace(path, text string) error {
	f, err := os.OpenFile(path+".part", os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	if err == nil {
		err = f.Sync()
	}
	if e := f.Close(); err == nil {
		err = e
	}
	if err == nil {
		err = os.Rename(path+".part", path)
	}
	if err != nil {
		os.Remove(path + ".part")
	}
	return err
}

// atOnce lists a folder, dawdles, and then reads a file in it.
func (a *answer) atOnce(name string) error {
	return a.timed(func() error {
		if _, err := os.ReadDir(dir); err != nil {
			return err
		}
		for end := time.Now().Add(300 * time.Millisecond); time.Now().Before(end); {
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		a.Lines = []string{string(data)}
		return err
	})
}

var unlock func()

// lock takes the lock that the browser keeps between its pages.
func lock() error {
	held := await(host.Call("lock"))
	if held.IsNull() {
		return book.ErrInUse
	}
	unlock = func() { held.Invoke() }
	return nil
}

func await(promise js.Value) js.Value {
	done := make(chan js.Value)
	then := js.FuncOf(func(_ js.Value, args []js.Value) any {
		done <- args[0]
		return nil
	})
	defer then.Release()
	promise.Call("then", then)
	return <-done
}
