# The least that reducing a book can be: decimal feet, backsight, foresight, height of
# instrument and elevation, nothing checked and nothing quoted.
BEGIN { FS = OFS = ","; print "point", "backsight", "height of instrument", "foresight", "elevation" }
$1 == "point" { below = 1; next }
!below { next }
$2 != "" && hi == "" { elevation = $2 }
$5 != "" { elevation = hi - $5 }
$3 != "" { hi = elevation + $3 }
{ printf "%s,%s,%.2f,%s,%.2f\n", $1, $3, hi, $5, $4 != "" ? hi - $4 : elevation }
