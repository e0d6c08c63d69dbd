package app

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"slices"
	"strings"

	"coldseam/cmd/pocket/internal/markup"
	"coldseam/profile/book"
	"coldseam/profile/plain"
	"coldseam/profile/settings"
)

var settingsActs = actions{
	"settings":        func(a *App, _ Event) { a.settings = settingsState{}; a.goTo(settingsScreen) },
	"settings-save":   saveForm,
	"settings-file":   func(a *App, _ Event) { a.openFile() },
	"settings-write":  writeFile,
	"settings-list":   openList,
	"settings-entry":  openEntry,
	"settings-keep":   keepEntry,
	"settings-remove": removeEntry,
}

// settingsState is what was typed into a form of the settings and not saved, and why.
type settingsState struct {
	typed  map[string]string
	key    string // the field that is refused, "" where it is none of the form
	wrong  string
	notice string

	list  list // the box of flies and the like
	entry int  // the one of the list that is changed, -1 a new one
	file  string
	base  string // the file as it was when it was shown
}

// readSettings reads the settings file; one that cannot be read is not used, and the first
// screen says why.
func (a *App) readSettings() {
	a.set, a.setErr = settings.Default(), nil
	text, err := a.settingsText()
	if err == nil {
		var set settings.Settings
		if set, err = settings.Parse("settings", []byte(text)); err == nil {
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

// units are those of the line and the thermometer, "" where the settings hold none.
func (a *App) units() string {
	for _, h := range a.set.Headers {
		if h.Key == "units" {
			return strings.TrimSpace(h.Value)
		}
	}
	return ""
}

// saveSettings puts a text in the place of the settings file, durably, and uses it from now
// on; one that cannot be read changes nothing.
func (a *App) saveSettings(text string) error {
	if _, err := settings.Parse("settings", []byte(text)); err != nil {
		return err
	}
	if err := book.Replace(a.o.Settings, text, a.disk()); err != nil {
		return err
	}
	a.readSettings()
	a.show.Persist = true
	return nil
}

// changeSettings changes the text of the file and saves it.
func (a *App) changeSettings(change func(text string) (string, error)) error {
	text, err := a.settingsText()
	if err == nil {
		text, err = change(text)
	}
	if err == nil {
		err = a.saveSettings(text)
	}
	return err
}

// refused takes an error for the form that is seen.
func (a *App) refused(err error, typed map[string]string, fields []setting) {
	s := &a.settings
	s.typed, s.key, s.wrong, s.notice = typed, "", "Not saved: "+why(err)+".", ""
	at := new(settings.Error)
	if errors.As(err, &at) && slices.ContainsFunc(fields, func(f setting) bool { return f.key == at.Key }) {
		s.key, s.wrong = at.Key, "Not saved: "+plain.Line(at.Err.Error())+"."
	}
	a.say("Not saved.")
}

// saved leaves the form as it is saved.
func (a *App) saved() {
	a.settings.typed, a.settings.key, a.settings.wrong, a.settings.notice = nil, "", "", "Saved."
	a.say("Saved.")
}

// wrongAbove is what is wrong where no field of the form is.
func (s *settingsState) wrongAbove() markup.Node {
	if s.key != "" {
		return nil
	}
	return warning(s.wrong)
}

// settingsScreen is what matters on the water, in a form.
func settingsScreen(a *App) []markup.Node {
	s := &a.settings
	out := []markup.Node{a.head("Settings")}
	text, err := a.settingsText()
	if a.setErr != nil || err != nil {
		return append(out, warning("The settings are not used: "+why(cmp.Or(a.setErr, err))+"."),
			wayBack(touch("settings-file", "", "Put the file right")))
	}
	out = append(out, told(s.notice), s.wrongAbove(), a.form("settings-save", onWater, "", text))
	var on []any
	for _, l := range lists {
		on = append(on, touch("settings-list", l.table, l.title+l.count(text)))
	}
	on = append(on, touch("settings-file", "", "All settings as text"), carry("save", "licences", "licences.txt", "Licences of the parts"))
	return append(out, wayBack(on...))
}

// saveForm saves the form of settingsScreen.
func saveForm(a *App, e Event) {
	err := a.changeSettings(func(text string) (string, error) { return changed(text, "", onWater, e.Fields) })
	if err != nil {
		a.refused(err, e.Fields, onWater)
		return
	}
	a.saved()
}

// openFile shows the whole file.
func (a *App) openFile() {
	text, err := a.settingsText()
	a.settings = settingsState{file: text, base: text}
	if a.setErr != nil || err != nil {
		a.settings.wrong = "The settings are not used: " + why(cmp.Or(a.setErr, err)) + "."
	}
	a.goTo(fileScreen)
}

// writeFile saves the whole file, unless it was changed elsewhere since it was shown.
func writeFile(a *App, e Event) {
	s := &a.settings
	s.file, s.notice, s.wrong, s.key = strings.ReplaceAll(e.Fields["text"], "\r\n", "\n"), "", "", ""
	now, err := a.settingsText()
	if err == nil && now != s.base && now != s.file {
		s.base = now
		s.wrong = "The settings were changed in another window meanwhile. Save again to have yours in their place."
		a.say(s.wrong)
		return
	}
	if err == nil {
		err = a.saveSettings(s.file)
	}
	if err != nil {
		a.refused(err, nil, nil)
		return
	}
	s.base = s.file
	a.saved()
}

// fileScreen is the whole file, to be changed or to be replaced by that of a computer.
func fileScreen(a *App) []markup.Node {
	s := &a.settings
	return []markup.Node{
		a.head("All settings as text"),
		told(s.notice), s.wrongAbove(),
		markup.El("form", markup.A("data-do", "settings-write"),
			markup.El("label", markup.A("for", "settings"), "The settings file of Coldseam on a computer can be pasted here."),
			textArea("settings", "text", min(max(strings.Count(s.file, "\n")+2, 8), 24), s.file), submit("Save")),
		hidden("saved", s.base),
		wayBack(carry("copy", "saved", "", "Copy what is saved"), carry("save", "saved", "settings.toml", "Save as a file")),
	}
}
