//go:build !js

// Pocket is the program of the page for the phone: it takes what is touched and typed there
// to package app, and hands back what to show. It runs in a browser only; coldseam pocket
// writes the page that it is part of.
package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "This program runs in a browser: coldseam pocket -o coldseam.html writes its page.")
	os.Exit(2)
}
