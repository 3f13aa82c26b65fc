/* SPDX-License-Identifier: MIT */
/* work.c - parts of an input, a book worked out, and pages looked at. */
#include "work.h"

#include <string.h>

#include "report/html.h"
#include "report/message_json.h"
#include "report/message_text.h"
#include "report/profile_svg.h"
#include "strict.h"

/* -- what is drawn from an input -- */

#define APART "\n%%%%\n"

static const char *find_apart(struct part rest)
{
	size_t length = strlen(APART);

	for (size_t i = 0; i + length <= rest.length; i++)
		if (rest.bytes[i] == '\n' && !memcmp(rest.bytes + i, APART, length))
			return rest.bytes + i;
	return NULL;
}

struct part part_of(const uint8_t *data, size_t size, int i)
{
	struct part part = { (const char *)data, size };
	const char *end = find_apart(part);

	for (; i > 0 && end; i--) {
		part.length -= (size_t)(end - part.bytes) + strlen(APART);
		part.bytes = end + strlen(APART);
		end = find_apart(part);
	}
	if (i > 0)
		return (struct part){ (const char *)data + size, 0 };
	if (end)
		part.length = (size_t)(end - part.bytes);
	return part;
}

uint32_t drawn_from(const uint8_t *data, size_t size)
{
	uint32_t hash = 2166136261u;

	for (size_t i = 0; i < size; i++)
		hash = (hash ^ data[i]) * 16777619u;
	return hash ^ hash >> 15;
}

int draw(uint32_t *draws, int below)
{
	*draws = *draws * 1664525u + 1013904223u;
	return (int)((*draws >> 8) % (uint32_t)below);
}

struct rb_style draw_style(uint32_t *draws, struct rb_style own)
{
	struct rb_style style = own;

	if (draw(draws, 2))
		return own;
	style.unit = (enum rb_unit)draw(draws, RB_MILLIMETRES + 1);
	style.decimals = draw(draws, 7);
	style.fraction = 8 << draw(draws, 4);
	return style;
}

/* -- a book -- */

/* Where nothing is said to be wrong there is a result. */
static bool agrees(const void *result, const struct rb_findings *findings)
{
	bool allowed = rb_findings_allow_result(findings);

	HOLDS(result || !allowed);
	return allowed;
}

bool work_out(struct work *work, struct rb_arena *arena, struct part book)
{
	struct rb_findings *findings = &work->findings;
	struct rb_judging judging;
	struct rb_sections *sections;

	*work = (struct work){ .arena = arena, .reduction = { .decimals = -1 } };
	rb_findings_init(findings, arena, "folder/fuzz.csv");
	work->book = rb_book_read(arena, findings, book.bytes, book.length);
	if (!agrees(work->book, findings))
		return false;
	work->reduced = rb_reduce(arena, findings, work->book);
	if (!agrees(work->reduced, findings))
		return false;
	judging = rb_judging_of(work->book);
	sections = rb_sections(arena, findings, work->reduced, &judging);
	if (!agrees(sections, findings))
		return false;
	work->reduction.adjusted = rb_adjust(arena, findings, sections);
	work->reduction.suspects = rb_suspects(arena, findings, sections);
	HOLDS(work->reduction.suspects);
	work->reduction.style = rb_book_style(work->book);
	return agrees(work->reduction.adjusted, findings);
}

/* -- results -- */

static void say(struct rb_sink *sink, const struct rb_findings *findings,
		struct rb_text_style style)
{
	rb_messages_write_text(sink, findings, RB_NOTE, style);
	rb_messages_write_verdict(sink, findings, "not reduced", style);
}

static void check_said(const struct rb_findings *findings, struct rb_text_style style)
{
	struct kept kept;

	kept_begin(&kept);
	say(&kept.sink, findings, style);
	kept_end(&kept);
	(style.bold ? strict_bold_text : strict_text)(&kept);
	kept_free(&kept);
}

static void check_message_list(const struct rb_findings *findings)
{
	struct rb_json json;
	struct kept kept;

	kept_begin(&kept);
	rb_json_init(&json, &kept.sink);
	rb_json_head(&json);
	rb_messages_write_json(&json, &findings, 1);
	rb_json_end(&json);
	kept_end(&kept);
	strict_json(&kept);
	kept_free(&kept);
}

void check_messages(const struct rb_findings *findings, uint32_t draws)
{
	switch (draw(&draws, 3)) {
	case 0:
		check_said(findings, (struct rb_text_style){ RB_TEXT_COLUMNS, false });
		break;
	case 1:
		check_said(findings, (struct rb_text_style){ 40, true });
		break;
	default:
		check_message_list(findings);
	}
}

static void check_page_text(const struct rb_page *page, struct rb_text_style style)
{
	struct kept kept;

	kept_begin(&kept);
	HOLDS(rb_page_write_text(&kept.sink, page, style));
	kept_end(&kept);
	(style.bold ? strict_bold_text : strict_text)(&kept);
	kept_free(&kept);
}

static void check_paper(const struct rb_page *page, const struct rb_profile *picture)
{
	static const struct rb_html_input input = { "a<b>&\"'\033.csv", "0123" };
	const struct rb_html_paper paper = { "Heading", &input, 1, true, picture };
	struct kept kept;

	kept_begin(&kept);
	HOLDS(rb_page_write_html(&kept.sink, page, &paper));
	kept_end(&kept);
	strict_markup(&kept, false);
	kept_free(&kept);
}

void check_page(const struct rb_page *page, const struct rb_profile *picture,
		uint32_t draws)
{
	HOLDS(page);
	switch (draw(&draws, 4)) {
	case 0:
		check_page_text(page, (struct rb_text_style){ RB_TEXT_COLUMNS, false });
		break;
	case 1:
		check_page_text(page, (struct rb_text_style){ 132, true });
		break;
	default:
		check_paper(page, picture);
	}
}

void check_picture(const struct rb_profile *picture)
{
	struct kept kept;

	HOLDS(picture);
	kept_begin(&kept);
	HOLDS(rb_profile_write_svg(&kept.sink, picture));
	kept_end(&kept);
	strict_markup(&kept, true);
	kept_free(&kept);
}
