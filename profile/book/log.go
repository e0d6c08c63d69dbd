package book

import (
	"bytes"
	"strconv"
)

// LogEnding is that of the file beside a page that keeps what the probe said.
const LogEnding = ".probe"

// Log keeps the raw lines of a probe beside the page of its drop. Lines that come
// before there is a page wait for it; what does not fit the wait is counted.
//
// A log is a help, and no part of the drop: its first failure is an error, and then it
// keeps no more, without another, until the drop goes on in another page.
type Log struct {
	file    File
	path    string // of the file, or of the one that failed
	failed  bool
	waiting bytes.Buffer
	lost    int
}

// maxWaiting bounds what waits for a page, in bytes.
const maxWaiting = 4 << 20

// Line keeps a line as it came, with the seconds since the drop began. Bytes that
// are no text are written as \x and two digits, a backslash as two.
func (l *Log) Line(sinceS float64, line []byte) error {
	return l.write(append(strconv.AppendFloat([]byte{'+'}, sinceS, 'f', 3, 64), ' '), line)
}

// Remark keeps a remark of our own, which replay passes over.
func (l *Log) Remark(text string) error { return l.write([]byte("# "), []byte(text)) }

func (l *Log) write(head, line []byte) error {
	for _, c := range line {
		switch {
		case c == '\\':
			head = append(head, `\\`...)
		case c < ' ' && c != '\t' || c > '~':
			const hex = "0123456789abcdef"
			head = append(head, '\\', 'x', hex[c>>4], hex[c&15])
		default:
			head = append(head, c)
		}
	}
	head = append(head, '\n')
	switch {
	case l.failed:
		return nil
	case l.file != nil:
		_, err := l.file.Write(head)
		return l.fail(err)
	case l.waiting.Len()+len(head) > maxWaiting:
		l.lost++
	default:
		l.waiting.Write(head)
	}
	return nil
}

// Sync makes durable what was kept so far, beside page p; nil leaves it waiting.
func (l *Log) Sync(p *Page) error {
	if p == nil {
		return nil
	}
	if path := p.Beside(LogEnding); path != l.path {
		return l.fail(l.open(p, path))
	}
	if l.failed {
		return nil
	}
	return l.fail(l.file.Sync())
}

// open begins the file beside a page, with what waited for it.
func (l *Log) open(p *Page, path string) error {
	l.Close()
	l.path, l.failed = path, false
	f, err := p.book.disk.Append(path)
	if err != nil {
		return err
	}
	l.file = f
	if l.lost > 0 {
		l.waiting.WriteString("# " + strconv.Itoa(l.lost) + " lines before the first reading were not kept\n")
	}
	_, err = f.Write(l.waiting.Bytes())
	l.waiting, l.lost = bytes.Buffer{}, 0
	if err == nil {
		err = f.Sync()
	}
	if err == nil {
		err = p.book.disk.SyncFolder(p.book.Dir)
	}
	return err
}

func (l *Log) fail(err error) error {
	l.failed = err != nil
	return err
}

// Close closes the file.
func (l *Log) Close() error {
	if l.file == nil {
		return nil
	}
	err := l.file.Close()
	l.file = nil
	return err
}

// Logged takes a line of a Log apart into its time and the line as it came; ok is
// false for a line that is not one, such as any line of a probe itself. The result
// may overwrite line.
func Logged(line []byte) (sinceS float64, raw []byte, ok bool) {
	if len(line) == 0 || line[0] != '+' {
		return 0, nil, false
	}
	stamp, rest, found := bytes.Cut(line[1:], []byte{' '})
	point := bytes.IndexByte(stamp, '.')
	if !found || point < 1 || len(stamp)-point != 4 || len(stamp) > 15 {
		return 0, nil, false
	}
	sinceS, err := strconv.ParseFloat(string(stamp), 64)
	if err != nil || stamp[0] < '0' || stamp[0] > '9' {
		return 0, nil, false
	}
	raw = rest[:0]
	for i := 0; i < len(rest); i++ {
		c := rest[i]
		if c == '\\' && i+1 < len(rest) {
			i++
			c = rest[i]
			if c == 'x' && i+2 < len(rest) {
				if v, err := strconv.ParseUint(string(rest[i+1:i+3]), 16, 8); err == nil {
					c, i = byte(v), i+2
				}
			}
		}
		raw = append(raw, c)
	}
	return sinceS, raw, true
}
