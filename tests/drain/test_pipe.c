/* SPDX-License-Identifier: MIT */
/* Pipe names, and the table's own consistency. */
#include "job.h"

#include "drain/pipe.h"

#define MIL INT64_C(25400) /* a thousandth of an inch */

/* clang-format off */
static const struct pipe_case {
	const char *text;
	enum rb_pipe_refusal refusal;
	int64_t size, outside, wall; /* thousandths of an inch; 0: none */
} pipe_cases[] = {
	{ "4 in sch 40",            RB_PIPE_READ,  4000,  4500, 237 },
	{ "4\" Sch. 40",            RB_PIPE_READ,  4000,  4500, 237 },
	{ "4 in PVC schedule 40",   RB_PIPE_READ,  4000,  4500, 237 },
	{ "1-1/2 in sch 40",        RB_PIPE_READ,  1500,  1900, 145 },
	{ "1 1/2\" sch 40",         RB_PIPE_READ,  1500,  1900, 145 },
	{ "4 sdr 35",               RB_PIPE_READ,  4000,  4215, 120 },
	{ "6 in SDR-35",            RB_PIPE_READ,  6000,  6275, 180 },
	{ "4 in cast iron service", RB_PIPE_READ,  4000,  4300, 180 },
	{ "4 in cast iron",         RB_PIPE_READ,  4000,  4300, 180 },
	{ "4 in extra heavy",       RB_PIPE_READ,  4000,  4500, 250 },
	{ "3 in no-hub",            RB_PIPE_READ,  3000,  3350, 160 },
	{ "3 in",                   RB_PIPE_READ,  3000,     0,   0 },
	{ "sch 40",                 RB_PIPE_NO_SIZE,  0,     0,   0 },
	{ "",                       RB_PIPE_NO_SIZE,  0,     0,   0 },
	{ "0 in sch 40",            RB_PIPE_NO_SIZE,  0,     0,   0 },
	{ "4 in clay",              RB_PIPE_NO_KIND, 4000,   0,   0 },
	{ "7 in sch 40",            RB_PIPE_NOT_IN_TABLE, 7000, 0, 0 },
};
/* clang-format on */

static bool is(rb_length got, int64_t thousandths)
{
	return thousandths ? got.nm == thousandths * MIL : !rb_length_given(got);
}

static void reads_names(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof pipe_cases / sizeof *pipe_cases; i++) {
		const struct pipe_case *c = &pipe_cases[i];
		struct rb_pipe pipe;
		enum rb_pipe_refusal refusal =
			rb_pipe_parse(c->text, strlen(c->text), &pipe);

		if (refusal == c->refusal && is(pipe.size, c->size) &&
		    is(pipe.outside, c->outside) && is(pipe.wall, c->wall))
			continue;
		print_error("'%s': %d, size %lld, outside %lld, wall %lld\n", c->text,
			    refusal, (long long)pipe.size.nm, (long long)pipe.outside.nm,
			    (long long)pipe.wall.nm);
		wrong++;
	}
	assert_int_equal(wrong, 0);
}

static void metric_names_are_inch_sizes(void **state)
{
	struct rb_pipe pipe;

	(void)state;
	assert_int_equal(rb_pipe_parse("100 mm sch 40", 13, &pipe), RB_PIPE_READ);
	assert_int_equal(pipe.size.nm, 100 * RB_MILLIMETRE);
	assert_int_equal(pipe.outside.nm, 4500 * MIL);
	assert_int_equal(rb_pipe_parse("100 mm", 6, &pipe), RB_PIPE_READ);
	assert_false(rb_length_given(pipe.outside));
	assert_int_equal(rb_pipe_size_by_name((rb_length){ 225 * RB_MILLIMETRE }).nm,
			 225 * RB_MILLIMETRE);
}

/* The nominal diameters of metric catalogues beside those in inches: common practice, no
 * source. */
static void nominal_diameters(void **state)
{
	/* clang-format off */
	static const struct { int64_t millimetres, thousandths; } names[] = {
		{ 32, 1250 }, { 40, 1500 }, { 50, 2000 }, { 65, 2500 }, { 75, 3000 },
		{ 80, 3000 }, { 100, 4000 }, { 110, 4000 }, { 125, 5000 }, { 150, 6000 },
		{ 160, 6000 }, { 200, 8000 }, { 250, 10000 }, { 300, 12000 },
	};
	static const int64_t made[] = { /* in half inches, after the quarter */
		3, 4, 5, 6, 8, 10, 12, 16, 20, 24, 30, 36, 42, 48, 60, 72,
	};
	/* clang-format on */
	rb_length size = { 5 * RB_INCH / 4 };

	(void)state;
	for (size_t i = 0; i < sizeof names / sizeof *names; i++)
		assert_int_equal(rb_pipe_size_by_name((rb_length){ names[i].millimetres *
								   RB_MILLIMETRE })
					 .nm,
				 names[i].thousandths * MIL);
	assert_int_equal(rb_pipe_next_size((rb_length){ 0 }).nm, size.nm);
	for (size_t i = 0; i < sizeof made / sizeof *made; i++) {
		size = rb_pipe_next_size(size);
		assert_int_equal(size.nm, made[i] * RB_INCH / 2);
	}
}

/* The number that turns a shot on top of a 4 in Schedule 40 pipe into its invert. */
static void top_is_outside_less_wall(void **state)
{
	struct rb_pipe pipe;

	(void)state;
	rb_pipe_parse("4 in sch 40", 11, &pipe);
	assert_int_equal(rb_pipe_top(&pipe).nm, 4263 * MIL);
	assert_int_equal(rb_pipe_inside(&pipe).nm, 4026 * MIL);
	pipe.wall = NONE;
	assert_false(rb_length_given(rb_pipe_top(&pipe)));
	assert_false(rb_length_given(rb_pipe_inside(&pipe)));
}

/* A slip of the finger in the table: sizes grow, walls are thin, the inside is near the
 * name. */
static void table_is_plausible(void **state)
{
	size_t kinds;
	const struct rb_pipe_kind *kind = rb_pipe_kinds(&kinds);
	int wrong = 0;

	(void)state;
	for (size_t k = 0; k < kinds; k++) {
		assert_true(*kind[k].source && *kind[k].seen);
		for (size_t i = 0; i < kind[k].sizes; i++) {
			const struct rb_pipe_size *s = &kind[k].size[i];
			int64_t inside = s->outside.nm - 2 * s->wall.nm;
			bool grows = !i || (s[-1].size.nm < s->size.nm &&
					    s[-1].outside.nm < s->outside.nm);

			if (grows && s->outside.nm > s->size.nm && s->wall.nm > 0 &&
			    inside > s->size.nm * 95 / 100 &&
			    inside < s->size.nm * 108 / 100)
				continue;
			print_error("%s, row %zu\n", kind[k].name, i);
			wrong++;
		}
	}
	assert_int_equal(wrong, 0);
}

static void next_size_is_larger(void **state)
{
	(void)state;
	assert_int_equal(rb_pipe_next_size((rb_length){ 4 * RB_INCH }).nm, 5 * RB_INCH);
	assert_int_equal(rb_pipe_next_size((rb_length){ 7 * RB_INCH }).nm, 8 * RB_INCH);
	assert_false(rb_length_given(rb_pipe_next_size((rb_length){ 36 * RB_INCH })));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(reads_names),
		cmocka_unit_test(metric_names_are_inch_sizes),
		cmocka_unit_test(nominal_diameters),
		cmocka_unit_test(top_is_outside_less_wall),
		cmocka_unit_test(table_is_plausible),
		cmocka_unit_test(next_size_is_larger),
	};

	return cmocka_run_group_tests_name("pipe", tests, NULL, NULL);
}
