/* SPDX-License-Identifier: MIT */
/* Cells as lengths: the one place where a refusal becomes a finding. */
#include <string.h>

#include "measure/reading.h"
#include "notes/sheet.h"

_Static_assert((int)RB_CODE_TOO_LONG - (int)RB_CODE_NOT_A_READING ==
		       (int)RB_REFUSE_LONG - (int)RB_REFUSE_TEXT,
	       "the codes of refused cells stand in the order of enum rb_refusal");

/* Add a finding with the cell, and what it may have been. */
static void say(struct rb_findings *findings, enum rb_code code, struct rb_cell cell,
		struct rb_place place, const struct rb_reading *reading,
		enum rb_unit unit)
{
	struct rb_argument argument[RB_ARGUMENTS] = { rb_nothing(), rb_nothing(),
						      rb_nothing(), rb_nothing() };
	bool marked = reading->marked || reading->notation == RB_AS_FEET_INCHES;

	unit = reading->marked ? reading->unit : unit;
	argument[0] = rb_text(rb_findings_text(findings, cell.text, cell.length));
	for (int i = 0; i < reading->maybes && i + 1 < RB_ARGUMENTS; i++)
		argument[i + 1] = (struct rb_argument){ .kind = RB_READING,
							.length = reading->maybe[i],
							.unit = unit,
							.marked = marked };
	if (place.point)
		place.point =
			rb_findings_text(findings, place.point, strlen(place.point));
	rb_findings_add4(findings, code, place, argument);
}

void rb_sheet_refused(struct rb_findings *findings, struct rb_cell cell,
		      struct rb_place place, const struct rb_reading *reading,
		      enum rb_unit unit)
{
	enum rb_refusal refusal =
		reading->refusal == RB_REFUSE_EMPTY ? RB_REFUSE_TEXT : reading->refusal;

	say(findings,
	    (enum rb_code)((int)RB_CODE_NOT_A_READING + (int)refusal -
			   (int)RB_REFUSE_TEXT),
	    cell, place, reading, unit);
}

bool rb_sheet_say_changed(struct rb_findings *findings, enum rb_code code,
			  struct rb_cell cell, struct rb_place place,
			  const struct rb_reading *reading)
{
	static const char *const changed[RB_REFUSALS] = {
		[RB_REFUSE_DATE] = "a date",
		[RB_REFUSE_TIME] = "a time of day",
		[RB_REFUSE_SERIAL] = "the number of a date",
	};

	if (!changed[reading->refusal])
		return false;
	if (place.point)
		place.point =
			rb_findings_text(findings, place.point, strlen(place.point));
	rb_findings_add(findings, code, place,
			rb_text(rb_findings_text(findings, cell.text, cell.length)),
			rb_text(changed[reading->refusal]));
	return true;
}

void rb_sheet_refused_chainage(struct rb_findings *findings, struct rb_cell cell,
			       struct rb_place place, const struct rb_reading *reading,
			       enum rb_unit unit)
{
	if (!rb_sheet_say_changed(findings, RB_CODE_CHAINAGE_CHANGED, cell, place,
				  reading))
		say(findings, RB_CODE_BAD_CHAINAGE, cell, place, reading, unit);
}

bool rb_cell_is_dashes(struct rb_cell cell)
{
	static const char *const dashes[] = { "-",      "\u2010", "\u2011", "\u2012",
					      "\u2013", "\u2014", "\u2015", "\u2212" };
	size_t at = 0, dash = 0;

	while (at < cell.length && dash < sizeof dashes / sizeof *dashes) {
		size_t length = strlen(dashes[dash]);

		if (cell.length - at >= length &&
		    !memcmp(cell.text + at, dashes[dash], length)) {
			at += length;
			dash = 0;
		} else {
			dash++;
		}
	}
	return at == cell.length;
}

struct rb_reading rb_sheet_length(struct rb_findings *findings, struct rb_cell cell,
				  struct rb_place place,
				  const struct rb_reading_rules *rules)
{
	struct rb_reading reading = rb_reading_parse(cell.text, cell.length, rules);

	if (reading.refusal == RB_READ)
		return reading;
	reading.value = rb_length_none();
	if (reading.refusal != RB_REFUSE_EMPTY)
		rb_sheet_refused(findings, cell, place, &reading, rules->unit);
	return reading;
}
