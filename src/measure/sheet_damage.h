/* SPDX-License-Identifier: MIT */
/*
 * sheet_damage.h - cells that a spreadsheet changed.
 *
 * A sheet that takes `5-3` for a date keeps the date and drops what was typed.  Such
 * cells are known by their look alone; what may have been typed is given, never read.
 */
#ifndef RB_MEASURE_SHEET_DAMAGE_H
#define RB_MEASURE_SHEET_DAMAGE_H

#include "measure/mark.h"
#include "measure/reading.h"

/*
 * Is the cell a sheet's error, a date, a time, a number with an exponent, hexadecimal, or
 * not a number?  True, and *r has the refusal and the candidates; otherwise *r is left
 * as it was.
 */
bool rb_sheet_damage(const struct rb_marked *marked, const struct rb_reading_rules *rules,
		     struct rb_reading *r);

/* Is a bare whole number the serial number of a date of our time (1900 system, 40000 to
 * 55000: 2009 to 2050), rather than a length of this kind? */
bool rb_sheet_serial(int64_t number, const struct rb_reading_rules *rules);

/* Refuse a serial number: its month and day are candidates. */
void rb_sheet_refuse_serial(int64_t number, const struct rb_reading_rules *rules,
			    struct rb_reading *r);

#endif
