/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a reading: what is read can be written so that it reads back as itself,
 * and what is refused says why.
 */
#include <stdlib.h>
#include <string.h>

#include "measure/reading.h"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static void holds(bool so)
{
	if (!so)
		abort();
}

/* A book in this unit that holds the text that we would write for a value reads as it. */
static void reads_back(rb_length value, struct rb_reading_rules rules)
{
	struct rb_style style = { rules.unit, 9, 64, true };
	char text[RB_LENGTH_TEXT];
	struct rb_reading again;

	rules.limit = rb_length_none();
	if (!rb_length_format(text, value, style))
		return;
	again = rb_reading_parse(text, strlen(text), &rules);
	holds(again.refusal == RB_READ || again.refusal == RB_REFUSE_FINE);
	holds(again.refusal != RB_READ || again.value.nm == value.nm);
}

static void check(const struct rb_reading *reading, size_t length,
		  const struct rb_reading_rules *rules)
{
	holds(reading->refusal >= RB_READ && reading->refusal < RB_REFUSALS);
	holds(reading->maybes >= 0 && reading->maybes <= RB_MAYBE);
	if (reading->refusal != RB_READ) {
		holds(reading->where <= length);
		return;
	}
	holds(rb_length_given(reading->value));
	holds(rb_length_absolute(reading->value).nm <= RB_LENGTH_MAX);
	holds(reading->decimals >= 0 && reading->denominator >= 0);
	holds((rules->kind != RB_OF_RUN && rules->kind != RB_OF_DROP) ||
	      reading->value.nm >= 0);
	reads_back(reading->value, *rules);
}

/* The first two bytes choose the rules, the others are the text. */
int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct rb_reading_rules rules;
	struct rb_reading reading;
	enum rb_unit unit;
	char *text;

	if (size < 2)
		return 0;
	rules.unit = (enum rb_unit)(data[0] % (RB_MILLIMETRES + 1));
	rules.kind = (enum rb_reading_kind)(data[1] % RB_READING_KINDS);
	rules.decimal_comma = data[1] & 0x80;
	rules.limit = data[1] & 0x40 ? rb_length_of(25 * RB_FOOT) : rb_length_none();
	size -= 2;
	/* Exactly as long as it is said to be, so that a byte too far is caught. */
	text = malloc(size ? size : 1);
	if (!text)
		return 0;
	memcpy(text, data + 2, size);
	reading = rb_reading_parse(text, size, &rules);
	check(&reading, size, &rules);
	reading = rb_chainage_parse(text, size, &rules);
	holds(reading.refusal < RB_REFUSALS);
	rb_unit_parse(text, size, &unit);
	free(text);
	return 0;
}
