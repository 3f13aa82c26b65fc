/* SPDX-License-Identifier: MIT */
/* dig_result.c - dig, fill, raise, lower, over-dug, on grade. */
#include "report/dig_result.h"

#include <string.h>

#include "report/leg_json.h"
#include "report/leg_steps.h"
#include "report/steps.h"

#define FINEST 64 /* parts of an inch */

/* "1 1/4 in", "1 ft 2 1/2 in": from the house form 1'-2 1/2". */
static void put_feet_inches(struct rb_phrase *phrase, rb_length a, int fraction)
{
	char text[RB_LENGTH_TEXT];
	char *mark;

	rb_length_format(text, a, (struct rb_style){ RB_FEET_INCHES, 0, fraction, true });
	mark = text + strcspn(text, "'");
	*mark = '\0';
	if (strcmp(text, "0") != 0) {
		rb_phrase_text(phrase, text);
		rb_phrase_text(phrase, " ft ");
	}
	mark += 2; /* the foot mark and the dash */
	if (strncmp(mark, "0 ", 2) == 0)
		mark += 2; /* 1/2, not 0 1/2 */
	mark[strcspn(mark, "\"")] = '\0';
	rb_phrase_text(phrase, mark);
	rb_phrase_text(phrase, " in");
}

/* A length that is more than nothing never reads as nothing. */
static void put_size(struct rb_phrase *phrase, rb_length a, struct rb_style style)
{
	bool inches = style.unit == RB_FEET_INCHES || style.unit == RB_INCHES;

	while (inches && style.fraction < FINEST && a.nm &&
	       a.nm < RB_INCH / style.fraction)
		style.fraction *= 2;
	while (!inches && style.decimals < 9 && a.nm && !rb_length_as_shown(a, style).nm)
		style.decimals++;
	style.marked = true;
	if (!inches) {
		rb_phrase_length(phrase, a, style);
	} else if (a.nm && a.nm < RB_INCH / FINEST / 2) {
		rb_phrase_text(phrase, "less than 1/64 in");
	} else {
		put_feet_inches(phrase, a, style.fraction);
	}
}

/* What stands before the size and behind it. */
struct words {
	const char *before, *behind;
};

static struct words words_of(const struct rb_dig_result *result)
{
	static const struct words on_pipe[] = {
		[RB_ON_GRADE] = { "on grade (within ", ")" },
		[RB_DIG] = { "lower the pipe ", "" },
		[RB_FILL] = { "raise the pipe ", "" },
		[RB_OVER_DUG] = { "raise the pipe ", "" },
	};
	static const struct words on_ground[] = {
		[RB_ON_GRADE] = { "on grade (within ", ")" },
		[RB_DIG] = { "dig ", "" },
		[RB_FILL] = { "fill ", "" },
		[RB_OVER_DUG] = { "over-dug by ", ": bring back with compacted bedding" },
	};

	return (result->on_pipe ? on_pipe : on_ground)[result->dig.answer];
}

void rb_dig_words(struct rb_phrase *phrase, const struct rb_dig_result *result)
{
	const struct words words = words_of(result);
	rb_length size = result->dig.answer == RB_ON_GRADE
				 ? result->within
				 : rb_length_absolute(result->dig.difference);

	rb_phrase_text(phrase, words.before);
	put_size(phrase, size, result->words);
	rb_phrase_text(phrase, words.behind);
}

void rb_dig_step(struct rb_phrase *phrase, const struct rb_dig_result *result)
{
	if (!rb_length_given(result->step))
		return;
	rb_phrase_text(phrase, "; that is the pipe going out, the one coming in lies ");
	put_size(phrase, result->step, result->words);
	rb_phrase_text(phrase, " higher");
}

void rb_dig_steps(struct rb_phrase *phrase, const struct rb_dig_result *result)
{
	const struct rb_dig *dig = &result->dig;
	bool low = dig->difference.nm < 0;

	rb_phrase_text(phrase, "  grade rod ");
	rb_steps_number(phrase, dig->wanted, result->style);
	rb_phrase_text(phrase, ", read ");
	rb_steps_number(phrase, dig->read, result->style);
	rb_phrase_text(phrase, ": ");
	rb_steps_subtract(phrase, low ? dig->read : dig->wanted,
			  low ? dig->wanted : dig->read, result->style, 4);
	rb_phrase_text(phrase, !dig->difference.nm ? ""
			       : low               ? ", it stands low"
						   : ", it stands high");
}

static void say_check(struct rb_phrase *phrase, const struct rb_dig_result *result)
{
	rb_length apart = result->today.difference;

	rb_phrase_text(phrase, "the second benchmark gives the HI ");
	if (apart.nm)
		rb_phrase_shown(phrase, rb_length_absolute(apart), result->style.unit);
	rb_phrase_text(phrase, !apart.nm      ? "exactly the same"
			       : apart.nm > 0 ? " higher"
					      : " lower");
}

void rb_dig_hi(struct rb_phrase *phrase, const struct rb_dig_result *result, bool steps)
{
	static const char *const names[] = { "HI", "HI from the second benchmark" };
	const struct rb_sighted_benchmark *benchmark = result->benchmark;
	int sums = !steps || !rb_length_given(benchmark[0].elevation) ? 0
		   : result->today.checked                            ? 2
								      : 1;

	if (result->today.checked)
		say_check(phrase, result);
	else if (sums)
		rb_phrase_text(phrase, "today's height of instrument");
	for (int i = 0; i < sums; i++)
		rb_named_sum(phrase, names[i], benchmark[i].elevation,
			     benchmark[i].backsight, result->style);
}

static const char *verdict_of(const struct rb_dig_result *result)
{
	if (!result->on_pipe || result->dig.answer == RB_ON_GRADE)
		return rb_dig_answer_name(result->dig.answer);
	return result->dig.answer == RB_DIG ? "lower" : "raise";
}

bool rb_dig_write_json(struct rb_sink *sink, struct rb_phrase *phrase,
		       const struct rb_dig_result *result)
{
	struct rb_json_lengths lengths =
		rb_json_lengths_of(result->style.unit, result->decimals);
	struct rb_json json;

	rb_phrase_clear(phrase);
	rb_dig_words(phrase, result);
	if (phrase->out_of_memory)
		return false;
	rb_json_init(&json, sink);
	rb_json_head_line(&json);
	rb_json_put_text(&json, "unit", rb_unit_name(lengths.unit));
	rb_json_put(&json, "at", result->at, lengths);
	rb_json_put_text(&json, "on", result->on);
	rb_json_put(&json, "step", result->step, lengths);
	rb_json_put(&json, "rod", result->dig.read, lengths);
	rb_json_put(&json, "wanted", result->dig.wanted, lengths);
	rb_json_put(&json, "difference", result->dig.difference, lengths);
	rb_json_put_text(&json, "answer", phrase->text);
	rb_json_put_text(&json, "verdict", verdict_of(result));
	rb_json_put(&json, "second_benchmark_difference",
		    result->today.checked ? result->today.difference : rb_length_none(),
		    lengths);
	rb_json_end(&json);
	return true;
}
