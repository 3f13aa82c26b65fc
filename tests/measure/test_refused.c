/* SPDX-License-Identifier: MIT */
/* test_refused.c - what is refused has no value, and nothing is noted of how it was
 * written: it may have been meant, and is only offered. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <string.h>

#include "measure/reading.h"
#include "written.h"

/* clang-format off */
static const struct {
	const char *text;
	enum rb_unit unit;
} refused[] = {
	{ "'-1.5'",       M },  /* 1.5 ft, or -1.5 in quotes? */
	{ "'1.5'",        M },
	{ "-5'-13\"",     FT },
	{ "inv 5'-3 1/3\" x", FT },
	{ "-99.27 x",     FT },
	{ "5.2916670 ' x", FT },
	{ "(1.O2)",       M },
};
/* clang-format on */

static void nothing_is_noted_of_it(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) {
		const struct rb_reading_rules rules = { refused[i].unit, RB_OF_ROD, false,
							rb_length_of(25 * RB_FOOT) };
		struct rb_reading r = rb_reading_parse(refused[i].text,
						       strlen(refused[i].text), &rules);

		if (r.refusal != RB_READ && r.value.nm == 0 && !r.inverted &&
		    !r.odd_fraction && !r.sixtyfourth)
			continue;
		print_error("%s: refusal %d, %lld nm\n", refused[i].text, (int)r.refusal,
			    (long long)r.value.nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(nothing_is_noted_of_it) };

	return cmocka_run_group_tests_name("refused", tests, NULL, NULL);
}
