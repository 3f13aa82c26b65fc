/* SPDX-License-Identifier: MIT */
/* Which separator a file uses: the one under which its header can be recognised. */
#include "notes/rows.h"

#define LOOK_AT 65536 /* bytes from the start; the header stands within */

struct search {
	bool (*is_header)(void *self, const struct rb_record *record);
	void *self;
	bool found;
};

static bool look(void *self, const struct rb_record *record)
{
	struct search *search = self;

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
	rb_rows_read(arena, &unheard, &start, look, search);
	return search->found;
}

void rb_source_separate(struct rb_arena *arena, struct rb_source *source,
			bool (*is_header)(void *self, const struct rb_record *record),
			void *self)
{
	const char candidates[] = { source->separator, ',', ';', '\t' };
	struct search search = { is_header, self, false };

	for (size_t i = 0; i < sizeof candidates; i++) {
		if (!candidates[i] || !has_header(arena, source, candidates[i], &search))
			continue;
		source->separator = candidates[i];
		return;
	}
	if (!source->separator)
		source->separator = ',';
}
