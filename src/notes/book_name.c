/* SPDX-License-Identifier: MIT */
/* The name of a row: a station written short, one that was mangled, one of sums. */
#include <string.h>

#include "notes/book_reader.h"
#include "notes/mangled.h"

static bool is_digit(char c)
{
	return c >= '0' && c <= '9';
}

static size_t digits_at(const char *s, size_t length)
{
	size_t n = 0;

	while (n < length && is_digit(s[n]))
		n++;
	return n;
}

struct rb_cell rb_book_whole_station(struct rb_book_reader *r, struct rb_cell cell,
				     char whole[static 64])
{
	size_t before = digits_at(cell.text, cell.length);
	size_t after;
	bool plus = before < cell.length && cell.text[before] == '+';

	if (plus && before && before < sizeof r->hundreds &&
	    digits_at(cell.text + before + 1, cell.length - before - 1) >= 2) {
		memcpy(r->hundreds, cell.text, before);
		r->hundreds_length = before;
		return cell;
	}
	after = plus ? digits_at(cell.text + 1, cell.length - 1) : before;
	if (!r->hundreds_length || cell.length > 24 || after < 2 || after > 3 ||
	    (plus ? before != 0 : before != 2 || cell.length != 2))
		return cell;
	memcpy(whole, r->hundreds, r->hundreds_length);
	whole[r->hundreds_length] = '+';
	memcpy(whole + r->hundreds_length + 1, cell.text + plus, cell.length - plus);
	return (struct rb_cell){ whole, r->hundreds_length + 1 + cell.length - plus };
}

static bool note_spelling(struct rb_book_reader *r, struct rb_cell typed)
{
	struct rb_book *book = r->book;
	void *list = book->spelling;

	if (!rb_book_grow(r, &list, book->spellings, sizeof *book->spelling))
		return false;
	book->spelling = list;
	book->spelling[book->spellings++] =
		(struct rb_spelling){ book->rows,
				      rb_book_store(r, typed.text, typed.length) };
	return true;
}

/* What a sheet or a wrong encoding leaves begins with a figure or such a sign, or is no
 * ASCII: nearly no name is. */
static bool may_be_mangled(const struct rb_book_reader *r, struct rb_cell name)
{
	return r->names.letters == RB_NOT_PLAIN || is_digit(name.text[0]) ||
	       name.text[0] == '#' || name.text[0] == 'E';
}

static void say_mangled(struct rb_book_reader *r, const struct rb_record *record,
			struct rb_cell name)
{
	char meant[RB_MANGLED_NAME];

	switch (rb_name_mangled(name.text, name.length, meant)) {
	case RB_MANGLED_BY_SHEET:
		rb_book_say(r, record, RB_POINT, RB_CODE_MANGLED_NAME,
			    rb_book_kept(r, name), rb_nothing());
		return;
	case RB_MANGLED_LETTERS:
		rb_book_say(r, record, RB_POINT, RB_CODE_MANGLED_LETTERS,
			    rb_book_kept(r, name),
			    rb_book_kept(r, (struct rb_cell){ meant, strlen(meant) }));
		return;
	case RB_NOT_MANGLED:
		return;
	}
}

bool rb_book_take_name(struct rb_book_reader *r, const struct rb_record *record,
		       struct rb_cell typed, struct rb_cell name)
{
	struct rb_row *row = &r->book->row[r->book->rows];
	uint32_t offset;

	row->point = typed.length ? rb_names_sought(&r->names) : RB_NO_POINT;
	if (!typed.length)
		return true;
	if (row->point != RB_NO_POINT)
		return !strcmp(rb_book_point(r->book, row->point), typed.text) ||
		       note_spelling(r, typed);
	if (may_be_mangled(r, typed))
		say_mangled(r, record, typed);
	offset = rb_book_store(r, name.text, name.length);
	rb_names_enter(&r->names, offset, &row->point);
	r->book->points = r->names.count;
	r->book->is_known[row->point] = false;
	return name.text == typed.text || note_spelling(r, typed);
}

/* What a row holds under the sight columns, as bits. */
static unsigned sights_on(const struct rb_book *book, uint32_t row)
{
	unsigned bits = 0;

	for (unsigned c = RB_BACKSIGHT; c <= RB_FORESIGHT; c++) {
		rb_length sight = rb_book_value(book, (enum rb_column)c, row);

		if (!rb_length_given(sight))
			continue;
		if (rb_length_compare(rb_length_absolute(sight), book->key.rod) > 0)
			return 0;
		bits |= 1u << c;
	}
	return bits;
}

/* Does the note keeper's row before stand to this one as the foresight onto a turning
 * point stands to the backsight on it? */
static bool is_like_turning(const struct rb_book *book)
{
	uint32_t row = book->rows;

	return row && book->row[row].point == book->row[row - 1].point &&
	       sights_on(book, row) == 1u << RB_BACKSIGHT &&
	       sights_on(book, row - 1) & (1u << RB_FORESIGHT | 1u << RB_INTERMEDIATE) &&
	       !(sights_on(book, row - 1) & 1u << RB_BACKSIGHT);
}

void rb_book_doubt_name(struct rb_book_reader *r, const struct rb_record *record,
			enum rb_keeper keeper)
{
	bool doubt = keeper == RB_KEEPERS_DOUBT && sights_on(r->book, r->book->rows);

	if (!doubt && (keeper <= RB_KEEPERS_DOUBT || !is_like_turning(r->book)))
		return;
	rb_book_say(r, record, RB_POINT, RB_CODE_SUM_OR_POINT,
		    rb_book_kept(r, rb_book_cell(r, record, RB_POINT)),
		    rb_text(doubt ? "a point" : "a row of sums"));
}
