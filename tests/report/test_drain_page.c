/* SPDX-License-Identifier: MIT */
/* The page of a drain: what is small, and what is not there. */
#include "drained.h"

#include "capture.h"
#include "report/text.h"

#define PLAN "outlet,last\npoint,chainage,invert\nA,0+00,95.00\nB,0+50,94.00\n"
#define BOOK                                                                             \
	"point,chainage,known elevation,backsight,intermediate,foresight,rod on\n"       \
	"BM,,100.00,4.00,,,\n"

static struct capture capture;

static const char *page_of(const struct drain_text *text)
{
	struct drained d;
	struct rb_page *page;

	drain_of(&d, text);
	page = rb_drain_page(d.job.arena, &d.result, true);
	capture_init(&capture);
	assert_non_null(page);
	assert_true(rb_page_write_text(&capture.sink, page,
				       (struct rb_text_style){ 400, false }));
	job_end(&d.job);
	return captured(&capture);
}

static void holds(const struct drain_text *text, const char *words)
{
	if (!strstr(page_of(text), words))
		fail_msg("no \"%s\" in\n%s", words, capture.text);
}

static void lacks(const struct drain_text *text, const char *words)
{
	if (strstr(page_of(text), words))
		fail_msg("\"%s\" in\n%s", words, capture.text);
}

/* What is more than nothing never reads as nothing. */
static void a_small_depth_is_told(void **state)
{
	const struct drain_text barely = {
		PLAN,
		BOOK "A,0+00,,,8.999,,ground\nB,0+50,,,9.9995,,ground\nBM,,,,,4,\n",
		.hi = { 104 * RB_FOOT },
	};

	(void)state;
	holds(&barely, "0.001 ft");
	lacks(&barely, "0.00 ft (");
}

/* Three millionths of a millimetre, too. */
static void a_hair_is_told(void **state)
{
	const struct drain_text hair = {
		"outlet,last\npoint,chainage,invert,slope\nA,0,100.00,1:333\nB,100,,\n",
		.hi = NONE,
		.minimum = { { 30030031 }, { RB_METRE * 10 } },
	};

	(void)state;
	holds(&hair, "SHORT by 0.00000001 ft");
}

/* Boards need the height of the ground or of a hub somewhere. */
static void boards_need_a_ground(void **state)
{
	const struct drain_text known = {
		PLAN, BOOK "A,0+00,,,4.10,,ground\nB,0+50,,,4.20,,ground\nBM,,,,,4,\n",
		.hi = { 104 * RB_FOOT }
	};
	const struct drain_text unknown = {
		PLAN, BOOK "A,0+00,,,9.10,,invert\nB,0+50,,,9.20,,invert\nBM,,,,,4,\n",
		.hi = { 104 * RB_FOOT }
	};

	(void)state;
	holds(&known, "Boards stand 6.00 ft");
	lacks(&unknown, "Boards stand");
}

/* A hub is looked for where the tape says, to the hundredth. */
static void a_hub_stands_where_its_offset_says(void **state)
{
	const struct drain_text hub = {
		"outlet,last\npoint,chainage,invert,hub offset,hub side\n"
		"A,0+00,95.00,5.25,left\nB,0+50,94.00,6,right\n",
		BOOK "A,0+00,,,4.10,,hub\nB,0+50,,,4.20,,hub\nBM,,,,,4,\n", .hi = NONE
	};

	(void)state;
	holds(&hub, " 5.25   left ");
	holds(&hub, " 6.00   right ");
}

/* One is not all; and a trench is deep at a place. */
static void a_sentence_reads_well(void **state)
{
	const struct drain_text one = {
		"grade tolerance,0.02 ft\n" PLAN,
		BOOK "A,0+00,,,0.10,,ground\nBM,,,,,4,\n",
		BOOK "A,0+00,,,9.00,,invert\nBM,,,,,4,\n",
		.hi = NONE,
	};

	(void)state;
	holds(&one, "LAID TO GRADE: 1 shot within 0.02 ft");
	holds(&one, " deep at A.");
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(a_small_depth_is_told),
		cmocka_unit_test(a_hair_is_told),
		cmocka_unit_test(boards_need_a_ground),
		cmocka_unit_test(a_hub_stands_where_its_offset_says),
		cmocka_unit_test(a_sentence_reads_well),
	};

	return cmocka_run_group_tests_name("drain page", tests, NULL, NULL);
}
