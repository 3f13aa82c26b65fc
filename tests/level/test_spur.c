/* SPDX-License-Identifier: MIT */
/* test_spur.c - what hangs off the chain, and the note that nothing checks it: rule 8. */
#include "levels.h"

#define HEAD "tolerance,0.02\npoint,known elevation,bs,is,fs\n"

/* POINT on which it stands, LINE of its backsight, then LINE of each sight; the line of
 * the closing sight where the order decides. */
static void say_spurs(struct lines *out, const struct levels *l)
{
	for (uint32_t i = 0; l->sections && i < l->sections->spurs; i++) {
		const struct rb_spur *spur = &l->sections->spur[i];
		const struct rb_shot *on =
			&l->reduced->shot[l->reduced->setup[spur->setup].shot];

		say(out, "%s %u:", rb_book_typed(l->book, on->row),
		    rb_book_line(l->book, on->backsight_row));
		for (uint32_t s = 0; s < spur->sights; s++)
			say(out, " %u",
			    rb_book_line(
				    l->book,
				    l->reduced
					    ->shot[l->sections
							   ->spur_shot[spur->first + s]]
					    .row));
		if (spur->closing != RB_NO_SHOT)
			say(out, " before %u",
			    rb_book_line(l->book, l->reduced->shot[spur->closing].row));
		say(out, "\n");
	}
	say_findings(out, l);
}

/* clang-format off */
static const struct level_case cases[] = {
	{ "none in a loop",
	  HEAD
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,1\n",
	  "", false },
	{ "a spur on a section that closes",
	  HEAD
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,1\n"
	  "T,,2,,\n"
	  "S,,,1.5,\n"
	  "R,,,,1.6\n",
	  "T 6: 7 8\n"
	  "0 tenths-only\n"
	  "6 spur\n", false },
	{ "two setups long, its rows among those of another",
	  HEAD
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,1\n"
	  "T,,2,,\n"
	  "S,,,,1.5\n"
	  "T,,2.5,,\n"
	  "U,,,,1.7\n"
	  "S,,1,,\n"
	  "V,,,1.2,\n",
	  "T 6: 7 11\n"
	  "T 8: 9\n"
	  "0 tenths-only\n"
	  "6 spur\n"
	  "8 spur\n", false },
	{ "it hangs on a sight before the one that closes",
	  HEAD
	  "A,100,4,,\n"
	  "T,,,,3\n"
	  "B,102,,,2\n"
	  "T,,5,,\n"
	  "S,,,,1\n",
	  "T 6: 7 before 5\n"
	  "6 spur\n", false },
	{ "others are sighted between the two",
	  HEAD
	  "A,100,4,,\n"
	  "T,,,,3\n"
	  "U,,,2.5,\n"
	  "B,102,,,2\n"
	  "V,,,2.5,\n"
	  "T,,5,,\n"
	  "S,,,,1\n",
	  "T 8: 9 before 6\n"
	  "0 tenths-only\n"
	  "8 spur\n", false },
	{ "behind it the run goes on, and is open",
	  HEAD
	  "A,100,4,,\n"
	  "B,102,,,2\n"
	  "T,,,,3\n"
	  "T,,5,,\n"
	  "S,,,,1\n",
	  "7 open-section\n", false },
	{ "one that hangs there later does so in either order",
	  HEAD
	  "A,100,4,,\n"
	  "T,,,,3\n"
	  "B,102,5,,2\n"
	  "A,,,,7\n"
	  "T,,5,,\n"
	  "S,,,,1\n",
	  "T 7: 8\n"
	  "7 spur\n", false },
	{ "where two open chains part, the earlier",
	  HEAD
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "E,,,,1\n"
	  "T,,2,,\n"
	  "F,,,,1\n",
	  "T 4: 5\n"
	  "4 spur\n"
	  "7 open-section\n", false },
	{ "side shots from the end of an open run are none",
	  HEAD
	  "A,100,4,,\n"
	  "T,,3,,6.01\n"
	  "S,,,1.55,\n",
	  "4 open-section\n", false },
	{ "a last backsight from which nothing was sighted is none",
	  HEAD
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "A,,,,1\n"
	  "T,,2,,\n",
	  "", false },
};
/* clang-format on */

static void cases_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_spurs), 0);
}

/* Past twelve points the note says that there are others; unnamed ones have a word. */
static void names_its_points(void **state)
{
	static const char many[] = HEAD "A,100,4,,\nT,,3,,6\nA,,,,1\nT,,2,,\n"
					"p1,,,1,\n,,,1,\np3,,,1,\np4,,,1,\np5,,,1,\n"
					"p6,,,1,\np7,,,1,\np8,,,1,\np9,,,1,\np10,,,1,\n"
					"p11,,,1,\np12,,,1,\np13,,,1,\n";
	struct levels l = levels_of(many, false);

	(void)state;
	assert_int_equal(l.findings.count, 1);
	assert_string_equal(
		l.findings.item[0]->argument[1].text,
		"p1, a point without a name, p3, p4, p5, p6, p7, p8, p9, p10, "
		"p11, p12 and others");
	rb_arena_free(l.arena);
}

/* On which line the sight stands on which it hangs, and before which closing one. */
static void tells_before_which_sight_it_hangs(void **state)
{
	struct levels l = levels_of(HEAD "A,100,4,,\nT,,,,3\nB,102,,,2\nT,,5,,\n"
					 "S,,,,1\n",
				    false);

	(void)state;
	assert_int_equal(l.findings.item[0]->code, RB_CODE_SPUR);
	assert_string_equal(l.findings.item[0]->argument[1].text, "S");
	assert_int_equal(l.findings.item[0]->argument[2].kind, RB_LINE);
	assert_int_equal(l.findings.item[0]->argument[2].count, 4);
	assert_string_equal(l.findings.item[0]->argument[3].text, "B");
	rb_arena_free(l.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cases_hold),
		cmocka_unit_test(names_its_points),
		cmocka_unit_test(tells_before_which_sight_it_hangs),
	};

	return cmocka_run_group_tests_name("spur", tests, NULL, NULL);
}
