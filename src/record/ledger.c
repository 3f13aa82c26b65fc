/* SPDX-License-Identifier: MIT */
/* Books into the record, each once. */
#include "record/ledger.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "notes/names.h"
#include "report/titles.h"

#define SHORT_DIGEST 12 /* digits: enough to find its lines */

struct rb_ledger *rb_ledger_new(struct rb_arena *arena)
{
	struct rb_ledger *ledger = rb_arena_take_clear(arena, 1, sizeof *ledger);

	if (!ledger)
		return NULL;
	ledger->arena = arena;
	ledger->by_digest.arena = ledger->by_name.arena = arena;
	return ledger;
}

/* -- room ------------------------------------------------------------------------ */

/* The array, or a larger copy of it; NULL without memory. */
static void *grown(struct rb_arena *arena, void *old, uint32_t used, uint32_t *room,
		   uint32_t wanted, size_t size)
{
	uint32_t more = *room ? *room : 16;
	void *copy;

	if (old && wanted <= *room)
		return old;
	while (more < wanted)
		more = more > UINT32_MAX / 2 ? UINT32_MAX : 2 * more;
	copy = rb_arena_take(arena, more, size);
	if (copy && old)
		memcpy(copy, old, used * size);
	if (copy)
		*room = more;
	return copy;
}

struct rb_entry *rb_ledger_room(struct rb_ledger *ledger, uint32_t more)
{
	struct rb_entry *entry;

	if (more > UINT32_MAX - ledger->entries)
		return NULL;
	entry = grown(ledger->arena, ledger->entry, ledger->entries, &ledger->entry_room,
		      ledger->entries + more, sizeof *entry);
	if (!entry)
		return NULL;
	ledger->entry = entry;
	return entry + ledger->entries;
}

static struct rb_recorded_book *room_for_book(struct rb_ledger *ledger)
{
	struct rb_recorded_book *book =
		grown(ledger->arena, ledger->book, ledger->books, &ledger->book_room,
		      ledger->books + 1, sizeof *book);

	if (!book)
		return NULL;
	ledger->book = book;
	return book + ledger->books;
}

/* -- versions -------------------------------------------------------------------- */

/* Name, date and project as one text, forgiving case and blanks; NULL without memory. */
static const char *identity(struct rb_arena *arena, const struct rb_recorded_book *book)
{
	const char *const part[] = { book->name, book->date, book->project };
	size_t length = 0, used = 0;
	char *text;

	for (size_t i = 0; i < sizeof part / sizeof *part; i++)
		length += strlen(part[i]) + 2;
	text = rb_arena_take(arena, length, 1);
	for (size_t i = 0; text && i < sizeof part / sizeof *part; i++) {
		used += rb_name_fold(text + used, part[i], strlen(part[i]));
		text[used++] = '\n'; /* no folded text has one */
	}
	if (text)
		text[used] = '\0';
	return text;
}

/* "larch.csv version 1 (3fa9c1d2e4b5)"; NULL without memory. */
static const char *name_version(struct rb_arena *arena,
				const struct rb_recorded_book *book)
{
	size_t room = strlen(book->name) + SHORT_DIGEST + 32;
	char *text = rb_arena_take(arena, room, 1);

	if (!text)
		return NULL;
	if (*book->digest)
		snprintf(text, room, "%s version %" PRIu32 " (%.*s)", book->name,
			 book->version, SHORT_DIGEST, book->digest);
	else
		snprintf(text, room, "%s version %" PRIu32, book->name, book->version);
	return text;
}

/* What a book is to the latest of its name.  Lines of a record may have been sorted, so
 * that a later version stands first. */
static bool set_version(struct rb_ledger *ledger, struct rb_recorded_book *book)
{
	struct rb_recorded_book *older;

	if (book->older == RB_NO_BOOK) {
		book->version = book->version ? book->version : 1;
		return true;
	}
	older = &ledger->book[book->older];
	if (book->version && book->version < older->version) {
		book->replaced = true;
		book->older = RB_NO_BOOK;
		return true;
	}
	older->replaced = true;
	if (!book->version)
		book->version = older->version + 1;
	if (*book->replaces)
		return true;
	book->replaces = name_version(ledger->arena, older);
	return book->replaces != NULL;
}

/* What a book is looked up by: one without a digest by its name. */
static const char *mark_of(const struct rb_recorded_book *book, const char *key)
{
	return *book->digest ? book->digest : key;
}

uint32_t rb_ledger_find(const struct rb_ledger *ledger,
			const struct rb_recorded_book *book)
{
	const char *key = *book->digest ? "" : identity(ledger->arena, book);

	return key ? rb_index_find(&ledger->by_digest, mark_of(book, key)) : RB_NO_BOOK;
}

uint32_t rb_ledger_enter(struct rb_ledger *ledger, const struct rb_recorded_book *book)
{
	struct rb_recorded_book *in = room_for_book(ledger);
	const char *key = identity(ledger->arena, book);

	if (!in || !key)
		return RB_NO_BOOK;
	*in = *book;
	in->older = rb_index_find(&ledger->by_name, key);
	if (!set_version(ledger, in) ||
	    !rb_index_set(&ledger->by_digest, mark_of(in, key), ledger->books))
		return RB_NO_BOOK;
	if (!in->replaced && !rb_index_set(&ledger->by_name, key, ledger->books))
		return RB_NO_BOOK;
	return ledger->books++;
}

/* -- adding ---------------------------------------------------------------------- */

static bool refuse(struct rb_findings *findings, const struct rb_recorded_book *book)
{
	rb_findings_add(findings, RB_CODE_ALREADY_RECORDED, rb_in_file(),
			rb_text(book->name), rb_text(book->date));
	return false;
}

static void say_version(const struct rb_recorded_book *book)
{
	if (book->older != RB_NO_BOOK)
		rb_findings_add(book->findings, RB_CODE_NEW_VERSION, rb_in_file(),
				rb_text(book->replaces), rb_nothing());
}

/* The unit of its numbers: a decimal column is never in feet and inches. */
static enum rb_unit decimal_unit(enum rb_unit unit)
{
	return unit == RB_FEET_INCHES ? RB_FEET : unit;
}

static struct rb_recorded_book describe(const struct rb_reduction *reduction,
					struct rb_findings *findings, const char *digest)
{
	const struct rb_book *book = rb_reduction_book(reduction);

	return (struct rb_recorded_book){
		.name = rb_title_file(book->file),
		.date = book->key.date,
		.project = book->key.project,
		.datum = book->key.datum,
		.digest = digest,
		.replaces = "",
		.is_new = true,
		.unit = decimal_unit(reduction->style.unit),
		.style = reduction->style,
		.reduction = *reduction,
		.findings = findings,
	};
}

/* An elevation that is rounded up where it is written, to a foot at most, must not be
 * beyond what can be read again: nothing more could be added to such a record. */
static bool is_recordable(rb_length elevation)
{
	return !rb_length_given(elevation) ||
	       rb_length_absolute(elevation).nm <= RB_LENGTH_MAX - RB_FOOT;
}

static bool are_recordable(const struct rb_reduction *reduction,
			   struct rb_findings *findings)
{
	const struct rb_reduced *reduced = rb_reduction_reduced(reduction);

	for (uint32_t i = 0; i < reduced->shots; i++) {
		if (is_recordable(reduced->shot[i].elevation) &&
		    is_recordable(rb_shot_adjusted(reduction->adjusted, i)) &&
		    is_recordable(rb_shot_below(reduction->adjusted, i)))
			continue;
		rb_findings_add(
			findings, RB_CODE_BEYOND_HEIGHTS,
			rb_book_place(reduced->book, reduced->shot[i].row, RB_POINT),
			rb_text("elevation"), rb_nothing());
		return false;
	}
	return true;
}

bool rb_ledger_add(struct rb_ledger *ledger, struct rb_findings *findings,
		   const struct rb_reduction *reduction, const char *digest)
{
	uint32_t shots = rb_reduction_reduced(reduction)->shots;
	uint32_t same = rb_index_find(&ledger->by_digest, digest);
	const char *kept = rb_arena_text(ledger->arena, digest, strlen(digest));
	struct rb_recorded_book book;
	struct rb_entry *entry;
	uint32_t number;

	if (same != RB_NOT_IN_INDEX)
		return refuse(findings, &ledger->book[same]);
	if (!are_recordable(reduction, findings))
		return false;
	if (!kept)
		return rb_findings_no_memory(findings);
	book = describe(reduction, findings, kept);
	book.first = ledger->entries;
	book.entries = shots;
	entry = rb_ledger_room(ledger, shots);
	number = entry ? rb_ledger_enter(ledger, &book) : RB_NO_BOOK;
	if (number == RB_NO_BOOK ||
	    !rb_entries_of(ledger->arena, reduction, number, entry))
		return rb_findings_no_memory(findings);
	ledger->entries += shots;
	say_version(&ledger->book[number]);
	return true;
}
