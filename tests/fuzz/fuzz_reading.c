/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a reading: what is read is written so that it reads back as itself in
 * every unit, what is refused says why, and neither blanks around a text nor the marks of
 * print change what it says.
 */
#include <string.h>

#include "level/spots.h"
#include "measure/reading.h"
#include "report/likely.h"
#include "target.h"

#define TEXT 256

/* What the second byte says, beside the kind of reading in its lowest two bits; letters
 * and figures say it all. */
enum { COMMA = 4, LIMIT = 8, CHAINAGE = 0x10, LOOK_BITS = 0x60, DROP = 0x80 };
enum look { AS_WRITTEN = 0, IN_UNITS = 0x20, WITH_BLANKS = 0x40, IN_PRINT = 0x60 };

static void check(const struct rb_reading *reading, size_t length,
		  const struct rb_reading_rules *rules)
{
	HOLDS(reading->refusal >= RB_READ && reading->refusal < RB_REFUSALS);
	HOLDS(reading->maybes >= 0 && reading->maybes <= RB_MAYBE);
	if (reading->refusal != RB_READ) {
		HOLDS(reading->where <= length);
		return;
	}
	HOLDS(rb_length_given(reading->value));
	HOLDS(rb_length_absolute(reading->value).nm <= RB_LENGTH_MAX);
	HOLDS(reading->decimals >= 0 && reading->denominator >= 1);
	HOLDS((rules->kind != RB_OF_RUN && rules->kind != RB_OF_DROP) ||
	      reading->value.nm >= 0);
	HOLDS(!reading->inverted || (rules->kind == RB_OF_ROD && reading->value.nm < 0));
}

/* -- written and read again -- */

/* The most decimals of a unit that are whole nanometres. */
static int whole_decimals(enum rb_unit unit)
{
	static const int most[] = { [RB_FEET] = 5,
				    [RB_INCHES] = 5,
				    [RB_FEET_INCHES] = 0,
				    [RB_METRES] = 9,
				    [RB_MILLIMETRES] = 6 };

	return most[unit];
}

/* What a style shows reads as what it shows; where it shows all, as the value. */
static void reads_back(rb_length value, struct rb_reading_rules rules,
		       struct rb_style style)
{
	char text[RB_LENGTH_TEXT];
	rb_length shown = rb_length_as_shown(value, style);
	bool exact = rb_length_format(text, value, style);
	struct rb_reading again;

	HOLDS(exact == (shown.nm == value.nm));
	if (rb_length_absolute(shown).nm > RB_LENGTH_MAX)
		return;
	rules.limit = rb_length_none();
	again = rb_reading_parse(text, strlen(text), &rules);
	HOLDS(again.refusal == RB_READ);
	HOLDS(again.value.nm == shown.nm);
}

/* In every unit with its mark, as finely as nanometres go and coarser. */
static void reads_back_in_units(const struct rb_reading *reading,
				const struct rb_reading_rules *rules)
{
	for (int unit = RB_FEET; unit <= RB_MILLIMETRES; unit++) {
		int most = whole_decimals((enum rb_unit)unit);
		struct rb_style style = { (enum rb_unit)unit, most, 64, true };

		reads_back(reading->value, *rules, style);
		style.decimals = reading->decimals % (most + 1);
		style.fraction = 1 << reading->decimals % 7;
		reads_back(reading->value, *rules, style);
	}
}

/* As it was written: its unit and its places say all of it. */
static void reads_back_as_written(const struct rb_reading *reading,
				  const struct rb_reading_rules *rules)
{
	struct rb_style style = { reading->unit, reading->decimals, 64, true };
	char text[RB_LENGTH_TEXT];
	struct rb_reading again;

	if (reading->notation == RB_AS_FEET_INCHES || reading->sixtyfourth ||
	    reading->denominator > 64 || reading->odd_fraction)
		return;
	if (reading->notation == RB_AS_INCHES)
		style.decimals += 6;
	if (style.decimals > 9)
		style.decimals = 9;
	HOLDS(rb_length_format(text, reading->value, style));
	again = rb_reading_parse(text, strlen(text), rules);
	HOLDS(again.refusal == RB_READ || rb_length_given(rules->limit));
	HOLDS(again.refusal != RB_READ || again.value.nm == reading->value.nm);
}

/* -- the same text otherwise -- */

static void same(const struct rb_reading *a, const struct rb_reading *b)
{
	HOLDS(a->refusal == b->refusal);
	HOLDS(a->value.nm == b->value.nm);
	HOLDS(a->notation == b->notation && a->unit == b->unit);
	HOLDS(a->decimals == b->decimals && a->denominator == b->denominator);
	HOLDS(a->inverted == b->inverted && a->odd_fraction == b->odd_fraction);
	HOLDS(a->sixtyfourth == b->sixtyfourth && a->maybes == b->maybes);
	for (int i = 0; i < a->maybes; i++)
		HOLDS(a->maybe[i].nm == b->maybe[i].nm);
}

/* Blanks keep a plain number from the short way: both ways must agree. */
static void same_with_blanks(const struct rb_reading *reading, const char *text,
			     size_t length, const struct rb_reading_rules *rules)
{
	char wider[TEXT + 2];
	struct rb_reading again;

	wider[0] = ' ';
	memcpy(wider + 1, text, length);
	wider[length + 1] = ' ';
	again = rb_reading_parse(wider, length + 2, rules);
	same(reading, &again);
}

/* Marks that print and phones put for those of the keyboard. */
static const char *in_print(char c)
{
	switch (c) {
	case '\'':
		return "\xe2\x80\xb2";
	case '"':
		return "\xe2\x80\xb3";
	case '-':
		return "\xe2\x88\x92";
	case '/':
		return "\xe2\x81\x84";
	case ' ':
		return "\xc2\xa0";
	default:
		return NULL;
	}
}

static void same_in_print(const struct rb_reading *reading, const char *text,
			  size_t length, const struct rb_reading_rules *rules)
{
	char print[3 * TEXT];
	size_t used = 0;
	struct rb_reading again;

	for (size_t i = 0; i < length; i++) {
		const char *mark = in_print(text[i]);
		size_t bytes = mark ? strlen(mark) : 1;

		if ((unsigned char)text[i] >= 0x80)
			return;
		memcpy(print + used, mark ? mark : &text[i], bytes);
		used += bytes;
	}
	again = rb_reading_parse(print, used, rules);
	same(reading, &again);
}

/* -- what a message proposes -- */

/* The unit in which the message says a candidate: see rb_sheet_refused(). */
static void proposal_reads(const struct rb_reading *reading, int i,
			   const struct rb_reading_rules *rules)
{
	struct rb_argument first = rb_rod_reading(reading->maybe[0], rules->unit);
	struct rb_argument candidate = rb_rod_reading(reading->maybe[i], rules->unit);
	struct rb_reading again;
	char words[RB_READING_WORDS];
	const char *written;

	rb_likely(words, &candidate, &first, i, i % 2 == 0);
	written = strstr(words, " write ");
	HOLDS(written);
	written += strlen(" write ");
	again = rb_reading_parse(written, strlen(written), rules);
	HOLDS(again.refusal != RB_REFUSE_TEXT && again.refusal != RB_REFUSE_EMPTY);
}

static void proposals_read(const struct rb_reading *reading,
			   const struct rb_reading_rules *rules)
{
	for (int i = 0; i < reading->maybes; i++) {
		HOLDS(rb_length_absolute(reading->maybe[i]).nm <= RB_LENGTH_MAX);
		proposal_reads(reading, i, rules);
	}
}

/* -- chainages -- */

static void chainage_reads_back(const struct rb_reading *reading,
				const struct rb_reading_rules *rules)
{
	struct rb_reading_rules runs = { rb_unit_of_runs(rules->unit), RB_OF_RUN, false,
					 rb_length_none() };
	struct rb_style step = { runs.unit, 4, 64, false };
	char text[RB_LENGTH_TEXT];
	struct rb_reading again;

	for (int plus = 0; plus <= 3; plus += plus ? 1 : 2) {
		rb_chainage_format(text, reading->value, rules->unit, plus);
		again = rb_chainage_parse(text, strlen(text), &runs);
		HOLDS(again.refusal == RB_READ || again.refusal == RB_REFUSE_LONG ||
		      again.refusal == RB_REFUSE_SERIAL);
		HOLDS(again.refusal != RB_READ ||
		      again.value.nm == rb_length_as_shown(reading->value, step).nm);
	}
}

static void check_chainage(const char *text, size_t length,
			   const struct rb_reading_rules *rules)
{
	struct rb_reading reading = rb_chainage_parse(text, length, rules);
	struct rb_reading_rules run = *rules;
	enum rb_unit unit;

	run.kind = RB_OF_RUN;
	check(&reading, length, &run);
	if (reading.refusal == RB_READ)
		chainage_reads_back(&reading, rules);
	rb_unit_parse(text, length, &unit);
}

/* The first two bytes choose the rules and what is looked at, the others are the text.
 * The fuzzer's own copy ends where the text does, so that a byte too far is caught. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	const char *text = (const char *)data + 2;
	struct rb_reading_rules rules;
	struct rb_reading reading;

	if (size < 2 || size - 2 > TEXT)
		return 0;
	size -= 2;
	rules.unit = (enum rb_unit)(data[0] % (RB_MILLIMETRES + 1));
	rules.kind = data[1] & DROP ? RB_OF_DROP : (enum rb_reading_kind)(data[1] & 3);
	rules.decimal_comma = data[1] & COMMA;
	rules.limit = data[1] & LIMIT ? rb_length_of(25 * RB_FOOT) : rb_length_none();
	if (data[1] & CHAINAGE) {
		check_chainage(text, size, &rules);
		return 0;
	}
	reading = rb_reading_parse(text, size, &rules);
	check(&reading, size, &rules);
	if ((data[1] & LOOK_BITS) == WITH_BLANKS)
		same_with_blanks(&reading, text, size, &rules);
	else if ((data[1] & LOOK_BITS) == IN_PRINT)
		same_in_print(&reading, text, size, &rules);
	else if (reading.refusal != RB_READ)
		proposals_read(&reading, &rules);
	else if ((data[1] & LOOK_BITS) == IN_UNITS)
		reads_back_in_units(&reading, &rules);
	else
		reads_back_as_written(&reading, &rules);
	return 0;
}
