/* SPDX-License-Identifier: MIT */
/* leg.c - the verdict on a slope. */
#include "level/leg.h"

static const char *const verdict_names[RB_LEG_VERDICTS] = {
	[RB_LEG_OK] = "ok",
	[RB_LEG_FLAT] = "flat",
	[RB_LEG_LEVEL] = "level",
	[RB_LEG_UPHILL] = "uphill",
};

const char *rb_leg_verdict_name(enum rb_leg_verdict verdict)
{
	return verdict_names[verdict];
}

static enum rb_leg_verdict verdict_of(const struct rb_leg *leg)
{
	if (leg->slope.fall.nm < 0)
		return RB_LEG_UPHILL;
	if (leg->slope.fall.nm == 0)
		return RB_LEG_LEVEL;
	if (!rb_slope_given(leg->minimum))
		return RB_LEG_NOT_JUDGED;
	return rb_slope_compare(leg->slope, leg->minimum) < 0 ? RB_LEG_FLAT : RB_LEG_OK;
}

/* Would the leg hold if its fall were greater by what the readings may be out?  Only
 * measured legs have an uncertainty, and their slope stands over their own length. */
static bool fails_within_reading(const struct rb_leg *leg)
{
	rb_slope best = leg->slope;

	if (!rb_slope_given(leg->uncertainty) || leg->verdict == RB_LEG_OK ||
	    leg->verdict == RB_LEG_NOT_JUDGED)
		return false;
	best.fall = rb_length_add(best.fall, leg->uncertainty.fall);
	if (!rb_slope_given(leg->minimum))
		return best.fall.nm > 0;
	return rb_slope_compare(best, leg->minimum) >= 0;
}

void rb_leg_judge(struct rb_leg *leg)
{
	leg->verdict = verdict_of(leg);
	leg->within_reading = fails_within_reading(leg);
}

void rb_leg_report(struct rb_findings *findings, const struct rb_leg *leg,
		   struct rb_place place)
{
	static const enum rb_code codes[RB_LEG_VERDICTS] = {
		[RB_LEG_FLAT] = RB_CODE_LEG_FLAT,
		[RB_LEG_LEVEL] = RB_CODE_LEG_LEVEL,
		[RB_LEG_UPHILL] = RB_CODE_LEG_UPHILL,
	};
	const struct rb_argument argument[RB_ARGUMENTS] = {
		rb_text(leg->from),
		rb_text(leg->to),
		rb_ratio_of(leg->slope),
		rb_slope_given(leg->minimum) ? rb_ratio_of(leg->minimum) : rb_nothing(),
	};

	if (leg->verdict >= RB_LEG_FLAT)
		rb_findings_add4(findings, codes[leg->verdict], place, argument);
}
