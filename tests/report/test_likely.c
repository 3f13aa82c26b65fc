/* SPDX-License-Identifier: MIT */
/* Likely readings, in the words of one who would have typed them. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "report/likely.h"

#define FT(thousandths) ((thousandths) * (RB_FOOT / 1000))
#define IN(sixteenths)  ((sixteenths) * (RB_INCH / 16))

/* clang-format off */
static const struct likely_case {
	int64_t nm, first;
	int rank;
	bool marked;
	enum rb_unit unit;
	const char *text;
} cases[] = {
	{ IN(16 * 63),  IN(16 * 63), 0, true,  RB_FEET, "for 5 ft 3 in write 5'-3\"" },
	{ FT(5300),     IN(16 * 63), 2, true,  RB_FEET, "for 5.3 ft write 5.3" },
	{ IN(16 * 41),  IN(16 * 63), 1, true,  RB_FEET, "for 3 ft 5 in write 3'-5\"" }, /* mirror */
	{ FT(5500),     IN(16 * 65), 1, true,  RB_FEET, "for 5.5 ft write 5.5" }, /* 5'-5" or 5.5 */
	{ IN(6),        IN(16 * 44), 2, true,  RB_FEET, "for 3/8 in write 0'-0 3/8\"" },
	{ FT(5290),     FT(5290),    0, false, RB_FEET, "for 5.29 ft write 5.29" },
	{ FT(5250),     FT(5250),    0, false, RB_FEET, "for 5.25 ft write 5.25" },
	{ IN(16 * 63),  FT(5300),    1, false, RB_FEET, "for 5 ft 3 in write 5'-3\"" },
	{ FT(1500),     FT(15000),   1, false, RB_FEET, "for 1.5 ft write 1.5" }, /* 15.00 */
	{ FT(500),      FT(5000),    1, false, RB_FEET, "for 0.5 ft write 0.5" },
	{ FT(15000),    FT(1500),    1, false, RB_FEET, "for 15 ft write 15" },
	{ FT(5100),     IN(16 * 61), 1, true,  RB_FEET_INCHES, "for 5.1 ft write 5.1 ft" },
	{ IN(16 * 70),  IN(16 * 61), 2, true,  RB_FEET_INCHES, "for 5 ft 10 in write 5'-10\"" },
	{ IN(16 * 6),   FT(6000),    1, true,  RB_FEET_INCHES, "for 6 in write 0'-6\"" },
	{ IN(16 * 63 + 8), IN(16 * 63 + 8), 0, true, RB_INCHES, "for 63 1/2 in write 63 1/2\"" },
	{ 1613000000,   1613000000,  0, false, RB_METRES, "for 1.613 m write 1.613" },
	{ 1613000000,   1613000000,  0, false, RB_MILLIMETRES, "for 1613 mm write 1613" },
	{ -IN(16 * 63 + 8), -IN(16 * 63 + 8), 0, true, RB_FEET, "for -5 ft 3 1/2 in write -5'-3 1/2\"" },
};
/* clang-format on */

static void says_what_and_how(void **state)
{
	char text[RB_READING_WORDS];
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		const struct likely_case *c = &cases[i];
		struct rb_argument candidate =
			rb_rod_reading(rb_length_of(c->nm), c->unit);
		struct rb_argument first =
			rb_rod_reading(rb_length_of(c->first), c->unit);

		rb_likely(text, &candidate, &first, c->rank, c->marked);
		if (!strcmp(text, c->text))
			continue;
		print_error("row %zu: got %s, want %s\n", i, text, c->text);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(says_what_and_how),
	};

	return cmocka_run_group_tests_name("likely", tests, NULL, NULL);
}
