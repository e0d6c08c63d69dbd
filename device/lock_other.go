//go:build !unix

package device

// lock does nothing: Windows opens a port for one program only.
func lock(string) (unlock func(), err error) { return func() {}, nil }

// owningGroup is empty: ports have no group here.
func owningGroup(string) string { return "" }
