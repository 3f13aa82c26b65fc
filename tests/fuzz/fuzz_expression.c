/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as an expression: each operation that is told gives what it says, what comes
 * out is its last result rounded once, and what is refused says where.
 */
#include <string.h>

#include "measure/expression.h"
#include "measure/ratio.h"
#include "target.h"

static bool same(struct rb_ratio a, struct rb_ratio b)
{
	return a.num == b.num && a.den == b.den && a.is_length == b.is_length;
}

static void check(const struct rb_expression *e, size_t length)
{
	HOLDS(e->where <= length);
	HOLDS(e->steps >= 0 && e->steps <= RB_OPERATIONS);
	for (int i = 0; i < e->steps; i++) {
		const struct rb_operation *o = &e->step[i];
		struct rb_ratio result;

		HOLDS(rb_ratio_work(o->sign, o->left, o->right, &result) ==
		      RB_EXPRESSION_READ);
		HOLDS(same(result, o->result));
	}
	if (e->refusal != RB_EXPRESSION_READ)
		return;
	HOLDS(e->ratio.is_length && e->ratio.den > 0);
	HOLDS(rb_length_absolute(e->value).nm <= RB_LENGTH_MAX);
	HOLDS(!e->exact || (e->ratio.den == 1 && e->ratio.num == e->value.nm));
}

/* What came out is one length, and in brackets it is the same. */
static void reads_back(const struct rb_expression *e,
		       const struct rb_reading_rules *rules)
{
	static const struct rb_style exactly = { RB_METRES, 9, 64, true };
	char text[RB_LENGTH_TEXT + 2] = "(";
	struct rb_expression again;

	HOLDS(rb_length_format(text + 1, e->value, exactly));
	strcat(text, ")");
	rb_expression_parse(text + 1, strlen(text) - 2, rules, &again);
	HOLDS(again.refusal == RB_EXPRESSION_READ && again.value.nm == e->value.nm);
	if (e->value.nm < 0)
		return; /* a minus in brackets is refused: it may be an inverted rod */
	rb_expression_parse(text, strlen(text), rules, &again);
	HOLDS(again.refusal == RB_EXPRESSION_READ && again.value.nm == e->value.nm);
}

/* The first byte chooses the unit, the second says whether a comma is a decimal one. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct rb_reading_rules rules = { RB_FEET, RB_OF_TAPE, false, rb_length_none() };
	struct rb_expression e;

	if (size < 2)
		return 0;
	rules.unit = (enum rb_unit)(data[0] % (RB_MILLIMETRES + 1));
	rules.decimal_comma = data[1] & 4;
	rb_expression_parse((const char *)data + 2, size - 2, &rules, &e);
	check(&e, size - 2);
	if (e.refusal == RB_EXPRESSION_READ)
		reads_back(&e, &rules);
	return 0;
}
