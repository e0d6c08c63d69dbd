//go:build noserial || !(linux || windows || cgo)

package device

import (
	"errors"
	"io"
)

// Serial says why this build opens no port.
func Serial() error {
	return &refusal{"built without a serial port: type the readings, or build coldseam again with CGO_ENABLED=1", errors.ErrUnsupported}
}

// Open opens no port: there is no serial library in this build. The error is that of
// Serial, or c's own.
func Open(c Config) (io.ReadWriteCloser, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	return nil, Serial()
}
