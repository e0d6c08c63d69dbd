package book

import "path/filepath"

// Replace puts a text in the place of a file, or where there is none, durably: whole or not
// at all. It is for a file beside the book, such as the settings.
func Replace(path, text string, disk Disk) error {
	b := At(filepath.Dir(path), disk)
	if err := makeFolder(b.Dir, disk); err != nil {
		return err
	}
	part, err := b.write(path, ".part", text, pageMode)
	if err != nil {
		return err
	}
	if err := disk.Rename(part, path); err != nil {
		disk.Remove(part)
		return err
	}
	return disk.SyncFolder(b.Dir)
}
