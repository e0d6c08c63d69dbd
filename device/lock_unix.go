//go:build unix

package device

import (
	"errors"
	"os"
	"strconv"
	"strings"
	"syscall"

	"golang.org/x/sys/unix"

	"coldseam/profile/plain"
)

// lock takes the port for this program: a flock on a handle of our own, which the
// system frees when the program ends in whatever way. It holds for the device, by
// whichever name it was opened. Where the file system has no locks there is none.
func lock(name string) (unlock func(), err error) {
	f, err := os.OpenFile(name, os.O_RDONLY|unix.O_NOCTTY|unix.O_NONBLOCK, 0)
	if err != nil {
		return nil, err
	}
	if err := unix.Flock(int(f.Fd()), unix.LOCK_EX|unix.LOCK_NB); errors.Is(err, unix.EWOULDBLOCK) {
		f.Close()
		return nil, ErrBusy
	}
	return func() { f.Close() }, nil
}

// owningGroup is the name of the group that may read and write the port, empty when
// there is none to join.
func owningGroup(name string) string {
	info, err := os.Stat(name)
	if err != nil {
		return ""
	}
	stat, ok := info.Sys().(*syscall.Stat_t)
	if !ok || stat.Gid == 0 || info.Mode().Perm()&0o060 != 0o060 {
		return "" // nobody should join root's group for a port
	}
	return groupName(strconv.FormatUint(uint64(stat.Gid), 10))
}

// groupName finds the name of a group in /etc/group (group(5)), where the groups of ports
// are on every system; the number where it is not there. The library's own way brings the
// C library into the program, which costs every command a fifth of its start.
func groupName(gid string) string {
	table, err := os.ReadFile("/etc/group")
	if err != nil {
		return gid
	}
	for line := range strings.Lines(string(table)) {
		if f := strings.Split(line, ":"); len(f) > 2 && f[2] == gid {
			return plain.Line(f[0])
		}
	}
	return gid
}
