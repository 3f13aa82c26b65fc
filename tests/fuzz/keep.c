/* SPDX-License-Identifier: MIT */
/*
 * Seeds for the fuzzer out of the tests: what a test program hands to a reader is kept as
 * a file.  Linked into the test programs in place of the readers (--wrap), so that every
 * printed example and every odd cell of a test is a seed and none is written twice.
 *
 * SEEDS names the folder; in it there is one for each reader.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "drain/jurisdiction.h"
#include "drain/rules.h"
#include "level/two_peg.h"
#include "measure/expression.h"
#include "record/ledger.h"
#include "rodbook/rodbook.h"

#define LONGEST 8192 /* a seed that is slow to run is none */
#define MOST                                                                             \
	400 /* files and as many lines, of one program: some tests make them             \
	     * by the million */

/* The name of a file is drawn from what is in it: the same again is the same file. */
static uint64_t digest(const char *bytes, size_t length)
{
	uint64_t hash = UINT64_C(14695981039346656037);

	for (size_t i = 0; i < length; i++)
		hash = (hash ^ (unsigned char)bytes[i]) * UINT64_C(1099511628211);
	return hash;
}

static void keep(const char *kind, const char *head, const char *bytes, size_t length)
{
	const char *folder = getenv("SEEDS");
	char name[512];
	FILE *file;

	if (!folder || length > LONGEST)
		return;
	snprintf(name, sizeof name, "%s/%s/%s%016llx", folder, kind, head,
		 (unsigned long long)digest(bytes, length));
	file = fopen(name, "wbx");
	if (!file)
		return;
	fwrite(head, 1, strlen(head), file);
	fwrite(bytes, 1, length, file);
	fclose(file);
}

static void keep_file(const char *kind, const char *bytes, size_t length)
{
	static int kept;

	if (++kept <= MOST)
		keep(kind, "", bytes, length);
}

/* Two letters, as fuzz_reading.c and fuzz_expression.c have them. */
static void keep_with_rules(const char *kind, const char *text, size_t length,
			    const struct rb_reading_rules *rules, int flags)
{
	static int kept;
	char head[3] = { 'A', ' ', '\0' };

	if (++kept > MOST)
		return;
	head[0] = (char)(head[0] + (int)rules->unit);
	head[1] = (char)(head[1] + (int)rules->kind + 4 * rules->decimal_comma + flags);
	keep(kind, head, text, length);
}

struct rb_reading __real_rb_reading_parse(const char *, size_t,
					  const struct rb_reading_rules *);
struct rb_reading __wrap_rb_reading_parse(const char *, size_t,
					  const struct rb_reading_rules *);
struct rb_reading __wrap_rb_reading_parse(const char *text, size_t length,
					  const struct rb_reading_rules *rules)
{
	if (length > 0 && length < 80)
		keep_with_rules("reading", text, length, rules,
				rules->limit.nm > 0 ? 8 : 0);
	return __real_rb_reading_parse(text, length, rules);
}

struct rb_reading __real_rb_chainage_parse(const char *, size_t,
					   const struct rb_reading_rules *);
struct rb_reading __wrap_rb_chainage_parse(const char *, size_t,
					   const struct rb_reading_rules *);
struct rb_reading __wrap_rb_chainage_parse(const char *text, size_t length,
					   const struct rb_reading_rules *rules)
{
	if (length > 0 && length < 80)
		keep_with_rules("reading", text, length, rules, 0x10);
	return __real_rb_chainage_parse(text, length, rules);
}

void __real_rb_expression_parse(const char *, size_t, const struct rb_reading_rules *,
				struct rb_expression *);
void __wrap_rb_expression_parse(const char *, size_t, const struct rb_reading_rules *,
				struct rb_expression *);
void __wrap_rb_expression_parse(const char *text, size_t length,
				const struct rb_reading_rules *rules,
				struct rb_expression *out)
{
	keep_with_rules("expression", text, length, rules, 0);
	__real_rb_expression_parse(text, length, rules, out);
}

enum rb_slope_refusal __real_rb_slope_parse(const char *, size_t, rb_slope *);
enum rb_slope_refusal __wrap_rb_slope_parse(const char *, size_t, rb_slope *);
enum rb_slope_refusal __wrap_rb_slope_parse(const char *text, size_t length,
					    rb_slope *out)
{
	keep_file("slope", text, length);
	return __real_rb_slope_parse(text, length, out);
}

bool __real_rb_tolerance_parse(const char *, size_t, enum rb_unit, bool,
			       struct rb_tolerance *);
bool __wrap_rb_tolerance_parse(const char *, size_t, enum rb_unit, bool,
			       struct rb_tolerance *);
bool __wrap_rb_tolerance_parse(const char *text, size_t length, enum rb_unit unit,
			       bool decimal_comma, struct rb_tolerance *out)
{
	struct rb_reading_rules rules = { unit, RB_OF_ROD, decimal_comma,
					  rb_length_none() };

	keep_with_rules("tolerance", text, length, &rules, 0);
	return __real_rb_tolerance_parse(text, length, unit, decimal_comma, out);
}

/* clang-format off */
#define KEEP_FILE(type, name, kind)                                                      \
	type __real_##name(struct rb_arena *, struct rb_findings *, const char *, size_t); \
	type __wrap_##name(struct rb_arena *, struct rb_findings *, const char *, size_t); \
	type __wrap_##name(struct rb_arena *arena, struct rb_findings *findings,         \
			   const char *bytes, size_t length)                             \
	{                                                                                \
		keep_file(kind, bytes, length);                                          \
		return __real_##name(arena, findings, bytes, length);                    \
	}

KEEP_FILE(struct rb_book *, rb_book_read, "book")
KEEP_FILE(struct rb_plan *, rb_plan_read, "plan")
KEEP_FILE(struct rb_two_peg *, rb_two_peg_read, "peg")
KEEP_FILE(struct rb_rules *, rb_rules_read, "rules")
KEEP_FILE(const struct rb_jurisdiction *, rb_jurisdiction_read, "rules")
/* clang-format on */

bool __real_rb_ledger_read(struct rb_ledger *, struct rb_findings *, const char *,
			   size_t);
bool __wrap_rb_ledger_read(struct rb_ledger *, struct rb_findings *, const char *,
			   size_t);
bool __wrap_rb_ledger_read(struct rb_ledger *ledger, struct rb_findings *findings,
			   const char *bytes, size_t length)
{
	keep_file("record", bytes, length);
	return __real_rb_ledger_read(ledger, findings, bytes, length);
}
