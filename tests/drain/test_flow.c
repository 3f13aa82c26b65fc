/* SPDX-License-Identifier: MIT */
/* Part-full ratios, depths, and what the formula must do whatever the numbers. */
#include "job.h"

#include <stdlib.h>

#include "drain/flow.h"

static struct rb_conduit conduit(int64_t inches, int64_t fall, int64_t run, int roughness)
{
	return (struct rb_conduit){ { inches * RB_INCH },
				    { { fall }, { run } },
				    roughness };
}

/* Constant n, computed; agrees to three places with the usual textbook table (value from
 * memory). */
/* clang-format off */
static const struct { int depth; struct rb_part_full ratio; } part_full[] = {
	{    0, {     0,     0,     0,     0 } },
	{   50, {   187,  1302,  2569,    48 } },
	{  100, {   520,  2541,  4012,   209 } },
	{  150, {   941,  3715,  5168,   486 } },
	{  200, {  1424,  4824,  6151,   876 } },
	{  250, {  1955,  5865,  7007,  1370 } },
	{  300, {  2523,  6838,  7761,  1958 } },
	{  350, {  3119,  7740,  8430,  2629 } },
	{  400, {  3735,  8569,  9022,  3370 } },
	{  450, {  4364,  9323,  9544,  4165 } },
	{  500, {  5000, 10000, 10000,  5000 } },
	{  550, {  5636, 10595, 10393,  5857 } },
	{  600, {  6265, 11106, 10724,  6718 } },
	{  650, {  6881, 11526, 10993,  7564 } },
	{  700, {  7477, 11849, 11198,  8372 } },
	{  750, {  8045, 12067, 11335,  9119 } },
	{  800, {  8576, 12168, 11397,  9775 } },
	{  850, {  9059, 12131, 11374, 10304 } },
	{  900, {  9480, 11921, 11243, 10658 } },
	{  950, {  9813, 11458, 10950, 10745 } },
	{ 1000, { 10000, 10000, 10000, 10000 } },
	{ 1500, { 10000, 10000, 10000, 10000 } }, /* it cannot be fuller */
};
/* clang-format on */

static bool near(int got, int want)
{
	return abs(got - want) <= 1; /* of ten thousand: the last place printed */
}

static void ratios_of_the_table(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof part_full / sizeof *part_full; i++) {
		const struct rb_part_full *want = &part_full[i].ratio;
		struct rb_part_full got = rb_part_full(part_full[i].depth);

		if (near(got.area, want->area) && near(got.radius, want->radius) &&
		    near(got.velocity, want->velocity) &&
		    near(got.discharge, want->discharge))
			continue;
		print_error("depth %d: %d %d %d %d\n", part_full[i].depth, got.area,
			    got.radius, got.velocity, got.discharge);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

/* V/Vfull is greatest at 0.8128, Q/Qfull at 0.9382 of the diameter (computed). */
static void peaks(void **state)
{
	(void)state;
	assert_in_range(rb_part_full(813).velocity, 11399, 11401);
	assert_in_range(rb_part_full(938).discharge, 10756, 10758);
	assert_true(rb_part_full(813).velocity > rb_part_full(790).velocity);
	assert_true(rb_part_full(813).velocity > rb_part_full(830).velocity);
}

/* A full pipe is the one to which all else is compared. */
static void full_is_one(void **state)
{
	struct rb_part_full full = rb_part_full(1000);

	(void)state;
	assert_int_equal(full.area, 10000);
	assert_int_equal(full.radius, 10000);
	assert_int_equal(full.velocity, 10000);
	assert_int_equal(full.discharge, 10000);
}

static void half_full_is_as_fast_as_full(void **state)
{
	struct rb_conduit c = conduit(4, 1, 48, 130);

	(void)state;
	assert_int_equal(rb_flow_half(&c).velocity.nm, rb_flow_full(&c).velocity.nm);
	assert_in_range(2 * rb_flow_half(&c).discharge, rb_flow_full(&c).discharge - 1,
			rb_flow_full(&c).discharge + 1);
	assert_int_equal(rb_flow_at(&c, (rb_length){ 0 }).discharge, 0);
	assert_int_equal(rb_flow_at(&c, c.inside).discharge, rb_flow_full(&c).discharge);
}

static void depth_goes_back_to_discharge(void **state)
{
	struct rb_conduit c = conduit(4, 1, 48, 130);
	int64_t full = rb_flow_full(&c).discharge;
	int wrong = 0;

	(void)state;
	for (int64_t percent = 1; percent <= 107; percent++) {
		rb_length depth;
		enum rb_depths depths = rb_flow_depth(&c, full * percent / 100, &depth);
		int64_t back = rb_flow_at(&c, depth).discharge;

		if (llabs(back - full * percent / 100) > full / 100000 ||
		    depths != (percent >= 100 ? RB_TWO_DEPTHS : RB_ONE_DEPTH)) {
			print_error("%lld %%\n", (long long)percent);
			wrong++;
		}
	}
	assert_int_equal(wrong, 0);
}

static void more_than_it_carries_is_surcharged(void **state)
{
	struct rb_conduit c = conduit(4, 1, 48, 130);
	rb_length depth;

	(void)state;
	assert_int_equal(
		rb_flow_depth(&c, rb_flow_full(&c).discharge * 108 / 100, &depth),
		RB_SURCHARGED);
	assert_int_equal(depth.nm, c.inside.nm);
	c.slope.fall.nm = 0;
	assert_int_equal(rb_flow_depth(&c, 1, &depth), RB_SURCHARGED);
	assert_int_equal(rb_flow_full(&c).velocity.nm, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(ratios_of_the_table),
		cmocka_unit_test(peaks),
		cmocka_unit_test(full_is_one),
		cmocka_unit_test(half_full_is_as_fast_as_full),
		cmocka_unit_test(depth_goes_back_to_discharge),
		cmocka_unit_test(more_than_it_carries_is_surcharged),
	};

	return cmocka_run_group_tests_name("flow", tests, NULL, NULL);
}
