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

// TakeOut takes a page out of the book, durably, where it is still as it was. The book is to
// be locked.
func (b *Book) TakeOut(path, was string) error {
	now, err := b.disk.ReadFile(path)
	switch {
	case err != nil:
		return err
	case string(now) != was:
		return ErrMeanwhile
	}
	if err := b.disk.Remove(path); err != nil {
		return err
	}
	return b.disk.SyncFolder(b.Dir)
}
