package app

import (
	"errors"
	"io/fs"
	"os"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/settings"
)

var settingsActs = actions{
	"settings": func(a *App, _ Event) { a.goTo(settingsScreen) },
}

// readSettings reads the settings file; one that cannot be read is not used, and the first
// screen says why.
func (a *App) readSettings() {
	a.set, a.setErr = settings.Default(), nil
	data, err := os.ReadFile(a.o.Settings)
	if errors.Is(err, fs.ErrNotExist) {
		return
	}
	if err == nil {
		var set settings.Settings
		if set, err = settings.Parse("settings", data); err == nil {
			a.set = set
		}
	}
	a.setErr = err
}

func settingsScreen(*App) []markup.Node {
	return []markup.Node{markup.El("h1", "Settings")}
}
