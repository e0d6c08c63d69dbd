package device

import (
	"fmt"
	"path/filepath"
)

// identity is what a port is known again by when it was pulled and plugged in, maybe
// under another name.
type identity struct {
	given string // the name it was opened by
	info  Info   // empty where the system knows nothing of the device
	alone bool   // no other port looked the same
}

// identify notes what the port of that name is, among the ports there are.
func identify(given string, ports []Info) identity {
	who := identity{given: given}
	for _, p := range ports {
		if who.leadsTo(p) {
			who.info = p
		}
	}
	who.alone = len(who.alike(ports)) == 1
	return who
}

// find gives the name to open the port by. The device itself comes first: after a hub
// was pulled, another device may have its name. Only a device that no other looks like
// is taken under a new name. Else the old name is tried, unless it is known that
// something else is there now.
func (who identity) find(ports []Info) (string, error) {
	alike := who.alike(ports)
	if who.alone && len(alike) == 1 {
		if who.leadsTo(alike[0]) {
			return who.given, nil
		}
		return alike[0].Name, nil
	}
	for _, p := range ports {
		if who.info.VendorID != "" && p.VendorID != "" && who.leadsTo(p) && !same(who.info, p) {
			return "", fmt.Errorf("another device is there now: %s; plug the probe in again, or start again to use this one", p)
		}
	}
	return who.given, nil
}

// alike are the ports that could be the same device.
func (who identity) alike(ports []Info) []Info {
	var alike []Info
	for _, p := range ports {
		if same(who.info, p) {
			alike = append(alike, p)
		}
	}
	return alike
}

// leadsTo says whether the name given is one of the port's.
func (who identity) leadsTo(p Info) bool {
	if who.given == p.Name || who.given == p.ByID {
		return true
	}
	target, err := filepath.EvalSymlinks(who.given)
	return err == nil && target == p.Name
}

// same says whether two ports look like one device: by the name in by-id, which also
// tells the plugs of one adapter apart, else by USB's numbers and the serial number.
func same(a, b Info) bool {
	if a.ByID != "" && b.ByID != "" {
		return a.ByID == b.ByID
	}
	return a.VendorID != "" && a.VendorID == b.VendorID && a.ProductID == b.ProductID && a.Serial == b.Serial
}
