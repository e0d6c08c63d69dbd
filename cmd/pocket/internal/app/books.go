package app

import "coldseam/profile/notebook"

var bookActs = actions{}

// bookState is the list of drops that is seen.
type bookState struct{}

// reading is how a saved page is read: as the settings have it, and nobody is asked.
func (a *App) reading() notebook.Options {
	return a.set.Reading()
}
