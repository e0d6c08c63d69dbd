package device

import (
	"errors"
	"fmt"
	"io/fs"
	"runtime"
	"strings"
	"syscall"

	"coldseam/profile/plain"
)

// ErrBusy is what Open's error is (errors.Is) when another program has the port.
var ErrBusy = errors.New("the port is busy")

// refusal is an error in our own words; errors.Is sees what it was.
type refusal struct {
	text  string
	cause error
}

func (r *refusal) Error() string { return r.text }
func (r *refusal) Unwrap() error { return r.cause }

// longestCause is how much is shown of an error of the system.
const longestCause = 200

// explain says in one line why a port cannot be opened and what to do.
func explain(name string, err error) error {
	switch {
	case errors.Is(err, ErrBusy), errors.Is(err, syscall.EBUSY):
		return busy(name)
	case errors.Is(err, fs.ErrPermission):
		if runtime.GOOS == "windows" {
			return busy(name) // "Access is denied" is how Windows says that a port is open elsewhere
		}
		return &refusal{denied(name, owningGroup(name)), fs.ErrPermission}
	case errors.Is(err, fs.ErrNotExist):
		ports, listErr := Ports()
		return &refusal{missing(name, ports, listErr), fs.ErrNotExist}
	case errors.Is(err, syscall.ENOTTY), errors.Is(err, syscall.EISDIR):
		return &refusal{name + " is not a serial port: give one such as /dev/ttyUSB0", err}
	case errors.Is(err, syscall.ENXIO), errors.Is(err, syscall.ENODEV), errors.Is(err, syscall.EIO):
		return &refusal{name + " has no working device behind it: plug the probe in again, or give another port", err}
	}
	return &refusal{fmt.Sprintf("%s cannot be opened: %s", name, plain.Cut(err.Error(), longestCause)), err}
}

func busy(name string) error {
	return &refusal{name + " is busy: close the other program that uses it, then try again", ErrBusy}
}

// denied says how to be let in: by the group that owns the port, where there is one
// that an angler can join.
func denied(name, group string) string {
	if group == "" {
		return name + " cannot be opened: only the system may use it; ask whoever set up the computer"
	}
	return fmt.Sprintf("%s cannot be opened: it belongs to the group %s; run `sudo usermod -aG %[2]s $USER`, then log out and in again", name, group)
}

// missing says what ports there are instead.
func missing(name string, ports []Info, err error) string {
	switch {
	case err != nil:
		return fmt.Sprintf("there is no port %s, and the ports cannot be listed: %s", name, plain.Cut(err.Error(), longestCause))
	case len(ports) == 0:
		return fmt.Sprintf("there is no port %s, and none is plugged in: check the cable", name)
	}
	list := make([]string, len(ports))
	for i, p := range ports {
		list[i] = p.String()
	}
	return fmt.Sprintf("there is no port %s: there is %s", name, strings.Join(list, ", "))
}
