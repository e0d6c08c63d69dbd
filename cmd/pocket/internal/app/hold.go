package app

import "coldseam/profile/book"

// hold opens the book for saving, and keeps other pages out of it.
func (a *App) hold() (*book.Book, func(), error) {
	b, err := book.Open(a.o.Dir, a.disk())
	if err != nil {
		return nil, nil, err
	}
	if a.o.Lock == nil {
		return b, func() {}, nil
	}
	unlock, err := a.o.Lock()
	return b, unlock, err
}

// disk is where the book is kept.
func (a *App) disk() book.Disk {
	if a.o.Disk != nil {
		return a.o.Disk
	}
	return book.System{}
}
