/* SPDX-License-Identifier: MIT */
/*
 * A sewer staked from hubs.
 *
 * Source: NAVEDTRA 14070 Engineering Aid 1 (April 1995), ch. 10, figs 10-19 and 10-20
 * (read): invert out at 9+00 122.87, gradient 2.18 %, 8+50 half a station on: 121.78. Hub
 * 126.94 at 9+00 is marked C 4.07, hub 127.33 at 8+50 C 5.55.  String 10 ft above the
 * invert: board 4.45 above the hub at 8+50; where the string stands 8.5 above the
 * bottom, 1.5 ft are left to dig.  The board at 9+00 is computed.
 */
#include "../drain/job.h"

#include "drain/cut_sheet.h"
#include "drain/dig.h"

static void cuts_and_boards(void **state)
{
	struct job job = job_of(
		"outlet,last\nslope,2.18%\nstation,invert\n9+00,122.87\n8+50,\n", NONE);
	struct rb_spots *hubs =
		job_book(job.arena, &job.findings,
			 "rod on,hub\nstation,known elevation,backsight,intermediate\n"
			 "BM,125.00,5.00,\n9+00,,,3.06\n8+50,,,2.67\n");
	struct rb_cut_sheet *sheet = rb_cut_sheet(job.arena, &job.findings, &job.findings,
						  job.inverts, hubs, FT(10, 0));

	(void)state;
	assert_non_null(sheet);
	assert_int_equal(job_invert(&job, "8+50").nm, FT(121, 7800).nm);
	assert_int_equal(sheet->cut[0].hub.nm, FT(126, 9400).nm);
	assert_int_equal(sheet->cut[0].hub_cut.nm, FT(4, 700).nm);
	assert_int_equal(sheet->cut[1].hub_cut.nm, FT(5, 5500).nm);
	assert_int_equal(sheet->cut[1].board.nm, FT(4, 4500).nm);
	assert_int_equal(sheet->cut[0].board.nm, FT(5, 9300).nm); /* computed */
	job_end(&job);
}

/* The string is the hub and the pole the rod: 10 ft wanted, 8.5 read. */
static void depth_below_the_string(void **state)
{
	struct rb_dig dig =
		rb_dig(rb_exact_of(rb_dig_wanted_from_hub((rb_length){ 0 }, FT(10, 0))),
		       FT(8, 5000), rb_dig_within(RB_FEET), true);

	(void)state;
	assert_int_equal(dig.answer, RB_DIG);
	assert_int_equal(dig.difference.nm, FT(1, 5000).nm);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(cuts_and_boards),
		cmocka_unit_test(depth_below_the_string),
	};

	return cmocka_run_group_tests_name("sewer stakeout", tests, NULL, NULL);
}
