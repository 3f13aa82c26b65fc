/* SPDX-License-Identifier: MIT */
/* The keys above the header of a book, as values. */
#include <string.h>

#include "notes/book_reader.h"

#define ROD_UNLESS_SAID (25 * RB_FOOT) /* the longest rod in common use: 7.62 m */

static const struct rb_key_value *value_of(const struct rb_book_reader *r,
					   enum rb_book_key key)
{
	return &r->sheet->key[key];
}

static const char *text_of(const struct rb_book_reader *r, enum rb_book_key key)
{
	const struct rb_key_value *value = value_of(r, key);

	return value->length ? value->text : "";
}

static void bad(struct rb_book_reader *r, enum rb_book_key key, enum rb_code code,
		const char *wanted)
{
	const struct rb_key_value *value = value_of(r, key);

	rb_findings_add(r->findings, code, value->place, rb_text(value->text),
			rb_text(wanted));
}

static void take_unit(struct rb_book_reader *r)
{
	const struct rb_key_value *value = value_of(r, RB_KEY_UNIT);

	r->book->unit = RB_FEET;
	if (!value->length)
		return;
	r->unit_known = true;
	if (!rb_unit_parse(value->text, value->length, &r->book->unit))
		bad(r, RB_KEY_UNIT, RB_CODE_BAD_UNIT, "ft, in, ft-in, m or mm");
}

/* A key that is a length along the ground; `unless` where it is not given. */
static rb_length length_of(struct rb_book_reader *r, enum rb_book_key key,
			   rb_length unless)
{
	const struct rb_key_value *value = value_of(r, key);
	const struct rb_cell cell = { value->text, value->length };
	struct rb_reading reading;

	if (!value->length)
		return unless;
	reading = rb_sheet_length(r->findings, cell, value->place, &r->rules[RB_OF_RUN]);
	return reading.refusal == RB_READ ? reading.value : unless;
}

static void take_tolerance(struct rb_book_reader *r)
{
	const struct rb_key_value *value = value_of(r, RB_KEY_TOLERANCE);
	struct rb_book_keys *key = &r->book->key;

	if (!value->length)
		return;
	key->tolerance_place = value->place;
	if (!rb_tolerance_parse(value->text, value->length, r->book->unit,
				r->book->decimal_comma, &key->tolerance))
		bad(r, RB_KEY_TOLERANCE, RB_CODE_BAD_TOLERANCE, "");
}

static bool same_word(const char *text, const char *word)
{
	char folded[32];

	return strlen(text) < sizeof folded &&
	       (rb_name_fold(folded, text, strlen(text)), !strcmp(folded, word));
}

static void take_adjust(struct rb_book_reader *r)
{
	static const struct {
		const char *word;
		enum rb_adjust adjust;
	} ways[] = {
		{ "setups", RB_BY_SETUPS },
		{ "distance", RB_BY_DISTANCE },
		{ "none", RB_NOT_ADJUSTED },
	};
	const struct rb_key_value *value = value_of(r, RB_KEY_ADJUST);
	struct rb_book_keys *key = &r->book->key;

	key->adjust = RB_BY_SETUPS;
	if (!value->length)
		return;
	key->adjust_place = value->place;
	for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
		if (!same_word(value->text, ways[i].word))
			continue;
		key->adjust = ways[i].adjust;
		return;
	}
	bad(r, RB_KEY_ADJUST, RB_CODE_BAD_KEY, "setups, distance or none");
}

/* "+0.004 ft per 100 ft": the rise of the line of sight over a length. */
static bool parse_collimation(struct rb_book_reader *r, const char *text)
{
	struct rb_book_keys *key = &r->book->key;
	const char *per = strstr(text, " per ");
	const char *run = per ? per + 5 : strchr(text, '/');
	struct rb_reading_rules rise_rules = r->rules[RB_OF_TAPE];
	struct rb_reading rise, over;

	if (!run)
		return false;
	per = per ? per : run++;
	if (rise_rules.unit == RB_FEET_INCHES)
		rise_rules.unit = RB_FEET;
	rise = rb_reading_parse(text + (*text == '+'),
				(size_t)(per - text) - (*text == '+'), &rise_rules);
	over = rb_reading_parse(run, strlen(run), &r->rules[RB_OF_RUN]);
	if (rise.refusal != RB_READ || over.refusal != RB_READ || over.value.nm <= 0)
		return false;
	key->collimation = rise.value;
	key->collimation_run = over.value;
	return true;
}

static void take_collimation(struct rb_book_reader *r)
{
	const char *text = text_of(r, RB_KEY_COLLIMATION);

	r->book->key.collimation = r->book->key.collimation_run = rb_length_none();
	if (*text && !parse_collimation(r, text))
		bad(r, RB_KEY_COLLIMATION, RB_CODE_BAD_KEY, "+0.004 ft per 100 ft");
}

static void take_decimals(struct rb_book_reader *r)
{
	const char *text = text_of(r, RB_KEY_DECIMALS);

	r->book->key.decimals = -1;
	if (!*text)
		return;
	if (text[0] >= '0' && text[0] <= '6' && !text[1])
		r->book->key.decimals = text[0] - '0';
	else
		bad(r, RB_KEY_DECIMALS, RB_CODE_BAD_KEY, "a whole number from 0 to 6");
}

static void take_rod_on(struct rb_book_reader *r)
{
	const struct rb_key_value *value = value_of(r, RB_KEY_ROD_ON);

	r->book->key.rod_on = RB_ON_UNSAID;
	if (!value->length)
		return;
	r->book->key.rod_on = rb_rod_on_parse(value->text, value->length);
	if (r->book->key.rod_on == RB_ON_UNSAID)
		bad(r, RB_KEY_ROD_ON, RB_CODE_BAD_ROD_ON, "");
}

static void set_rules(struct rb_book_reader *r)
{
	for (int kind = 0; kind < RB_READING_KINDS; kind++)
		r->rules[kind] = (struct rb_reading_rules){
			.unit = r->book->unit,
			.kind = (enum rb_reading_kind)kind,
			.decimal_comma = r->book->decimal_comma,
			.limit = rb_length_none(),
		};
}

/* Our own CSV does not say how long the rod was: its readings were held against that when
 * the book was read, and must not be refused now. */
static rb_length rod_unless_said(const struct rb_book_reader *r)
{
	const int32_t *cell_of = r->sheet->cell_of;
	bool ours = cell_of[RB_UNIT_OF_ROW] >= 0 && cell_of[RB_PASSED_OVER] >= 0;

	return rb_length_of(ours ? RB_LENGTH_MAX : ROD_UNLESS_SAID);
}

void rb_book_take_keys(struct rb_book_reader *r)
{
	struct rb_book_keys *key = &r->book->key;

	take_unit(r);
	set_rules(r);
	key->project = text_of(r, RB_KEY_PROJECT);
	key->date = text_of(r, RB_KEY_DATE);
	key->crew = text_of(r, RB_KEY_CREW);
	key->student = text_of(r, RB_KEY_STUDENT);
	key->instrument = text_of(r, RB_KEY_INSTRUMENT);
	key->weather = text_of(r, RB_KEY_WEATHER);
	key->datum = text_of(r, RB_KEY_DATUM);
	key->rod_given = value_of(r, RB_KEY_ROD)->length > 0;
	key->rod = length_of(r, RB_KEY_ROD, rod_unless_said(r));
	key->sight_limit = length_of(r, RB_KEY_SIGHT_LIMIT, rb_length_none());
	key->balance_limit = length_of(r, RB_KEY_BALANCE_LIMIT, rb_length_none());
	key->sight_limit_place = value_of(r, RB_KEY_SIGHT_LIMIT)->place;
	key->balance_limit_place = value_of(r, RB_KEY_BALANCE_LIMIT)->place;
	take_tolerance(r);
	take_adjust(r);
	take_collimation(r);
	take_decimals(r);
	take_rod_on(r);
	r->rules[RB_OF_ROD].limit = key->rod;
}
