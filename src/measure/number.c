/* SPDX-License-Identifier: MIT */
/* number.c - digits, points and commas as written, and exact lengths of them. */
#include "measure/number.h"

#include "measure/wide.h"

#define FIGURES 18 /* decimal figures that fit 64 bits for certain */

int64_t rb_ten_to(int places)
{
	int64_t power = 1;

	while (places-- > 0)
		power *= 10;
	return power;
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

/* The separators of a run: how many there are, and which comes last. */
struct separators {
	int points, commas;
	char last;
	int length;
};

static struct separators separators_of(const char *text)
{
	struct separators s = { 0 };

	for (; is_digit(text[s.length]) || text[s.length] == '.' || text[s.length] == ',';
	     s.length++) {
		char c = text[s.length];

		if (is_digit(c))
			continue;
		s.points += c == '.';
		s.commas += c == ',';
		s.last = c;
	}
	return s;
}

/* 1,234.50: one to three figures, then threes, then the other sign once. */
static bool is_grouped(const char *text, const struct separators *s)
{
	int group = 0, least = 1;

	if ((s->last == '.' ? s->points : s->commas) != 1)
		return false;
	for (int i = 0;; i++) {
		if (is_digit(text[i])) {
			group++;
			continue;
		}
		if (group < least || group > 3)
			return false;
		if (text[i] == s->last)
			return true;
		group = 0;
		least = 3;
	}
}

/* Which sign is the decimal one; '\0' with *kind set if the run is no number. */
static char decimal_sign(const char *text, const struct separators *s,
			 const struct rb_reading_rules *rules, enum rb_number_kind *kind)
{
	bool mixed = s->points > 0 && s->commas > 0;

	*kind = RB_NUMBER_POINTS;
	if (s->commas == 0)
		return s->points <= 1 ? '.' : '\0';
	if (s->commas == 1 && s->points == 0) {
		*kind = RB_NUMBER_COMMA;
		return rules->decimal_comma ? ',' : '\0';
	}
	if (!mixed || !is_grouped(text, s))
		return '\0';
	if (s->last == ',' && !rules->decimal_comma)
		return '\0';
	if (rules->kind == RB_OF_ELEVATION)
		return s->last;
	*kind = rules->decimal_comma ? RB_NUMBER_POINTS : RB_NUMBER_COMMA;
	return '\0';
}

static void take_digit(struct rb_number *n, char c, bool behind)
{
	/* Zeros behind the point take up places, though they add nothing to the digits.
	 */
	bool room = n->digits < rb_ten_to(FIGURES - 1) && n->places < FIGURES;

	n->written += behind;
	n->figures += !behind;
	if (room) {
		n->digits = n->digits * 10 + (c - '0');
		n->places += behind;
	} else if (behind) {
		n->cut = n->cut || c != '0';
	} else {
		n->huge = true;
	}
}

enum rb_number_kind rb_number_scan(const char **text,
				   const struct rb_reading_rules *rules,
				   struct rb_number *out)
{
	const char *run = *text;
	struct separators s = separators_of(run);
	enum rb_number_kind kind;
	char sign = decimal_sign(run, &s, rules, &kind);
	bool behind = false;

	*text += s.length;
	*out = (struct rb_number){ 0 };
	if (sign == '\0')
		return kind;
	for (int i = 0; i < s.length; i++) {
		if (is_digit(run[i]))
			take_digit(out, run[i], behind);
		else
			behind = behind || run[i] == sign;
	}
	return behind ? RB_NUMBER_DECIMAL : RB_NUMBER_WHOLE;
}

enum rb_refusal rb_number_length(const struct rb_number *n, int64_t unit_nm, int64_t *nm)
{
	rb_wide size = rb_wide_mul(n->digits, unit_nm);
	int64_t power = rb_ten_to(n->places);

	if (n->huge || size / power > RB_LENGTH_MAX)
		return RB_REFUSE_LONG;
	if (n->cut || size % power != 0)
		return RB_REFUSE_FINE;
	*nm = (int64_t)(size / power);
	return RB_READ;
}

bool rb_number_sixtyfourth(const struct rb_number *n, int64_t *nm)
{
	const int64_t parts = RB_FOOT / RB_SIXTYFOURTH; /* 768 to the foot */
	int64_t power = rb_ten_to(n->places);
	rb_wide size = rb_wide_mul(n->digits, parts);
	rb_wide over;
	int64_t nearest;

	if (n->written < 6 || n->huge || size / power > RB_LENGTH_MAX / RB_SIXTYFOURTH)
		return false;
	nearest = rb_wide_divide(size, power);
	/* In 768ths of the last place: up to half a place too much was rounded up, less
	 * than one place too little was rounded down or cut off. */
	over = rb_wide_mul(nearest, power) - size;
	/* None too much is exact, unless figures were dropped behind it: of a 64th that
	 * ends there, nothing but zeros could have been. */
	if (over == 0 || over < -parts / 2 || over >= parts)
		return false;
	*nm = nearest * RB_SIXTYFOURTH;
	return true;
}

int64_t rb_number_rounded(const struct rb_number *n, int64_t unit_nm, int places)
{
	int64_t step = rb_ten_to(places);
	int64_t steps =
		rb_wide_divide(rb_wide_mul(n->digits, step), rb_ten_to(n->places));

	return rb_wide_divide(rb_wide_mul(steps, unit_nm), step);
}
