/* SPDX-License-Identifier: MIT */
/* apart.c - the unit of a key's value in a cell of its own: cells split, or merged. */
#include "notes/apart.h"

#include "measure/reading.h"
#include "rodbook/slope.h"
#include "rodbook/tolerance.h"

#define MOST sizeof(((struct rb_apart *)0)->whole)

static bool has_figure(struct rb_cell cell)
{
	for (size_t i = 0; i < cell.length; i++)
		if (cell.text[i] >= '0' && cell.text[i] <= '9')
			return true;
	return false;
}

/* The cell behind so many of it; empty where the cell is no unit by its look. */
static struct rb_cell many(const char *before, struct rb_cell cell,
			   char text[static MOST])
{
	size_t length = strlen(before);

	if (!cell.length || cell.length + length > MOST || has_figure(cell))
		return (struct rb_cell){ text, 0 };
	memcpy(text, before, length);
	memcpy(text + length, cell.text, cell.length);
	return (struct rb_cell){ text, cell.length + length };
}

/* A name of units, or a mark: whatever is read as so many of it. */
static bool is_unit_of_length(struct rb_cell cell)
{
	/* a bare number is refused there: what is read has its mark */
	const struct rb_reading_rules rules = {
		RB_FEET_INCHES, RB_OF_TAPE, false, { RB_NOT_GIVEN_NM }
	};
	enum rb_unit unit;
	char text[MOST];
	struct rb_cell one = many("1 ", cell, text);

	return rb_unit_parse(cell.text, cell.length, &unit) ||
	       rb_reading_parse(one.text, one.length, &rules).refusal == RB_READ;
}

static bool is_unit_of_slope(struct rb_cell cell)
{
	char text[MOST];
	struct rb_cell one = many("1 ", cell, text);
	rb_slope slope;

	return rb_slope_parse(one.text, one.length, &slope) == RB_SLOPE_READ;
}

/* sqrt(mi), or with a unit before it: mm sqrt(km). */
static bool is_root(struct rb_cell cell)
{
	static const char *const befores[] = { "1 mm ", "1 " };

	for (size_t i = 0; i < sizeof befores / sizeof *befores; i++) {
		char text[MOST];
		struct rb_cell one = many(befores[i], cell, text);
		struct rb_tolerance tolerance;

		if (rb_tolerance_parse(one.text, one.length, RB_FEET, false,
				       &tolerance) &&
		    tolerance.root != RB_FLAT)
			return true;
	}
	return false;
}

static bool is_unit_of_value(struct rb_cell cell)
{
	return is_unit_of_length(cell) || is_root(cell);
}

typedef bool is_unit(struct rb_cell cell);

/* What would be a unit beside such a key's value; NULL: nothing is. */
static is_unit *unit_of(const struct rb_form *form, const struct rb_key *key,
			struct rb_cell value)
{
	if (!strcmp(key->name, "unit"))
		return is_unit_of_length;
	if (!has_figure(value)) /* bedding, none */
		return NULL;
	if (form->slopes >> key->key & 1)
		return is_unit_of_slope;
	return form->lengths >> key->key & 1 ? is_unit_of_value : NULL;
}

static uint32_t next_full(const struct rb_record *record, uint32_t i)
{
	while (i < record->cells && !record->cell[i].length)
		i++;
	return i;
}

/* A number with no unit of its own. */
static bool is_bare(struct rb_cell value)
{
	for (size_t i = 0; i < value.length; i++)
		if (!strchr("0123456789.,/+- ", value.text[i]))
			return false;
	return true;
}

/* Add what follows, with a blank between; false: it is too long to be shown. */
static bool append(char whole[static MOST], struct rb_cell cell)
{
	size_t length = strlen(whole);

	if (length + 1 + cell.length + 1 > MOST)
		return false;
	if (length)
		whole[length++] = ' ';
	memcpy(whole + length, cell.text, cell.length);
	whole[length + cell.length] = '\0';
	return true;
}

/* The value and the units behind it, where these are what it lacks. */
static void write_whole(struct rb_apart *out, struct rb_cell value,
			const struct rb_record *record, is_unit *is)
{
	bool whole = is_bare(value) || is_root(record->cell[out->cell]);

	*out->whole = '\0';
	whole = whole && append(out->whole, value);
	for (uint32_t i = out->cell; whole && i < record->cells && is(record->cell[i]);
	     i = next_full(record, i + 1))
		whole = append(out->whole, record->cell[i]);
	if (!whole)
		*out->whole = '\0';
}

bool rb_apart_find(const struct rb_form *form, const struct rb_key *key,
		   struct rb_cell value, const struct rb_record *record, uint32_t next,
		   struct rb_apart *out)
{
	is_unit *is = unit_of(form, key, value);

	out->cell = next_full(record, next);
	if (!is || out->cell == record->cells || !is(record->cell[out->cell]))
		return false;
	write_whole(out, value, record, is);
	return true;
}
