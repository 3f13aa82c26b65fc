/* SPDX-License-Identifier: MIT */
/* expression.c - tokens worked out: * and / before + and -, brackets first. */
#include "measure/expression.h"

#include "measure/ratio.h"
#include "measure/token.h"
#include "measure/wide.h"

#define DEEPEST 32

struct parser {
	const struct rb_tokens *tokens;
	struct rb_expression *out;
	int at, depth;
};

/* Refuse at the token that comes next, or behind the last. */
static bool refuse(struct parser *p, enum rb_expression_refusal refusal)
{
	const struct rb_tokens *t = p->tokens;

	p->out->refusal = refusal;
	if (p->at < t->count)
		p->out->where = t->item[p->at].at;
	else if (t->count)
		p->out->where = t->item[t->count - 1].at + t->item[t->count - 1].length;
	return false;
}

static char next_sign(const struct parser *p)
{
	return p->at < p->tokens->count ? p->tokens->item[p->at].sign : '\0';
}

/* One operation; `right` began with the token `from`. */
static bool work(struct parser *p, int from, struct rb_ratio *left, struct rb_ratio right)
{
	char sign = p->tokens->item[from - 1].sign;
	struct rb_ratio result;
	enum rb_expression_refusal refusal = rb_ratio_work(sign, *left, right, &result);

	if (refusal == RB_EXPRESSION_READ && p->out->steps == RB_OPERATIONS)
		refusal = RB_EXPRESSION_BIG;
	if (refusal != RB_EXPRESSION_READ) {
		p->at = from;
		return refuse(p, refusal);
	}
	p->out->step[p->out->steps++] =
		(struct rb_operation){ sign, *left, right, result };
	*left = result;
	return true;
}

static bool sum(struct parser *p, struct rb_ratio *out);

/* NOLINTNEXTLINE(misc-no-recursion): brackets nest at most DEEPEST deep */
static bool operand(struct parser *p, struct rb_ratio *out)
{
	bool minus = false;

	while (next_sign(p) == '-' || next_sign(p) == '+')
		minus ^= p->tokens->item[p->at++].sign == '-';
	if (p->at == p->tokens->count)
		return refuse(p, RB_EXPRESSION_SYNTAX);
	if (next_sign(p) == '(') {
		p->at++;
		if (++p->depth > DEEPEST)
			return refuse(p, RB_EXPRESSION_BIG);
		if (!sum(p, out))
			return false;
		if (next_sign(p) != ')')
			return refuse(p, RB_EXPRESSION_SYNTAX);
		p->depth--;
	} else if (next_sign(p)) {
		return refuse(p, RB_EXPRESSION_SYNTAX);
	} else {
		*out = p->tokens->item[p->at].value;
	}
	p->at++;
	if (minus)
		out->num = -out->num;
	return true;
}

/* NOLINTNEXTLINE(misc-no-recursion): as operand() */
static bool product(struct parser *p, struct rb_ratio *out)
{
	struct rb_ratio right;

	if (!operand(p, out))
		return false;
	while (next_sign(p) == '*' || next_sign(p) == '/') {
		int from = ++p->at;

		if (!operand(p, &right) || !work(p, from, out, right))
			return false;
	}
	return true;
}

/* NOLINTNEXTLINE(misc-no-recursion): as operand() */
static bool sum(struct parser *p, struct rb_ratio *out)
{
	struct rb_ratio right;

	if (!product(p, out))
		return false;
	while (next_sign(p) == '+' || next_sign(p) == '-') {
		int from = ++p->at;

		if (!product(p, &right) || !work(p, from, out, right))
			return false;
	}
	return true;
}

static void settle(struct rb_expression *out)
{
	int64_t nm;

	if (!out->ratio.is_length) {
		out->refusal = RB_EXPRESSION_NUMBER;
		return;
	}
	nm = rb_wide_divide(out->ratio.num, out->ratio.den);
	if (nm > RB_LENGTH_MAX || nm < -RB_LENGTH_MAX) {
		out->refusal = RB_EXPRESSION_BIG;
		return;
	}
	out->value = rb_length_of(nm);
	out->exact = out->ratio.den == 1;
}

void rb_expression_parse(const char *text, size_t length,
			 const struct rb_reading_rules *rules, struct rb_expression *out)
{
	struct rb_tokens tokens;
	struct parser p = { &tokens, out, 0, 0 };

	*out = (struct rb_expression){ .refusal = RB_EXPRESSION_READ };
	rb_tokens_read(text, length, rules, &tokens);
	if (tokens.refusal != RB_EXPRESSION_READ) {
		out->refusal = tokens.refusal;
		out->where = tokens.where;
		out->reading = tokens.reading;
		return;
	}
	if (!sum(&p, &out->ratio))
		return;
	if (p.at < tokens.count)
		refuse(&p, RB_EXPRESSION_SYNTAX);
	else
		settle(out);
}
