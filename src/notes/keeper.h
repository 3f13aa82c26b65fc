/* SPDX-License-Identifier: MIT */
/*
 * keeper.h - names of the note keeper's own rows: sums, differences, misclosures.
 *
 * Such a name is known by its words, each of them whole: one that says what the row is
 * (sum, subtotal, misclosure), and any others out of a short list of words that go with
 * it (page, 1, BS).  A word that is not in the list leaves it in doubt, and a row in
 * doubt is a point.
 */
#ifndef RB_NOTES_KEEPER_H
#define RB_NOTES_KEEPER_H

enum rb_keeper {
	RB_NOT_KEEPERS,        /* the name of a point: SUMP-1, Total station, Summit */
	RB_KEEPERS_DOUBT,      /* it may be either: Total 3, Closure pin */
	RB_KEEPERS_SUM,        /* Page 1 total, sum BS, carried forward */
	RB_KEEPERS_DIFFERENCE, /* of the sums */
	RB_KEEPERS_MISCLOSURE, /* error of closure */
	RB_KEEPERS_OTHER       /* arithmetic check, allowable error: never judged */
};

/* No word of sums has fewer letters; signs of sums are no ASCII. */
#define RB_KEEPERS_LEAST 3

/* What kind of row has this name; UTF-8, of any length. */
enum rb_keeper rb_keeper_of(const char *name);

#endif
