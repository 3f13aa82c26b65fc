/* SPDX-License-Identifier: MIT */
/* message_order.c - findings by place, those of one place as they were found. */
#include "report/message_order.h"

/* By line and cell.  Faults of the file as a whole explain all others; its notes sum up.
 */
static uint64_t rank_of(const struct rb_finding *finding)
{
	const struct rb_place *place = &finding->place;

	if (place->line)
		return (uint64_t)place->line << 32 | (uint32_t)(place->cell + 1);
	return rb_code_severity(finding->code) == RB_ERROR ? 0 : UINT64_MAX;
}

/* Merge two sorted neighbours, the earlier first where they are equal. */
static void merge(const struct rb_finding **to, const struct rb_finding *const *from,
		  size_t left, size_t middle, size_t right)
{
	size_t a = left, b = middle;

	for (size_t i = left; i < right; i++)
		if (a < middle && (b == right || rank_of(from[a]) <= rank_of(from[b])))
			to[i] = from[a++];
		else
			to[i] = from[b++];
}

const struct rb_finding **rb_messages_in_order(const struct rb_findings *findings)
{
	size_t count = findings->count;
	const struct rb_finding **list =
		count ? rb_arena_take(findings->arena, 2 * count, sizeof *list) : NULL;
	const struct rb_finding **other = list ? list + count : NULL;

	if (!list)
		return NULL;
	for (size_t i = 0; i < count; i++)
		list[i] = findings->item[i];
	for (size_t run = 1; run < count; run *= 2) {
		const struct rb_finding **swap = list;

		for (size_t left = 0; left < count; left += 2 * run) {
			size_t middle = left + run < count ? left + run : count;
			size_t right = left + 2 * run < count ? left + 2 * run : count;

			merge(other, list, left, middle, right);
		}
		list = other;
		other = swap;
	}
	return list;
}

size_t rb_messages_others(const struct rb_findings *findings,
			  const struct rb_finding *finding,
			  size_t written[static RB_CODES])
{
	bool last = ++written[finding->code] == RB_FINDINGS_OF_A_KIND;

	return last ? findings->of_code[finding->code] - RB_FINDINGS_OF_A_KIND : 0;
}
