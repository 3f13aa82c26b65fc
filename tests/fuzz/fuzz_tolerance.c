/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a tolerance: what is read can be written again, and the verdict, which is
 * exact, turns where the allowance shown says that it does.
 */
#include <string.h>

#include "rodbook/tolerance.h"
#include "target.h"

/* More is allowed for more setups and over more length, and the verdict agrees. */
static void check_allowance(const struct rb_tolerance *t, rb_length length,
			    int64_t setups)
{
	rb_length allowed = rb_tolerance_allowed(t, length, setups);
	rb_length over = rb_length_of(allowed.nm + 1);

	HOLDS(allowed.nm >= 0);
	HOLDS(!rb_tolerance_holds(t, over, length, setups));
	HOLDS(!rb_tolerance_holds(t, rb_length_negate(over), length, setups));
	if (allowed.nm > 0)
		HOLDS(rb_tolerance_holds(t, rb_length_of(1 - allowed.nm), length,
					 setups));
	HOLDS(rb_tolerance_holds(t, rb_length_of(0), length, setups));
	HOLDS(rb_tolerance_allowed(t, length, setups + 1).nm >= allowed.nm);
}

/* In the units and the words of the forms that we write. */
static void reads_back(const struct rb_tolerance *t, enum rb_unit unit)
{
	static const char *const roots[] = { [RB_FLAT] = "",
					     [RB_PER_ROOT_MILE] = " sqrt(mi)",
					     [RB_PER_ROOT_KILOMETRE] = " sqrt(km)",
					     [RB_PER_ROOT_SETUP] = " sqrt(setups)" };
	char text[RB_LENGTH_TEXT + 16];
	struct rb_style style = { RB_METRES, 9, 64, true };
	struct rb_tolerance again;

	HOLDS(rb_length_format(text, t->coefficient, style));
	strcat(text, roots[t->root]);
	HOLDS(rb_tolerance_parse(text, strlen(text), unit, false, &again));
	HOLDS(again.given && again.root == t->root);
	HOLDS(again.coefficient.nm == t->coefficient.nm);
}

/* The first byte says the unit, the second whether a comma is a decimal one. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	const char *text = (const char *)data + 2;
	struct rb_tolerance t;
	enum rb_unit unit;

	if (size < 2 || size > 256)
		return 0;
	unit = (enum rb_unit)(data[0] % (RB_MILLIMETRES + 1));
	if (!rb_tolerance_parse(text, size - 2, unit, data[1] & 4, &t))
		return 0;
	HOLDS(t.given && t.coefficient.nm >= 0);
	HOLDS(rb_tolerance_needs_length(&t) ==
	      (t.root == RB_PER_ROOT_MILE || t.root == RB_PER_ROOT_KILOMETRE));
	reads_back(&t, unit);
	check_allowance(&t, rb_length_of(RB_METRE), 1);
	check_allowance(&t, rb_length_of((int64_t)size * RB_FOOT * 97), (int64_t)size);
	check_allowance(&t, rb_length_of(1), 1000000);
	return 0;
}
