/* SPDX-License-Identifier: MIT */
/* Which separator a file uses: the one under which its header can be recognised. */
#include "notes/rows.h"

#define LOOK_AT 65536 /* bytes from the start; the header stands within */

struct search {
	bool (*is_header)(void *self, const struct rb_record *record);
	void *self;
	bool found, no_memory;
	size_t faults, cells; /* under the separator last tried */
};

static bool look(void *self, const struct rb_record *record)
{
	struct search *search = self;

	search->cells += record->cells;
	search->found = search->is_header(search->self, record);
	return !search->found;
}

static bool has_header(struct rb_arena *arena, const struct rb_source *source,
		       char separator, struct search *search)
{
	struct rb_source start = *source;
	struct rb_findings unheard;

	rb_findings_init(&unheard, arena, "");
	start.separator = separator;
	start.long_record = NULL;
	start.long_room = 0;
	if (start.length > LOOK_AT)
		start.length = LOOK_AT;
	search->found = false;
	search->cells = 0;
	rb_rows_read(arena, &unheard, &start, look, search);
	search->faults = unheard.of_severity[RB_ERROR];
	search->no_memory = unheard.out_of_memory;
	return search->found;
}

/* Without a header the best that can be said: the fewest faults in the quotes, and of two
 * that are alike the one that parts the most cells. */
struct best {
	char separator;
	size_t faults, cells;
};

static void hold_against(struct best *best, char separator, const struct search *search)
{
	if (best->separator &&
	    (search->faults > best->faults ||
	     (search->faults == best->faults && search->cells <= best->cells)))
		return;
	*best = (struct best){ separator, search->faults, search->cells };
}

bool rb_source_separate(struct rb_arena *arena, struct rb_source *source,
			bool (*is_header)(void *self, const struct rb_record *record),
			void *self)
{
	const char candidates[] = { source->separator, ',', ';', '\t' };
	struct search search = { .is_header = is_header, .self = self };
	struct best best = { '\0', 0, 0 };

	for (size_t i = 0; i < sizeof candidates; i++) {
		if (!candidates[i])
			continue;
		if (has_header(arena, source, candidates[i], &search)) {
			source->separator = candidates[i];
			return true;
		}
		if (search.no_memory)
			return false;
		hold_against(&best, candidates[i], &search);
	}
	if (!source->separator)
		source->separator = best.separator;
	return true;
}
