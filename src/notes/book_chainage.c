/* SPDX-License-Identifier: MIT */
/* The chainage of a row: from its own column, or from a name like 0+50. */
#include <stdio.h>
#include <string.h>

#include "notes/book_reader.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static size_t figures_at(const char *s)
{
	size_t n = 0;

	while (is_digit(s[n]))
		n++;
	return n;
}

/* Remember a chainage with a plus; after 0+50 a bare 10 is the same either way. */
static void note_plus(struct rb_book_reader *r, const char *text)
{
	struct rb_plus *plus = &r->plus;
	size_t before = figures_at(text);

	if (text[before] != '+' || strlen(text) >= sizeof plus->text)
		return;
	memcpy(plus->text, text, strlen(text) + 1);
	plus->before = before;
	plus->behind = figures_at(text + before + 1);
	plus->counts = strspn(text, "0") < before;
}

/* How the first with a plus is written is how all are shown. */
static bool set_chainage(struct rb_book_reader *r, const char *text, rb_length chainage)
{
	const char *plus = strchr(text, '+');

	if (plus && !r->book->chainage_plus) {
		plus += 1 + strspn(plus + 1, " \t");
		r->book->chainage_plus = (int)figures_at(plus);
	}
	return rb_book_set_value(r, RB_CHAINAGE, chainage);
}

/* How many figures the cell has before its point; 0 where it has a mark, or no figure. */
static size_t figures_of(struct rb_cell cell)
{
	size_t figures = figures_at(cell.text), end = figures;

	if (figures && (cell.text[end] == '.' || cell.text[end] == ','))
		end += 1 + figures_at(cell.text + end + 1);
	return cell.text[end] ? 0 : figures;
}

static struct rb_argument kept(struct rb_book_reader *r, const char *text)
{
	return rb_book_kept(r, (struct rb_cell){ text, strlen(text) });
}

/* 10 behind 1+00: a sheet makes that of +10, which would be 1+10. */
static void doubt_plus(struct rb_book_reader *r, const struct rb_record *record,
		       struct rb_cell cell)
{
	const struct rb_plus *plus = &r->plus;
	size_t figures = plus->counts ? figures_of(cell) : 0;
	char meant[2 * sizeof plus->text], read[2 * sizeof plus->text];
	int zeros;

	if (!figures || figures > plus->behind || cell.length >= sizeof plus->text)
		return;
	zeros = (int)(plus->behind - figures);
	snprintf(meant, sizeof meant, "%.*s+%.*s%s", (int)plus->before, plus->text, zeros,
		 "00", cell.text);
	snprintf(read, sizeof read, "0+%.*s%s", zeros, "00", cell.text);
	rb_book_say4(r, record, RB_CHAINAGE, RB_CODE_LOST_PLUS,
		     (struct rb_argument[RB_ARGUMENTS]){ rb_book_kept(r, cell),
							 kept(r, plus->text),
							 kept(r, meant), kept(r, read) });
}

/* A cell of the column: `+10` takes the hundreds last written, a bare 10 is 10. */
static bool take_cell(struct rb_book_reader *r, const struct rb_record *record,
		      struct rb_cell cell)
{
	char text[64] = "";
	struct rb_cell whole = rb_book_whole_station(r, cell, text);
	struct rb_reading reading;

	if (cell.text[0] != '+')
		whole = cell;
	reading = rb_chainage_parse(whole.text, whole.length, &r->rules[RB_OF_RUN]);
	if (reading.refusal != RB_READ) {
		rb_book_refused_chainage(r, record, &reading);
		return rb_book_set_value(r, RB_CHAINAGE, rb_length_none());
	}
	note_plus(r, whole.text);
	doubt_plus(r, record, cell);
	return set_chainage(r, whole.text, reading.value);
}

bool rb_book_take_chainage(struct rb_book_reader *r, const struct rb_record *record)
{
	struct rb_cell cell = rb_book_cell(r, record, RB_CHAINAGE);
	const char *name = rb_book_point(r->book, r->book->row[r->book->rows].point);
	struct rb_reading reading;

	if (!rb_cell_is_empty(cell))
		return take_cell(r, record, cell);
	if (rb_book_may_be_station(*name) && strchr(name, '+')) {
		reading = rb_chainage_parse(name, strlen(name), &r->rules[RB_OF_RUN]);
		if (reading.refusal == RB_READ)
			return set_chainage(r, name, reading.value);
	}
	return rb_book_set_value(r, RB_CHAINAGE, rb_length_none());
}
