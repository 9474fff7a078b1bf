package main

import (
	"fmt"
	"io"
	"strings"
)

// quoted sets a text in single quotes for a POSIX shell.
func quoted(s string) string { return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'" }

// commandWords are the commands and help.
func commandWords(all []completed) []string {
	var words []string
	for _, k := range all {
		words = append(words, k.name)
	}
	return append(words, "help")
}

// endings are patterns of names, in quotes.
func endings(files []string) []string {
	var out []string
	for _, f := range files {
		if f != "*" {
			f = "*." + f
		}
		out = append(out, quoted(f))
	}
	return out
}

func bashCompletion(w io.Writer, all []completed) {
	reply := func(v values) string {
		switch {
		case v.words != nil:
			return "_bladecard_words " + quoted(strings.Join(v.words, " "))
		case v.folders:
			return strings.Join(append([]string{"_bladecard_names"}, endings(v.files)...), " ")
		}
		return ":"
	}
	words := strings.Join(commandWords(all), " ")
	fmt.Fprintf(w, `# bash completion of bladecard
_bladecard_words() {
	COMPREPLY=($(compgen -W "$1" -- "$cur"))
	if [[ ${COMPREPLY[0]} == *= ]]; then compopt -o nospace 2>/dev/null; fi
}
_bladecard_names() { # folders, and files of the endings
	local name ending
	while IFS= read -r name; do COMPREPLY+=("$name"); done < <(
		compgen -d -- "$cur"
		for ending; do compgen -f -X "!$ending" -- "$cur"; done | while IFS= read -r name; do
			if [[ ! -d $name ]]; then printf '%%s\n' "$name"; fi
		done
	)
	compopt -o filenames 2>/dev/null
}
_bladecard() {
	local cur=${COMP_WORDS[COMP_CWORD]} of=${COMP_WORDS[1]} prev=${COMP_WORDS[COMP_CWORD-1]} named
	COMPREPLY=()
	if ((COMP_CWORD == 1)); then
		_bladecard_words %s
		return
	fi
	if [[ $cur == = ]]; then # --flag=value comes in three words
		cur='' named=$prev
	elif [[ $prev == = ]]; then
		prev=${COMP_WORDS[COMP_CWORD-2]} named=$prev
	fi
	if [[ $named && $named != -* ]]; then return; fi
	if [[ $named ]]; then prev=$named; fi
	if [[ $prev == -[!-]?* ]]; then prev=-$prev; fi # -flag is --flag
	case "$of $prev" in
`, quoted(words))
	for _, k := range all {
		for _, f := range k.flags {
			if f.takes {
				fmt.Fprintf(w, "\t%s) %s; return ;;\n", quoted(k.name+" "+f.name), reply(f.values))
			}
		}
	}
	fmt.Fprint(w, "\tesac\n\tcase \"$of $cur\" in\n")
	for _, k := range all {
		fmt.Fprintf(w, "\t%s*) _bladecard_words %s ;;\n", quoted(k.name+" -"), quoted(k.names()))
		fmt.Fprintf(w, "\t%s*) %s ;;\n", quoted(k.name+" "), reply(k.args))
	}
	fmt.Fprintf(w, "\t'help '*) _bladecard_words %s ;;\n\tesac\n}\ncomplete -F _bladecard bladecard\n", quoted(words))
}

func zshCompletion(w io.Writer, all []completed) {
	plain := strings.NewReplacer("[", "(", "]", ")", ":", ",") // they part the fields of _arguments
	action := func(v values) string {
		switch {
		case v.words != nil && strings.HasSuffix(v.words[0], "="): // more follows: no space behind
			return "{compadd -S \"\" -- " + strings.Join(v.words, " ") + "}"
		case v.words != nil:
			return "(" + strings.Join(v.words, " ") + ")"
		case len(v.files) > 0 && v.files[0] == "*":
			return "_files"
		case len(v.files) == 1: // in brackets an ending at the end is read as a qualifier
			return `_files -g "*.` + v.files[0] + `"`
		case len(v.files) > 1:
			return `_files -g "*.(` + strings.Join(v.files, "|") + `)"`
		case v.folders:
			return "_files -/"
		}
		return " "
	}
	fmt.Fprint(w, "#compdef bladecard\n_bladecard() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, k := range all {
		fmt.Fprintf(w, "\t\t%s\n", quoted(k.name+":"+plain.Replace(k.does)))
	}
	fmt.Fprint(w, "\t\t'help:say more of a command'\n\t)\n\tif (( CURRENT == 2 )) || [[ $words[2] == help ]]; then\n\t\t_describe command commands\n\t\treturn\n\tfi\n\tlocal of=$words[2]\n\tshift words\n\t(( CURRENT-- ))\n\tcase $of in\n")
	for _, k := range all {
		fmt.Fprintf(w, "\t%s)\n\t\t_arguments", k.name)
		for _, f := range k.flags {
			text := f.name
			if f.takes && strings.HasPrefix(f.name, "--") {
				text = "*" + text + "=" // the value in the same word or the next; some come twice
			}
			text += "[" + plain.Replace(f.does) + "]"
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
		case len(v.files) > 0 && v.files[0] == "*":
			return "-r -F"
		case len(v.files) > 0:
			return "-x -a " + quote("(__bladecard_names "+strings.Join(v.files, " ")+")")
		case v.folders:
			return "-x -a " + quote("(__fish_complete_directories)")
		}
		return "-x"
	}
	fmt.Fprint(w, `# fish completion of bladecard
function __bladecard_of # the command is this one
	set -l said (commandline -opc)
	test (count $said) -gt 1; and test $said[2] = $argv[1]
end
function __bladecard_first # the command comes now
	test (count (commandline -opc)) -eq 1
end
function __bladecard_names # folders, and files of the endings
	__fish_complete_suffix .$argv[1] | string match -r -- '.*(?:/|\.(?:'(string join '|' $argv)'))$'
end
complete -c bladecard -f
`)
	for _, k := range all {
		fmt.Fprintf(w, "complete -c bladecard -n __bladecard_first -a %s -d %s\n", k.name, quote(k.does))
		in := "complete -c bladecard -n '__bladecard_of " + k.name + "'"
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
	fmt.Fprint(w, "complete -c bladecard -n __bladecard_first -a help -d 'say more of a command'\n")
	fmt.Fprintf(w, "complete -c bladecard -n '__bladecard_of help' -x -a %s\n", quote(strings.Join(commandWords(all), " ")))
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
	words := commandWords(all)
	for _, k := range all {
		fmt.Fprintf(w, "\t\t%s = %s\n", quote(k.name), list(strings.Fields(k.names())))
	}
	fmt.Fprintf(w, "\t}\n\t$values = @{\n\t\t'help' = %s\n", list(words))
	for _, k := range all {
		for _, f := range k.flags {
			if f.takes { // with no words of its own, names of files
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
