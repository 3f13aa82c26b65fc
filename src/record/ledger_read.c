/* SPDX-License-Identifier: MIT */
/* The record as it was written before. */
#include <string.h>

#include "measure/reading.h"
#include "notes/sheet.h"
#include "record/ledger.h"
#include "record/record_columns.h"
#include "report/titles.h"

struct reader {
	struct rb_ledger *ledger;
	struct rb_findings *findings;
	uint32_t last; /* the book of the row before */
};

/* -- cells ----------------------------------------------------------------------- */

static struct rb_cell cell_at(const struct reader *r, enum rb_record_column column,
			      const struct rb_record *record)
{
	return rb_sheet_cell(r->ledger->cell_of, (int)column, record);
}

static bool is(struct rb_cell cell, const char *word)
{
	return cell.length == strlen(word) && !memcmp(cell.text, word, cell.length);
}

static const char *text_at(struct reader *r, enum rb_record_column column,
			   const struct rb_record *record)
{
	struct rb_cell cell = rb_cell_unguarded(cell_at(r, column, record));
	const char *text =
		cell.length ? rb_arena_text(r->ledger->arena, cell.text, cell.length)
			    : "";

	if (!text)
		rb_findings_no_memory(r->findings);
	return text ? text : "";
}

static struct rb_reading elevation_at(struct reader *r, enum rb_record_column column,
				      const struct rb_record *record, enum rb_unit unit)
{
	const struct rb_reading_rules rules = { .unit = unit,
						.kind = RB_OF_ELEVATION,
						.limit = rb_length_none() };
	struct rb_place place = rb_at(record->line, r->ledger->cell_of[column], NULL,
				      rb_record_heading(column));

	return rb_sheet_length(r->findings, cell_at(r, column, record), place, &rules);
}

static enum rb_unit unit_at(struct reader *r, const struct rb_record *record)
{
	struct rb_cell cell = cell_at(r, RB_RECORD_UNIT, record);
	enum rb_unit unit = RB_FEET;

	if (!rb_unit_parse(cell.text, cell.length, &unit))
		rb_findings_add(r->findings, RB_CODE_BAD_UNIT,
				rb_at(record->line, r->ledger->cell_of[RB_RECORD_UNIT],
				      NULL, rb_record_heading(RB_RECORD_UNIT)),
				rb_text(text_at(r, RB_RECORD_UNIT, record)),
				rb_nothing());
	return unit;
}

/* A number of few digits; 0 where there is none. */
static uint32_t count_at(const struct reader *r, enum rb_record_column column,
			 const struct rb_record *record)
{
	struct rb_cell cell = cell_at(r, column, record);
	uint32_t count = 0;

	for (size_t i = 0; i < cell.length && i < 9; i++) {
		if (cell.text[i] < '0' || cell.text[i] > '9')
			return 0;
		count = 10 * count + (uint32_t)(cell.text[i] - '0');
	}
	return count;
}

static enum rb_verdict verdict_at(const struct reader *r, const struct rb_record *record)
{
	struct rb_cell within = cell_at(r, RB_RECORD_WITHIN, record);

	if (!is(cell_at(r, RB_RECORD_CLOSED, record), "yes"))
		return RB_OPEN;
	if (is(within, "yes"))
		return RB_CLOSES;
	return is(within, "no") ? RB_BEYOND : RB_NOT_JUDGED;
}

static enum rb_kind kind_at(const struct reader *r, const struct rb_record *record)
{
	struct rb_cell cell = cell_at(r, RB_RECORD_KIND, record);

	for (int kind = RB_BENCHMARK; kind <= RB_END; kind++)
		if (is(cell, rb_kind_name((enum rb_kind)kind)))
			return (enum rb_kind)kind;
	return RB_SIDE_POINT;
}

/* -- rows ------------------------------------------------------------------------ */

/* The book of a row: mostly that of the row before. */
static uint32_t book_at(struct reader *r, const struct rb_record *record,
			enum rb_unit unit)
{
	struct rb_cell digest = cell_at(r, RB_RECORD_DIGEST, record);
	struct rb_recorded_book book;
	uint32_t number;

	if (r->last != RB_NO_BOOK && digest.length &&
	    is(digest, r->ledger->book[r->last].digest))
		return r->last;
	book = (struct rb_recorded_book){
		.name = text_at(r, RB_RECORD_BOOK, record),
		.date = text_at(r, RB_RECORD_DATE, record),
		.project = text_at(r, RB_RECORD_PROJECT, record),
		.datum = text_at(r, RB_RECORD_DATUM, record),
		.digest = text_at(r, RB_RECORD_DIGEST, record),
		.replaces = text_at(r, RB_RECORD_REPLACES, record),
		.version = count_at(r, RB_RECORD_VERSION, record),
		.unit = unit,
	};
	book.version = book.version ? book.version : 1;
	book.style = (struct rb_style){ book.unit, 2, 16, false };
	number = rb_ledger_find(r->ledger, &book);
	return number == RB_NO_BOOK ? rb_ledger_enter(r->ledger, &book) : number;
}

static bool on_row(void *self, const struct rb_record *record)
{
	struct reader *r = self;
	struct rb_entry *entry = rb_ledger_room(r->ledger, 1);
	enum rb_unit unit = unit_at(r, record);
	struct rb_reading known = elevation_at(r, RB_RECORD_KNOWN, record, unit);

	r->last = book_at(r, record, unit);
	if (!entry || r->last == RB_NO_BOOK)
		return rb_findings_no_memory(r->findings);
	*entry = (struct rb_entry){
		.point = text_at(r, RB_RECORD_POINT, record),
		.section = text_at(r, RB_RECORD_SECTION, record),
		.remarks = text_at(r, RB_RECORD_REMARKS, record),
		.elevation = elevation_at(r, RB_RECORD_ELEVATION, record, unit).value,
		.adjusted = elevation_at(r, RB_RECORD_ADJUSTED, record, unit).value,
		.below = elevation_at(r, RB_RECORD_BELOW, record, unit).value,
		.known = known.value,
		.written = rb_length_given(known.value) ? known.unit : unit,
		.verdict = verdict_at(r, record),
		.kind = kind_at(r, record),
		.book = r->last,
		.line = record->line,
	};
	entry->rod_on = rb_rod_on_parse(cell_at(r, RB_RECORD_ROD_ON, record).text,
					cell_at(r, RB_RECORD_ROD_ON, record).length);
	r->ledger->entries++;
	if (record->cells > r->ledger->cells)
		r->ledger->cells = record->cells;
	return true;
}

/* -- the file -------------------------------------------------------------------- */

static bool is_header(const int32_t cell_of[RB_SHEET_COLUMNS])
{
	return cell_of[RB_RECORD_POINT] >= 0 && cell_of[RB_RECORD_ELEVATION] >= 0;
}

static bool say_no_record(struct rb_findings *findings, const struct rb_record *nearest)
{
	rb_findings_add(findings, RB_CODE_NO_RECORD,
			rb_at(nearest->line, RB_WHOLE_ROW, NULL, NULL), rb_nothing(),
			rb_nothing());
	return true;
}

/* Without these a line would not say what it is, and a book could come in twice. */
static const enum rb_record_column needed[] = {
	RB_RECORD_UNIT,   RB_RECORD_ADJUSTED, RB_RECORD_DATE,    RB_RECORD_PROJECT,
	RB_RECORD_BOOK,   RB_RECORD_VERSION,  RB_RECORD_SECTION, RB_RECORD_CLOSED,
	RB_RECORD_WITHIN, RB_RECORD_KIND,     RB_RECORD_KNOWN,   RB_RECORD_REPLACES,
	RB_RECORD_DIGEST,
};

static void say_form(struct reader *r, const char *form)
{
	rb_findings_add(r->findings, RB_CODE_RECORD_FORM, rb_in_file(), rb_text(form),
			rb_nothing());
}

static bool on_header(void *self, const struct rb_sheet *sheet)
{
	struct reader *r = self;
	struct rb_ledger *ledger = r->ledger;

	memcpy(ledger->cell_of, sheet->cell_of, sizeof ledger->cell_of);
	for (int i = 0; i < RB_RECORD_COLUMNS; i++)
		if (ledger->cell_of[i] >= (int32_t)ledger->cells)
			ledger->cells = (uint32_t)ledger->cell_of[i] + 1;
	for (size_t i = 0; i < sizeof needed / sizeof *needed; i++)
		if (ledger->cell_of[needed[i]] < 0)
			rb_findings_add(
				r->findings, RB_CODE_RECORD_COLUMN,
				rb_at(sheet->header_line, RB_WHOLE_ROW, NULL, NULL),
				rb_text(rb_record_heading(needed[i])), rb_nothing());
	if (sheet->source->separator != ',')
		say_form(r, "semicolons or tabs between the cells");
	if (r->findings->of_code[RB_CODE_WINDOWS_1252])
		say_form(r, "Windows-1252");
	return rb_findings_allow_result(r->findings);
}

/* Nothing, or nothing but blank lines: a record that is yet to begin. */
static bool is_blank(const char *bytes, size_t length)
{
	while (length && strchr(" \t\r\n", *bytes) && *bytes)
		bytes++, length--;
	return !length;
}

bool rb_ledger_read(struct rb_ledger *ledger, struct rb_findings *findings,
		    const char *bytes, size_t length)
{
	struct rb_heading heading[RB_RECORD_COLUMNS];
	const char *name[RB_RECORD_COLUMNS];
	const struct rb_form form = {
		.heading = heading,
		.headings = RB_RECORD_COLUMNS,
		.column_name = name,
		.passed_over = -1,
		.is_header = is_header,
		.say_headless = say_no_record,
	};
	struct reader r = { ledger, findings, RB_NO_BOOK };
	const struct rb_sheet_reader reader = { on_header, on_row, &r };

	for (int i = 0; i < RB_RECORD_COLUMNS; i++) {
		name[i] = rb_record_heading((enum rb_record_column)i);
		/* cppcheck-suppress unreadVariable; it is read through the form */
		heading[i] = (struct rb_heading){ name[i], i };
	}
	ledger->file = rb_title_file(findings->file);
	if (is_blank(bytes, length))
		return true;
	ledger->has_record = true;
	if (!rb_sheet_read(ledger->arena, findings, &form, bytes, length, &reader))
		return false;
	ledger->old_books = ledger->books;
	ledger->old_entries = ledger->entries;
	return rb_findings_allow_result(findings);
}
