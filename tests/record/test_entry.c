/* SPDX-License-Identifier: MIT */
/* Places of a book as lines of the record. */
#include "records.h"

struct case_row {
	const char *name, *book;
	const char *lines; /* POINT RAW ADJUSTED KNOWN BELOW | SECTION VERDICT | ROD ON |
			      REMARKS */
};

static const char *const verdicts[] = { "unjudged", "closes", "beyond", "open" };

/* clang-format off */
static const struct case_row cases[] = {
	{ "a loop: raw and adjusted side by side, the known elevation where there is one",
	  "tolerance,0.02\n"
	  "point,known elevation,bs,is,fs,remarks\n"
	  "BM-1,100.00,4.27,,,cap\n"
	  "TP-1,,5.11,,6.03,\n"
	  "MH-1,,,7.48,,rim\n"
	  "TP-2,,4.90,,3.52,\n"
	  "BM-1,,,,4.74,\n",
	  "BM-1 100.0000 100.0000 100.0000 -|BM-1 to BM-1 closes||cap\n"
	  "TP-1 98.2400 98.2433 - -|BM-1 to BM-1 closes||\n"
	  "MH-1 95.8700 95.8767 - -|BM-1 to BM-1 closes||rim\n"
	  "TP-2 99.8300 99.8367 - -|BM-1 to BM-1 closes||\n"
	  "BM-1 99.9900 100.0000 100.0000 -|BM-1 to BM-1 closes||\n" },
	{ "beyond its tolerance: raw alone",
	  "tolerance,0.02\n"
	  "point,bm,bs,fs\n"
	  "A,10,4,\n"
	  "B,12,,1\n",
	  "A 10.0000 - 10.0000 -|A to B beyond||\n"
	  "B 13.0000 - 12.0000 -|A to B beyond||\n" },
	{ "no tolerance, and an open end",
	  "point,bm,bs,fs\n"
	  "A,10,4,\n"
	  "B,,3,2\n"
	  "A,,,5\n"
	  "T,,2,1\n"
	  "E,,,1\n",
	  "A 10.0000 - 10.0000 -|A to A unjudged||\n"
	  "B 12.0000 - - -|A to A unjudged||\n"
	  "A 10.0000 - 10.0000 -|A to A unjudged||\n"
	  "T 14.0000 - - -|A to A unjudged||\n"
	  "E 15.0000 - - -|A to E open||\n" },
	{ "between two sections a benchmark belongs to the one that ends on it",
	  "tolerance,0.02\n"
	  "point,bm,bs,fs\n"
	  "A,10,4,\n"
	  "B,12,3,2\n"
	  "C,14,,1\n",
	  "A 10.0000 10.0000 10.0000 -|A to B closes||\n"
	  "B 12.0000 12.0000 12.0000 -|A to B closes||\n"
	  "C 14.0000 14.0000 14.0000 -|B to C closes||\n" },
	{ "two ends seen from one setup: each has the closure of its own section",
	  "tolerance,0.02\n"
	  "point,bm,bs,is,fs\n"
	  "BM-1,100,5,,\n"
	  "BM-2,102,,,3\n"
	  "S,,,4,\n"
	  "BM-3,103,,,2.5\n",
	  "BM-1 100.0000 100.0000 100.0000 -|BM-1 to BM-2 closes||\n"
	  "BM-2 102.0000 102.0000 102.0000 -|BM-1 to BM-2 closes||\n"
	  "S 101.0000 101.0000 - -|BM-1 to BM-2 closes||\n"
	  "BM-3 102.5000 - 103.0000 -|BM-1 to BM-3 beyond||\n" },
	{ "an end that nothing closes, and its backsight on a row of its own",
	  "tolerance,0.02\n"
	  "point,bm,bs,is,fs\n"
	  "BM-1,100,5,,\n"
	  "BM-2,102,,,3.01\n"
	  "T,,,,2.5\n"
	  "S,,,4,\n"
	  "T,,4,,\n"
	  "P,,,3,\n",
	  "BM-1 100.0000 100.0000 100.0000 -|BM-1 to BM-2 closes||\n"
	  "BM-2 101.9900 102.0000 102.0000 -|BM-1 to BM-2 closes||\n"
	  "T 102.5000 102.5100 - -|BM-1 to T open||\n"
	  "S 101.0000 101.0100 - -|BM-1 to BM-2 closes||\n"
	  "T 102.5000 102.5100 - -|BM-1 to T open||\n"
	  "P 103.5000 103.5100 - -| open||\n" },
	{ "the key for the rod, a tape let down, and both remarks of a turning point",
	  "rod on,rim\n"
	  "point,bm,bs,is,fs,rod on,dip,remarks\n"
	  "A,10,4,,,,,\n"
	  "M,,,6,,,2.5,\n"
	  "G,,,5,,ground,,\n"
	  "T,,,,3,,,spike\n"
	  "T,,2,,,,,in maple\n"
	  "A,,,,3,,,\n",
	  "A 10.0000 - 10.0000 -|A to A unjudged|rim|\n"
	  "M 8.0000 - - 5.5000|A to A unjudged|rim|\n"
	  "G 9.0000 - - -|A to A unjudged|ground|\n"
	  "T 11.0000 - - -|A to A unjudged|rim|spike; in maple\n"
	  "A 10.0000 - 10.0000 -|A to A unjudged|rim|\n" },
	{ "the second row of a turning point speaks before the key",
	  "rod on,invert\n"
	  "point,bm,bs,fs,rod on\n"
	  "A,10,4,,\n"
	  "T,,,3,\n"
	  "T,,2,,hub\n"
	  "A,,,3,\n",
	  "A 10.0000 - 10.0000 -|A to A unjudged|invert|\n"
	  "T 11.0000 - - -|A to A unjudged|hub|\n"
	  "A 10.0000 - 10.0000 -|A to A unjudged|invert|\n" },
};
/* clang-format on */

static void tell_entries(struct told *out, const struct records *r)
{
	for (uint32_t i = 0; i < r->ledger->entries; i++) {
		const struct rb_entry *e = &r->ledger->entry[i];

		tell(out, "%s", e->point);
		tell_length(out, " ", e->elevation);
		tell_length(out, " ", e->adjusted);
		tell_length(out, " ", e->known);
		tell_length(out, " ", e->below);
		tell(out, "|%s %s|%s|%s\n", e->section, verdicts[e->verdict],
		     rb_rod_on_name(e->rod_on), e->remarks);
	}
}

static void cases_hold(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct book_text books[] = { { "a.csv", cases[i].book, NULL },
						   { NULL, NULL, NULL } };
		struct told out = { .used = 0 };
		struct records r;

		records_of(&r, NULL, books);
		tell_entries(&out, &r);
		if (strcmp(out.text, cases[i].lines) != 0) {
			print_error("%s: got\n%s", cases[i].name, out.text);
			wrong++;
		}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

/* -- the unit in which a known elevation was written -- */

static const struct {
	const char *unit, *known;
	enum rb_unit want;
} units[] = {
	{ "ft", "97.97", RB_FEET },      { "ft", "97'-11 5/8\"", RB_FEET_INCHES },
	{ "ft", "29.861 m", RB_METRES }, { "ft-in", "97'-11 5/8\"", RB_FEET_INCHES },
	{ "m", "29.861", RB_METRES },    { "mm", "29861", RB_MILLIMETRES },
};

static void units_are_known(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof units / sizeof *units; i++) {
		char text[200];
		const struct book_text books[] = { { "a.csv", text, NULL },
						   { NULL, NULL, NULL } };
		struct records r;

		snprintf(text, sizeof text,
			 "unit,%s\npoint,bm,bs,fs\nA,%s,1 m,\nA,,,1 m\n", units[i].unit,
			 units[i].known);
		records_of(&r, NULL, books);
		if (!r.whole || r.ledger->entry[0].written != units[i].want) {
			print_error("%s in %s\n", units[i].known, units[i].unit);
			wrong++;
		}
		rb_arena_free(r.arena);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(units_are_known),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
