/* SPDX-License-Identifier: MIT */
/* token.c - operands and operators of an expression. */
#include "measure/token.h"

#include <string.h>

#include "measure/mark.h"

/* How operators are written; an `x` counts only between blanks, so does a minus inside
 * what could be one length. */
static const struct sign {
	const char *text;
	char sign;
	bool blanks; /* only with a blank on both sides */
} signs[] = {
	{ "(", '(', false },	       { ")", ')', false },	     { "*", '*', false },
	{ "+", '+', false },	       { "\xC3\x97", '*', false },   { "\xC2\xB7", '*', false },
	{ "\xC3\xB7", '/', false },    { "x", '*', true },	     { "X", '*', true },
	{ "-", '-', true },	       { "\xE2\x88\x92", '-', true }, { "\xE2\x80\x93", '-', true },
	{ "/", '/', true },
};

struct lexer {
	const char *text;
	size_t length, at;
	const struct rb_reading_rules *rules;
	struct rb_tokens *out;
};

static bool is_blank(const struct lexer *l, size_t i)
{
	return i < l->length && (l->text[i] == ' ' || l->text[i] == '\t');
}

static bool is_digit(const struct lexer *l, size_t i)
{
	return i < l->length && l->text[i] >= '0' && l->text[i] <= '9';
}

/* The operator at i that no length can hold, or NULL. */
static const struct sign *sign_at(const struct lexer *l, size_t i)
{
	for (size_t s = 0; s < sizeof signs / sizeof *signs; s++) {
		size_t n = strlen(signs[s].text);

		if (l->length - i < n || memcmp(l->text + i, signs[s].text, n) != 0)
			continue;
		if (signs[s].blanks && !(i && is_blank(l, i - 1) && is_blank(l, i + n)))
			continue;
		return &signs[s];
	}
	return NULL;
}

static void refuse(struct lexer *l, enum rb_expression_refusal refusal, size_t where)
{
	if (l->out->refusal != RB_EXPRESSION_READ)
		return;
	l->out->refusal = refusal;
	l->out->where = where;
}

static void add(struct lexer *l, struct rb_token token)
{
	if (l->out->count == RB_TOKENS)
		refuse(l, RB_EXPRESSION_BIG, token.at);
	else
		l->out->item[l->out->count++] = token;
	l->at = token.at + token.length;
}

/* How far an operand can reach: to the next operator that no length can hold. */
static size_t reach(const struct lexer *l)
{
	size_t end = l->at;

	while (end < l->length && !(end > l->at && sign_at(l, end)) && end - l->at < RB_MARKED)
		end++;
	return end;
}

/* A sign in front is none: it is the expression's. */
static bool has_mark(const char *text, size_t length)
{
	for (size_t i = length && text[0] == '-'; i < length; i++)
		if (!strchr("0123456789. /\t", text[i]))
			return true;
	return false;
}

/* Is it a length with a fault in it, rather than something else? */
static bool is_faulty(enum rb_refusal refusal)
{
	return refusal == RB_REFUSE_INCHES || refusal == RB_REFUSE_FRACTION ||
	       refusal == RB_REFUSE_ZERO || refusal == RB_REFUSE_ROUNDED ||
	       refusal == RB_REFUSE_FINE || refusal == RB_REFUSE_LETTER;
}

/* The longest length with a mark that begins here; a faulty one is told, not cut short:
 * 5'-13" is no difference. */
static bool take_length(struct lexer *l)
{
	for (size_t end = reach(l); end > l->at; end--) {
		size_t n = end - l->at;
		struct rb_reading r;

		if (is_blank(l, end - 1) || !has_mark(l->text + l->at, n))
			continue;
		/* a digit behind is part of what is cut off: 5'-1|0" */
		if (is_digit(l, end) && is_digit(l, end - 1))
			continue;
		r = rb_reading_parse(l->text + l->at, n, l->rules);
		if (is_faulty(r.refusal)) {
			l->out->reading = r;
			refuse(l, RB_EXPRESSION_LENGTH, l->at + r.where);
			return true;
		}
		if (r.refusal != RB_READ)
			continue;
		add(l, (struct rb_token){ 0, { r.value.nm, 1, true }, l->at, n });
		return true;
	}
	return false;
}

static size_t digits(const struct lexer *l, size_t i)
{
	size_t n = 0;

	while (is_digit(l, i + n))
		n++;
	return n;
}

#define MOST_DIGITS 15

/* Digits with at most one point, from i on. */
static bool scan_number(const struct lexer *l, size_t i, size_t *end, struct rb_ratio *out)
{
	int figures = 0;

	*out = (struct rb_ratio){ 0, 1, false };
	*end = i;
	for (bool point = false; *end < l->length; ++*end) {
		char c = l->text[*end];

		if (c == '.' && !point) {
			point = true;
			continue;
		}
		if (c < '0' || c > '9' || ++figures > MOST_DIGITS)
			break;
		out->num = out->num * 10 + (c - '0');
		out->den *= point ? 10 : 1;
	}
	return figures > 0 && figures <= MOST_DIGITS;
}

/* "1/2" or the "1/2" of "1 1/2", without blanks: one number, unless it follows a division
 * that is written without blanks too. */
static bool scan_fraction(const struct lexer *l, size_t i, size_t *end, struct rb_ratio *out)
{
	size_t top = digits(l, i), bottom, unused;
	struct rb_ratio n, d;

	if (!top || i + top >= l->length || l->text[i + top] != '/')
		return false;
	bottom = digits(l, i + top + 1);
	*end = i + top + 1 + bottom;
	if (!bottom || top > 6 || bottom > 6 || (*end < l->length && l->text[*end] == '.'))
		return false;
	scan_number(l, i, &unused, &n);
	scan_number(l, i + top + 1, &unused, &d);
	*out = (struct rb_ratio){ n.num, d.num, false };
	return d.num != 0;
}

static bool behind_tight_division(const struct lexer *l)
{
	return l->at && l->text[l->at - 1] == '/';
}

static bool take_number(struct lexer *l)
{
	struct rb_ratio number, part;
	size_t end, after;

	if (!behind_tight_division(l) && scan_fraction(l, l->at, &end, &number)) {
		add(l, (struct rb_token){ 0, number, l->at, end - l->at });
		return true;
	}
	if (!scan_number(l, l->at, &end, &number))
		return false;
	if (number.den == 1 && is_blank(l, end) && scan_fraction(l, end + 1, &after, &part)) {
		number = (struct rb_ratio){ number.num * part.den + part.num, part.den, false };
		end = after;
	}
	add(l, (struct rb_token){ 0, number, l->at, end - l->at });
	return true;
}

static bool wants_operand(const struct rb_tokens *t)
{
	return !t->count || (t->item[t->count - 1].sign && t->item[t->count - 1].sign != ')');
}

/* An operator between operands needs no blanks: there a bare - or / can be nothing else. */
static char loose_sign(const struct lexer *l, size_t *n)
{
	static const struct rb_marked none = { .length = 0 };
	struct rb_marked m = none;
	size_t size = (unsigned char)l->text[l->at] < 0x80 ? 1 : 3;

	*n = size;
	if (l->length - l->at < size || !rb_mark(l->text + l->at, size, &m) || m.length != 1)
		return 0;
	return m.text[0] == '-' || m.text[0] == '/' ? m.text[0] : 0;
}

static void take(struct lexer *l)
{
	const struct sign *sign = sign_at(l, l->at);
	size_t n = sign ? strlen(sign->text) : 0;
	char c = sign ? sign->sign : 0;

	if (wants_operand(l->out) && (c == 0 || c == '-')) {
		if (take_length(l) || take_number(l))
			return;
		c = c ? c : loose_sign(l, &n); /* a sign before a bracket */
		if (c != '-')
			c = 0;
	} else if (!c) {
		c = loose_sign(l, &n);
	}
	if (c)
		add(l, (struct rb_token){ c, { 0, 1, false }, l->at, n });
	else
		refuse(l, RB_EXPRESSION_SYNTAX, l->at);
}

/* Is it one length, or one that went wrong, rather than an expression? */
static bool is_lone(const struct lexer *l)
{
	for (size_t i = 0; i < l->length; i++) {
		const struct sign *sign = sign_at(l, i);
		bool leading = i == 0 && l->text[i] == '+';

		if (sign && !leading)
			return false;
		if (l->text[i] == '/' && i && !is_digit(l, i - 1) && !is_blank(l, i - 1))
			return false; /* 5'/2 */
	}
	return true;
}

static void take_lone(struct lexer *l)
{
	struct rb_reading r = rb_reading_parse(l->text, l->length, l->rules);

	if (r.refusal == RB_READ) {
		add(l, (struct rb_token){ 0, { r.value.nm, 1, true }, 0, l->length });
		return;
	}
	l->out->reading = r;
	refuse(l, RB_EXPRESSION_LENGTH, r.where);
}

/* Nothing has a mark and nothing is multiplied: all numbers are readings of the book. */
static void turn_to_lengths(struct lexer *l)
{
	for (int i = 0; i < l->out->count; i++)
		if (l->out->item[i].value.is_length || l->out->item[i].sign == '*' ||
		    l->out->item[i].sign == '/')
			return;
	for (int i = 0; i < l->out->count; i++) {
		struct rb_token *t = &l->out->item[i];
		struct rb_reading r;

		if (t->sign)
			continue;
		r = rb_reading_parse(l->text + t->at, t->length, l->rules);
		if (r.refusal != RB_READ) {
			l->out->reading = r;
			refuse(l, RB_EXPRESSION_LENGTH, t->at + r.where);
			return;
		}
		t->value = (struct rb_ratio){ r.value.nm, 1, true };
	}
}

void rb_tokens_read(const char *text, size_t length, const struct rb_reading_rules *rules,
		    struct rb_tokens *out)
{
	struct lexer l = { text, length, 0, rules, out };

	*out = (struct rb_tokens){ .refusal = RB_EXPRESSION_READ };
	while (l.length && is_blank(&l, l.length - 1))
		l.length--;
	while (is_blank(&l, l.at))
		l.at++;
	l.text += l.at;
	l.length -= l.at;
	l.at = 0;
	if (!l.length)
		refuse(&l, RB_EXPRESSION_EMPTY, 0);
	else if (is_lone(&l))
		take_lone(&l);
	while (out->refusal == RB_EXPRESSION_READ && l.at < l.length) {
		if (is_blank(&l, l.at))
			l.at++;
		else
			take(&l);
	}
	if (out->refusal == RB_EXPRESSION_READ)
		turn_to_lengths(&l);
	out->where += (size_t)(l.text - text);
}
