/* SPDX-License-Identifier: MIT */
/* slope_text.c - a slope for people: inches per foot, percent, 1 in so many, degrees. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

#include "measure/wide.h"
#include "rodbook/slope.h"

#define MOST_DECIMALS 9

static int64_t ten_to(int places)
{
	int64_t power = 1;

	while (places-- > 0)
		power *= 10;
	return power;
}

/* A whole number of 10^-decimals, with its point. */
static size_t put(char buf[static RB_SLOPE_TEXT], int64_t parts, int decimals)
{
	int64_t power = ten_to(decimals);
	const char *sign = parts < 0 ? "-" : "";
	long long whole = llabs(parts / power), rest = llabs(parts % power);
	int n = decimals ? snprintf(buf, RB_SLOPE_TEXT, "%s%lld.%0*lld", sign, whole,
				    decimals, rest)
			 : snprintf(buf, RB_SLOPE_TEXT, "%s%lld", sign, whole);

	return (size_t)n;
}

/* factor * fall / run, in parts of 10^-decimals.  What does not fit is as steep as can be
 * said: no drain is. */
static int64_t scaled(int64_t top, int64_t bottom, int64_t factor, int decimals)
{
	rb_wide wide = rb_wide_mul(top, factor) * ten_to(decimals);
	int64_t most = INT64_MAX / 2;

	if (rb_wide_compare(wide < 0 ? -wide : wide,
			    rb_wide_mul(most, bottom < 0 ? -bottom : bottom)) > 0)
		return (wide < 0) != (bottom < 0) ? -most : most;
	return rb_wide_divide(wide, bottom);
}

#define PI 3.14159265358979323846

static int64_t degrees(rb_slope s, int decimals)
{
	double angle = atan2((double)s.fall.nm, (double)s.run.nm) * 180.0 / PI;

	return (int64_t)llround(angle * (double)ten_to(decimals));
}

size_t rb_slope_number(char buf[static RB_SLOPE_TEXT], rb_slope s,
		       enum rb_slope_form form, int decimals)
{
	if (decimals > MOST_DECIMALS)
		decimals = MOST_DECIMALS;
	switch (form) {
	case RB_PER_FOOT:
		return put(buf, scaled(s.fall.nm, s.run.nm, 12, decimals), decimals);
	case RB_PERCENT:
		return put(buf, scaled(s.fall.nm, s.run.nm, 100, decimals), decimals);
	case RB_PER_METRE:
		return put(buf, scaled(s.fall.nm, s.run.nm, 1000, decimals), decimals);
	case RB_DEGREES:
		return put(buf, degrees(s, decimals), decimals);
	case RB_ONE_IN:
		if (s.fall.nm)
			return put(buf, scaled(s.run.nm, s.fall.nm, 1, decimals),
				   decimals);
		break;
	}
	buf[0] = '\0';
	return 0;
}

/* "1/4", "1 1/2", "0" where the fall is a whole 64th of an inch a foot; false if not. */
static bool sixtyfourths(char buf[static RB_SLOPE_TEXT], rb_slope s)
{
	const rb_wide over = rb_wide_mul(s.fall.nm, RB_FOOT);
	const rb_wide part = rb_wide_mul(s.run.nm, RB_SIXTYFOURTH);
	unsigned count, whole, denominator = 64;
	const char *sign;

	if (over % part || rb_wide_compare(over < 0 ? -over : over, part * 64 * 1000) > 0)
		return false;
	sign = over < 0 ? "-" : "";
	count = (unsigned)llabs((long long)(over / part)) & 0xFFFFF;
	whole = count / 64;
	count %= 64;
	while (count && count % 2 == 0)
		count /= 2, denominator /= 2;
	if (!count)
		snprintf(buf, RB_SLOPE_TEXT, "%s%u", sign, whole);
	else if (!whole)
		snprintf(buf, RB_SLOPE_TEXT, "%s%u/%u", sign, count, denominator);
	else
		snprintf(buf, RB_SLOPE_TEXT, "%s%u %u/%u", sign, whole, count,
			 denominator);
	return true;
}

/* "1:48", "1:60.6" where the run is no whole number of falls, "-1:48" for a backfall. */
static size_t one_in(char buf[static RB_SLOPE_TEXT], rb_slope s, int decimals)
{
	const char *sign = s.fall.nm < 0 ? "-" : "";
	char number[RB_SLOPE_TEXT];

	if (!s.fall.nm)
		return (size_t)snprintf(buf, RB_SLOPE_TEXT, "level");
	s.fall = rb_length_absolute(s.fall);
	rb_slope_number(number, s, RB_ONE_IN, s.run.nm % s.fall.nm != 0 ? decimals : 0);
	return (size_t)snprintf(buf, RB_SLOPE_TEXT, "%s1:%.40s", sign, number);
}

size_t rb_slope_format(char buf[static RB_SLOPE_TEXT], rb_slope s,
		       enum rb_slope_form form, int decimals)
{
	static const char *const units[] = {
		[RB_PER_FOOT] = " in/ft", [RB_PERCENT] = " %",      [RB_ONE_IN] = "",
		[RB_DEGREES] = " deg",    [RB_PER_METRE] = " mm/m",
	};
	char number[RB_SLOPE_TEXT];

	if (form == RB_ONE_IN)
		return one_in(buf, s, decimals);
	if (form != RB_PER_FOOT || !sixtyfourths(number, s))
		rb_slope_number(number, s, form, decimals);
	return (size_t)snprintf(buf, RB_SLOPE_TEXT, "%.38s%s", number, units[form]);
}
