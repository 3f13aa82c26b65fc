/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a slope: what is read can be said in every way, what is said is read, and
 * says the same when it is written again.
 */
#include <string.h>

#include "rodbook/slope.h"
#include "target.h"

/* Is the slope within what a text may say in this form? */
static bool can_be_read(rb_slope slope, enum rb_slope_form form)
{
	int64_t fall = rb_length_absolute(slope.fall).nm, run = slope.run.nm;

	if (form == RB_DEGREES)
		return false;
	if (form == RB_ONE_IN)
		return fall > 0 && fall <= run && run / fall < 10000;
	return form == RB_PER_FOOT ? fall / run < 800 : fall / run < 10;
}

/* The most decimals that can be read: beyond them nanometres do not go. */
static int most_decimals(enum rb_slope_form form)
{
	return form == RB_PER_FOOT ? 5 : form == RB_PER_METRE ? 6 : 9;
}

/* What is said reads as the same number; where it is a fraction of an inch, as the same
 * slope. */
static void says_the_same(rb_slope slope, enum rb_slope_form form, int decimals)
{
	char said[RB_SLOPE_TEXT], first[RB_SLOPE_TEXT], second[RB_SLOPE_TEXT];
	size_t length;
	rb_slope again;

	if (decimals > most_decimals(form))
		decimals = most_decimals(form);
	length = rb_slope_format(said, slope, form, decimals);
	HOLDS(length == strlen(said) && length < sizeof said);
	if (!can_be_read(slope, form))
		return;
	HOLDS(rb_slope_parse(said, length, &again) == RB_SLOPE_READ);
	rb_slope_number(first, slope, form, decimals);
	rb_slope_number(second, again, form, decimals);
	HOLDS(!strcmp(first, second));
	if (form == RB_PER_FOOT && !strchr(said, '.'))
		HOLDS(rb_slope_compare(slope, again) == 0);
}

static void check_numbers(rb_slope slope)
{
	char buf[RB_SLOPE_TEXT];

	for (int form = RB_PER_FOOT; form <= RB_PER_METRE; form++) {
		size_t n = rb_slope_number(buf, slope, (enum rb_slope_form)form, 9);

		HOLDS(n == strlen(buf) && n < sizeof buf);
		HOLDS(strspn(buf, "-0123456789.") == n);
	}
}

/* Over its own run it falls its own fall, and twice over twice the run. */
static void check_fall(rb_slope slope)
{
	rb_length twice = rb_length_of(2 * slope.run.nm);
	rb_slope doubled = { rb_length_of(2 * slope.fall.nm), twice };

	HOLDS(rb_slope_over(slope, slope.run).nm == slope.fall.nm);
	HOLDS(rb_slope_over(slope, twice).nm == 2 * slope.fall.nm);
	HOLDS(rb_slope_compare(slope, slope) == 0);
	HOLDS(rb_slope_compare(slope, doubled) == 0);
	rb_slope_over(slope, rb_length_of(RB_LENGTH_MAX));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	const char *text = (const char *)data;
	rb_slope slope;

	if (size > 256 || rb_slope_parse(text, size, &slope) != RB_SLOPE_READ)
		return 0;
	HOLDS(rb_slope_given(slope));
	check_fall(slope);
	check_numbers(slope);
	for (int form = RB_PER_FOOT; form <= RB_PER_METRE; form++)
		says_the_same(slope, (enum rb_slope_form)form, (int)(size % 8) + 1);
	return 0;
}
