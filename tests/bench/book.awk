# awk -v rows=N -v shape=turning|mixed -f book.awk
#
# A book of N rows in decimal feet that starts and ends on known benchmarks.  turning: every
# row is a turning point.  mixed: three intermediate sights with remarks behind each one.
# No random numbers: the same book every time.
function reading(i) { return 3 + (i * 7919 % 700) / 100 }
BEGIN {
	print "project,Larch Street drain"
	print "unit,ft"
	print "tolerance,0.05 ft sqrt(setups)"
	print "point,known elevation,backsight,intermediate,foresight,remarks"
	printf "BM-1,100.00,%.2f,,,\n", reading(0)
	rise = reading(0)
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
		printf "TP-%d,,%.2f,,%.2f,\n", i, back, fore
		rise += back - fore
	}
	fore = 5.00
	printf "BM-2,%.2f,,,%.2f,end\n", 100 + rise - fore, fore
}
