# awk -v rows=N -v part=plan|ground -f line.awk
#
# A drain of N stations, 0.1 ft apart, at 1/8 in/ft, or the book of the ground over it: one
# shot at each station, six to seven feet above the pipe.
function name(i) { return sprintf("S-%d,%d+%04.1f", i, int(i / 1000), i % 1000 / 10) }
function invert(i) { return 500 - i / 10 / 96 }
BEGIN {
	if (part == "plan") {
		print "drain,Larch Street sewer\nunit,ft\npipe,8 in sdr 35\nslope,1/8 in/ft"
		print "bedding,4 in\ncover,1 ft\noutlet,last\npoint,chainage,invert"
		for (i = 0; i < rows; i++) print name(i) "," (i ? "" : "500.00")
		exit
	}
	print "project,\"Larch Street sewer, ground\"\nunit,ft"
	print "point,chainage,known elevation,backsight,intermediate,foresight,rod on"
	print "BM-1,,500.00,12.00,,,"
	hi = 512
	for (i = 0; i < rows; i++) {
		rod = sprintf("%.2f", hi - invert(i) - 6 - i * 7919 % 100 / 100)
		printf "%s,,,%.2f,,ground\n", name(i), rod
		if (rod + 0 < 11) continue
		printf "TP-%d,,,2.00,,%.2f,\n", i, rod
		hi += 2 - rod
	}
}
