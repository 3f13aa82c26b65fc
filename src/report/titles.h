/* SPDX-License-Identifier: MIT */
/*
 * titles.h - what stands in a title: which file, in which unit.
 */
#ifndef RB_REPORT_TITLES_H
#define RB_REPORT_TITLES_H

#include "report/phrase.h"

/* The file without a path: no result holds one.  "standard input" for "-" and NULL. */
const char *rb_title_file(const char *path);

/* "decimal feet", "feet and inches", ... */
const char *rb_title_unit(enum rb_unit unit);

/* Append "larch.csv, decimal feet". */
void rb_title_aside(struct rb_phrase *phrase, const char *path, enum rb_unit unit);

#endif
