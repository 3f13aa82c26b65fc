/* SPDX-License-Identifier: MIT */
/*
 * Any bytes as a rules file and as a jurisdiction: rules stand by size, each size has the
 * one that speaks of it, and limits stand by depth.
 */
#include "drain/jurisdiction.h"
#include "drain/pipe.h"
#include "drain/rules.h"
#include "rodbook/plan.h"
#include "work.h"

/* A size as it is called: 150 mm is 6 in, and larger than 151 mm. */
static int64_t named(rb_length size)
{
	return rb_pipe_size_by_name(size).nm;
}

static void check_order(const struct rb_rules *rules)
{
	for (uint32_t i = 0; i < rules->rules; i++) {
		const struct rb_rule *rule = &rules->rule[i];

		HOLDS(rb_slope_given(rule->minimum) && rule->minimum.fall.nm >= 0);
		HOLDS(!rb_slope_is_steep(rule->minimum));
		HOLDS(rb_length_given(rule->up_to) || i + 1 == rules->rules);
		if (i > 0 && rb_length_given(rule->up_to))
			HOLDS(named(rule->up_to) > named(rules->rule[i - 1].up_to));
	}
}

/* Is a size not above another, or called the same?  4 in and 100 mm are one size. */
static bool reaches(rb_length up_to, rb_length size)
{
	return !rb_length_given(up_to) || up_to.nm * 10 >= size.nm * 9;
}

/* The first rule that is not for smaller pipes only. */
static void check_found(const struct rb_rules *rules, rb_length size)
{
	const struct rb_rule *found = rb_rules_find(rules, size);

	if (!found)
		return;
	HOLDS(found >= rules->rule && found < rules->rule + rules->rules);
	HOLDS(reaches(found->up_to, size));
	if (found > rules->rule)
		HOLDS(named(found[-1].up_to) < named(size));
	if (rb_length_given(rules->smallest))
		HOLDS(reaches(size, rules->smallest));
}

static void check_rules(struct rb_arena *arena, const uint8_t *data, size_t size)
{
	struct rb_findings findings;
	const struct rb_rules *rules;

	rb_findings_init(&findings, arena, "rules.csv");
	rules = rb_rules_read(arena, &findings, (const char *)data, size);
	HOLDS(rules || !rb_findings_allow_result(&findings));
	if (rules && rb_findings_allow_result(&findings)) {
		check_order(rules);
		for (int64_t inches = 1; inches < 64; inches += 1 + inches / 4)
			check_found(rules, rb_length_of(inches * RB_INCH));
		for (uint32_t i = 0; i < rules->rules; i++)
			if (rb_length_given(rules->rule[i].up_to))
				check_found(rules, rules->rule[i].up_to);
	}
	check_messages(&findings, drawn_from(data, size));
}

static void check_jurisdiction(struct rb_arena *arena, const uint8_t *data, size_t size)
{
	struct rb_findings findings;
	const struct rb_jurisdiction *found;

	rb_findings_init(&findings, arena, "jurisdiction.csv");
	found = rb_jurisdiction_read(arena, &findings, (const char *)data, size);
	HOLDS(found || !rb_findings_allow_result(&findings));
	for (size_t i = 0; found && i < found->limits; i++) {
		HOLDS(rb_length_given(found->limit[i].depth));
		if (i > 0)
			HOLDS(found->limit[i].depth.nm >= found->limit[i - 1].depth.nm);
	}
	check_messages(&findings, drawn_from(data, size));
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
	struct rb_arena *arena = rb_arena_new(NULL);

	HOLDS(arena);
	check_rules(arena, data, size);
	check_jurisdiction(arena, data, size);
	rb_arena_free(arena);
	return 0;
}
