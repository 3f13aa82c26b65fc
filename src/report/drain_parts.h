/* SPDX-License-Identifier: MIT */
/*
 * drain_parts.h - the parts of a drain's page, and what they share.
 *
 * What a crew sets and digs to is written twice, in decimals and in feet and inches,
 * whatever unit is asked for: the rod has one and the tape the other.
 */
#ifndef RB_REPORT_DRAIN_PARTS_H
#define RB_REPORT_DRAIN_PARTS_H

#include "report/drain_result.h"
#include "report/phrase.h"
#include "rodbook/table.h"

struct rb_drain_maker {
	const struct rb_drain_result *r;
	struct rb_page *page;
	struct rb_phrase phrase;
	struct rb_style decimal; /* of what is set, in decimals */
	struct rb_style inches;  /* and in feet and inches */
};

/* -- parts: src/report/drain_*.c -- */

void rb_drain_fall_part(struct rb_drain_maker *m);
void rb_drain_fall_verdicts(struct rb_drain_maker *m);
void rb_drain_inverts_part(struct rb_drain_maker *m);
void rb_drain_rods_part(struct rb_drain_maker *m);
void rb_drain_hi_verdict(struct rb_drain_maker *m);
void rb_drain_cuts_part(struct rb_drain_maker *m);
void rb_drain_cover_verdict(struct rb_drain_maker *m);
void rb_drain_laid_part(struct rb_drain_maker *m);
void rb_drain_laid_verdicts(struct rb_drain_maker *m);
void rb_drain_steps_part(struct rb_drain_maker *m);

/* -- shared: src/report/drain_page.c -- */

/* All verdicts, the last lines of the page and the words of the picture. */
void rb_drain_verdicts(struct rb_drain_maker *m);

/* Begin an empty page and a phrase; false if there is no memory. */
bool rb_drain_maker_init(struct rb_drain_maker *m, struct rb_arena *arena,
			 const struct rb_drain_result *r);

/* Add what the phrase says as a block, and begin anew. */
void rb_drain_add(struct rb_drain_maker *m, enum rb_block_kind kind);

/* Append "0.10 ft (0'-1 1/4")", without a sign; what is not nothing never reads as it. */
void rb_drain_say_both(struct rb_drain_maker *m, rb_length a);

/* The chainage of a station as its plan writes it. */
void rb_drain_chainage(const struct rb_drain_maker *m, char text[static RB_LENGTH_TEXT],
		       rb_length chainage);

/* Do some names say more than their chainage? */
bool rb_drain_names(const struct rb_drain_maker *m);

/* A number of a table: a dash where it is not known. */
void rb_drain_cell(char text[static RB_LENGTH_TEXT], rb_length a, struct rb_style style);

/* A caption in the arena: the words, and that the book does not close, where it was used
 * all the same. */
const char *rb_drain_caption(struct rb_drain_maker *m, const char *words,
			     const struct rb_spots *spots);

/* Add a table; NULL after a failure, which is noted. */
struct rb_table *rb_drain_table(struct rb_drain_maker *m, const char *caption,
				const struct rb_table_column *column, size_t columns);

/* How a column of numbers in the unit of the page is aligned. */
enum rb_align rb_drain_align(const struct rb_drain_maker *m);

#endif
