package device

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tree writes a system's dev and sys folders: files by their text, and links, whose
// text begins with "-> ".
func tree(t *testing.T, files map[string]string) string {
	t.Helper()
	root := t.TempDir()
	for name, text := range files {
		path := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		var err error
		if target, ok := strings.CutPrefix(text, "-> "); ok {
			err = os.Symlink(target, path)
		} else {
			err = os.WriteFile(path, []byte(text), 0o600)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	return root
}

// TestPortsUnder lists a tree laid out as the kernel's Documentation/ABI and udev's
// rules for serial devices have it.
func TestPortsUnder(t *testing.T) {
	const bus = "sys/devices/pci0/usb1/"
	root := tree(t, map[string]string{
		"dev/ttyUSB10": "", "dev/ttyUSB2": "", "dev/ttyACM0": "", "dev/ttyAMA0": "", "dev/rfcomm0": "",
		"dev/ttyS0": "", "dev/ttyS1": "", "dev/ttyS2": "", // a chip, none, nothing known
		"dev/tty": "", "dev/tty1": "", "dev/ttyUSB": "", "dev/ttyUSBx": "", "dev/ttyprintk": "", "dev/null": "",

		// an adapter with a port's own folder below its interface
		bus + "1-1/idVendor": "0403\n", bus + "1-1/idProduct": "6001\n",
		bus + "1-1/product": "Kabel \x1b[31mrot\xff\n", bus + "1-1/manufacturer": "Acme\n", bus + "1-1/serial": "A7\u202e01\n",
		bus + "1-1/1-1:1.0/ttyUSB2/port_number": "0\n",
		"sys/class/tty/ttyUSB2/device":          "-> ../../../devices/pci0/usb1/1-1/1-1:1.0/ttyUSB2",

		// an adapter that is going: the hub's facts are not its own
		bus + "1-3/1-3:1.0/ttyUSB10/port_number": "0\n",
		"sys/class/tty/ttyUSB10/device":          "-> ../../../devices/pci0/usb1/1-3/1-3:1.0/ttyUSB10",

		// a board without texts, its port right at the interface, with strange numbers
		bus + "idVendor":     "1d6b\n", // the hub: not the board's
		bus + "idProduct":    "0002\n",
		bus + "1-2/idVendor": "16C0\n", bus + "1-2/idProduct": "0483\n",
		bus + "1-2/1-2:1.0/bInterfaceNumber": "00\n",
		"sys/class/tty/ttyACM0/device":       "-> ../../../devices/pci0/usb1/1-2/1-2:1.0",

		"sys/class/tty/ttyS0/type": "4\n",
		"sys/class/tty/ttyS1/type": "0\n",

		"dev/serial/by-id/usb-Acme_Kabel_A701-if00-port0": "-> ../../ttyUSB2",
		"dev/serial/by-id/usb-Acme_Other":                 "-> ../../ttyUSB2",
		"dev/serial/by-id/usb-\x1b":                       "-> ../../ttyACM0",
		"dev/serial/by-id/file":                           "no link",
	})
	got, err := portsUnder(root)
	if err != nil {
		t.Fatal(err)
	}
	want := []Info{
		{Name: "/dev/rfcomm0"},
		{Name: "/dev/ttyACM0", ProductID: "0483"},
		{Name: "/dev/ttyAMA0"},
		{Name: "/dev/ttyS0"},
		{
			Name: "/dev/ttyUSB2", ByID: "/dev/serial/by-id/usb-Acme_Kabel_A701-if00-port0",
			Product: "Kabel \ufffd[31mrot\ufffd", Maker: "Acme", Serial: "A7\ufffd01", VendorID: "0403", ProductID: "6001",
		},
		{Name: "/dev/ttyUSB10"},
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func TestPortsUnderLongText(t *testing.T) {
	root := tree(t, map[string]string{
		"dev/ttyACM0":                  "",
		"sys/class/tty/ttyACM0/device": "-> ../../../devices/1-1/1-1:1.0",
		"sys/devices/1-1/1-1:1.0/x":    "",
		"sys/devices/1-1/idVendor":     strings.Repeat("0", 1<<20),
		"sys/devices/1-1/product":      strings.Repeat("é", 1<<20),
	})
	got, err := portsUnder(root)
	if err != nil || len(got) != 1 {
		t.Fatal(got, err)
	}
	if p := got[0]; p.VendorID != "" || len(p.Product) != maxFact {
		t.Errorf("vendor %q, %d bytes of product", p.VendorID, len(p.Product))
	}
}

func TestPortsUnderNothing(t *testing.T) {
	if got, err := portsUnder(tree(t, map[string]string{"dev/null": ""})); err != nil || len(got) != 0 {
		t.Errorf("no ports: %v, %v", got, err)
	}
	if got, err := portsUnder(t.TempDir()); err == nil {
		t.Errorf("no dev folder: %v", got)
	}
}

// TestUARTByDriver: where the kind of chip cannot be read, the driver decides.
func TestUARTByDriver(t *testing.T) {
	root := tree(t, map[string]string{
		"sys/class/tty/ttyS0/device/driver": "-> ../../../bus/pnp/drivers/serial",
		"sys/class/tty/ttyS1/device/driver": "-> ../../../bus/platform/drivers/serial8250",
		"sys/class/tty/ttyS2/device/none":   "",
	})
	for tty, want := range map[string]bool{"ttyS0": true, "ttyS1": false, "ttyS2": false, "ttyS3": false} {
		if got := isUART(root, tty); got != want {
			t.Errorf("%s: %v, want %v", tty, got, want)
		}
	}
}
