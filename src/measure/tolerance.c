/* SPDX-License-Identifier: MIT */
/* tolerance.c - allowed misclosures: read, and compared as squares. */
#include "rodbook/tolerance.h"

#include <string.h>

#include "measure/reading.h"
#include "measure/wide.h"

#define MILE      (5280 * RB_FOOT)
#define KILOMETRE (1000 * RB_METRE)

/* clang-format off */
/* What a root is taken of.  A capital M is miles in the trade's formulas; a small m could
 * be metres, and is not read. */
static const struct measure {
	const char *text;
	enum rb_tolerance_root root;
} measures[] = {
	{ "mi", RB_PER_ROOT_MILE }, { "mile", RB_PER_ROOT_MILE },
	{ "miles", RB_PER_ROOT_MILE }, { "M", RB_PER_ROOT_MILE },
	{ "km", RB_PER_ROOT_KILOMETRE }, { "kilometre", RB_PER_ROOT_KILOMETRE },
	{ "kilometres", RB_PER_ROOT_KILOMETRE }, { "kilometer", RB_PER_ROOT_KILOMETRE },
	{ "kilometers", RB_PER_ROOT_KILOMETRE }, { "k", RB_PER_ROOT_KILOMETRE },
	{ "n", RB_PER_ROOT_SETUP }, { "setup", RB_PER_ROOT_SETUP },
	{ "setups", RB_PER_ROOT_SETUP },
};

/* Signs of a root, and signs that may stand before or between. */
static const char *const root_signs[] = { "sqrt", "\xE2\x88\x9A" };
static const char *const plus_minus[] = { "+/-", "+-", "\xC2\xB1" };
static const char *const times_signs[] = { "*", "\xC3\x97", "\xC2\xB7", "x" };
/* clang-format on */

#define COUNT(a) (sizeof(a) / sizeof *(a))

struct piece {
	const char *text;
	size_t length;
};

static char lower(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* Does the text start with a word, in any case? */
static bool starts_with(struct piece p, const char *word)
{
	size_t length = strlen(word);

	if (p.length < length)
		return false;
	for (size_t i = 0; i < length; i++)
		if (lower(p.text[i]) != word[i])
			return false;
	return true;
}

static bool is_blank(char c)
{
	return c == ' ' || c == '\t';
}

static struct piece trim(struct piece p)
{
	while (p.length > 0 && is_blank(*p.text)) {
		p.text++;
		p.length--;
	}
	while (p.length > 0 && is_blank(p.text[p.length - 1]))
		p.length--;
	return p;
}

static struct piece without_plus_minus(struct piece p)
{
	p = trim(p);
	for (size_t i = 0; i < COUNT(plus_minus); i++)
		if (starts_with(p, plus_minus[i])) {
			p.text += strlen(plus_minus[i]);
			p.length -= strlen(plus_minus[i]);
			break;
		}
	return trim(p);
}

static struct piece without_times(struct piece p)
{
	p = trim(p);
	for (size_t i = 0; i < COUNT(times_signs); i++) {
		size_t length = strlen(times_signs[i]);

		if (p.length > length &&
		    starts_with((struct piece){ p.text + p.length - length, length },
				times_signs[i])) {
			p.length -= length;
			break;
		}
	}
	return trim(p);
}

/* Part the text at the sign of a root; false if it has none. */
static bool part_at_root(struct piece *coefficient, struct piece *of)
{
	for (size_t at = 0; at < coefficient->length; at++)
		for (size_t i = 0; i < COUNT(root_signs); i++) {
			struct piece rest = { coefficient->text + at,
					      coefficient->length - at };
			size_t length = strlen(root_signs[i]);

			if (!starts_with(rest, root_signs[i]))
				continue;
			*of = (struct piece){ rest.text + length, rest.length - length };
			coefficient->length = at;
			return true;
		}
	return false;
}

static struct piece without_brackets(struct piece p)
{
	p = trim(p);
	if (p.length >= 2 && p.text[0] == '(' && p.text[p.length - 1] == ')') {
		p.text++;
		p.length -= 2;
	}
	return trim(p);
}

static bool parse_root(struct piece of, enum rb_tolerance_root *root)
{
	of = without_brackets(of);
	for (size_t i = 0; i < COUNT(measures); i++) {
		const char *name = measures[i].text;
		bool same =
			of.length == strlen(name) &&
			(starts_with(of, name) || memcmp(of.text, name, of.length) == 0);

		if (same) {
			*root = measures[i].root;
			return true;
		}
	}
	return false;
}

bool rb_tolerance_parse(const char *text, size_t length, enum rb_unit unit,
			bool decimal_comma, struct rb_tolerance *out)
{
	struct rb_reading_rules rules = { .unit = unit,
					  .kind = RB_OF_TAPE,
					  .decimal_comma = decimal_comma,
					  .limit = rb_length_none() };
	struct piece coefficient = { text, length }, of;
	enum rb_tolerance_root root = RB_FLAT;
	struct rb_reading reading;

	if (part_at_root(&coefficient, &of)) {
		if (!parse_root(of, &root))
			return false;
		coefficient = without_times(coefficient);
	}
	coefficient = without_plus_minus(coefficient);
	reading = rb_reading_parse(coefficient.text, coefficient.length, &rules);
	if (reading.refusal != RB_READ || reading.value.nm < 0)
		return false;
	*out = (struct rb_tolerance){ true, reading.value, root };
	return true;
}

bool rb_tolerance_needs_length(const struct rb_tolerance *t)
{
	return t->given &&
	       (t->root == RB_PER_ROOT_MILE || t->root == RB_PER_ROOT_KILOMETRE);
}

/* The number under the root, as so many parts of so many. */
struct radicand {
	int64_t part, whole;
};

static struct radicand radicand_of(const struct rb_tolerance *t, rb_length length,
				   int64_t setups)
{
	switch (t->root) {
	case RB_PER_ROOT_MILE:
		return (struct radicand){ length.nm, MILE };
	case RB_PER_ROOT_KILOMETRE:
		return (struct radicand){ length.nm, KILOMETRE };
	case RB_PER_ROOT_SETUP:
		return (struct radicand){ setups, 1 };
	default:
		return (struct radicand){ 1, 1 };
	}
}

/* m <= c sqrt(p/w) where m^2 / c^2 <= p / w, none of them being negative. */
bool rb_tolerance_holds(const struct rb_tolerance *t, rb_length misclosure,
			rb_length length, int64_t setups)
{
	struct radicand of = radicand_of(t, length, setups);
	int64_t coefficient = t->coefficient.nm;

	if (misclosure.nm == 0)
		return true;
	if (coefficient == 0 || of.part <= 0)
		return false;
	return rb_wide_compare_ratios(rb_wide_mul(misclosure.nm, misclosure.nm),
				      rb_wide_mul(coefficient, coefficient), of.part,
				      of.whole) <= 0;
}

/*
 * The whole root of 4 c^2 p / w is twice the allowed length, rounded down; half of one
 * more is the nearest nanometre.  The product is taken in two halves so that it fits.
 */
rb_length rb_tolerance_allowed(const struct rb_tolerance *t, rb_length length,
			       int64_t setups)
{
	struct radicand of = radicand_of(t, length, setups);
	rb_wide square = rb_wide_mul(t->coefficient.nm, t->coefficient.nm) * 4;

	if (of.part <= 0)
		return rb_length_of(0);
	return rb_length_of((rb_wide_root(square / of.whole * of.part +
					  square % of.whole * of.part / of.whole) +
			     1) /
			    2);
}
