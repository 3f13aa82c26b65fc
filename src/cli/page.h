/* SPDX-License-Identifier: MIT */
/*
 * page.h - a page, written as -f says.
 *
 * Every command that makes a page hands it over here, so that each is text, HTML and,
 * where it has a picture, SVG in one and the same way.
 */
#ifndef RB_CLI_PAGE_H
#define RB_CLI_PAGE_H

#include "cli/job.h"
#include "report/profile.h"
#include "rodbook/table.h"

/* Makes the picture of a result; NULL if there is no memory. */
typedef struct rb_profile *rb_picture_maker(struct rb_arena *arena, const void *result);

/* What goes onto the paper beside the page. */
struct rb_page_extras {
	const char *heading;       /* of a page without a title */
	bool sign;                 /* lines to sign: it goes to the site record */
	rb_picture_maker *picture; /* NULL: it has none */
	const void *result;        /* what the maker is handed */
};

/*
 * Write the page of a job's result; the files that the job has read are named with their
 * digests.
 *
 *   page    NULL: there was no memory for it
 *
 * False if there is no memory.
 */
bool rb_write_page(struct rb_sink *sink, const struct rb_job *job,
		   const struct rb_page *page, const struct rb_page_extras *extras);

#endif
