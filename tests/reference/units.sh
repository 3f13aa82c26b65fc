#!/bin/sh
# tests/reference/units.sh PROGRAM
#
# A second opinion: a thousand lengths, in every notation and with arithmetic, and a few
# hundred slopes, worked out by GNU units too.  Skipped where that is not installed.
program=${1:?}
command -v units >/dev/null || { echo "units: GNU units is not here, skipped"; exit 0; }
scratch=$(mktemp -d) || exit 2
trap 'rm -rf "$scratch"' EXIT
trap 'exit 1' HUP INT TERM
LC_ALL=C
export LC_ALL

lengths=1000 slopes=300

# Two files, line by line: a length as we read it, and the same for GNU units.
awk -v lengths=$lengths -v ours="$scratch/ours" -v theirs="$scratch/theirs" '
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
	kind = pick(7)
	if (kind == 6) return decimal("cm", 900, 1 + pick(4))
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
	for (i = 0; i < lengths; i++) {
		us = i % 2 ? expression() : one()
		print us >ours
		print them "\nft\n" them "\nin\n" them "\nm" >theirs
	}
}'
"$program" convert -f csv --decimals 9 <"$scratch/ours" >"$scratch/csv" || exit 1
units -q -t -o %.15g <"$scratch/theirs" >"$scratch/values"

# Inputs hold no comma.
awk -F, -v lengths=$lengths -v values="$scratch/values" '
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
	exit wrong > 0 || rows != lengths
}' "$scratch/csv" || exit 1

# A plan of many legs, each with its slope; its JSON tells every slope in four ways.
awk -v slopes=$slopes -v plan="$scratch/plan.csv" -v theirs="$scratch/theirs" '
function pick(n) {
	seed = (seed * 69069 + 12345) % 4294967296
	return int(seed / 65536) % n
}
function decimal(top, places) {
	return sprintf("%." places "f", (1 + pick(top * 10 ^ places - 1)) / 10 ^ places)
}
function fraction(   under, over) { # of an inch; sets part to the same for units
	under = 2 ^ (1 + pick(5)); over = 1 + pick(2 * under - 1)
	if (over == under) over = 1
	part = over "|" under " in"
	if (over < under) return over "/" under
	return "1 " over - under "/" under
}
function one(   kind, n, m) {
	kind = pick(8)
	if (kind == 0) { n = fraction(); them = part "/ft"; return n " in/ft" }
	if (kind == 1) { n = fraction(); them = part "/ft"; return n "\"/ft" }
	if (kind == 2) { n = decimal(3, 3); them = n " in/ft"; return n " in per ft" }
	if (kind == 3) { n = decimal(12, 2); them = n " percent"; return n "%" }
	if (kind == 4) { n = 2 + decimal(300, pick(3)); them = "1/" n; return "1:" n }
	if (kind == 5) { n = 2 + pick(400); them = "1/" n; return "1 in " n }
	if (kind == 6) { n = decimal(90, 1); them = n " mm/m"; return n " mm/m" }
	n = decimal(9, pick(3)); m = 4 + pick(20); them = n " in/(" m " ft)"
	return n " in per " m " ft"
}
BEGIN {
	seed = 20260324
	print "outlet,last\npoint,chainage,invert,slope" >plan
	for (i = 0; i < slopes; i++) {
		us = one()
		gsub(/"/, "\"\"", us)
		print "P-" i "," 10 * i "," (i ? "" : 1000) ",\"" us "\"" >plan
		print them "\nin/ft\n" them "\npercent\n1/(" them ")\n1\natan(" them ")\ndegree" >theirs
	}
	print "P-" slopes "," 10 * slopes ",," >plan
}'
"$program" drain --quiet -f json "$scratch/plan.csv" >"$scratch/json" || exit 1
units -q -t -o %.15g <"$scratch/theirs" >"$scratch/values"

awk -v slopes=$slopes -v values="$scratch/values" '
BEGIN { split("inches_per_foot percent one_in degrees", key, " ") }
/"inches_per_foot"/ {
	for (i = 1; i <= 4; i++) {
		got = $0
		sub(".*\"" key[i] "\": ", "", got)
		got += 0
		if ((getline want <values) <= 0) want = "nothing"
		off = got - want
		if (want !~ /^[0-9.]+(e[-+]?[0-9]+)?$/ || off > 5.0001e-5 || off < -5.0001e-5) {
			print "units: slope " legs + 1 ": " key[i] " " got ", and GNU units says " want
			wrong++
		}
	}
	legs++
}
END {
	print "units: " legs + 0 " slopes, " wrong + 0 " values differ"
	exit wrong > 0 || legs != slopes
}' "$scratch/json"
