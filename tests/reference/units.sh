#!/bin/sh
# tests/reference/units.sh PROGRAM
#
# A second opinion: a few hundred lengths, in every notation and with arithmetic, worked
# out by GNU units too.  Skipped where that is not installed.
program=${1:?}
command -v units >/dev/null || { echo "units: GNU units is not here, skipped"; exit 0; }
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
trap 'exit 1' HUP INT TERM
LC_ALL=C
export LC_ALL

# Two files, line by line: a length as we read it, and the same for GNU units.
awk -v ours="$scratch/ours" -v theirs="$scratch/theirs" '
function pick(n) { # 0 to n - 1, the same everywhere
	seed = (seed * 69069 + 12345) % 4294967296
	return int(seed / 65536) % n
}
function fraction(   under, over) { # "" or " 3/8"; sets part to the same for units
	under = 2 ^ (1 + pick(6)); over = pick(under)
	part = over ? " + " over "|" under " in" : ""
	return over ? " " over "/" under : ""
}
function feet_inches(   feet, inches, f) {
	feet = pick(120); inches = pick(12); f = fraction()
	them = "(" feet " ft + " inches " in" part ")"
	return feet "\x27-" inches f "\""
}
function decimal(unit, top, places,   n) {
	n = sprintf("%." places "f", pick(top * 100) / 100 + pick(1000) / 10 ^ places)
	them = "(" n " " unit ")"
	return n " " unit
}
function one(   kind, f) {
	kind = pick(6)
	if (kind == 0) return decimal("ft", 100, 2 + pick(4))
	if (kind == 1) return decimal("m", 40, 3 + pick(3))
	if (kind == 2) return decimal("mm", 300, 1 + pick(3))
	if (kind == 3) return decimal("in", 200, 2 + pick(2))
	return feet_inches()
}
function expression(   a, b, them_a, factor) {
	a = one(); them_a = them
	if (pick(2)) { # a sum or a difference
		b = one()
		if (pick(2)) { them = them_a " + " them; return a " + " b }
		them = them_a " - " them
		return a " - " b
	}
	factor = pick(2) ? 1 + pick(40) : sprintf("%.3f", (1 + pick(9000)) / 1000)
	if (pick(2)) { them = them_a " * " factor; return a " * " factor }
	them = them_a " / " factor
	return a " / " factor
}
BEGIN {
	seed = 20260317
	for (i = 0; i < 400; i++) {
		us = i % 2 ? expression() : one()
		print us >ours
		print them "\nft\n" them "\nin\n" them "\nm" >theirs
	}
}'
"$program" convert -f csv --decimals 9 <"$scratch/ours" >"$scratch/csv" || exit 1
units -q -t -o %.15g <"$scratch/theirs" >"$scratch/values"

# Cells of our CSV from the right: inputs hold no comma.
awk -F, -v values="$scratch/values" '
function differs(got, want,   off) {
	off = got - want
	return off > 1e-8 || off < -1e-8
}
NR > 1 {
	for (i = 2; i <= 4; i++) {
		if ((getline want <values) <= 0) want = "nothing"
		if (want !~ /^-?[0-9.]+(e[-+]?[0-9]+)?$/ || differs($i, want + 0)) {
			print "units: " $1 ": " $i ", and GNU units says " want
			wrong++
		}
	}
	rows++
}
END {
	print "units: " rows + 0 " lengths, " wrong + 0 " values differ"
	exit wrong > 0 || rows != 400
}' "$scratch/csv"
