# SPDX-License-Identifier: MIT
# Completion of rodbook's commands, options and values for bash.

# The commands; each may take the options of its own below.
_rodbook_commands="new reduce fall drain dig record check peg convert practice"

_rodbook_always="--strict --quiet --color --messages --help"
_rodbook_usual="$_rodbook_always --format --output --unit --decimals --fraction"

# What a command takes.
_rodbook_options() {
	local usual=$_rodbook_usual
	case $1 in
	new) echo "$_rodbook_always --unit" ;;
	reduce) echo "$usual --steps --tolerance --adjust --adjust-anyway" ;;
	fall) echo "$usual --steps --from --to --length --minimum --rules --size --outlet" ;;
	drain) echo "$usual --steps --length --minimum --rules --size --outlet --ground --laid
		--hi --benchmark --backsight --interval --invert --slope --use-anyway" ;;
	dig) echo "$usual --steps --length --outlet --hi --benchmark --backsight --invert
		--slope --at --rod --on --within --hub --cut" ;;
	record) echo "$usual --append" ;;
	check) echo "$usual --steps --marks --answers" ;;
	peg) echo "$usual --book" ;;
	convert) echo "$usual --steps --table" ;;
	practice) echo "$_rodbook_always --format --output --unit --fraction --kind --seed
		--count --answers --plant --setups --inverted" ;;
	*) echo "--help --version" ;;
	esac
}

# What an option takes: words to choose from, FILE, or ANY (nothing is offered).  Empty: the
# option stands alone.
_rodbook_values() {
	case $2 in
	--format | -f)
		case $1 in
		reduce | drain) echo "text csv json html svg" ;;
		fall | peg) echo "text json html" ;;
		dig) echo "text json" ;;
		*) echo "text csv json html" ;;
		esac ;;
	--unit | -u) echo "ft ft-in in m mm" ;;
	--fraction | --table) echo "8 16 32 64" ;;
	--color) echo "auto always never" ;;
	--messages) echo "text json" ;;
	--adjust) echo "setups distance none" ;;
	--outlet) echo "first last" ;;
	--on) echo "trench invert top" ;;
	--kind) echo "convert loop fall" ;;
	--output | -o | --rules | --ground | --laid | --append | --book) echo FILE ;;
	--decimals | --tolerance | --from | --to | --length | --minimum | --size | --hi | \
		--benchmark | --backsight | --interval | --invert | --slope | --at | --rod | \
		--within | --hub | --cut | --seed | --count | --setups) echo ANY ;;
	esac
}

# Offer the words that begin as the one that is being typed.
_rodbook_offer() {
	local IFS=$' \t\n'
	mapfile -t COMPREPLY < <(compgen -W "$1" -- "$2")
}

_rodbook_offer_files() {
	mapfile -t COMPREPLY < <(compgen -f -- "$1")
	compopt -o filenames 2>/dev/null
}

_rodbook() {
	local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD - 1]}
	local command=${COMP_WORDS[1]} values
	COMPREPLY=()

	# bash cuts --format=csv at the equals sign.
	if [ "$word" = = ]; then
		word=
	elif [ "$before" = = ]; then
		before=${COMP_WORDS[COMP_CWORD - 2]}
	fi
	if [ "$COMP_CWORD" = 1 ]; then
		_rodbook_offer "$_rodbook_commands $(_rodbook_options)" "$word"
		return
	fi
	values=$(_rodbook_values "$command" "$before")
	case $values in
	FILE) _rodbook_offer_files "$word" ;;
	ANY) ;;
	?*) _rodbook_offer "$values" "$word" ;;
	*)
		case $command:$COMP_CWORD:$word in
		*:-*) _rodbook_offer "$(_rodbook_options "$command")" "$word" ;;
		new:2:*) _rodbook_offer "book plan peg rules" "$word" ;;
		*) _rodbook_offer_files "$word" ;;
		esac ;;
	esac
}
complete -F _rodbook rodbook
