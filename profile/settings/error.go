package settings

import "strconv"

// Error is what is wrong with a file of settings, and where.
type Error struct {
	Name string // of the file
	Line int    // from 1
	Key  string // the setting, "" where it is not one that is wrong
	Err  error  // what is wrong, and what to do
}

func (e *Error) Error() string { return e.Name + ":" + strconv.Itoa(e.Line) + ": " + e.What() }

// What is the error without its place.
func (e *Error) What() string {
	if e.Key == "" {
		return e.Err.Error()
	}
	return e.Key + ": " + e.Err.Error()
}

func (e *Error) Unwrap() error { return e.Err }
