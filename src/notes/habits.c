/* SPDX-License-Identifier: MIT */
/* What only the whole book shows: inverted rods, feet.inches, a sheet's formulas. */
#include <stdio.h>
#include <string.h>

#include "notes/book_reader.h"

/* Digits behind the point, as a whole number: 5.10 has 10, 5.1 has 1. */
static int64_t digits_behind(const struct rb_reading *reading)
{
	static const int64_t power[] = { 1, 10, 100 };
	int64_t part = rb_length_absolute(reading->value).nm % RB_FOOT;

	return reading->decimals > 2 ? 12 : part * power[reading->decimals] / RB_FOOT;
}

/* A turning point may have two on its line, which is told once. */
static void note_inverted(struct rb_habits *habits, uint32_t line)
{
	if (line == habits->last_inverted)
		return;
	habits->last_inverted = line;
	if (habits->inverted++ < RB_FINDINGS_OF_A_KIND)
		habits->inverted_line[habits->inverted - 1] = line;
}

void rb_habits_note(struct rb_habits *habits, const struct rb_reading *reading,
		    uint32_t line)
{
	if (reading->inverted)
		note_inverted(habits, line);
	if (habits->over_eleven)
		return;
	if (reading->notation != RB_AS_DECIMAL || reading->unit != RB_FEET) {
		habits->over_eleven = true; /* the keeper knows inches from decimals */
		return;
	}
	habits->readings++;
	habits->tenths |= reading->decimals == 1;
	habits->hundredths |= reading->decimals > 1;
	habits->over_eleven |= digits_behind(reading) > 11;
	habits->ten_or_eleven |= digits_behind(reading) >= 10;
}

/* "12, 15 and 18", of a list that may be longer than what was kept. */
static const char *list_lines(struct rb_findings *findings,
			      const struct rb_habits *habits)
{
	char text[RB_FINDINGS_OF_A_KIND * 12 + 32];
	size_t used = 0;
	uint32_t kept = habits->inverted < RB_FINDINGS_OF_A_KIND ? habits->inverted
								 : RB_FINDINGS_OF_A_KIND;

	for (uint32_t i = 0; i < kept; i++)
		used += (size_t)snprintf(text + used, sizeof text - used, "%s%lu",
					 !i ? ""
					 : i + 1 == kept && kept == habits->inverted
						 ? " and "
						 : ", ",
					 (unsigned long)habits->inverted_line[i]);
	if (kept < habits->inverted)
		used += (size_t)snprintf(text + used, sizeof text - used, " and %lu more",
					 (unsigned long)(habits->inverted - kept));
	return rb_findings_text(findings, text, used);
}

static void say_inverted(const struct rb_book_reader *r)
{
	rb_findings_add(r->findings, RB_CODE_INVERTED, rb_in_file(),
			rb_text(list_lines(r->findings, &r->habits)),
			rb_number(r->habits.inverted));
}

void rb_habits_say(const struct rb_book_reader *r)
{
	const struct rb_habits *habits = &r->habits;

	if (habits->inverted)
		say_inverted(r);
	for (int column = 0; column <= RB_ELEVATION; column++)
		rb_sixtyfourths_say(&habits->sixtyfourths[column], r->findings,
				    r->book->heading[column]);
	if (habits->over_eleven || !habits->readings)
		return;
	if (habits->ten_or_eleven)
		rb_findings_add(r->findings, RB_CODE_FOOT_INCH_PATTERN, rb_in_file(),
				rb_number(habits->readings), rb_nothing());
	else if (habits->tenths && !habits->hundredths)
		rb_findings_add(r->findings, RB_CODE_TENTHS_ONLY, rb_in_file(),
				rb_number(habits->readings), rb_nothing());
}
