/* SPDX-License-Identifier: MIT */
/* run_book.c - from a printed page to a reduction, and back to the page. */
#include "run_book.h"

#define CSV 8192

static void add(char csv[static CSV], const char *format, ...)
{
	size_t used = strlen(csv);
	va_list arguments;

	va_start(arguments, format);
	vsnprintf(csv + used, CSV - used, format, arguments);
	va_end(arguments);
}

struct run run_text(const char *csv, bool adjust_anyway)
{
	struct run r = { .arena = rb_arena_new(NULL) };
	struct rb_judging judging;

	rb_findings_init(&r.findings, r.arena, "page.csv");
	r.book = rb_book_read(r.arena, &r.findings, csv, strlen(csv));
	if (r.book)
		r.reduced = rb_reduce(r.arena, &r.findings, r.book);
	if (!r.reduced)
		return r;
	judging = rb_judging_of(r.book);
	judging.adjust_anyway = adjust_anyway;
	r.sections = rb_sections(r.arena, &r.findings, r.reduced, &judging);
	if (r.sections)
		r.adjusted = rb_adjust(r.arena, &r.findings, r.sections);
	return r;
}

void run_end(struct run *run)
{
	rb_arena_free(run->arena);
}

struct run run_page(const struct printed_page *page)
{
	char csv[CSV] = "";

	add(csv, "%spoint,known elevation,backsight,intermediate,foresight", page->keys);
	add(csv, "%s\n", page->distances ? ",backsight distance,foresight distance" : "");
	for (size_t i = 0; i < page->rows; i++) {
		const struct printed_row *row = &page->row[i];

		add(csv, "%s,%s,\"%s\",\"%s\",\"%s\"", row->point, row->known,
		    row->backsight, row->intermediate, row->foresight);
		if (page->distances)
			add(csv, ",%s,%s", page->distances, page->distances);
		add(csv, "\n");
	}
	return run_text(csv, page->adjust_anyway);
}

/* Places behind the point of a printed number. */
static int places(const char *printed)
{
	const char *point = strchr(printed, '.');

	return point ? (int)strspn(point + 1, "0123456789") : 0;
}

int wrong_length(const char *what, rb_length got, const char *printed, enum rb_unit unit,
		 bool exact)
{
	struct rb_style style = { unit, places(printed), 64, false };
	char text[RB_LENGTH_TEXT];
	bool is_exact = rb_length_format(text, got, style);

	if (!strcmp(text, printed + (*printed == '+')) && (is_exact || !exact))
		return 0;
	print_error("%s: got %s%s, printed %s\n", what, text,
		    is_exact ? "" : " (rounded)", printed);
	return 1;
}

static int wrong_in_row(const struct run *r, const struct printed_row *row, uint32_t shot)
{
	const struct rb_shot *s = &r->reduced->shot[shot];
	enum rb_unit unit = r->book->unit;
	uint32_t opens = rb_shot_opens(s);
	int wrong = 0;

	if (row->elevation)
		wrong += wrong_length(row->point, s->elevation, row->elevation, unit,
				      true);
	if (row->height_of_instrument && opens == RB_NO_SETUP)
		wrong += wrong_length(row->point, rb_length_none(),
				      row->height_of_instrument, unit, true);
	else if (row->height_of_instrument)
		wrong += wrong_length(row->point,
				      r->reduced->setup[opens].height_of_instrument,
				      row->height_of_instrument, unit, true);
	if (row->rise)
		wrong += wrong_length(row->point,
				      rb_length_sub(s->elevation, (s - 1)->elevation),
				      row->rise, unit, true);
	if (row->adjusted)
		wrong += wrong_length(row->point, rb_shot_adjusted(r->adjusted, shot),
				      row->adjusted, unit, false);
	return wrong;
}

static int wrong_in_sums(const struct printed_page *page, const struct run *r)
{
	const struct rb_section *s = &r->sections->section[0];
	const struct {
		const char *what, *printed;
		rb_length got;
		bool exact;
	} sums[] = {
		{ "sum of backsights", page->sum_backsight, s->sum_backsight, true },
		{ "sum of foresights", page->sum_foresight, s->sum_foresight, true },
		{ "sum of rises", page->rises, s->sum_rise, true },
		{ "sum of falls", page->falls, s->sum_fall, true },
		{ "misclosure", page->misclosure, s->misclosure, true },
		{ "allowed", page->allowed, s->allowed, false },
	};
	rb_length difference = rb_length_sub(s->finish, s->start);
	int wrong = 0;

	for (size_t i = 0; i < sizeof sums / sizeof *sums; i++)
		if (sums[i].printed)
			wrong += wrong_length(sums[i].what, sums[i].got, sums[i].printed,
					      r->book->unit, sums[i].exact);
	if (rb_length_sub(s->sum_backsight, s->sum_foresight).nm != difference.nm ||
	    rb_length_sub(s->sum_rise, s->sum_fall).nm != difference.nm) {
		print_error("the three differences are not one\n");
		wrong++;
	}
	if (s->setups != page->setups || s->verdict != page->verdict) {
		print_error("%u setups, verdict %d\n", s->setups, (int)s->verdict);
		wrong++;
	}
	return wrong;
}

int wrong_on_page(const struct printed_page *page)
{
	struct run r = run_page(page);
	int wrong = 0;

	for (size_t i = 0; i < r.findings.count; i++)
		if (rb_code_severity(r.findings.item[i]->code) == RB_ERROR)
			print_error("line %u: %s\n", r.findings.item[i]->place.line,
				    rb_code_name(r.findings.item[i]->code));
	if (!r.adjusted || r.reduced->shots != page->rows || r.sections->sections != 1) {
		print_error("not reduced, or not to one section of %zu places\n",
			    page->rows);
		run_end(&r);
		return 1;
	}
	for (uint32_t i = 0; i < page->rows; i++)
		wrong += wrong_in_row(&r, &page->row[i], i);
	wrong += wrong_in_sums(page, &r);
	run_end(&r);
	return wrong;
}
