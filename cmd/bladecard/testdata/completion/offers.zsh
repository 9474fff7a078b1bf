# zsh -f offers.zsh SCRIPT WAIT LINE...: types each line and a Tab into a zsh of its own, with the
# completion of SCRIPT, and prints what is offered, a line each, behind a line "> " for each LINE.
zmodload zsh/zpty || exit 1
script=$1 wait=$2
shift 2
offered=$(mktemp)
zpty shell zsh -f -i
zpty -w shell "PS1=; autoload -U compinit; compinit -D -u; source ${(q)script}; offered=$offered"
# Every name is told with what stands before it (-p), such as its folder.
zpty -w shell 'compadd() {
	local -a __found
	if (( ! ${@[(I)-[OAD]]} )); then
		builtin compadd -A __found "$@"
		local __where=${@[(I)-p]}
		(( __where )) && __where=${@[__where+1]} || __where=
		(( $#__found )) && print -rl -- "${(@)__found/#/$__where}" >>$offered
	fi
	builtin compadd "$@"
}'
zpty -w shell "LISTMAX=999; print REA''DY"
zpty -r shell seen '*READY*'
for line; do
	: >$offered
	zpty -w -n shell "$line"$'\t'
	sleep $wait # a key that is there already makes zsh drop the completion
	zpty -w -n shell $'\C-u'
	zpty -w shell "print DO''NE"
	zpty -r shell seen '*DONE*'
	print '> '
	cat $offered
done
zpty -d shell
rm -f $offered
