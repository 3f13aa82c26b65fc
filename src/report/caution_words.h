/* SPDX-License-Identifier: MIT */
/*
 * caution_words.h - a caution in words.
 *
 * Each names the number that triggers it and where, and none says that anything is safe.
 */
#ifndef RB_REPORT_CAUTION_WORDS_H
#define RB_REPORT_CAUTION_WORDS_H

#include "drain/caution.h"
#include "report/phrase.h"

/* Of an extended rod near overhead lines. */
#define RB_ROD_RULE                                                                      \
	"29 CFR 1926.416(a)(1); for equipment 29 CFR 1926.1408; cited from memory"

/* "the trench is 6.20 ft deep at MH-1: from 5 ft the rule asks for ..." */
void rb_caution_words(struct rb_phrase *phrase, const struct rb_caution *caution,
		      struct rb_style style);

/* The citation; "" where there is none. */
const char *rb_caution_rule(const struct rb_caution *caution);

/* "locate", "depth", "footing", "rod". */
const char *rb_caution_name(enum rb_caution_kind kind);

#endif
