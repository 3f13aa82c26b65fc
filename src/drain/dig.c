/* SPDX-License-Identifier: MIT */
/* dig.c - dig, fill, on grade or over-dug. */
#include "drain/dig.h"

const char *rb_dig_answer_name(enum rb_dig_answer answer)
{
	static const char *const names[] = {
		[RB_ON_GRADE] = "on grade",
		[RB_DIG] = "dig",
		[RB_FILL] = "fill",
		[RB_OVER_DUG] = "over-dug",
	};

	return names[answer];
}

struct rb_dig rb_dig(struct rb_exact wanted, rb_length read, rb_length within,
		     bool digging)
{
	struct rb_exact difference = rb_exact_sub(wanted, rb_exact_of(read));
	struct rb_dig dig = { rb_exact_round(wanted), read, rb_exact_round(difference),
			      RB_ON_GRADE };

	if (rb_exact_compare(difference, rb_exact_of(within)) > 0)
		dig.answer = RB_DIG;
	else if (rb_exact_compare(difference, rb_exact_of(rb_length_negate(within))) < 0)
		dig.answer = digging ? RB_OVER_DUG : RB_FILL;
	return dig;
}

rb_length rb_dig_within(enum rb_unit unit)
{
	return rb_length_of(rb_unit_of_runs(unit) == RB_METRES ? 3 * RB_MILLIMETRE
							       : RB_INCH / 8);
}

bool rb_dig_knows(struct rb_findings *findings, const struct rb_plan *plan,
		  enum rb_surface surface)
{
	if (rb_length_given(rb_surface_above(plan, surface)))
		return true;
	rb_findings_add(findings, RB_CODE_SURFACE_UNKNOWN, rb_in_file(),
			rb_text(rb_surface_name(surface)),
			rb_text(rb_surface_key(plan, surface)));
	return false;
}

bool rb_dig_wanted(struct rb_findings *findings, const struct rb_inverts *inverts,
		   rb_length hi, rb_length chainage, enum rb_surface surface,
		   struct rb_exact *wanted)
{
	const struct rb_plan *plan = inverts->plan;
	rb_length above = rb_surface_above(plan, surface);
	struct rb_exact invert;

	if (!rb_dig_knows(findings, plan, surface))
		return false;
	if (!rb_inverts_at(inverts, chainage, &invert)) {
		rb_findings_add4(
			findings, RB_CODE_OFF_THE_LINE, rb_in_file(),
			(struct rb_argument[RB_ARGUMENTS]){
				rb_measure(chainage, rb_unit_of_runs(plan->unit)),
				rb_text(inverts->station[0].name),
				rb_text(inverts->station[inverts->stations - 1].name),
			});
		return false;
	}
	*wanted = rb_exact_sub(rb_exact_of(rb_length_sub(hi, above)), invert);
	return true;
}

rb_length rb_dig_wanted_from_hub(rb_length hub_rod, rb_length cut)
{
	return rb_length_add(hub_rod, cut);
}
