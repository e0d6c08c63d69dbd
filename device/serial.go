//go:build (linux || windows || cgo) && !noserial

package device

import (
	"io"

	"github.com/tarm/serial"
)

// Serial says why this build opens no port, nil as it does.
func Serial() error { return nil }

// Open opens a port for this program alone and throws away what came before. A Read
// that returns 0 bytes, with io.EOF (Linux, macOS) or without an error (Windows), after
// about Poll means silence, not the end. Close it only when no Read is under way.
//
// The lock keeps out only programs that lock as well (flock); on Windows the system
// itself keeps all others out. Opening raises DTR, at which many boards start anew
// and print what they print then.
//
// An error is one line with what to do. It is ErrBusy, fs.ErrPermission or
// fs.ErrNotExist by errors.Is where it is one of these.
func Open(c Config) (io.ReadWriteCloser, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	c = c.filled()
	// The lock comes first: a port that another program reads must keep its settings.
	unlock, err := lock(c.Name)
	if err != nil {
		return nil, explain(c.Name, err)
	}
	p, err := serial.OpenPort(&serial.Config{
		Name: c.Name, Baud: c.Baud, Size: byte(c.DataBits), ReadTimeout: Poll,
		Parity: map[string]serial.Parity{
			"none": serial.ParityNone, "even": serial.ParityEven, "odd": serial.ParityOdd,
		}[c.Parity],
	})
	if err != nil {
		unlock()
		return nil, explain(c.Name, err)
	}
	if err := p.Flush(); err != nil {
		p.Close()
		unlock()
		return nil, explain(c.Name, err)
	}
	return &port{p, unlock}, nil
}

// port is an open port with its lock.
type port struct {
	*serial.Port
	unlock func()
}

// Close closes the port and lets others in.
func (p *port) Close() error {
	err := p.Port.Close()
	p.unlock()
	return err
}
