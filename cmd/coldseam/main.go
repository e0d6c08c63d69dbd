// Coldseam turns a handful of temperature-at-depth readings of a stillwater into a
// decision: how deep to fish, over what depth of water, and what leader reaches it.
//
// Each command has a file of its own here: its flags, its prompts, its output. No
// arithmetic is done in this package.
package main

import "os"

func main() {
	os.Exit(run(os.Args, os.Stdin, os.Stdout, os.Stderr))
}
