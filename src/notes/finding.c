/* SPDX-License-Identifier: MIT */
/* A list of findings that can always take one more. */
#include "rodbook/finding.h"

#include <string.h>

static const struct {
	enum rb_severity severity;
	const char *name;
} codes[RB_CODES] = {
#define RB_CODE(code, severity, name) [RB_CODE_##code] = { RB_##severity, name },
#include "rodbook/codes.def"
#undef RB_CODE
};

enum rb_severity rb_code_severity(enum rb_code code)
{
	return codes[code].severity;
}

const char *rb_code_name(enum rb_code code)
{
	return codes[code].name;
}

void rb_findings_init(struct rb_findings *findings, struct rb_arena *arena,
		      const char *file)
{
	*findings = (struct rb_findings){ .file = file, .arena = arena };
}

bool rb_findings_no_memory(struct rb_findings *findings)
{
	findings->out_of_memory = true;
	return false;
}

bool rb_findings_allow_result(const struct rb_findings *findings)
{
	return !findings->out_of_memory && !findings->of_severity[RB_ERROR];
}

const char *rb_findings_text(struct rb_findings *findings, const char *text,
			     size_t length)
{
	const char *kept = rb_arena_text(findings->arena, text, length);

	if (!kept)
		rb_findings_no_memory(findings);
	return kept ? kept : "";
}

/* Room for one more; the list at most doubles, so the arena wastes no more than it holds.
 */
static bool make_room(struct rb_findings *findings)
{
	size_t room = findings->room ? 2 * findings->room : 16;
	struct rb_finding **item;

	if (findings->count < findings->room)
		return true;
	item = rb_arena_take(findings->arena, room, sizeof *item);
	if (!item)
		return rb_findings_no_memory(findings);
	if (findings->count)
		memcpy(item, findings->item, findings->count * sizeof *item);
	findings->item = item;
	findings->room = room;
	return true;
}

void rb_findings_add4(struct rb_findings *findings, enum rb_code code,
		      struct rb_place place,
		      const struct rb_argument argument[RB_ARGUMENTS])
{
	struct rb_finding *finding;

	findings->of_severity[codes[code].severity]++;
	if (findings->of_code[code]++ >= RB_FINDINGS_OF_A_KIND || !make_room(findings))
		return;
	finding = rb_arena_take(findings->arena, 1, sizeof *finding);
	if (!finding) {
		rb_findings_no_memory(findings);
		return;
	}
	finding->code = code;
	finding->place = place;
	memcpy(finding->argument, argument, sizeof finding->argument);
	findings->item[findings->count++] = finding;
}

void rb_findings_add(struct rb_findings *findings, enum rb_code code,
		     struct rb_place place, struct rb_argument first,
		     struct rb_argument second)
{
	const struct rb_argument argument[RB_ARGUMENTS] = { first, second, rb_nothing(),
							    rb_nothing() };

	rb_findings_add4(findings, code, place, argument);
}
