package main

import (
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
		switch args[1] {
		case "--help", "-h", "help", "--version", "-v", "--licences", "--licenses":
			if len(args) > 2 && args[1] == "help" {
				if app.Command(args[2]) == nil {
					return nil, unknownCommand(app, args[2])
				}
				return []string{args[0], args[2], "--help"}, nil
			}
			if len(args) > 2 {
				return nil, refuse("%s takes nothing after it", args[1])
			}
			if args[1] == "help" {
				return []string{args[0], "--help"}, nil
			}
			return args, nil
		}
		if strings.HasPrefix(args[1], "-") {
			return nil, refuse("the command comes first: coldseam COMMAND [flags] [file]; see coldseam --help")
		}
		return nil, unknownCommand(app, args[1])
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
		name, value, given := strings.Cut(strings.TrimLeft(a, "-"), "=")
		if name == "help" || name == "h" {
			return append(path, "--help"), nil
		}
		f := flagNamed(command, name)
		if f == nil {
			return nil, refuse("%s has no flag --%s%s; see coldseam %s --help", command.Name, name, near(command, name), strings.Join(path[1:], " "))
		}
		if seen[name] {
			return nil, refuse("--%s is given twice", name)
		}
		seen[name] = true
		if _, isBool := f.(*cli.BoolFlag); isBool {
			if given && value != "true" && value != "false" {
				return nil, refuse("--%s takes no value", name)
			}
			if given {
				name += "=" + value
			}
			flags = append(flags, "--"+name)
			continue
		}
		if !given && i+1 < len(args) && !looksLikeFlag(args[i+1]) {
			i++
			value = args[i]
		}
		if strings.TrimSpace(value) == "" {
			return nil, refuse("--%s needs a value: %s", name, usage(f))
		}
		flags = append(flags, "--"+name+"="+value)
	}
	return append(append(append(path, flags...), "--"), rest...), nil
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
