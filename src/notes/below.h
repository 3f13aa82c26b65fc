/* SPDX-License-Identifier: MIT */
/*
 * below.h - rows below the header that are none of the reader's.
 *
 * A row of units right below the header, the header once more, and all rows from another
 * header on are passed over, each with a finding; so are cells under no heading.
 */
#ifndef RB_NOTES_BELOW_H
#define RB_NOTES_BELOW_H

#include "notes/sheet.h"

struct rb_below {
	struct rb_arena *arena;
	struct rb_findings *findings;
	struct rb_sheet *sheet;
	bool begun;             /* a row was there */
	bool other;             /* another header was */
	uint32_t again, agains; /* the header once more: where first, how often */
	uint32_t *bare;         /* cells of the header with nothing in them */
	uint32_t bares;
	uint32_t sight[RB_SHEET_COLUMNS]; /* cells that hold sights */
	uint32_t sights;
	struct rb_place stray; /* the first cell under no heading, and its text */
	const char *stray_text;
	int64_t strays;
};

/* Once the header of the sheet is known.  False: no memory. */
bool rb_below_begin(struct rb_below *below, struct rb_arena *arena,
		    struct rb_findings *findings, struct rb_sheet *sheet);

/* Is a row passed over? */
bool rb_below_passes(struct rb_below *below, const struct rb_record *record);

/* Say at the end what there was. */
void rb_below_say(const struct rb_below *below);

#endif
