//go:build !linux && !darwin && !windows

package device

import "errors"

// Ports knows no way to list the ports here.
func Ports() ([]Info, error) { return nil, errors.New("not known how on this system") }
