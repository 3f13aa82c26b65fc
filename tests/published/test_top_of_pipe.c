/* SPDX-License-Identifier: MIT */
/*
 * Tops of pipe and sight uprights.
 *
 * Source: two problems read on a homework page.  Invert 5395.00 at 0+00, 2 % down for 600
 * ft, outside diameter 1 ft, wall 1 in: printed tops 5395.917, 5393.917 ... 5383.917. One
 * setup: benchmark 100.00 reads 0.39; uprights P 0.16, Q 0.35, R 1.17; invert at P reads
 * 2.84; 1 in 150; PQ 27.12, PR 54.11: inverts 97.5500, 97.3692, 97.1893 and upright tops
 * 2.6800, 2.6708, 2.0307 above them (data read, values computed).
 */
#include "../drain/job.h"

#include "drain/cut_sheet.h"

static void tops_every_hundred_feet(void **state)
{
	static const char *const printed[] = { "5395.917", "5393.917", "5391.917",
					       "5389.917", "5387.917", "5385.917",
					       "5383.917" };
	struct job job =
		job_of("pipe outside,1 ft\npipe wall,1 in\noutlet,last\nslope,2%\n"
		       "station,invert\n0+00,5395.00\n6+00,\n",
		       FT(100, 0));
	struct rb_cut_sheet *sheet = rb_cut_sheet(job.arena, &job.findings, &job.findings,
						  job.inverts, NULL, NONE);

	(void)state;
	assert_int_equal(job.inverts->stations, 7);
	for (uint32_t i = 0; i < 7; i++) {
		char text[RB_LENGTH_TEXT];

		rb_length_format(text, sheet->cut[i].top_of_pipe,
				 (struct rb_style){ RB_FEET, 3, 0, false });
		assert_string_equal(text, printed[i]);
	}
	job_end(&job);
}

static void assert_shown(rb_length a, const char *printed)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, a, (struct rb_style){ RB_FEET, 4, 0, false });
	assert_string_equal(text, printed);
}

static void uprights(void **state)
{
	struct job job = job_of("outlet,last\nslope,1 in 150\npoint,chainage,invert\n"
				"P,0,97.55\nQ,27.12,\nR,54.11,\n",
				NONE);
	struct rb_spots *tops =
		job_book(job.arena, &job.findings,
			 "point,known elevation,backsight,intermediate,rod on\n"
			 "TBM,100.00,0.39,,\nP,,,0.16,hub\nQ,,,0.35,hub\nR,,,1.17,hub\n"
			 "P,,,2.84,invert\n");
	struct rb_cut_sheet *sheet = rb_cut_sheet(job.arena, &job.findings, &job.findings,
						  job.inverts, tops, NONE);

	(void)state;
	assert_non_null(sheet);
	assert_int_equal(tops->spot[tops->count - 1].elevation.nm, FT(97, 5500).nm);
	assert_shown(sheet->cut[0].invert, "97.5500");
	assert_shown(sheet->cut[1].invert, "97.3692");
	assert_shown(sheet->cut[2].invert, "97.1893");
	assert_shown(sheet->cut[0].hub_cut, "2.6800");
	assert_shown(sheet->cut[1].hub_cut, "2.6708");
	assert_shown(sheet->cut[2].hub_cut, "2.0307");
	job_end(&job);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(tops_every_hundred_feet),
		cmocka_unit_test(uprights),
	};

	return cmocka_run_group_tests_name("top of pipe", tests, NULL, NULL);
}
