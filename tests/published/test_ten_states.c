/* SPDX-License-Identifier: MIT */
/*
 * Minimum slopes of sewers for 2.0 ft/s flowing full, n = 0.013.
 *
 * Source: Recommended Standards for Wastewater Facilities (GLUMRB) 33.41, as adopted in
 * Purcell OK Code 12-488 (read; 10 in from memory).  Velocities and slopes for 2.0 ft/s
 * computed.  Purcell prints 0.20 for 10 in, which gives 1.797 ft/s and breaks the rule
 * beside it: a misprint.
 */
#include "../drain/job.h"

#include "drain/flow.h"

/* clang-format off */
static const struct { int inches, slope; const char *velocity, *scour; } table[] = { /* hundredths of a percent */
	{  8, 40, "2.189", "0.3338" }, { 10, 28, "2.126", "0.2479" }, { 12, 22, "2.128", "0.1944" },
	{ 14, 17, "2.073", "0.1583" }, { 15, 15, "2.039", "0.1444" }, { 16, 14, "2.056", "0.1325" },
	{ 18, 12, "2.059", "0.1132" }, { 21, 10, "2.083", "0.0922" }, { 24,  8, "2.037", "0.0771" },
};
/* clang-format on */

static struct rb_conduit sewer(int inches, int slope)
{
	return (struct rb_conduit){ { inches * RB_INCH }, { { slope }, { 10000 } }, 130 };
}

static void velocities(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
		struct rb_conduit c = sewer(table[i].inches, table[i].slope);
		rb_length velocity = rb_flow_full(&c).velocity;
		char shown[RB_LENGTH_TEXT], scour[RB_SLOPE_TEXT];

		rb_length_format(shown, velocity,
				 (struct rb_style){ RB_FEET, 3, 0, false });
		rb_slope_number(
			scour,
			rb_flow_slope(c.inside, 130, (rb_length){ RB_SCOUR_VELOCITY }),
			RB_PERCENT, 4);
		if (!strcmp(shown, table[i].velocity) && !strcmp(scour, table[i].scour) &&
		    velocity.nm >= RB_SCOUR_VELOCITY)
			continue;
		print_error("%d in: %s ft/s, %s %%\n", table[i].inches, shown, scour);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void the_misprint_breaks_its_own_rule(void **state)
{
	struct rb_conduit c = sewer(10, 20);

	(void)state;
	assert_in_range(rb_flow_full(&c).velocity.nm, 1796 * RB_FOOT / 1000,
			1798 * RB_FOOT / 1000);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(velocities),
		cmocka_unit_test(the_misprint_breaks_its_own_rule),
	};

	return cmocka_run_group_tests_name("Ten States slopes", tests, NULL, NULL);
}
