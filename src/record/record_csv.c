/* SPDX-License-Identifier: MIT */
/* The columns of the record, and what stands in them. */
#include "record/record_csv.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "record/record_columns.h"
#include "report/csv.h"
#include "report/decimal.h"
#include "report/json.h"
#include "report/reduced_table.h"

/* A line on its way. */
struct line {
	struct rb_csv *csv;
	const struct rb_entry *entry;
	const struct rb_recorded_book *book;
};

typedef void put_cell(const struct line *line);

/* -- lengths --------------------------------------------------------------------- */

static void put_decimals(const struct line *l, rb_length value)
{
	int decimals = l->book->reduction.decimals;

	rb_csv_rounded(l->csv, value, l->book->unit,
		       decimals < 0 ? rb_json_decimals(l->book->unit) : decimals);
}

static void put_inches(const struct line *l, rb_length value, struct rb_style style)
{
	char text[RB_LENGTH_TEXT];

	style.unit = RB_FEET_INCHES;
	rb_length_format(text, value, style);
	rb_csv_number(l->csv, text, strlen(text));
}

static void put_millimetres(const struct line *l, rb_length value)
{
	rb_csv_rounded(l->csv, value, RB_MILLIMETRES, rb_json_decimals(RB_MILLIMETRES));
}

/* Exactly, in the unit in which it was written: it is held against other books. */
static void put_known(const struct line *l)
{
	const struct rb_entry *e = l->entry;
	char text[RB_LENGTH_TEXT];
	size_t length;

	if (!rb_length_given(e->known) || e->written == l->book->unit) {
		rb_csv_exact(l->csv, e->known, e->written, rb_json_decimals(e->written));
		return;
	}
	if (e->written == RB_FEET_INCHES && e->known.nm % RB_SIXTYFOURTH == 0) {
		put_inches(l, e->known, (struct rb_style){ .fraction = 64 });
		return;
	}
	length = rb_decimal_write_exact(text, e->known, e->written,
					rb_json_decimals(e->written));
	text[length] = '\0';
	if (text[length - 1] != 'm') /* else it has its mark */
		length += (size_t)snprintf(
			text + length, sizeof text - length, " %s",
			e->written == RB_FEET_INCHES ? "ft" : rb_unit_name(e->written));
	rb_csv_number(l->csv, text, length);
}

/* -- columns --------------------------------------------------------------------- */

static void put_text(const struct line *l, const char *text)
{
	rb_csv_text(l->csv, text);
}

static void put_point(const struct line *l)
{
	put_text(l, l->entry->point);
}

static void put_elevation(const struct line *l)
{
	put_decimals(l, l->entry->elevation);
}

static void put_adjusted(const struct line *l)
{
	put_decimals(l, l->entry->adjusted);
}

static void put_unit(const struct line *l)
{
	put_text(l, rb_unit_name(l->book->unit));
}

static void put_elevation_inches(const struct line *l)
{
	put_inches(l, l->entry->elevation, l->book->style);
}

static void put_adjusted_inches(const struct line *l)
{
	put_inches(l, l->entry->adjusted,
		   rb_adjusted_style(l->book->style, l->book->fraction_asked));
}

static void put_elevation_mm(const struct line *l)
{
	put_millimetres(l, l->entry->elevation);
}

static void put_adjusted_mm(const struct line *l)
{
	put_millimetres(l, l->entry->adjusted);
}

static void put_below(const struct line *l)
{
	put_decimals(l, l->entry->below);
}

static void put_datum(const struct line *l)
{
	put_text(l, l->book->datum);
}

static void put_date(const struct line *l)
{
	put_text(l, l->book->date);
}

static void put_project(const struct line *l)
{
	put_text(l, l->book->project);
}

static void put_book(const struct line *l)
{
	put_text(l, l->book->name);
}

static void put_version(const struct line *l)
{
	char text[16];
	int length = snprintf(text, sizeof text, "%" PRIu32, l->book->version);

	rb_csv_number(l->csv, text, (size_t)length);
}

static void put_section(const struct line *l)
{
	put_text(l, l->entry->section);
}

static void put_closed(const struct line *l)
{
	put_text(l, !rb_entry_is_levelled(l->entry) ? ""
		    : l->entry->verdict == RB_OPEN  ? "no"
						    : "yes");
}

static void put_within(const struct line *l)
{
	static const char *const word[] = { [RB_CLOSES] = "yes", [RB_BEYOND] = "no" };
	enum rb_verdict v = l->entry->verdict;
	bool judged = *l->entry->section && (v == RB_CLOSES || v == RB_BEYOND);

	put_text(l, judged ? word[v] : "");
}

static void put_kind(const struct line *l)
{
	put_text(l, rb_kind_name(l->entry->kind));
}

static void put_rod_on(const struct line *l)
{
	put_text(l, rb_rod_on_name(l->entry->rod_on));
}

static void put_remarks(const struct line *l)
{
	put_text(l, l->entry->remarks);
}

static void put_replaces(const struct line *l)
{
	put_text(l, l->book->replaces);
}

static void put_digest(const struct line *l)
{
	put_text(l, l->book->digest);
}

/* clang-format off */
static const struct {
	const char *heading;
	put_cell *put;
} columns[RB_RECORD_COLUMNS] = {
	[RB_RECORD_POINT]            = { "point",            put_point },
	[RB_RECORD_ELEVATION]        = { "elevation",        put_elevation },
	[RB_RECORD_ADJUSTED]         = { "adjusted",         put_adjusted },
	[RB_RECORD_UNIT]             = { "unit",             put_unit },
	[RB_RECORD_ELEVATION_INCHES] = { "elevation_ft_in",  put_elevation_inches },
	[RB_RECORD_ADJUSTED_INCHES]  = { "adjusted_ft_in",   put_adjusted_inches },
	[RB_RECORD_ELEVATION_MM]     = { "elevation_mm",     put_elevation_mm },
	[RB_RECORD_ADJUSTED_MM]      = { "adjusted_mm",      put_adjusted_mm },
	[RB_RECORD_BELOW]            = { "below",            put_below },
	[RB_RECORD_DATUM]            = { "datum",            put_datum },
	[RB_RECORD_DATE]             = { "date",             put_date },
	[RB_RECORD_PROJECT]          = { "project",          put_project },
	[RB_RECORD_BOOK]             = { "book",             put_book },
	[RB_RECORD_VERSION]          = { "version",          put_version },
	[RB_RECORD_SECTION]          = { "section",          put_section },
	[RB_RECORD_CLOSED]           = { "closed",           put_closed },
	[RB_RECORD_WITHIN]           = { "within_tolerance", put_within },
	[RB_RECORD_KIND]             = { "kind",             put_kind },
	[RB_RECORD_ROD_ON]           = { "rod_on",           put_rod_on },
	[RB_RECORD_KNOWN]            = { "known_elevation",  put_known },
	[RB_RECORD_REMARKS]          = { "remarks",          put_remarks },
	[RB_RECORD_REPLACES]         = { "replaces",         put_replaces },
	[RB_RECORD_DIGEST]           = { "sha256",           put_digest },
};
/* clang-format on */

const char *rb_record_heading(enum rb_record_column column)
{
	return columns[column].heading;
}

/* -- lines ----------------------------------------------------------------------- */

/* Which column stands in a cell; RB_RECORD_COLUMNS: none of ours. */
static int column_in(const struct rb_ledger *ledger, int32_t cell)
{
	for (int i = 0; i < RB_RECORD_COLUMNS; i++)
		if (ledger->cell_of[i] == cell)
			return i;
	return RB_RECORD_COLUMNS;
}

static void write_line(const struct line *line, const int *column, uint32_t cells)
{
	for (uint32_t i = 0; i < cells; i++) {
		if (column[i] < RB_RECORD_COLUMNS)
			columns[column[i]].put(line);
		else
			rb_csv_text(line->csv, NULL);
	}
	rb_csv_end_row(line->csv);
}

static bool write_lines(struct rb_sink *sink, const struct rb_ledger *ledger,
			bool as_read)
{
	uint32_t cells = as_read ? ledger->cells : RB_RECORD_COLUMNS;
	int *column = rb_arena_take(ledger->arena, (size_t)cells + 1, sizeof *column);
	struct rb_csv csv;

	if (!column)
		return false;
	for (uint32_t i = 0; i < cells; i++)
		column[i] = as_read ? column_in(ledger, (int32_t)i) : (int)i;
	rb_csv_init(&csv, sink);
	for (uint32_t i = ledger->old_entries; i < ledger->entries; i++) {
		const struct rb_entry *entry = &ledger->entry[i];
		const struct line line = { &csv, entry, rb_entry_book(ledger, entry) };

		write_line(&line, column, cells);
	}
	return true;
}

bool rb_record_write_csv(struct rb_sink *sink, const struct rb_ledger *ledger)
{
	struct rb_csv csv;

	rb_csv_init(&csv, sink);
	for (int i = 0; i < RB_RECORD_COLUMNS; i++)
		rb_csv_text(&csv, columns[i].heading);
	rb_csv_end_row(&csv);
	return write_lines(sink, ledger, false);
}

bool rb_record_write_lines(struct rb_sink *sink, const struct rb_ledger *ledger)
{
	return write_lines(sink, ledger, true);
}
