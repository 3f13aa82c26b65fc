/* SPDX-License-Identifier: MIT */
/* The sights that enter a misclosure, and no other, the last first. */
#include "levels.h"

#include "level/section_walk.h"

/* clang-format off */
static const struct level_case cases[] = {
	{ "of one setup, without the sight in between",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "S,,,2,\n"
	  "A,,,,4\n",
	  "A to A: 2>4\n", false },
	{ "past the sights that do not turn, from the row of each backsight",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,,,6\n"
	  "S,,,2,\n"
	  "T,,3,,\n"
	  "U,,5,,2\n"
	  "B,100,,,4\n",
	  "A to B: 6>7 5>6 2>3\n", false },
	{ "no farther than a benchmark, and of two sections with one beginning each its own",
	  "point,known elevation,bs,is,fs\n"
	  "A,100,4,,\n"
	  "T,,3,,6\n"
	  "B,98,,,3\n"
	  "U,,2,,1\n"
	  "C,100,,,2\n"
	  "C,,1,,\n"
	  "D,99,,,2\n",
	  "A to B: 3>4 2>3\n"
	  "A to C: 5>6 3>5 2>3\n"
	  "C to D: 7>8\n", false },
};
/* clang-format on */

/* BACKSIGHT>SIGHT of each setup, by their lines. */
static void say_walks(struct lines *out, const struct levels *l)
{
	for (uint32_t i = 0; i < l->sections->sections; i++) {
		const struct rb_section *section = &l->sections->section[i];
		struct rb_section_walk w = rb_section_walk(l->reduced, section);

		say(out, "%s to %s:", rb_book_point(l->book, section->from),
		    rb_book_point(l->book, section->to));
		do
			say(out, " %u>%u", rb_book_line(l->book, w.backsight_row),
			    rb_book_line(l->book, w.sight->row));
		while (rb_walk_back(&w));
		say(out, "\n");
	}
}

static void walks_hold(void **state)
{
	(void)state;
	assert_int_equal(WRONG(cases, say_walks), 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(walks_hold) };

	return cmocka_run_group_tests_name("section_walk", tests, NULL, NULL);
}
