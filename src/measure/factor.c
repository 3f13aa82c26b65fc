/* SPDX-License-Identifier: MIT */
/* factor.c - whole numbers, decimals, fractions and mixed numbers, exactly. */
#include "measure/factor.h"

#include <string.h>

#include "measure/number.h"
#include "measure/ratio.h"

#define MOST_FIGURES 15

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static struct rb_ratio whole(int64_t n)
{
	return (struct rb_ratio){ n, 1, false };
}

/* A whole or decimal number; false, and *text stays, if there is none that fits. */
static bool scan_number(const char **text, const struct rb_reading_rules *rules,
			struct rb_ratio *out)
{
	const char *from = *text;
	struct rb_number n = { 0 };
	enum rb_number_kind kind;

	if (!is_digit(*from) && *from != '.' && *from != ',')
		return false;
	kind = rb_number_scan(&from, rules, &n);
	if ((kind != RB_NUMBER_WHOLE && kind != RB_NUMBER_DECIMAL) ||
	    n.figures + n.written > MOST_FIGURES)
		return false;
	*text = from;
	return rb_ratio_work('/', whole(n.digits), whole(rb_ten_to(n.places)), out) ==
	       RB_EXPRESSION_READ;
}

/* 1/2, of whole numbers and without blanks; false, and *text stays, if it is none. */
static bool scan_fraction(const char **text, const struct rb_reading_rules *rules,
			  struct rb_ratio *out)
{
	const char *from = *text;
	struct rb_ratio above, below;

	if (!scan_number(&from, rules, &above) || *from++ != '/' ||
	    !scan_number(&from, rules, &below))
		return false;
	if (memchr(*text, '.', (size_t)(from - *text)) ||
	    memchr(*text, ',', (size_t)(from - *text)) ||
	    rb_ratio_work('/', above, below, out) != RB_EXPRESSION_READ)
		return false;
	*text = from;
	return true;
}

/* 1 1/2: a whole number, a blank, a fraction. */
static bool scan_mixed(const char **text, const struct rb_reading_rules *rules,
		       struct rb_ratio *out)
{
	const char *from = *text + strspn(*text, "0123456789");
	struct rb_ratio number, part;

	if (from == *text || *from++ != ' ' || !scan_number(text, rules, &number) ||
	    !scan_fraction(&from, rules, &part) ||
	    rb_ratio_work('+', number, part, out) != RB_EXPRESSION_READ)
		return false;
	*text = from;
	return true;
}

bool rb_factor_scan(const char **text, const struct rb_reading_rules *rules,
		    bool fraction, struct rb_ratio *out)
{
	const char *mixed = *text;

	if (fraction && scan_fraction(text, rules, out))
		return true;
	if (scan_mixed(&mixed, rules, out)) {
		*text = mixed;
		return true;
	}
	return scan_number(text, rules, out);
}
