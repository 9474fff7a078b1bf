package main

import (
	"fmt"
	"io"
	"strings"
)

// quoted sets a text in single quotes for a POSIX shell.
func quoted(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

func bashCompletion(w io.Writer, all []completed) {
	reply := func(v values) string {
		switch {
		case v.words != nil:
			return fmt.Sprintf(`COMPREPLY=($(compgen -W %s -- "$cur"))`, quoted(strings.Join(v.words, " ")))
		case v.files == "*":
			return `_bladecard_names < <(compgen -f -- "$cur")`
		case v.files != "":
			return fmt.Sprintf(`_bladecard_names < <(compgen -d -- "$cur"; compgen -f -X '!*.%s' -- "$cur")`, v.files)
		case v.folders:
			return `_bladecard_names < <(compgen -d -- "$cur")`
		}
		return ":"
	}
	var words []string
	for _, k := range all {
		words = append(words, k.name)
	}
	words = append(words, "help")
	fmt.Fprintf(w, `# bash completion of bladecard
_bladecard_names() {
	local name
	while IFS= read -r name; do COMPREPLY+=("$name"); done
	compopt -o filenames 2>/dev/null
}
_bladecard() {
	local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]}
	COMPREPLY=()
	if ((COMP_CWORD == 1)); then
		COMPREPLY=($(compgen -W %s -- "$cur"))
		return
	fi
	case "${COMP_WORDS[1]} $prev" in
`, quoted(strings.Join(words, " ")))
	for _, k := range all {
		for _, f := range k.flags {
			if f.takes {
				fmt.Fprintf(w, "\t%s) %s; return ;;\n", quoted(k.name+" "+f.name), reply(f.values))
			}
		}
	}
	fmt.Fprint(w, "\tesac\n\tcase \"${COMP_WORDS[1]} $cur\" in\n")
	for _, k := range all {
		fmt.Fprintf(w, "\t%s*) COMPREPLY=($(compgen -W %s -- \"$cur\")) ;;\n", quoted(k.name+" -"), quoted(k.names()))
		fmt.Fprintf(w, "\t%s*) %s ;;\n", quoted(k.name+" "), reply(k.args))
	}
	fmt.Fprintf(w, "\t'help '*) COMPREPLY=($(compgen -W %s -- \"$cur\")) ;;\n\tesac\n}\ncomplete -F _bladecard bladecard\n", quoted(strings.Join(words, " ")))
}

func zshCompletion(w io.Writer, all []completed) {
	plain := strings.NewReplacer("[", "(", "]", ")", ":", ",") // they part the fields of _arguments
	action := func(v values) string {
		switch {
		case v.words != nil:
			return "(" + strings.Join(v.words, " ") + ")"
		case v.files == "*":
			return "_files"
		case v.files != "":
			return `_files -g "*.` + v.files + `"`
		case v.folders:
			return "_files -/"
		}
		return " "
	}
	fmt.Fprint(w, "#compdef bladecard\n_bladecard() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, k := range all {
		fmt.Fprintf(w, "\t\t%s\n", quoted(k.name+":"+plain.Replace(k.does)))
	}
	fmt.Fprint(w, "\t)\n\tif (( CURRENT == 2 )); then\n\t\t_describe command commands\n\t\treturn\n\tfi\n\tlocal of=$words[2]\n\tshift words\n\t(( CURRENT-- ))\n\tcase $of in\n")
	for _, k := range all {
		fmt.Fprintf(w, "\t%s)\n\t\t_arguments", k.name)
		for _, f := range k.flags {
			text := f.name + "[" + plain.Replace(f.does) + "]"
			if f.takes {
				text += ":value:" + action(f.values)
			}
			fmt.Fprintf(w, " \\\n\t\t\t%s", quoted(text))
		}
		if a := action(k.args); a != " " {
			fmt.Fprintf(w, " \\\n\t\t\t%s", quoted("*:argument:"+a))
		}
		fmt.Fprint(w, "\n\t\t;;\n")
	}
	fmt.Fprint(w, "\tesac\n}\nif [ \"$funcstack[1]\" = _bladecard ]; then\n\t_bladecard \"$@\"\nelse\n\tcompdef _bladecard bladecard\nfi\n")
}

func fishCompletion(w io.Writer, all []completed) {
	quote := func(s string) string {
		return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(s) + "'"
	}
	action := func(v values) string {
		switch {
		case v.words != nil:
			return "-x -a " + quote(strings.Join(v.words, " "))
		case v.files == "*":
			return "-r -F"
		case v.files != "":
			return "-x -a " + quote("(__fish_complete_suffix ."+v.files+")")
		case v.folders:
			return "-x -a " + quote("(__fish_complete_directories)")
		}
		return "-x"
	}
	fmt.Fprint(w, "# fish completion of bladecard\ncomplete -c bladecard -f\n")
	for _, k := range all {
		fmt.Fprintf(w, "complete -c bladecard -n __fish_use_subcommand -a %s -d %s\n", k.name, quote(k.does))
		in := "complete -c bladecard -n '__fish_seen_subcommand_from " + k.name + "'"
		for _, f := range k.flags {
			name := "-l " + strings.TrimPrefix(f.name, "--")
			if !strings.HasPrefix(f.name, "--") {
				name = "-s " + strings.TrimPrefix(f.name, "-")
			}
			if f.takes {
				name += " " + action(f.values)
			}
			fmt.Fprintf(w, "%s %s -d %s\n", in, name, quote(f.does))
		}
		if a := action(k.args); a != "-x" {
			fmt.Fprintf(w, "%s %s\n", in, a)
		}
	}
}

func powershellCompletion(w io.Writer, all []completed) {
	quote := func(s string) string { return "'" + strings.ReplaceAll(s, "'", "''") + "'" }
	list := func(words []string) string {
		var out []string
		for _, s := range words {
			out = append(out, quote(s))
		}
		return "@(" + strings.Join(out, ", ") + ")"
	}
	fmt.Fprint(w, `# PowerShell completion of bladecard
Register-ArgumentCompleter -Native -CommandName bladecard -ScriptBlock {
	param($word, $line, $at)
	$flags = @{
`)
	var words []string
	for _, k := range all {
		words = append(words, k.name)
		fmt.Fprintf(w, "\t\t%s = %s\n", quote(k.name), list(strings.Fields(k.names())))
	}
	fmt.Fprint(w, "\t}\n\t$values = @{\n")
	for _, k := range all {
		for _, f := range k.flags {
			if f.values.words != nil {
				fmt.Fprintf(w, "\t\t%s = %s\n", quote(k.name+" "+f.name), list(f.values.words))
			}
		}
		if k.args.words != nil {
			fmt.Fprintf(w, "\t\t%s = %s\n", quote(k.name), list(k.args.words))
		}
	}
	fmt.Fprintf(w, `	}
	$said = @($line.CommandElements | ForEach-Object { $_.ToString() })
	$before = if ($word -eq '') { $said[-1] } elseif ($said.Count -gt 1) { $said[-2] } else { '' }
	$words = if ($said.Count -lt 2 -or ($said.Count -eq 2 -and $word -ne '')) {
		%s
	} elseif ($word.StartsWith('-')) {
		$flags[$said[1]]
	} elseif ($values.ContainsKey("$($said[1]) $before")) {
		$values["$($said[1]) $before"]
	} else {
		$values[$said[1]]
	}
	# With no word of its own, PowerShell completes names of files.
	$words | Where-Object { $_ -like "$word*" } | ForEach-Object {
		[System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
	}
}
`, list(words))
}
