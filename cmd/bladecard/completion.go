package main

import (
	"embed"
	"fmt"
	"slices"
	"strings"
)

// shims are what makes the Tab key of a shell ask this program: see completeCommand.
//
//go:embed shells
var shims embed.FS

var shells = []string{"bash", "zsh", "fish", "powershell"}

var completionCommand = command{
	name: "completion", args: "bash|zsh|fish|powershell",
	does: "print the Tab completion for your shell",
	more: `
One of these lines, once; then open a new shell.

bash:
    mkdir -p ~/.local/share/bash-completion/completions
    bladecard completion bash > ~/.local/share/bash-completion/completions/bladecard
zsh:
    mkdir -p ~/.zfunc
    bladecard completion zsh > ~/.zfunc/_bladecard
    echo 'fpath=(~/.zfunc $fpath); autoload -Uz compinit; compinit' >> ~/.zshrc
fish:
    mkdir -p ~/.config/fish/completions
    bladecard completion fish > ~/.config/fish/completions/bladecard.fish
powershell:
    New-Item -ItemType Directory -Force (Split-Path $PROFILE)
    bladecard completion powershell >> $PROFILE`,
	run: completion,
}

func completion(c *call) int {
	if code, ok := c.parse(func(*flags) {}); !ok {
		return code
	}
	if len(c.args) != 1 {
		return c.wrong("one shell is to be named: " + strings.Join(shells, ", "))
	}
	if !slices.Contains(shells, c.args[0]) {
		return c.wrong(fmt.Sprintf("%q is not a shell that is known; accepted: %s", c.args[0], strings.Join(shells, ", ")))
	}
	shim, err := shims.ReadFile("shells/" + c.args[0])
	if err == nil {
		_, err = c.data.Write(shim)
	}
	return c.failed(err)
}
