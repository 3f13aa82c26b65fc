/* SPDX-License-Identifier: MIT */
/* sixtyfourths.h - cells of a column that hold a formula's decimals, read as 64ths. */
#ifndef RB_NOTES_SIXTYFOURTHS_H
#define RB_NOTES_SIXTYFOURTHS_H

#include "measure/reading.h"
#include "notes/sheet.h"

/* How many there are in a column, and the first of them. */
struct rb_sixtyfourths {
	uint32_t cells;
	struct rb_place place;
	const char *text; /* as written */
	rb_length length; /* as read */
};

/* Count a cell where its reading was read so. */
void rb_sixtyfourths_note(struct rb_sixtyfourths *sixtyfourths,
			  struct rb_findings *findings, struct rb_cell cell,
			  struct rb_place place, const struct rb_reading *reading);

/* One note at the first of a column, if there is one. */
void rb_sixtyfourths_say(const struct rb_sixtyfourths *sixtyfourths,
			 struct rb_findings *findings, const char *column);

#endif
