/* SPDX-License-Identifier: MIT */
/*
 * section_words.h - what is said about a section of a reduced book.
 *
 * The arithmetic check and the closure are two sentences, never one: the sums of a book
 * can agree while its levels do not close.
 */
#ifndef RB_REPORT_SECTION_WORDS_H
#define RB_REPORT_SECTION_WORDS_H

#include "report/phrase.h"
#include "report/reduction.h"

/* "Arithmetic: 14.28 - 14.29 = -0.01 = 99.99 - 100.00. The sums agree; ..." by the sums
 * and by rise and fall. */
void rb_section_arithmetic(struct rb_phrase *phrase, const struct rb_reduction *r,
			   const struct rb_section *section);

/* "CLOSES on BM-1: 0.01 ft low, 0.02 ft allowed, 3 setups, each raised 0.0033 ft." */
void rb_section_verdict(struct rb_phrase *phrase, const struct rb_reduction *r,
			const struct rb_section *section);

/* "From SP a spur, unchecked: MH-9, MH-10. ..." */
void rb_spur_words(struct rb_phrase *phrase, const struct rb_reduction *r,
		   const struct rb_spur *spur);

/* How the sight lengths balance, and what the collimation of the book does with that;
 * left empty where no sight length is booked. */
void rb_section_balance(struct rb_phrase *phrase, const struct rb_reduction *r,
			const struct rb_section *section);

/* "BM-1 to BM-2" */
void rb_section_name(struct rb_phrase *phrase, const struct rb_reduction *r,
		     const struct rb_section *section);

/* A length without its sign and with its unit: "0.01 ft". */
void rb_phrase_marked(struct rb_phrase *phrase, rb_length a, struct rb_style style);

/* "0.01 ft low", "0.01 ft high", or "exactly" where a is nothing. */
void rb_phrase_off(struct rb_phrase *phrase, rb_length a, struct rb_style style);

#endif
