/* SPDX-License-Identifier: MIT */
/* html.c - a page's blocks between a head and a foot. */
#include "report/html.h"

#include <stdio.h>
#include <string.h>

#include "report/escape.h"
#include "report/html_style.h"
#include "report/html_table.h"
#include "report/html_words.h"
#include "report/profile_svg.h"
#include "rodbook/version.h"

#define DIGITS_OF_FOOT 16 /* of a digest, at the foot of every sheet */
#define PLACES_MOST    60 /* of a picture inside a page: more would fill sheets of paper */

/* A page on its way out. */
struct writer {
	struct rb_sink *sink;
	const struct rb_page *page;
	const struct rb_html_paper *paper;
	unsigned tables;
	bool titled; /* the first title was written */
	bool pictured;
	bool on_own; /* a sheet of its own is begun */
};

static void put(struct writer *w, const char *markup)
{
	rb_sink_text(w->sink, markup);
}

static void put_element(struct writer *w, const char *open, const char *text,
			const char *close)
{
	put(w, open);
	rb_sink_html_words(w->sink, text);
	put(w, close);
}

static const struct rb_block *first_of(const struct rb_page *page,
				       enum rb_block_kind kind)
{
	const struct rb_block *block = page->first;

	while (block && block->kind != kind)
		block = block->next;
	return block;
}

/* What the whole page is called. */
static const char *name_of(const struct writer *w)
{
	const struct rb_block *title = first_of(w->page, RB_TITLE);

	return title ? title->text : w->paper->heading;
}

/* -- head -- */

static void put_others(struct writer *w)
{
	char others[40];

	snprintf(others, sizeof others, "  and %zu more", w->paper->inputs - 1);
	rb_sink_css_string(w->sink, others);
}

/* Where a browser writes at the foot of a sheet, a sheet that went astray can be matched
 * to its file. */
static void put_sheet_foot(struct writer *w)
{
	const struct rb_html_input *input = w->paper->input;
	char digits[DIGITS_OF_FOOT + 1];

	if (!w->paper->inputs)
		return;
	snprintf(digits, sizeof digits, "%s", input->sha256);
	put(w, "@page{@bottom-left{content:\"");
	rb_sink_css_string(w->sink, input->name);
	rb_sink_css_string(w->sink, "  SHA-256 ");
	rb_sink_css_string(w->sink, digits);
	if (w->paper->inputs > 1)
		put_others(w);
	put(w, "\"}}\n");
}

static void put_head(struct writer *w)
{
	put(w, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
	       "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src "
	       "'none'; style-src 'unsafe-inline'\">\n"
	       "<meta name=\"viewport\" content=\"width=device-width, "
	       "initial-scale=1\">\n"
	       "<meta name=\"generator\" content=\"rodbook " RB_VERSION "\">\n");
	put_element(w, "<title>", name_of(w), "</title>\n<style>\n");
	rb_html_style(w->sink);
	put_sheet_foot(w);
	put(w, "</style>\n</head>\n");
}

/* The job on every sheet of paper; the screen has the title. */
static void put_running_head(struct writer *w)
{
	const struct rb_block *title = first_of(w->page, RB_TITLE);

	put(w, "<div class=\"running\" aria-hidden=\"true\"><div>");
	put_element(w, "<b>", name_of(w), "</b>");
	if (title && title->aside)
		put_element(w, " <span>", title->aside, "</span>");
	put(w, "</div></div>\n");
}

/* -- blocks -- */

static void put_title(struct writer *w, const struct rb_block *block)
{
	const char *level = w->titled ? "h2" : "h1";

	put(w, w->titled ? "<header class=\"again\">\n<" : "<header>\n<");
	put(w, level);
	put_element(w, ">", block->text, "</");
	put(w, level);
	put(w, ">\n");
	if (block->aside)
		put_element(w, "<p class=\"aside\">", block->aside, "</p>\n");
	put(w, "</header>\n");
	w->titled = true;
}

static void put_caution(struct writer *w, const struct rb_block *block)
{
	put_element(w, "<p class=\"caution\"><strong>CAUTION</strong> ", block->text, "");
	if (block->aside)
		put_element(w, " <span class=\"cite\">(", block->aside, ")</span>");
	put(w, "</p>\n");
}

/* Line ends are kept. */
static void put_lines(struct writer *w, const char *text)
{
	put(w, "<pre>");
	while (*text) {
		size_t length = strcspn(text, "\n");

		rb_sink_escaped(w->sink, text, length);
		rb_sink_char(w->sink, '\n');
		text += length + (text[length] == '\n');
	}
	put(w, "</pre>\n");
}

/* A table on a sheet of its own takes the words about it along, and the next such table.
 */
static bool stays_on_own(const struct rb_block *block)
{
	return block && (block->kind == RB_PARAGRAPH || block->kind == RB_VERDICT ||
			 (block->kind == RB_TABLE && block->table->own_sheet));
}

static void turn_sheet(struct writer *w, const struct rb_block *block)
{
	bool begins = block && block->kind == RB_TABLE && block->table->own_sheet;

	if (w->on_own && !stays_on_own(block)) {
		put(w, "</section>\n");
		w->on_own = false;
	}
	if (!w->on_own && begins) {
		put(w, "<section class=\"own\">\n");
		w->on_own = true;
	}
}

static bool put_block(struct writer *w, const struct rb_block *block)
{
	switch (block->kind) {
	case RB_TITLE:
		put_title(w, block);
		return true;
	case RB_HEADING:
		put_element(w, "<h2>", block->text, "</h2>\n");
		return true;
	case RB_PARAGRAPH:
		put_element(w, "<p>", block->text, "</p>\n");
		return true;
	case RB_LINES:
		put_lines(w, block->text);
		return true;
	case RB_CAUTION:
		put_caution(w, block);
		return true;
	case RB_TABLE:
		return rb_html_table(w->sink, block->table, ++w->tables);
	case RB_VERDICT: /* stands in the box on top */
		break;
	}
	return true;
}

static void put_verdicts(struct writer *w)
{
	if (!first_of(w->page, RB_VERDICT))
		return;
	put(w, "<section class=\"verdict\" aria-label=\"Verdict\">\n");
	for (const struct rb_block *b = w->page->first; b; b = b->next)
		if (b->kind == RB_VERDICT)
			put_element(w, "<p>", b->text, "</p>\n");
	put(w, "</section>\n");
}

/* The picture follows the first table and the words about it. */
static bool picture_before(const struct writer *w, const struct rb_block *block)
{
	return w->tables &&
	       (!block || (block->kind != RB_PARAGRAPH && block->kind != RB_VERDICT));
}

static bool put_picture(struct writer *w)
{
	const struct rb_profile *picture = w->paper->picture;

	w->pictured = true;
	if (!picture)
		return true;
	if (picture->places <= PLACES_MOST)
		return rb_profile_write_figures(w->sink, picture);
	put(w, "<p>The picture is left out here, because it has ");
	rb_sink_number(w->sink, (int64_t)picture->places);
	put(w, " places: -f svg draws it.</p>\n");
	return true;
}

static bool put_blocks(struct writer *w)
{
	const struct rb_block *block = w->page->first;
	bool whole = true;

	if (block && block->kind == RB_TITLE) {
		put_title(w, block);
		block = block->next;
	} else {
		put_element(w, "<header>\n<h1>", w->paper->heading, "</h1>\n</header>\n");
		w->titled = true;
	}
	put_verdicts(w);
	for (; whole && block; block = block->next) {
		if (!w->pictured && picture_before(w, block))
			whole &= put_picture(w);
		turn_sheet(w, block);
		whole &= put_block(w, block);
	}
	turn_sheet(w, NULL);
	return whole && (w->pictured || put_picture(w));
}

/* -- foot -- */

static void put_cell(struct writer *w, const char *kind, const char *name,
		     const char *value)
{
	put_element(w, "<div class=\"", kind, "\">");
	put_element(w, "<dt>", name, "</dt>");
	put_element(w, "<dd>", value, "</dd></div>\n");
}

static void put_foot(struct writer *w)
{
	static const char *const signs[] = { "levelled by", "checked by", "date" };

	if (!w->paper->sign && !w->paper->inputs)
		return;
	put(w, "<footer>\n<dl>\n");
	for (size_t i = 0; w->paper->sign && i < sizeof signs / sizeof *signs; i++)
		put_cell(w, "sign", signs[i], "");
	for (size_t i = 0; i < w->paper->inputs; i++) {
		put_cell(w, "file", "from the file", w->paper->input[i].name);
		put_cell(w, "digest", "SHA-256", w->paper->input[i].sha256);
	}
	put(w, "</dl>\n</footer>\n");
}

bool rb_page_write_html(struct rb_sink *sink, const struct rb_page *page,
			const struct rb_html_paper *paper)
{
	struct writer w = { .sink = sink, .page = page, .paper = paper };
	bool whole;

	if (page->out_of_memory)
		return false;
	put_head(&w);
	put(&w, "<body>\n<div class=\"paper\">\n");
	put_running_head(&w);
	put(&w, "<div class=\"sheet\">\n<main>\n");
	whole = put_blocks(&w);
	put(&w, "</main>\n");
	put_foot(&w);
	put(&w, "</div>\n</div>\n</body>\n</html>\n");
	return whole;
}
