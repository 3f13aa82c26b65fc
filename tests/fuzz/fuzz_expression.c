/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as an expression and as a slope: each operation that is told gives what it
 * says, what comes out is its last result rounded once, and what is refused says where.
 */
#include <stdlib.h>
#include <string.h>

#include "measure/expression.h"
#include "measure/ratio.h"
#include "rodbook/slope.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void holds(bool so)
{
	if (!so)
		abort();
}

static bool same(struct rb_ratio a, struct rb_ratio b)
{
	return a.num == b.num && a.den == b.den && a.is_length == b.is_length;
}

static void check(const struct rb_expression *e, size_t length)
{
	holds(e->where <= length);
	holds(e->steps >= 0 && e->steps <= RB_OPERATIONS);
	for (int i = 0; i < e->steps; i++) {
		const struct rb_operation *o = &e->step[i];
		struct rb_ratio result;

		holds(rb_ratio_work(o->sign, o->left, o->right, &result) ==
		      RB_EXPRESSION_READ);
		holds(same(result, o->result));
	}
	if (e->refusal != RB_EXPRESSION_READ)
		return;
	holds(e->ratio.is_length && e->ratio.den > 0);
	holds(rb_length_absolute(e->value).nm <= RB_LENGTH_MAX);
	holds(!e->exact || (e->ratio.den == 1 && e->ratio.num == e->value.nm));
}

/* What is read can be said in every way, and carried over any length. */
static void check_slope(const char *text, size_t length)
{
	char buf[RB_SLOPE_TEXT];
	rb_slope slope;

	if (rb_slope_parse(text, length, &slope) != RB_SLOPE_READ)
		return;
	holds(rb_slope_given(slope) && rb_slope_compare(slope, slope) == 0);
	for (int form = RB_PER_FOOT; form <= RB_PER_METRE; form++) {
		size_t n = rb_slope_format(buf, slope, (enum rb_slope_form)form, 9);

		holds(n == strlen(buf) && n < sizeof buf);
		n = rb_slope_number(buf, slope, (enum rb_slope_form)form, 9);
		holds(n == strlen(buf) && n < sizeof buf);
	}
	rb_slope_over(slope, rb_length_of(RB_LENGTH_MAX));
}

/* The first byte chooses the unit, the others are the text. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct rb_reading_rules rules = { RB_FEET, RB_OF_TAPE, false, rb_length_none() };
	struct rb_expression e;
	char *text;

	if (!size)
		return 0;
	rules.unit = (enum rb_unit)(data[0] % (RB_MILLIMETRES + 1));
	size--;
	/* Exactly as long as it is said to be, so that a byte too far is caught. */
	text = malloc(size ? size : 1);
	if (!text)
		return 0;
	memcpy(text, data + 1, size);
	rb_expression_parse(text, size, &rules, &e);
	check(&e, size);
	check_slope(text, size);
	free(text);
	return 0;
}
