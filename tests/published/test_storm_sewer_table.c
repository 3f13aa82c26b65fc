/* SPDX-License-Identifier: MIT */
/*
 * Storm sewers flowing full.
 *
 * Source: Engineering Hydrology (San Diego State University, online text), table 4-2
 * (read). n is not printed there; 0.013 fits within the reading of a chart: velocity 5 %,
 * capacity 6 % (worst 4.7 and 5.3 %).
 */
#include "../drain/job.h"

#include <stdlib.h>

#include "drain/flow.h"

#define CUBIC_FOOT INT64_C(28316847) /* cubic millimetres */

/* clang-format off */
static const struct { int inches, slope, discharge, velocity; } table[] = {
	/* in, hundredths of a percent, tenths of a cubic foot a second, tenths of a foot */
	{ 12,  85,  33, 40 }, { 18,  75,  92, 51 }, { 24,  45, 152, 48 },
	{ 15, 100,  64, 51 }, { 24,  60, 175, 55 }, { 36,  30, 370, 51 },
	{ 12,  90,  32, 41 }, { 42,  24, 500, 52 }, { 42,  30, 560, 57 },
};
/* clang-format on */

static void full_flow(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
		const struct rb_conduit c = { { table[i].inches * RB_INCH },
					      { { table[i].slope }, { 10000 } },
					      130 };
		struct rb_flow flow = rb_flow_full(&c);
		int64_t velocity = table[i].velocity * RB_FOOT / 10;
		int64_t discharge = table[i].discharge * CUBIC_FOOT / 10;

		if (llabs(flow.velocity.nm - velocity) * 20 <= velocity &&
		    llabs(flow.discharge - discharge) * 100 <= 6 * discharge)
			continue;
		print_error("row %zu\n", i);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(full_flow) };

	return cmocka_run_group_tests_name("storm sewer table", tests, NULL, NULL);
}
