/* SPDX-License-Identifier: MIT */
/*
 * Inverts at even stations.
 *
 * Source: problems of Ghilani and Wolf, Elementary Surveying, as quoted on a homework
 * page (problem read, values computed): 10+00 to 13+20 at -1 % from 326.32; 10+00 to
 * 12+50 at 0.50 % from 83.64, whose sign is ambiguous, so both are given.
 */
#include "../drain/job.h"

struct table {
	const char *text;
	int64_t interval; /* feet */
	int64_t hundredths[8];
	uint32_t count;
};

/* clang-format off */
static const struct table tables[] = {
	{ "outlet,last\nslope,1%\nstation,invert\n10+00,326.32\n13+20,\n", 50,
	  { 32632, 32582, 32532, 32482, 32432, 32382, 32332, 32312 }, 8 },
	{ "outlet,last\nslope,0.50%\nstation,invert\n10+00,83.64\n12+50,\n", 50,
	  { 8364, 8339, 8314, 8289, 8264, 8239 }, 6 },
	{ "outlet,last\nslope,-0.50%\nstation,invert\n10+00,83.64\n12+50,\n", 50,
	  { 8364, 8389, 8414, 8439, 8464, 8489 }, 6 },
};
/* clang-format on */

static void even_stations(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
		struct job job = job_of(tables[i].text, FT(tables[i].interval, 0));

		assert_non_null(job.inverts);
		assert_int_equal(job.inverts->stations, tables[i].count);
		for (uint32_t k = 0; k < tables[i].count; k++) {
			rb_length got = rb_exact_round(job.inverts->station[k].out);

			if (got.nm == tables[i].hundredths[k] * RB_FOOT / 100)
				continue;
			print_error("table %zu, %s: %lld\n", i,
				    job.inverts->station[k].name, (long long)got.nm);
			wrong++;
		}
		job_end(&job);
	}
	assert_int_equal(wrong, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = { cmocka_unit_test(even_stations) };

	return cmocka_run_group_tests_name("invert tables", tests, NULL, NULL);
}
