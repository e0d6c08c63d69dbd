package device

import (
	"errors"

	"golang.org/x/sys/windows/registry"

	"coldseam/profile/plain"
)

// Ports lists the serial ports there are, by name. It opens none of them. Windows keeps
// their names in the registry; nothing more is read.
func Ports() ([]Info, error) {
	key, err := registry.OpenKey(registry.LOCAL_MACHINE, `HARDWARE\DEVICEMAP\SERIALCOMM`, registry.QUERY_VALUE)
	if errors.Is(err, registry.ErrNotExist) {
		return nil, nil // the key is made with the first port
	}
	if err != nil {
		return nil, err
	}
	defer key.Close()
	values, err := key.ReadValueNames(-1)
	if err != nil {
		return nil, err
	}
	var ports []Info
	for _, value := range values {
		name, _, err := key.GetStringValue(value)
		if err != nil || name == "" || plain.Line(name) != name {
			continue // pulled since, or no name that Open takes
		}
		ports = append(ports, Info{Name: name})
	}
	byName(ports)
	return ports, nil
}
