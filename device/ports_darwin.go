package device

import (
	"path/filepath"

	"coldseam/profile/plain"
)

// Ports lists the serial ports there are, by name. It opens none of them. macOS names
// are all that is known; those of USB adapters mostly carry their serial number.
func Ports() ([]Info, error) {
	names, err := filepath.Glob("/dev/cu.*")
	if err != nil {
		return nil, err
	}
	var ports []Info
	for _, name := range names {
		if plain.Line(name) == name {
			ports = append(ports, Info{Name: name})
		}
	}
	byName(ports)
	return ports, nil
}
