/* SPDX-License-Identifier: MIT */
/* The picture of a drain: the ground as the cut sheet has it. */
#include "drained.h"

#include "report/drain_profile.h"

#define PLAN "outlet,last\npoint,chainage,invert\nA,0+00,95.00\nB,0+50,94.00\n"
#define BOOK                                                                             \
	"point,chainage,known elevation,backsight,intermediate,foresight,rod on\n"       \
	"BM,,100.00,4.00,,,\n"

struct corner {
	int64_t along, elevation; /* feet */
};

/* The ground of a picture, corner by corner. */
static void draws(const char *plan, const char *book, const struct corner *corner,
		  size_t corners)
{
	struct drained d;
	const struct rb_profile *picture;
	size_t at = 0;

	drain_of(&d, &(struct drain_text){ .plan = plan, .ground = book, .hi = NONE });
	picture = rb_drain_profile(d.job.arena, &d.result);
	assert_non_null(picture);
	for (const struct rb_profile_item *i = picture->first; i; i = i->next) {
		if (i->kind != RB_ITEM_LINE || i->look != RB_LOOK_GROUND)
			continue;
		assert_true(at + 1 < corners);
		assert_int_equal(i->from.along.nm, corner[at].along * RB_FOOT);
		assert_int_equal(i->from.elevation.nm, corner[at].elevation * RB_FOOT);
		at++;
		assert_int_equal(i->to.along.nm, corner[at].along * RB_FOOT);
		assert_int_equal(i->to.elevation.nm, corner[at].elevation * RB_FOOT);
	}
	assert_int_equal(at + 1, corners);
	job_end(&d.job);
}

/* What was lifted or dug anew is drawn where it lies now. */
static void ground_shot_again_is_drawn_as_last_shot(void **state)
{
	(void)state;
	draws(PLAN,
	      BOOK "A,0+00,,,4,,ground\nB,0+50,,,5,,ground\nG,0+10,,,6,,ground\n"
		   "G,0+10,,,2,,ground\n",
	      (struct corner[]){ { 0, 100 }, { 10, 102 }, { 50, 99 } }, 3);
}

/* Up the line as well as down; a shot beyond its ends is not drawn. */
static void ground_is_drawn_downstream(void **state)
{
	(void)state;
	draws("outlet,first\npoint,chainage,invert\nA,0+00,94.00\nB,0+50,95.00\n",
	      BOOK "A,0+00,,,4,,ground\nB,,,,5,,ground\nG,0+10,,,6,,ground\n"
		   "H,0+70,,,2,,ground\n",
	      (struct corner[]){ { 0, 99 }, { 40, 98 }, { 50, 100 } }, 3);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(ground_shot_again_is_drawn_as_last_shot),
		cmocka_unit_test(ground_is_drawn_downstream),
	};

	return cmocka_run_group_tests_name("drain profile", tests, NULL, NULL);
}
