/* SPDX-License-Identifier: MIT */
/* sixtyfourths.c - one note a column, which shows what was made of the first cell. */
#include "notes/sixtyfourths.h"

void rb_sixtyfourths_note(struct rb_sixtyfourths *sixtyfourths,
			  struct rb_findings *findings, struct rb_cell cell,
			  struct rb_place place, const struct rb_reading *reading)
{
	if (!reading->sixtyfourth || sixtyfourths->cells++)
		return;
	if (place.point) /* outlives its record */
		place.point =
			rb_findings_text(findings, place.point, strlen(place.point));
	sixtyfourths->place = place;
	sixtyfourths->text = rb_findings_text(findings, cell.text, cell.length);
	sixtyfourths->length = reading->value;
}

void rb_sixtyfourths_say(const struct rb_sixtyfourths *sixtyfourths,
			 struct rb_findings *findings, const char *column)
{
	if (!sixtyfourths->cells)
		return;
	rb_findings_add4(findings, RB_CODE_SIXTYFOURTHS, sixtyfourths->place,
			 (struct rb_argument[RB_ARGUMENTS]){
				 rb_number(sixtyfourths->cells), rb_text(column),
				 rb_text(sixtyfourths->text),
				 rb_measure(sixtyfourths->length, RB_FEET_INCHES) });
}
