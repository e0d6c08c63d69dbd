package main

import (
	"errors"
	"strings"

	"github.com/urfave/cli/v2"
)

// reorder puts a command's flags before its arguments, each as --name=value, since
// the parser takes a flag after the first argument for another argument and says
// nothing. It refuses unknown flags, flags without their value and flags given
// twice. "-" and what follows "--" are arguments.
func reorder(app *cli.App, args []string) ([]string, error) {
	if len(args) < 2 {
		return args, nil
	}
	command := app.Command(args[1])
	if command == nil {
		return withoutCommand(app, args)
	}
	path := []string{args[0], command.Name} // to the command whose flags follow
	if part := subcommand(command, args); part != nil {
		command, path = part, append(path, part.Name)
	}
	var flags, rest []string
	seen := map[string]bool{}
	for i := len(path); i < len(args); i++ {
		a := args[i]
		if a == "--" {
			rest = append(rest, args[i+1:]...)
			break
		}
		if a == "-" || !strings.HasPrefix(a, "-") {
			rest = append(rest, a)
			continue
		}
		flag, n, err := oneFlag(command, args[i:], seen)
		if errors.Is(err, errHelp) {
			return append(path, "--help"), nil
		}
		if errors.Is(err, errNoFlag) {
			name, _, _ := strings.Cut(strings.TrimLeft(a, "-"), "=")
			return nil, refuse("%s has no flag --%s%s; see coldseam %s --help", command.Name, name, near(command, name), strings.Join(path[1:], " "))
		}
		if err != nil {
			return nil, err
		}
		flags, i = append(flags, flag), i+n-1
	}
	return append(append(append(path, flags...), "--"), rest...), nil
}

var (
	errHelp   = errors.New("help is asked for")
	errNoFlag = errors.New("there is no such flag")
)

// oneFlag gives the flag with which args begin as --name=value, and how many of them it
// takes. The error is errHelp, errNoFlag or a refusal.
func oneFlag(command *cli.Command, args []string, seen map[string]bool) (flag string, n int, err error) {
	name, value, given := strings.Cut(strings.TrimLeft(args[0], "-"), "=")
	if name == "help" || name == "h" {
		return "", 0, errHelp
	}
	f, n := flagNamed(command, name), 1
	_, isBool := f.(*cli.BoolFlag)
	switch {
	case f == nil:
		return "", 0, errNoFlag
	case seen[name]:
		return "", 0, refuse("--%s is given twice", name)
	case isBool && given && value != "true" && value != "false":
		return "", 0, refuse("--%s takes no value", name)
	case !isBool && !given && len(args) > 1 && !looksLikeFlag(args[1]):
		value, n = args[1], 2
	}
	seen[name] = true
	if isBool && !given {
		return "--" + name, n, nil
	}
	if !isBool && strings.TrimSpace(value) == "" {
		return "", 0, refuse("--%s needs a value: %s", name, usage(f))
	}
	return "--" + name + "=" + value, n, nil
}

// withoutCommand gives the arguments of a call that begins with no command.
func withoutCommand(app *cli.App, args []string) ([]string, error) {
	first := args[1]
	switch first {
	case "help":
		if len(args) == 2 {
			return []string{args[0], "--help"}, nil
		}
		if app.Command(args[2]) == nil {
			return nil, unknownCommand(app, args[2])
		}
		return []string{args[0], args[2], "--help"}, nil
	case "--help", "-h", "--version", "-v", "--licences", "--licenses":
		if len(args) > 2 {
			return nil, refuse("%s takes nothing after it", first)
		}
		return args, nil
	}
	if strings.HasPrefix(first, "-") {
		return nil, refuse("put the command first: coldseam COMMAND [flags] [file]; see coldseam --help")
	}
	return nil, unknownCommand(app, first)
}

// subcommand is the part of a command that the second word names, or nil.
func subcommand(command *cli.Command, args []string) *cli.Command {
	for _, s := range command.Subcommands {
		if len(args) > 2 && args[2] == s.Name {
			return s
		}
	}
	return nil
}

// looksLikeFlag: a dash and then no digit, so that a negative number may be a value.
func looksLikeFlag(a string) bool {
	return len(a) > 1 && a[0] == '-' && (a[1] < '0' || a[1] > '9') && a[1] != '.'
}

func flagNamed(c *cli.Command, name string) cli.Flag {
	for _, f := range c.Flags {
		for _, n := range f.Names() {
			if n == name {
				return f
			}
		}
	}
	return nil
}

func usage(f cli.Flag) string {
	if d, ok := f.(cli.DocGenerationFlag); ok {
		return d.GetUsage()
	}
	return ""
}

// near suggests the flag that begins alike.
func near(c *cli.Command, name string) string {
	best, most := "", 1
	for _, f := range c.Flags {
		n := f.Names()[0]
		same := 0
		for same < len(n) && same < len(name) && n[same] == name[same] {
			same++
		}
		if same > most {
			best, most = n, same
		}
	}
	if best == "" {
		return ""
	}
	return " (did you mean --" + best + "?)"
}
