/* SPDX-License-Identifier: MIT */
/* Standing water by its definition: the level that the highest place downstream holds. */
#include "job.h"

#include "drain/ponds.h"

#define SHOTS 13

struct pipe {
	struct rb_laid_shot shot[SHOTS];
	rb_length step[SHOTS];
	struct rb_laid laid;
	struct rb_arena *arena;
};

/* Shots every 10, at inverts from upstream down; a negative number ends them. */
static void lay(struct pipe *p, const int inverts[SHOTS], const int steps[SHOTS])
{
	*p = (struct pipe){ .arena = rb_arena_new(NULL) };
	p->laid.shot = p->shot;
	for (uint32_t i = 0; i < SHOTS && inverts[i] >= 0; i++) {
		p->shot[i].invert = rb_length_of(inverts[i]);
		p->shot[i].run = rb_length_of(10 * (int64_t)i);
		p->step[i] = rb_length_of(steps ? steps[i] : 0);
		p->laid.shots++;
	}
	assert_true(rb_ponds(p->arena, &p->laid, p->step));
}

/* clang-format off */
static const struct pond_case {
	const char *what;
	int inverts[SHOTS];
	uint32_t ponds;
	struct { uint32_t from, to, deepest; int depth, wet; } pond[4];
} cases[] = {
	{ "falls all the way", { 50, 40, 30, 20, -1 }, 0, { { 0 } } },
	{ "level",             { 50, 50, 50, -1 },     0, { { 0 } } },
	{ "one shot",          { 50, -1 },             0, { { 0 } } },
	{ "up at the outlet",  { 50, 30, 40, -1 },     1, { { 0, 2, 1, 10, 15 } } },
	{ "all under water",   { 20, 30, 40, -1 },     1, { { 0, 2, 0, 20, 20 } } },
	{ "deepest in the middle", { 60, 30, 20, 25, 40, -1 }, 1, { { 0, 4, 2, 20, 33 } } },
	{ "two as deep: the lower one", { 60, 20, 30, 20, 40, -1 }, 1, { { 0, 4, 3, 20, 35 } } },
	{ "level over the wet end", { 40, 40, 30, 40, -1 }, 1, { { 1, 3, 2, 10, 20 } } },
	{ "two, one behind the other", { 60, 40, 50, 30, 40, -1 }, 2,
	  { { 0, 2, 1, 10, 15 }, { 2, 4, 3, 10, 15 } } },
	{ "a dry place between", { 90, 70, 80, 60, 40, 50, -1 }, 2,
	  { { 0, 2, 1, 10, 15 }, { 3, 5, 4, 10, 15 } } },
	{ "three, from upstream down", { 99, 79, 89, 69, 49, 59, 39, 19, 29, -1 }, 3,
	  { { 0, 2, 1, 10, 15 }, { 3, 5, 4, 10, 15 }, { 6, 8, 7, 10, 15 } } },
	{ "four", { 99, 79, 89, 69, 49, 59, 39, 19, 29, 19, 9, 19, -1 }, 4,
	  { { 0, 2, 1, 10, 15 }, { 3, 5, 4, 10, 15 }, { 6, 8, 7, 10, 15 },
	    { 9, 11, 10, 10, 20 } } },
};
/* clang-format on */

static bool is_right(const struct rb_laid *laid, const struct pond_case *c)
{
	bool right = laid->ponds == c->ponds;

	for (uint32_t i = 0; right && i < c->ponds; i++)
		right = laid->pond[i].from == c->pond[i].from &&
			laid->pond[i].to == c->pond[i].to &&
			laid->pond[i].deepest == c->pond[i].deepest &&
			laid->pond[i].depth.nm == c->pond[i].depth &&
			laid->pond[i].wet.nm == c->pond[i].wet;
	return right;
}

static void ponds_are_found(void **state)
{
	int wrong = 0;

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct pipe p;

		lay(&p, cases[i].inverts, NULL);
		if (!is_right(&p.laid, &cases[i])) {
			print_error("%s: %u ponds\n", cases[i].what, p.laid.ponds);
			for (uint32_t k = 0; k < p.laid.ponds; k++)
				print_error(
					"  from %u to %u, deepest %u, %d deep, %d wet\n",
					p.laid.pond[k].from, p.laid.pond[k].to,
					p.laid.pond[k].deepest,
					(int)p.laid.pond[k].depth.nm,
					(int)p.laid.pond[k].wet.nm);
			wrong++;
		}
		rb_arena_free(p.arena);
	}
	assert_int_equal(wrong, 0);
}

/* The pipe comes in over a step: its lip holds the water above, not that below. */
static void a_step_is_a_lip(void **state)
{
	static const int inverts[SHOTS] = { 50, 30, 20, 10, -1 };
	static const int steps[SHOTS] = { 0, 0, 15, 0 };
	struct pipe p;

	(void)state;
	lay(&p, inverts, steps);
	assert_int_equal(p.laid.ponds, 1);
	assert_int_equal(p.laid.pond[0].deepest, 1);
	assert_int_equal(p.laid.pond[0].depth.nm, 5); /* 20 + 15 over 30 */
	assert_int_equal(p.laid.pond[0].to, 2);
	rb_arena_free(p.arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(ponds_are_found),
		cmocka_unit_test(a_step_is_a_lip),
	};

	return cmocka_run_group_tests_name("ponds", tests, NULL, NULL);
}
