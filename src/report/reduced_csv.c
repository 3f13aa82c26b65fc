/* SPDX-License-Identifier: MIT */
/* reduced_csv.c - rows of a reduced book; millions of them, so nothing is formatted
 * twice. */
#include "report/reduced_csv.h"

#include <string.h>

#include "measure/sheet_damage.h"
#include "measure/unit.h"
#include "report/csv.h"
#include "report/decimal.h"
#include "report/json.h"
#include "report/phrase.h"
#include "report/reduced_table.h"

static const char header[] =
	"point,chainage,backsight,height_of_instrument,intermediate,foresight,elevation,"
	"correction,adjusted,remarks,known_elevation,unit\n";

struct writer {
	struct rb_csv csv;
	const struct rb_reduction *r;
	struct rb_phrase phrase;
	enum rb_unit unit, runs;
	int decimals, run_decimals;
	struct rb_style inches, finer; /* of computed columns in feet-inches */
};

static void put_marked(struct writer *w, rb_length value, struct rb_style style)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, value, style);
	rb_csv_number(&w->csv, text, strlen(text));
}

/* A column that follows from others: rounded. */
static inline void put_rounded(struct writer *w, rb_length value, struct rb_style style)
{
	if (!rb_length_given(value))
		rb_csv_empty(&w->csv);
	else if (w->unit == RB_FEET_INCHES)
		put_marked(w, value, style);
	else
		rb_csv_rounded(&w->csv, value, w->unit, w->decimals);
}

/* A whole 64th of an inch in feet-inches; else decimals, with their mark. */
static void put_exact_inches(struct writer *w, rb_length value)
{
	const struct rb_style sixtyfourths = { RB_FEET_INCHES, 0, 64, true };
	char text[RB_DECIMAL_TEXT];
	size_t length;

	if (value.nm % RB_SIXTYFOURTH == 0) {
		put_marked(w, value, sixtyfourths);
		return;
	}
	length = rb_decimal_write_exact(text, value, RB_FEET, w->decimals);
	if (text[length - 1] != 'm') {
		memcpy(text + length, " ft", 3);
		length += 3;
	}
	rb_csv_number(&w->csv, text, length);
}

/* A reading that a reader would take for the number of a date, on no rod that there is.
 */
static bool is_serial(rb_length value, enum rb_unit unit)
{
	const struct rb_reading_rules sights = { .unit = unit, .kind = RB_OF_ROD };
	int64_t one = rb_unit_nm(unit);

	return value.nm % one == 0 && rb_sheet_serial(value.nm / one, &sights);
}

/* A column that was measured: exact. */
static inline void put_exact(struct writer *w, rb_length value, enum rb_unit unit,
			     int decimals)
{
	if (!rb_length_given(value))
		rb_csv_empty(&w->csv);
	else if (unit == RB_FEET_INCHES)
		put_exact_inches(w, value);
	else if ((unit == RB_INCHES || unit == RB_MILLIMETRES) && is_serial(value, unit))
		put_marked(w, value, (struct rb_style){ unit, 0, 16, true });
	else
		rb_csv_exact(&w->csv, value, unit, decimals);
}

static void put_remarks(struct writer *w, const struct rb_place_rows *rows)
{
	if (!*rows->other_remark) {
		rb_csv_text(&w->csv, rows->remark);
		return;
	}
	rb_phrase_clear(&w->phrase);
	rb_phrase_text(&w->phrase, rows->remark);
	rb_phrase_text(&w->phrase, *rows->remark ? "; " : "");
	rb_phrase_text(&w->phrase, rows->other_remark);
	rb_csv_text(&w->csv, w->phrase.text);
}

/* The name of a row as it reads back: `+10` and a bare 10 took the hundreds last written,
 * which the chainages of the CSV do not have. */
static const char *name_of(const struct rb_book *book, uint32_t row)
{
	const char *typed = rb_book_typed(book, row);
	const char *whole = rb_book_point(book, book->row[row].point);
	size_t length = strlen(typed), longest;

	if (typed == whole)
		return typed;
	longest = strlen(whole);
	return longest > length && !strcmp(whole + longest - length, typed) ? whole
									    : typed;
}

static void put_row(struct writer *w, uint32_t shot)
{
	const struct rb_reduction *r = w->r;
	const struct rb_reduced *reduced = rb_reduction_reduced(r);
	const struct rb_shot *s = &reduced->shot[shot];
	struct rb_place_rows rows = rb_reduction_rows(r, shot);
	rb_length reading = rb_shot_reading(reduced, shot), none = rb_length_none();
	bool side = s->booked == RB_BOOKED_INTERMEDIATE;
	rb_length correction = rb_shot_correction(r->adjusted, shot);

	rb_csv_text(&w->csv, name_of(reduced->book, s->row));
	put_exact(w, rows.chainage, w->runs, w->run_decimals);
	put_exact(w, rb_reduction_backsight(r, shot), w->unit, w->decimals);
	put_rounded(w, rb_reduction_instrument(r, shot), w->inches);
	put_exact(w, side ? reading : none, w->unit, w->decimals);
	put_exact(w, side ? none : reading, w->unit, w->decimals);
	put_rounded(w, s->elevation, w->inches);
	put_rounded(w, correction, w->finer);
	put_rounded(w,
		    rb_length_given(correction) ? rb_length_add(s->elevation, correction)
						: none,
		    w->finer);
	put_remarks(w, &rows);
	put_exact(w, rb_reduction_known(r, shot), w->unit, w->decimals);
	rb_csv_text(&w->csv, rb_unit_name(w->unit));
	rb_csv_end_row(&w->csv);
}

/* More places than these do not read back: they are finer than a nanometre. */
static const int most_decimals[] = {
	[RB_FEET] = 5,   [RB_INCHES] = 5,      [RB_FEET_INCHES] = 5,
	[RB_METRES] = 9, [RB_MILLIMETRES] = 6,
};

bool rb_reduced_write_csv(struct rb_sink *sink, struct rb_arena *arena,
			  const struct rb_reduction *r)
{
	struct writer w = { .r = r, .unit = rb_reduction_unit(r), .inches = r->style };

	w.runs = rb_unit_of_runs(w.unit);
	w.decimals = r->decimals < 0 ? rb_json_decimals(w.unit) : r->decimals;
	if (w.decimals > most_decimals[w.unit])
		w.decimals = most_decimals[w.unit];
	w.run_decimals = rb_json_decimals(w.runs);
	w.finer = rb_adjusted_style(r->style, r->fraction_asked);
	rb_csv_init(&w.csv, sink);
	rb_phrase_init(&w.phrase, arena);
	if (w.phrase.out_of_memory)
		return false;
	rb_sink_text(sink, header);
	for (uint32_t i = 0; i < rb_reduction_reduced(r)->shots; i++)
		put_row(&w, i);
	return !w.phrase.out_of_memory;
}
