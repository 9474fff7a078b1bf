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
