/* SPDX-License-Identifier: MIT */
/*
 * heading.h - which column a heading names, and which one it may have meant.
 *
 * A heading names a column only where it is one of the form's, with or without a unit in
 * brackets behind it.  What it looks like is for messages: nothing is read by it.
 */
#ifndef RB_NOTES_HEADING_H
#define RB_NOTES_HEADING_H

#include "notes/sheet.h"

#define RB_FOLDED_WORD 48 /* a longer cell is neither a heading nor a key */

/* The cell in small letters, blanks and dashes of all kinds made plain, and with the
 * `dropped` characters left out; 0 where it is too long or nothing is left. */
size_t rb_heading_fold(char word[static RB_FOLDED_WORD], const char *text, size_t length,
		       const char *dropped);

/* The column that a heading names, or -1. */
int rb_heading_column(const struct rb_form *form, struct rb_cell cell);

/* Which cell of a row holds which column, the first of two of one meaning; -1: none.
 * Returns how many are found. */
int rb_headings_map(const struct rb_form *form, const struct rb_record *record,
		    int32_t cell_of[RB_SHEET_COLUMNS]);

/* The column that an unknown heading looks like, or -1. */
int rb_heading_nearest(const struct rb_form *form, struct rb_cell cell);

/* Is it a unit and nothing more, with or without brackets? */
bool rb_is_unit_alone(struct rb_cell cell, enum rb_unit *unit);

/* Add a finding where headings, or the row of units below them, name a unit that is not
 * that of the book: for the first of each such unit. */
void rb_headings_check_units(struct rb_findings *findings, const struct rb_sheet *sheet,
			     enum rb_unit book);

#endif
