package app

import (
	"errors"
	"io/fs"
	"os"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
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

// settingsText is what stands in the settings file, "" where there is none.
func (a *App) settingsText() (string, error) {
	data, err := os.ReadFile(a.o.Settings)
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil
	}
	return string(data), err
}

// saveSettings puts a text in the place of the settings file, durably, and uses it from now
// on; one that cannot be read changes nothing.
func (a *App) saveSettings(text string) error {
	if _, err := settings.Parse("settings", []byte(text)); err != nil {
		return err
	}
	if err := book.Replace(a.o.Settings, text, book.System{}); err != nil {
		return err
	}
	a.readSettings()
	return nil
}

func settingsScreen(*App) []markup.Node {
	return []markup.Node{markup.El("h1", "Settings")}
}
