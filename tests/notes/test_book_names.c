/* SPDX-License-Identifier: MIT */
/* test_book_names.c - how points are called, and chainages. */
#include "notes.h"

#define HEAD                      "point,known elevation,backsight,intermediate,foresight\n"
#define FT(feet, ten_thousandths) ((feet)*RB_FOOT + (ten_thousandths) * (RB_FOOT / 10000))

/* Rows as "typed=point number", and the chainage in feet where there is one. */
static const char *names_as_text(char text[static ROOM], const struct rb_book *book)
{
	text[0] = '\0';
	for (uint32_t i = 0; i < book->rows; i++) {
		rb_length at = rb_book_value(book, RB_CHAINAGE, i);
		char feet[RB_LENGTH_TEXT];

		add_text(text, "%s%s=", i ? " " : "", rb_book_typed(book, i));
		if (book->row[i].point == RB_NO_POINT)
			add_text(text, "-");
		else
			add_text(text, "%s", rb_book_point(book, book->row[i].point));
		if (rb_length_given(at))
			add_text(text, "@%s", in_unit(feet, at, RB_FEET, 1));
	}
	return text;
}

/* clang-format off */
static const struct name_case {
	const char *what, *names, *text, *findings;
} name_cases[] = {
	{ "one point",             "TP-1\ntp-1\n TP\u20131 \n",    "TP-1=TP-1 tp-1=TP-1 TP\u20131=TP-1", "" },
	{ "two points",            "TP-1\nTP-2\n",                "TP-1=TP-1 TP-2=TP-2", "" },
	{ "short stations",        "0+00\n+10\n+50\n1+00\n+25\n", "0+00=0+00@0.0 +10=0+10@10.0 +50=0+50@50.0 1+00=1+00@100.0 +25=1+25@125.0", "" },
	{ "as a sheet writes them", "0+00\n10\n50\n1+00\n25\n",   "0+00=0+00@0.0 10=0+10@10.0 50=0+50@50.0 1+00=1+00@100.0 25=1+25@125.0", "" },
	{ "thousands",             "0+050\n1+000\n+250\n",        "0+050=0+050@50.0 1+000=1+000@1000.0 +250=1+250@1250.0", "" },
	{ "with decimals",         "1+50\n+75.5\n",               "1+50=1+50@150.0 +75.5=1+75.5@175.5", "" },
	{ "the same station again", "0+00\n+10\n0+10\n",          "0+00=0+00@0.0 +10=0+10@10.0 0+10=0+10@10.0", "" },
	{ "numbers alone",         "10\n20\n",                    "10=10 20=20", "" },
	{ "not two digits",        "0+00\n5\n100\n",              "0+00=0+00@0.0 5=5 100=100", "" },
	{ "a point named #1",      "#1\n#2\n",                    "#1=#1 #2=#2", "" },
	{ "guarded by our CSV",    "'-BM1\n'=MH\n'@5\n",          "-BM1=-BM1 =MH==MH @5=@5", "" },
	{ "apostrophe kept",       "'TP\n",                       "'TP='TP", "" },
	{ "nearly one",            "TP-1\nTP1\n",                 "TP-1=TP-1 TP1=TP1", "near-name@4:0" },
	{ "known with words",      "BM nail\n",                   "BM nail=BM nail", "near-name@3:0" },
	{ "not known, with words", "TP-1\nTP-1 spike\n",          "TP-1=TP-1 TP-1 spike=TP-1 spike", "" },
	{ "ground comes again",    "ground\nG round\n",           "ground=ground G round=G round", "near-name@4:0" },
	{ "mangled: exponent",     "1.00E+05\n",                  "1.00E+05=1.00E+05", "mangled-name@3:0" },
	{ "mangled: comma",        "\"1,00E+05\"\n",              "1,00E+05=1,00E+05", "mangled-name@3:0" },
	{ "mangled: letters",      "Caf\u00C3\u00A9\nCaf\u00C3\u00A9\n", "Caf\u00C3\u00A9=Caf\u00C3\u00A9 Caf\u00C3\u00A9=Caf\u00C3\u00A9", "mangled-letters@3:0" },
	{ "mangled: error",        "#NAME?\n",                    "#NAME?=#NAME?", "mangled-name@3:0" },
	{ "mangled: date",         "2026-05-03\n",                "2026-05-03=2026-05-03", "mangled-name@3:0" },
	{ "not mangled",           "MH 1-2\n3A\nE5\n5-3\n",       "MH 1-2=MH 1-2 3A=3A E5=E5 5-3=5-3", "" },
};
/* clang-format on */

static void names(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof name_cases / sizeof *name_cases; i++) {
		const struct name_case *c = &name_cases[i];
		char csv[ROOM] = HEAD "BM,100,4.27,,\n", text[ROOM];
		struct notes notes;
		const char *end;

		for (const char *name = c->names; *name; name = end + 1) {
			end = strchr(name, '\n');
			add_text(csv, "%.*s,,,5.00,\n", (int)(end - name), name);
		}
		notes = notes_of(csv);
		wrong += differs(c->what, findings_as_text(text, &notes.findings),
				 c->findings);
		if (!notes.book) {
			wrong++;
			notes_end(&notes);
			continue;
		}
		names_as_text(text, notes.book);
		wrong += differs(c->what, strncmp(text, "BM=BM ", 6) ? text : text + 6,
				 c->text);
		notes_end(&notes);
	}
	assert_int_equal(wrong, 0);
}

/* In a column of its own a bare 10 is 10; only +10 takes the hundreds.  Behind 2+00 that
 * is told. */
static void chainages(void **state)
{
	static const struct {
		const char *unit, *chainage;
		int64_t nm;
		const char *findings;
	} cases[] = {
		{ "ft", "50", FT(50, 0), "lost-plus@4:3" },
		{ "ft", "10", FT(10, 0), "lost-plus@4:3" },
		{ "ft", "5.5", FT(5, 5000), "lost-plus@4:3" },
		{ "ft", "99", FT(99, 0), "lost-plus@4:3" },
		{ "ft", "100", FT(100, 0), "" },
		{ "ft", "10 ft", FT(10, 0), "" },
		{ "ft", "0+10", FT(10, 0), "" },
		{ "ft", "+10", FT(210, 0), "" },
		{ "ft", "1+25.5", FT(125, 5000), "" },
		{ "ft", "1+250", FT(1250, 0), "" },
		{ "ft", "15.2 m", 15200 * RB_MILLIMETRE, "" },
		{ "in", "50", FT(50, 0), "lost-plus@4:3" },
		{ "mm", "15.2", 15200 * RB_MILLIMETRE, "lost-plus@4:3" },
		{ "m", "0+050", 50 * RB_METRE, "" },
		{ "ft", "here", RB_NOT_GIVEN_NM, "bad-chainage@4:3" },
		{ "ft", "5-Mar", RB_NOT_GIVEN_NM, "chainage-changed@4:3" },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char csv[ROOM] = "", text[ROOM];
		struct notes notes;

		add_text(csv,
			 "unit,%s\npoint,known elevation,bs,chainage\nBM,1 m,1 m,2+00\n"
			 "A,,,%s\n",
			 cases[i].unit, cases[i].chainage);
		notes = notes_of(csv);
		wrong += differs(cases[i].chainage,
				 findings_as_text(text, &notes.findings),
				 cases[i].findings);
		if (notes.book &&
		    rb_book_value(notes.book, RB_CHAINAGE, 1).nm != cases[i].nm) {
			print_error("%s\n", cases[i].chainage);
			wrong++;
		}
		notes_end(&notes);
	}
	assert_int_equal(wrong, 0);
}

/* A sheet makes 10 of +10: what was read and what may have been typed are told wherever
 * the two are not the same. */
static void pluses_lost(void **state)
{
	static const struct {
		const char *chainages, *told; /* of each: 'typed' behind, meant, read */
	} cases[] = {
		{ "1+00\n10\n20\n", "10 1+00 1+10 0+10 20 1+00 1+20 0+20" },
		{ "1+50\n+60\n5\n", "5 1+60 1+05 0+05" },
		{ "12+25.5\n7.25\n", "7.25 12+25.5 12+07.25 0+07.25" },
		{ "1+000\n20\n1000\n", "20 1+000 1+020 0+020" },
		{ "1+000\n999\n", "999 1+000 1+999 0+999" },
		{ "1+00\n2+00\n\n0\n", "0 2+00 2+00 0+00" },
		{ "0+50\n10\n20\n", "" }, /* either way 10 is 0+10 */
		{ "10\n20\n1+00\n", "" },
		{ "1+00\n110\n120.5\n", "" },
		{ "1+00\n10'\n", "" },
	};
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char csv[ROOM] = "point,known elevation,bs,is,chainage\nBM,100,4,,\n";
		char text[ROOM] = "";
		struct notes notes;
		const char *end;

		for (const char *c = cases[i].chainages; *c; c = end + 1) {
			end = strchr(c, '\n');
			add_text(csv, "A,,,5.00,%.*s\n", (int)(end - c), c);
		}
		notes = notes_of(csv);
		for (size_t f = 0; f < notes.findings.count; f++)
			for (int a = 0; a < RB_ARGUMENTS &&
					notes.findings.item[f]->code == RB_CODE_LOST_PLUS;
			     a++)
				add_text(text, "%s%s", *text ? " " : "",
					 notes.findings.item[f]->argument[a].text);
		wrong += differs(cases[i].chainages, text, cases[i].told);
		notes_end(&notes);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(names),
		cmocka_unit_test(chainages),
		cmocka_unit_test(pluses_lost),
	};

	return cmocka_run_group_tests_name("names of a book", tests, NULL, NULL);
}
