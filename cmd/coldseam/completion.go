package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
)

func (p *program) completionCommand() *cli.Command {
	return &cli.Command{
		Name:        "completion",
		Usage:       "print a script for your shell that completes words",
		ArgsUsage:   "bash|zsh|fish",
		Description: "bash: add to ~/.bashrc      source <(coldseam completion bash)\nzsh:  add to ~/.zshrc       source <(coldseam completion zsh)\nfish: coldseam completion fish > ~/.config/fish/completions/coldseam.fish",
		Action: func(c *cli.Context) error {
			if c.NArg() != 1 {
				return refuse("name one shell: coldseam completion bash, zsh or fish")
			}
			switch c.Args().First() {
			case "bash":
				p.out.WriteString(bashCompletion(c.App))
			case "zsh":
				p.out.WriteString("autoload -U +X bashcompinit && bashcompinit\n" + bashCompletion(c.App))
			case "fish":
				p.out.WriteString(fishCompletion(c.App))
			default:
				return refuse("%q is not a shell that is known here: bash, zsh or fish", c.Args().First())
			}
			return nil
		},
	}
}

func commandNames(app *cli.App) []string {
	var names []string
	for _, c := range app.Commands {
		names = append(names, c.Name)
	}
	return names
}

// flagsOf gives the flags of a command and of its parts.
func flagsOf(c *cli.Command) []string {
	var names []string
	add := func(n string) {
		if n != "--help" && !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	for _, f := range c.Flags {
		add("--" + f.Names()[0])
	}
	for _, s := range c.Subcommands {
		for _, n := range flagsOf(s) {
			add(n)
		}
	}
	return names
}

func partsOf(c *cli.Command) []string {
	var names []string
	for _, s := range c.Subcommands {
		names = append(names, s.Name)
	}
	return names
}

// bashCompletion completes the command, then its flags, then file names.
func bashCompletion(app *cli.App) string {
	var b strings.Builder
	b.WriteString("_coldseam() {\n  local word=${COMP_WORDS[COMP_CWORD]} flags=\n")
	fmt.Fprintf(&b, "  if [ \"$COMP_CWORD\" = 1 ]; then\n    COMPREPLY=($(compgen -W \"%s\" -- \"$word\"))\n    return\n  fi\n", strings.Join(commandNames(app), " "))
	b.WriteString("  case ${COMP_WORDS[1]} in\n")
	for _, c := range app.Commands {
		if parts := partsOf(c); len(parts) > 0 {
			fmt.Fprintf(&b, "    %s) flags=\"%s --help\"\n      if [ \"$COMP_CWORD\" = 2 ]; then COMPREPLY=($(compgen -W \"%s\" -- \"$word\")); return; fi ;;\n",
				c.Name, strings.Join(flagsOf(c), " "), strings.Join(parts, " "))
			continue
		}
		fmt.Fprintf(&b, "    %s) flags=\"%s --help\" ;;\n", c.Name, strings.Join(flagsOf(c), " "))
	}
	b.WriteString("  esac\n  case $word in\n    -*) COMPREPLY=($(compgen -W \"$flags\" -- \"$word\")) ;;\n    *) COMPREPLY=($(compgen -f -- \"$word\")) ;;\n  esac\n}\ncomplete -o filenames -F _coldseam coldseam\n")
	return b.String()
}

func fishCompletion(app *cli.App) string {
	var b strings.Builder
	for _, c := range app.Commands {
		fmt.Fprintf(&b, "complete -c coldseam -n __fish_use_subcommand -a %s -d %q\n", c.Name, c.Usage)
		for _, part := range partsOf(c) {
			fmt.Fprintf(&b, "complete -c coldseam -f -n '__fish_seen_subcommand_from %s' -a %s\n", c.Name, part)
		}
		for _, f := range flagsOf(c) {
			fmt.Fprintf(&b, "complete -c coldseam -n '__fish_seen_subcommand_from %s' -l %s\n", c.Name, strings.TrimPrefix(f, "--"))
		}
	}
	return b.String()
}
