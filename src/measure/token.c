/* SPDX-License-Identifier: MIT */
/* token.c - operands and operators of an expression. */
#include "measure/token.h"

#include <string.h>

#include "measure/factor.h"
#include "measure/mark.h"

/* Where an operator may stand, not to be a part of a length. */
enum stand {
	ANYWHERE,
	BETWEEN_BLANKS, /* 5'-3" and 3/4" are lengths */
	NO_LETTER       /* an x in a word or in 0x1F is none */
};

/* clang-format off */
static const struct sign {
	const char *text;
	char sign;
	enum stand stand;
} signs[] = {
	{ "(", '(', ANYWHERE },            { ")", ')', ANYWHERE },
	{ "*", '*', ANYWHERE },            { "+", '+', ANYWHERE },
	{ "\xC3\x97", '*', ANYWHERE },     /* multiplication sign */
	{ "\xC2\xB7", '*', ANYWHERE },     /* middle dot */
	{ "\xE2\x8B\x85", '*', ANYWHERE }, /* dot operator */
	{ "\xC3\xB7", '/', ANYWHERE },     /* division sign */
	{ "x", '*', NO_LETTER },           { "X", '*', NO_LETTER },
	{ "-", '-', BETWEEN_BLANKS },      { "/", '/', BETWEEN_BLANKS },
	{ "\xE2\x88\x92", '-', BETWEEN_BLANKS }, /* minus */
	{ "\xE2\x80\x93", '-', BETWEEN_BLANKS }, /* en dash */
	{ "\xE2\x80\x94", '-', BETWEEN_BLANKS }, /* em dash */
	{ "\xE2\x88\x95", '/', BETWEEN_BLANKS }, /* division slash */
};

/* What parts words: blanks, and those that do not break a line. */
static const char *const blanks[] = {
	" ", "\t", "\r", "\n", "\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF",
};

/*
 * A text refused so is a length with a fault in it.  It is told as it stands: what a
 * shorter part of it would read as was not meant (5'-13" is no 5'-1" with a 3).
 */
static const bool is_faulty[RB_REFUSALS] = {
	[RB_REFUSE_INCHES] = true,   [RB_REFUSE_FRACTION] = true, [RB_REFUSE_ZERO] = true,
	[RB_REFUSE_ROUNDED] = true,  [RB_REFUSE_POINTS] = true,   [RB_REFUSE_COMMA] = true,
	[RB_REFUSE_THOUSANDS] = true,
	[RB_REFUSE_LETTER] = true,   [RB_REFUSE_DATE] = true,     [RB_REFUSE_TIME] = true,
	[RB_REFUSE_EXPONENT] = true, [RB_REFUSE_HEX] = true,      [RB_REFUSE_SHEET] = true,
	[RB_REFUSE_MOJIBAKE] = true, [RB_REFUSE_DASHED] = true,   [RB_REFUSE_UNMARKED] = true,
	[RB_REFUSE_FINE] = true,     [RB_REFUSE_LONG] = true,     [RB_REFUSE_INVERTED] = true,
	[RB_REFUSE_FINE_MARK] = true,
};
/* clang-format on */

#define COUNT(a) (sizeof(a) / sizeof *(a))

struct lexer {
	const char *text;
	size_t length, at;
	const struct rb_reading_rules *rules;
	struct rb_tokens *out;
};

/* Is `word` written at i? */
static bool stands_at(const struct lexer *l, size_t i, const char *word)
{
	size_t n = strlen(word);

	return i <= l->length && l->length - i >= n && !memcmp(l->text + i, word, n);
}

/* Bytes of the blank that begins at i; 0: none does. */
static size_t blank_at(const struct lexer *l, size_t i)
{
	for (size_t b = 0; b < COUNT(blanks); b++)
		if (stands_at(l, i, blanks[b]))
			return strlen(blanks[b]);
	return 0;
}

/* Bytes of the blank that ends before i; 0: none does. */
static size_t blank_before(const struct lexer *l, size_t i)
{
	for (size_t b = 0; b < COUNT(blanks); b++) {
		size_t n = strlen(blanks[b]);

		if (i >= n && stands_at(l, i - n, blanks[b]))
			return n;
	}
	return 0;
}

static char at_or_blank(const struct lexer *l, size_t i)
{
	return i < l->length ? l->text[i] : ' ';
}

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* An x that multiplies: 2 x 5', 5'x2, but neither `box` nor 0x1F. */
static bool is_cross(const struct lexer *l, size_t i)
{
	char before = i > 0 ? l->text[i - 1] : ' ', after = at_or_blank(l, i + 1);
	bool more = i > 1 && (is_digit(l->text[i - 2]) || l->text[i - 2] == '.');
	bool hexadecimal =
		before == '0' && !more && (is_digit(after) || is_letter(after));

	return !is_letter(before) && !is_letter(after) && !hexadecimal;
}

/* The operator at i that no length can hold, or NULL. */
static const struct sign *sign_at(const struct lexer *l, size_t i)
{
	for (const struct sign *s = signs; s < signs + COUNT(signs); s++) {
		size_t behind = i + strlen(s->text);

		if (!stands_at(l, i, s->text))
			continue;
		if (s->stand == BETWEEN_BLANKS)
			return blank_before(l, i) && blank_at(l, behind) ? s : NULL;
		return s->stand == ANYWHERE || is_cross(l, i) ? s : NULL;
	}
	return NULL;
}

static void refuse(struct lexer *l, enum rb_expression_refusal refusal, size_t where)
{
	l->out->refusal = refusal;
	l->out->where = where;
}

static void refuse_length(struct lexer *l, const struct rb_reading *r, size_t at)
{
	l->out->reading = *r;
	refuse(l, RB_EXPRESSION_LENGTH, at + r->where);
}

static void add(struct lexer *l, char sign, struct rb_ratio value, size_t length)
{
	if (l->out->count == RB_TOKENS) {
		refuse(l, RB_EXPRESSION_BIG, l->at);
		return;
	}
	l->out->item[l->out->count++] = (struct rb_token){ sign, value, l->at, length };
	l->at += length;
}

static void add_sign(struct lexer *l, char sign, size_t length)
{
	add(l, sign, (struct rb_ratio){ 0, 1, false }, length);
}

static struct rb_ratio length_of(const struct rb_reading *r)
{
	return (struct rb_ratio){ r->value.nm, 1, true };
}

/* How far an operand can reach: to the next operator that no length can hold. */
static size_t reach(const struct lexer *l)
{
	size_t end = l->at + 1;

	while (end < l->length && end - l->at < RB_MARKED && !sign_at(l, end))
		end++;
	while (end > l->at + 1 && blank_before(l, end))
		end -= blank_before(l, end);
	return end;
}

/* Has a text what makes a length of a number?  A sign in front does not. */
static bool has_mark(const char *text, size_t length)
{
	struct rb_marked m;
	size_t sign;

	if (!rb_mark(text, length, &m))
		return false;
	sign = m.text[0] == '-';
	return m.text[sign + strspn(m.text + sign, "0123456789., /")] != '\0';
}

/* May a length end here: not within a character, a number or blanks? */
static bool is_end(const struct lexer *l, size_t end)
{
	char before = l->text[end - 1], behind = at_or_blank(l, end);

	if (((unsigned char)behind & 0xC0) == 0x80 || blank_before(l, end))
		return false;
	return !(is_digit(before) && (is_digit(behind) || behind == '.'));
}

/* The longest length with a mark that begins here, or a refusal of it. */
static bool take_length(struct lexer *l)
{
	for (size_t end = reach(l); end > l->at; end--) {
		size_t n = end - l->at;
		struct rb_reading r;

		if (!is_end(l, end) || !has_mark(l->text + l->at, n))
			continue;
		r = rb_reading_parse(l->text + l->at, n, l->rules);
		if (r.refusal == RB_READ)
			add(l, '\0', length_of(&r), n);
		else if (is_faulty[r.refusal])
			refuse_length(l, &r, l->at);
		else
			continue;
		return true;
	}
	return false;
}

/* No number where one begins: two points, a comma, or more figures than are held. */
static void refuse_number(struct lexer *l, size_t end)
{
	struct rb_reading r = rb_reading_parse(l->text + l->at, end - l->at, l->rules);

	if (r.refusal == RB_REFUSE_POINTS || r.refusal == RB_REFUSE_COMMA)
		refuse_length(l, &r, l->at);
	else
		refuse(l, RB_EXPRESSION_BIG, l->at);
}

static bool take_number(struct lexer *l)
{
	bool fraction = l->at == 0 || l->text[l->at - 1] != '/';
	size_t end = reach(l);
	struct rb_marked m;
	struct rb_ratio number;
	const char *text = m.text;

	if (!rb_mark(l->text + l->at, end - l->at, &m) ||
	    (!is_digit(*text) && !(*text == '.' && is_digit(text[1]))))
		return false;
	if (!rb_factor_scan(&text, l->rules, fraction, &number)) {
		refuse_number(l, end);
		return true;
	}
	while (*text == ' ') /* also that of a written-out vulgar fraction */
		text++;
	if (*text != '\0')
		end = l->at + m.at[text - m.text];
	add(l, '\0', number, end - l->at);
	return true;
}

/* A minus or a slash, in any of its characters, that is one for its place only: *n is set
 * to its bytes.  '\0' for everything else. */
static char loose_sign(const struct lexer *l, size_t *n)
{
	struct rb_marked m;

	*n = (unsigned char)l->text[l->at] < 0x80 ? 1 : 3;
	if (l->length - l->at < *n || !rb_mark(l->text + l->at, *n, &m) || m.length != 1)
		return '\0';
	return m.text[0] == '-' || m.text[0] == '/' ? m.text[0] : '\0';
}

static void take_operand(struct lexer *l)
{
	const struct sign *sign = sign_at(l, l->at);
	size_t n;

	if (sign != NULL && sign->sign != '-')
		add_sign(l, sign->sign, strlen(sign->text));
	else if (take_length(l) || take_number(l))
		return;
	else if (loose_sign(l, &n) == '-')
		add_sign(l, '-', n);
	else
		refuse(l, RB_EXPRESSION_SYNTAX, l->at);
}

/* Without blanks on both sides a minus subtracts only beside a bracket: of 5'-3"-1/2"
 * nobody can tell. */
static bool is_beside_bracket(const struct lexer *l, size_t behind)
{
	while (blank_at(l, behind))
		behind += blank_at(l, behind);
	return l->out->item[l->out->count - 1].sign == ')' ||
	       at_or_blank(l, behind) == '(';
}

static void take_operator(struct lexer *l)
{
	const struct sign *sign = sign_at(l, l->at);
	size_t n;
	char loose;

	if (sign != NULL) {
		add_sign(l, sign->sign, strlen(sign->text));
		return;
	}
	loose = loose_sign(l, &n);
	if (loose == '/' || (loose == '-' && is_beside_bracket(l, l->at + n)))
		add_sign(l, loose, n);
	else
		refuse(l, RB_EXPRESSION_SYNTAX, l->at);
}

static bool wants_operand(const struct rb_tokens *t)
{
	char last = t->count > 0 ? t->item[t->count - 1].sign : '(';

	return last != '\0' && last != ')';
}

/* Is it one length, or one that went wrong, rather than an expression? */
static bool is_lone(const struct lexer *l)
{
	for (size_t i = 0; i < l->length; i++) {
		char before = i > 0 ? l->text[i - 1] : '0';

		if (sign_at(l, i) != NULL && !(i == 0 && l->text[i] == '+'))
			return false;
		if (l->text[i] == '/' && !is_digit(before) && before != ' ')
			return false; /* 5'/2 */
	}
	return true;
}

static void take_lone(struct lexer *l)
{
	struct rb_reading r = rb_reading_parse(l->text, l->length, l->rules);

	if (r.refusal == RB_READ)
		add(l, '\0', length_of(&r), l->length);
	else if (r.refusal == RB_REFUSE_EMPTY) /* an apostrophe, blanks without width */
		refuse(l, RB_EXPRESSION_EMPTY, 0);
	else
		refuse_length(l, &r, 0);
}

/* Nothing has a mark and nothing is multiplied: all numbers are readings of the book. */
static void turn_to_lengths(struct lexer *l)
{
	struct rb_token *first = l->out->item, *end = first + l->out->count;

	for (struct rb_token *t = first; t < end; t++)
		if (t->value.is_length || t->sign == '*' || t->sign == '/')
			return;
	for (struct rb_token *t = first; t < end; t++) {
		struct rb_reading r;

		if (t->sign != '\0')
			continue;
		r = rb_reading_parse(l->text + t->at, t->length, l->rules);
		if (r.refusal != RB_READ) {
			refuse_length(l, &r, t->at);
			return;
		}
		t->value = length_of(&r);
	}
}

static void take_all(struct lexer *l)
{
	while (l->out->refusal == RB_EXPRESSION_READ && l->at < l->length) {
		if (blank_at(l, l->at))
			l->at += blank_at(l, l->at);
		else if (wants_operand(l->out))
			take_operand(l);
		else
			take_operator(l);
	}
	if (l->out->refusal == RB_EXPRESSION_READ)
		turn_to_lengths(l);
}

void rb_tokens_read(const char *text, size_t length, const struct rb_reading_rules *rules,
		    struct rb_tokens *out)
{
	struct lexer l = { text, length, 0, rules, out };
	size_t before = 0;

	*out = (struct rb_tokens){ .refusal = RB_EXPRESSION_READ };
	while (blank_before(&l, l.length))
		l.length -= blank_before(&l, l.length);
	while (blank_at(&l, before))
		before += blank_at(&l, before);
	l.text += before;
	l.length -= before;
	if (l.length == 0)
		refuse(&l, RB_EXPRESSION_EMPTY, 0);
	else if (is_lone(&l))
		take_lone(&l);
	else
		take_all(&l);
	out->where += before;
	for (int i = 0; i < out->count; i++)
		out->item[i].at += before;
}
