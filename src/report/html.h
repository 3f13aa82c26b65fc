/* SPDX-License-Identifier: MIT */
/*
 * html.h - any page as one HTML file.
 *
 * The file holds all it needs: no script, no outside reference, and a policy that allows
 * neither.  It reads on a phone and prints on letter and A4, in black on white: verdicts
 * first, in words, in a box; tables that scroll by themselves where the screen is narrow
 * and repeat their heads on paper; the job on every sheet; at the end lines to sign, and
 * the digests by which the paper can be matched to its files.
 */
#ifndef RB_REPORT_HTML_H
#define RB_REPORT_HTML_H

#include "report/profile.h"
#include "report/sink.h"
#include "rodbook/table.h"

/* A file that the result was made from. */
struct rb_html_input {
	const char *name;   /* without a path */
	const char *sha256; /* in hexadecimal */
};

/* What is on the paper beside the page. */
struct rb_html_paper {
	const char *heading; /* of a page that has no title of its own */
	const struct rb_html_input *input;
	size_t inputs;
	bool sign; /* with lines to sign: levelled by, checked by, date */
	const struct rb_profile *picture; /* or NULL */
};

/* Write a page as a file.  Tables are laid out in the page's arena; false if it has no
 * memory left, or the page had none. */
bool rb_page_write_html(struct rb_sink *sink, const struct rb_page *page,
			const struct rb_html_paper *paper);

#endif
