/* SPDX-License-Identifier: MIT */
/* The forms, in tables, and their CSV. */
#include "cli/forms.h"

#include <stdio.h>
#include <string.h>

#include "report/csv.h"

#define UNITS        5 /* in the order of enum rb_unit: ft, in, ft-in, m, mm */
#define CELLS        11
#define WORDS        128
#define COUNT(table) (sizeof(table) / sizeof *(table))

/* What stands in a cell, by unit; NULL: nothing. */
struct by_unit {
	const char *in[UNITS];
};

struct form_key {
	const char *words; /* on the key */
	const char *key;
	struct by_unit value;   /* one that does no harm where it is left as it is */
	struct by_unit such_as; /* an example, among the words: it must not be read */
};

struct form_row {
	struct by_unit cell[CELLS];
};

struct rb_blank_form {
	const char *name, *command;
	const struct form_key *key;
	size_t keys;
	const char *const *column;
	size_t columns;
	const struct form_row *row;
	size_t rows;
};

/* clang-format off */
#define NONE     { { NULL } }
#define SAME(x)  { { x, x, x, x, x } }
#define UNIT     { { "ft", "in", "ft-in", "m", "mm" } }
#define RUN(ft, m) { { ft, ft, ft, m, m } } /* along the ground: feet or metres */

/* -- book: the levels of the Larch Street drain ----------------------------------- */

static const struct form_key book_keys[] = {
	{ "name of the job",                             "project",       NONE, SAME("Larch Street drain") },
	{ "day of the work",                             "date",          NONE, NONE },
	{ "who kept the notes and who held the rod",     "crew",          NONE, NONE },
	{ "for a practice book",                         "student",       NONE, NONE },
	{ "make and serial number of the level",         "instrument",    NONE, NONE },
	{ "how long the rod is; a longer reading is an error", "rod",     RUN("25 ft", "5 m"), NONE },
	{ "sun, wind, heat over the ground",             "weather",       NONE, NONE },
	{ "what the elevations are counted from",        "datum",         NONE, NONE },
	{ "what numbers without a mark are; ft, ft-in, in, m or mm", "unit",    UNIT, NONE },
	{ "largest misclosure that the job allows",      "tolerance",
		NONE, { { "0.02 ft", "1/4 in", "1/4 in", "5 mm", "5 mm" } } },
	{ "how it is spread; setups, distance or none",  "adjust",        SAME("setups"), NONE },
	{ "what a two-peg test gave; reported only",     "collimation",   NONE, NONE },
	{ "longest sight",                               "sight limit",   NONE, NONE },
	{ "most by which a section's backsight and foresight lengths may differ", "balance limit", NONE, NONE },
	{ "decimals shown",                              "decimals",      NONE, NONE },
	{ "what the rod stands on where a row does not say", "rod on",    NONE, NONE },
};

static const char *const book_columns[] = {
	"point", "known elevation", "backsight", "intermediate", "foresight",
	"backsight distance", "foresight distance", "chainage", "measure down", "rod on", "remarks",
};

static const struct form_row book_rows[] = {
	{ { SAME("BM-1"), { { "100.00", "100'-0\"", "100'-0\"", "100.000", "100.000 m" } },
	    { { "4.27", "51 1/4\"", "4'-3 1/4\"", "1.302", "1302" } },
	    NONE, NONE, NONE, NONE, NONE, NONE, NONE, SAME("an example; write your own first row over it") } },
};

/* -- plan -------------------------------------------------------------------------- */

static const struct form_key plan_keys[] = {
	{ "name of the drain",                           "drain",         NONE, SAME("Larch Street drain") },
	{ "what numbers without a mark are; ft, ft-in, in, m or mm", "unit",    UNIT, NONE },
	{ "size and kind of the pipe, if it is in the table", "pipe",     NONE, SAME("4 in sch 40") },
	{ "outside diameter as measured, if it is not",  "pipe outside",  NONE, NONE },
	{ "wall as measured",                            "pipe wall",     NONE, NONE },
	{ "of every leg that gives none of its own",     "slope",         NONE, RUN("1/4 in/ft", "2%") },
	{ "flattest slope that the code of the place allows", "minimum slope", NONE, NONE },
	{ "a rules file in place of a minimum",          "rules",         NONE, NONE },
	{ "thickness under the pipe, or none",           "bedding",       NONE, NONE },
	{ "least cover over the pipe",                   "cover",         NONE, NONE },
	{ "where it flows to, where the inverts do not say; first or last row", "outlet", NONE, NONE },
	{ "how far a laid pipe may be off",              "grade tolerance", NONE, NONE },
	{ "how long the rod is",                         "rod",           RUN("25 ft", "5 m"), NONE },
	{ "whose rule on trench depth",                  "jurisdiction",  NONE, NONE },
	{ "what the elevations are counted from",        "datum",         NONE, NONE },
};

static const char *const plan_columns[] = {
	"point", "chainage", "invert", "invert in", "slope", "step", "footing bottom",
	"footing away", "hub offset", "hub side", "remarks",
};

static const struct form_row plan_rows[] = {
	{ { SAME("HOUSE"), SAME("0+00"), { { "98.00", "98'-0\"", "98'-0\"", "29.870", "29.870 m" } },
	    NONE, NONE, NONE, NONE, NONE, NONE, NONE, SAME("an example; write your own rows over it") } },
	{ { SAME("MAIN"), RUN("0+48", "0+15"), { { "97.00", "97'-0\"", "97'-0\"", "29.570", "29.570 m" } }, NONE, NONE, NONE, NONE, NONE, NONE, NONE, NONE } },
};

/* -- peg --------------------------------------------------------------------------- */

static const struct form_key peg_keys[] = {
	{ "what numbers without a mark are; ft, ft-in, in, m or mm", "unit",    UNIT, NONE },
};

static const char *const peg_columns[] = { "setup", "a", "b", "distance a", "distance b" };

static const struct form_row peg_rows[] = {
	{ { SAME("midway"), { { "4.52", "54 1/4\"", "4'-6 1/4\"", "1.378", "1378" } },
	    { { "5.17", "62\"", "5'-2\"", "1.576", "1576" } }, RUN("100", "30"), RUN("100", "30") } },
	{ { SAME("near a"), { { "4.80", "57 5/8\"", "4'-9 5/8\"", "1.463", "1463" } },
	    { { "5.47", "65 5/8\"", "5'-5 5/8\"", "1.667", "1667" } }, RUN("10", "3"), RUN("210", "63") } },
};

/* -- rules ------------------------------------------------------------------------- */

static const struct form_key rules_keys[] = {
	{ "what the rule is called",                     "rule",          NONE, NONE },
	{ "where it is printed",                         "source",        NONE, NONE },
	{ "which edition",                               "edition",       NONE, NONE },
	{ "the day on which somebody read it there",     "read",          NONE, NONE },
};

static const char *const rules_columns[] = { "size up to", "minimum slope", "remarks" };

static const struct form_row rules_rows[] = {
	{ { RUN("4 in", "100 mm"), RUN("1/4 in/ft", "2%"),
	    SAME("an example, no rule; copy the numbers of your own code") } },
};

#define FORM(name, command) \
	{ #name, command, name##_keys, COUNT(name##_keys), name##_columns, \
	  COUNT(name##_columns), name##_rows, COUNT(name##_rows) }

static const struct rb_blank_form forms[] = {
	FORM(book,  "reduce"),
	FORM(plan,  "drain"),
	FORM(peg,   "peg"),
	FORM(rules, "fall --rules"),
};
/* clang-format on */

const struct rb_blank_form *rb_form_find(const char *name)
{
	for (size_t i = 0; i < COUNT(forms); i++)
		if (!strcmp(forms[i].name, name))
			return &forms[i];
	return NULL;
}

const char *rb_form_name(size_t i)
{
	return i < COUNT(forms) ? forms[i].name : NULL;
}

const char *rb_form_command(const struct rb_blank_form *form)
{
	return form->command;
}

static void write_rows(struct rb_csv *csv, const struct rb_blank_form *form,
		       enum rb_unit unit)
{
	for (size_t r = 0; r < form->rows; r++) {
		for (size_t i = 0; i < form->columns; i++)
			rb_csv_text(csv, form->row[r].cell[i].in[unit]);
		rb_csv_end_row(csv);
	}
}

/* "largest misclosure that the job allows; such as 0.02 ft" */
static void write_words(struct rb_csv *csv, const struct form_key *key, enum rb_unit unit)
{
	const char *such_as = key->such_as.in[unit];
	char words[WORDS];

	snprintf(words, sizeof words, "%s%s%s", key->words, such_as ? "; such as " : "",
		 such_as ? such_as : "");
	rb_csv_text(csv, words);
}

void rb_form_write(struct rb_sink *sink, const struct rb_blank_form *form,
		   enum rb_unit unit)
{
	struct rb_csv csv;

	rb_csv_init(&csv, sink);
	for (size_t i = 0; i < form->keys; i++) {
		write_words(&csv, &form->key[i], unit);
		rb_csv_text(&csv, form->key[i].key);
		rb_csv_text(&csv, form->key[i].value.in[unit]);
		rb_csv_end_row(&csv);
	}
	rb_sink_char(sink, '\n');
	for (size_t i = 0; i < form->columns; i++)
		rb_csv_text(&csv, form->column[i]);
	rb_csv_end_row(&csv);
	write_rows(&csv, form, unit);
}
