# awk -v rows=N -v shape=turning|mixed|slip|hand -f book.awk
#
# A book of N rows in decimal feet that starts and ends on known benchmarks.  turning: every
# row is a turning point.  mixed: three intermediate sights with remarks behind each one.
# slip: turning, with one reading a foot out, so that the book fails.  hand: turning, with
# heights of instrument and elevations worked out.
# No random numbers: the same book every time.
function reading(i) { return 3 + (i * 7919 % 700) / 100 }
function worked(value) { return shape == "hand" ? sprintf("%.2f,", value) : "" }
BEGIN {
	print "project,Larch Street drain"
	print "unit,ft"
	print "tolerance," (shape == "slip" ? "0.02 ft" : "0.05 ft sqrt(setups)")
	print "point,known elevation,backsight," (shape == "hand" ? "hi," : "") \
		"intermediate,foresight," (shape == "hand" ? "elevation," : "") "remarks"
	rise = reading(0)
	printf "BM-1,100.00,%.2f,%s,,%s\n", rise, worked(100 + rise), shape == "hand" ? "," : ""
	for (i = 1; i < rows - 1; i++) {
		if (shape == "mixed" && i % 4) {
			printf "P-%d,,,%.2f,,\"ground, %d ft left of the line\"\n", i, reading(i), i % 40
			continue
		}
		# A long climb is turned back before it leaves the hill.
		fore = reading(i * 3)
		if (rise > 900) fore = 9.98
		if (rise < -90) fore = 2.97
		back = reading(i * 5 + 1)
		out = shape == "slip" && i == int(rows / 2)
		printf "TP-%d,,%.2f,%s,%.2f,%s\n", i, back, worked(100 + rise - fore + back),
			fore + out, worked(100 + rise - fore)
		rise += back - fore
	}
	fore = 5.00
	printf "BM-2,%.2f,,%s,%.2f,%send\n", 100 + rise - fore, shape == "hand" ? "," : "", fore,
		worked(100 + rise - fore)
}
