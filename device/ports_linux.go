package device

import (
	"io"
	"os"
	"path/filepath"
	"strings"

	"coldseam/profile/plain"
)

// Ports lists the serial ports there are, by name. It opens none of them.
func Ports() ([]Info, error) { return portsUnder("/") }

// portFamilies are the names of serial ports, each with a number behind it.
var portFamilies = map[string]bool{
	"ttyUSB": true, // USB adapters
	"ttyACM": true, // USB boards
	"ttyAMA": true, // built-in, ARM
	"ttyS":   true, // built-in; most of these names have nothing behind them
	"rfcomm": true, // Bluetooth
}

// portsUnder lists the ports of the system whose dev and sys folders are in root.
func portsUnder(root string) ([]Info, error) {
	entries, err := os.ReadDir(filepath.Join(root, "dev"))
	if err != nil {
		return nil, err
	}
	ids := namesByID(root)
	var ports []Info
	for _, e := range entries {
		tty := e.Name()
		family, number := cutNumber(tty)
		if !portFamilies[family] || number == "" || family == "ttyS" && !isUART(root, tty) {
			continue
		}
		p := Info{Name: "/dev/" + tty, ByID: ids[tty]}
		if dir := usbFolder(root, tty); dir != "" {
			p.Product = fact(dir, "product")
			p.Maker = fact(dir, "manufacturer")
			p.Serial = fact(dir, "serial")
			p.VendorID = hexID(fact(dir, "idVendor"))
			p.ProductID = hexID(fact(dir, "idProduct"))
		}
		ports = append(ports, p)
	}
	byName(ports)
	return ports, nil
}

// namesByID gives, for each port, its first name in /dev/serial/by-id.
func namesByID(root string) map[string]string {
	const folder = "dev/serial/by-id"
	ids := map[string]string{}
	entries, err := os.ReadDir(filepath.Join(root, folder)) // sorted
	if err != nil {
		return ids // no USB port was ever plugged in
	}
	for _, e := range entries {
		target, err := os.Readlink(filepath.Join(root, folder, e.Name()))
		if err != nil || plain.Line(e.Name()) != e.Name() {
			continue
		}
		if tty := filepath.Base(target); ids[tty] == "" {
			ids[tty] = "/" + folder + "/" + e.Name()
		}
	}
	return ids
}

// isUART says whether a chip is behind a built-in port. The kernel numbers the kind of
// chip, 0 being none. Older kernels show that number to root only: there, a port is
// real when something else than the stand-in driver has claimed it.
func isUART(root, tty string) bool {
	dir := filepath.Join(root, "sys/class/tty", tty)
	if kind, err := read(dir, "type"); err == nil {
		return kind != "" && kind != "0"
	}
	driver, err := os.Readlink(filepath.Join(dir, "device/driver"))
	return err == nil && filepath.Base(driver) != "serial8250"
}

// usbFolder is the folder in /sys of the USB device that a port belongs to, empty for
// others. The port's own folder lies one or two levels below.
func usbFolder(root, tty string) string {
	dir, err := filepath.EvalSymlinks(filepath.Join(root, "sys/class/tty", tty, "device"))
	if err != nil {
		return ""
	}
	for range 3 {
		if _, err := os.Stat(filepath.Join(dir, "idVendor")); err == nil {
			return dir
		}
		dir = filepath.Dir(dir)
	}
	return ""
}

// maxFact is the most bytes kept of a device's text; USB has room for 126 characters.
const maxFact = 512

// fact is one printable text of /sys, empty when there is none.
func fact(dir, name string) string {
	text, _ := read(dir, name)
	return plain.Line(strings.TrimSpace(text[:min(len(text), maxFact)]))
}

// read reads one small file of /sys.
func read(dir, name string) (string, error) {
	f, err := os.Open(filepath.Join(dir, name))
	if err != nil {
		return "", err
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, 4096)) // a page, as much as /sys ever gives
	return strings.TrimSpace(string(b)), err
}

// hexID is an identifier of USB as it is, or nothing when it is none.
func hexID(s string) string {
	if len(s) != 4 || strings.Trim(s, "0123456789abcdef") != "" {
		return ""
	}
	return s
}
