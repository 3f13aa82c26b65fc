/* SPDX-License-Identifier: MIT */
/*
 * Heights of instrument and elevations, carried through a book in the order observed.
 *
 * Sources: FM 3-34.331 Topographic Surveying, ch. 7; NAVEDTRA 14069 Engineering Aid
 * (Basic), ch. 14: HI = elevation + backsight, elevation = HI - foresight.
 */
#include "rodbook/reduce.h"

#include <string.h>

#include "level/kind.h"
#include "notes/names.h"

struct reducer {
	struct rb_arena *arena, *scratch;
	struct rb_findings *findings;
	const struct rb_book *book;
	struct rb_reduced *out;
	uint32_t *reached;    /* by point: the last shot onto it, or RB_NO_SHOT */
	uint32_t setup;       /* the last one opened */
	uint32_t sights;      /* seen from it */
	bool foresight_alone; /* was all that the last row with a sight held */
};

static struct rb_argument named(const struct rb_book *book, uint32_t point)
{
	return rb_text(rb_book_point(book, point));
}

/* A reached or known point whose name is nearly this one, or RB_NO_POINT. */
static uint32_t meant(const struct reducer *r, uint32_t point)
{
	const char *name = rb_book_point(r->book, point);
	size_t length = strlen(name);

	for (uint32_t i = 0; i < r->book->points; i++) {
		const char *other = rb_book_point(r->book, i);
		size_t other_length = strlen(other);
		bool longer = other_length > length;

		if (i == point || (!r->book->is_known[i] && r->reached[i] == RB_NO_SHOT))
			continue;
		if (rb_names_nearly_same(name, other) ||
		    (!strncmp(name, other, longer ? length : other_length) &&
		     (longer ? other[length] : name[other_length]) == ' '))
			return i;
	}
	return RB_NO_POINT;
}

static bool say_not_reached(struct reducer *r, uint32_t row)
{
	uint32_t point = r->book->row[row].point, other = RB_NO_POINT;

	if (r->findings->of_code[RB_CODE_NOT_REACHED] < RB_FINDINGS_OF_A_KIND)
		other = meant(r, point);
	rb_findings_add(r->findings, RB_CODE_NOT_REACHED,
			rb_book_place(r->book, row, RB_BACKSIGHT), named(r->book, point),
			other == RB_NO_POINT ? rb_nothing() : named(r->book, other));
	return false;
}

/* Beyond what can be read nothing is carried on: it could not be read back.  The first
 * sight that leads there is told. */
static void check_height(struct reducer *r, rb_length height, uint32_t row,
			 enum rb_column column, const char *what)
{
	if (rb_length_absolute(height).nm > RB_LENGTH_MAX &&
	    !r->findings->of_code[RB_CODE_BEYOND_HEIGHTS])
		rb_findings_add(r->findings, RB_CODE_BEYOND_HEIGHTS,
				rb_book_place(r->book, row, column), rb_text(what),
				rb_nothing());
}

static struct rb_shot *new_shot(struct reducer *r, uint32_t row, rb_length elevation,
				enum rb_booked booked)
{
	struct rb_shot *shot = &r->out->shot[r->out->shots++];
	uint32_t point = r->book->row[row].point;
	bool known = point != RB_NO_POINT && r->book->is_known[point];

	*shot = (struct rb_shot){ .elevation = elevation,
				  .row = row,
				  .backsight_row = RB_NO_ROW,
				  .setup = r->setup,
				  .kind = (uint8_t)rb_plain_kind(booked, known),
				  .booked = (uint8_t)booked };
	r->out->any_check |= shot->kind == RB_CHECK;
	return shot;
}

/* A foresight gives a point its elevation; an intermediate sight only where none did. */
static void reach(struct reducer *r, uint32_t point, uint32_t at)
{
	uint32_t *reached = &r->reached[point];

	if (*reached != RB_NO_SHOT && !r->book->is_known[point])
		r->out->any_again = true;
	if (r->out->shot[at].booked == RB_BOOKED_FORESIGHT || *reached == RB_NO_SHOT ||
	    r->out->shot[*reached].booked != RB_BOOKED_FORESIGHT)
		*reached = at;
}

static bool take_sight(struct reducer *r, uint32_t row, enum rb_booked booked)
{
	enum rb_column column =
		booked == RB_BOOKED_FORESIGHT ? RB_FORESIGHT : RB_INTERMEDIATE;
	rb_length reading = rb_book_sight(r->book, column, row), elevation;
	uint32_t point = r->book->row[row].point;

	if (r->setup == RB_NO_SETUP) {
		rb_findings_add(r->findings, RB_CODE_BEFORE_BACKSIGHT,
				rb_book_place(r->book, row, column), rb_nothing(),
				rb_nothing());
		return false;
	}
	elevation = rb_length_sub(r->out->setup[r->setup].height_of_instrument, reading);
	check_height(r, elevation, row, column, "elevation");
	new_shot(r, row, elevation, booked);
	r->sights++;
	if (point != RB_NO_POINT)
		reach(r, point, r->out->shots - 1);
	return true;
}

/* Is it the shot of the backsight on a row: on this row, or just before on its point? */
static bool carries(const struct reducer *r, const struct rb_shot *last, uint32_t row)
{
	return last->row == row ||
	       (r->foresight_alone && last->backsight_row == RB_NO_ROW &&
		r->book->row[last->row].point == r->book->row[row].point);
}

/* The shot that carries a backsight: the foresight's, on this row or on the last that
 * held a sight; otherwise one of its own. */
static struct rb_shot *shot_of_backsight(struct reducer *r, uint32_t row,
					 rb_length elevation)
{
	uint32_t shots = r->out->shots;
	struct rb_shot *shot;

	if (shots && carries(r, &r->out->shot[shots - 1], row)) {
		shot = &r->out->shot[shots - 1];
	} else {
		shot = new_shot(r, row, elevation, RB_BOOKED_NOWHERE);
	}
	shot->backsight_row = row;
	return shot;
}

static void say_of_backsight(struct reducer *r, uint32_t row, enum rb_code code,
			     struct rb_argument first, struct rb_argument second)
{
	rb_findings_add(r->findings, code, rb_book_place(r->book, row, RB_BACKSIGHT),
			first, second);
}

/* The setup that the backsight opens stands already; the sights are still those of the
 * setup before. */
static void warn_of_backsight(struct reducer *r, uint32_t row, const struct rb_shot *shot)
{
	const struct rb_reduced *out = r->out;
	const struct rb_setup *setup = &out->setup[r->setup];
	const struct rb_shot *via =
		setup->via == RB_NO_SHOT ? NULL : &out->shot[setup->via];
	rb_length reading = rb_book_sight(r->book, RB_BACKSIGHT, row);
	uint32_t point = r->book->row[row].point;

	if (r->setup > 0 && !r->sights) {
		uint32_t before = out->shot[out->setup[r->setup - 1].shot].backsight_row;

		say_of_backsight(r, row, RB_CODE_BACKSIGHTS_ONLY,
				 rb_line(rb_book_line(r->book, before)), rb_nothing());
	}
	if (via && via->booked == RB_BOOKED_INTERMEDIATE)
		say_of_backsight(r, row, RB_CODE_TURNED_ON_INTERMEDIATE,
				 rb_line(rb_book_line(r->book, via->row)), rb_nothing());
	if (shot->booked == RB_BOOKED_FORESIGHT &&
	    rb_length_compare(rb_book_sight(r->book, RB_FORESIGHT, shot->row), reading) ==
		    0)
		say_of_backsight(r, row, RB_CODE_SAME_READING,
				 rb_rod_reading(reading, r->book->unit), rb_nothing());
	if (via &&
	    r->book->row[out->shot[out->setup[via->setup].shot].row].point == point)
		say_of_backsight(r, row, RB_CODE_SAME_POINT_TWICE, named(r->book, point),
				 rb_line(rb_book_line(r->book, via->row)));
}

static bool take_backsight(struct reducer *r, uint32_t row)
{
	uint32_t point = r->book->row[row].point;
	rb_length known = rb_book_known(r->book, point), elevation = known;
	rb_length reading = rb_book_sight(r->book, RB_BACKSIGHT, row);
	uint32_t via = rb_length_given(known) ? RB_NO_SHOT : r->reached[point];
	struct rb_setup *setup;
	struct rb_shot *shot;

	if (!rb_length_given(known)) {
		if (via == RB_NO_SHOT)
			return say_not_reached(r, row);
		elevation = r->out->shot[via].elevation;
	}
	shot = shot_of_backsight(r, row, elevation);
	r->setup = r->out->setups++;
	setup = &r->out->setup[r->setup];
	*setup = (struct rb_setup){
		.height_of_instrument = rb_length_add(elevation, reading),
		.shot = (uint32_t)(shot - r->out->shot),
		.via = via,
		.depth = 1,
		.root = r->setup,
	};
	check_height(r, setup->height_of_instrument, row, RB_BACKSIGHT,
		     "height of instrument");
	if (via != RB_NO_SHOT) {
		const struct rb_setup *before = &r->out->setup[r->out->shot[via].setup];

		r->out->shot[via].kind = RB_TURNING_POINT;
		setup->depth = before->depth + 1;
		setup->root = before->root;
	}
	warn_of_backsight(r, row, shot);
	r->sights = 0;
	return true;
}

static void take_row(struct reducer *r, uint32_t row)
{
	bool back = rb_length_given(rb_book_sight(r->book, RB_BACKSIGHT, row));
	bool middle = rb_length_given(rb_book_sight(r->book, RB_INTERMEDIATE, row));
	bool fore = rb_length_given(rb_book_sight(r->book, RB_FORESIGHT, row));

	if (!back && !middle && !fore)
		return;
	if (fore)
		take_sight(r, row, RB_BOOKED_FORESIGHT);
	if (middle)
		take_sight(r, row, RB_BOOKED_INTERMEDIATE);
	if (back)
		take_backsight(r, row);
	r->foresight_alone = fore && !back;
}

/* A row with a sight makes one shot at most, and a backsight one setup. */
static bool take_arrays(struct reducer *r)
{
	const struct rb_book *book = r->book;
	struct rb_reduced *out = r->out;

	out->shot = rb_arena_take(r->arena, (size_t)book->sights + 1, sizeof *out->shot);
	out->setup =
		rb_arena_take(r->arena, (size_t)book->backsights + 1, sizeof *out->setup);
	r->reached =
		rb_arena_take(r->scratch, (size_t)book->points + 1, sizeof *r->reached);
	if (!out->shot || !out->setup || !r->reached)
		return rb_findings_no_memory(r->findings);
	for (uint32_t i = 0; i < book->points; i++)
		r->reached[i] = RB_NO_SHOT;
	return true;
}

static bool reduce(struct reducer *r)
{
	if (!r->out || !r->scratch)
		return rb_findings_no_memory(r->findings);
	r->out->book = r->book;
	r->setup = RB_NO_SETUP;
	if (!take_arrays(r))
		return false;
	for (uint32_t row = 0; row < r->book->rows; row++)
		take_row(r, row);
	return rb_findings_allow_result(r->findings);
}

/* A foresight that ends a run needs a name, because the levels are carried onto it; one
 * on which nothing hangs is an intermediate sight, and can do without. */
static bool check_names(const struct rb_reduced *reduced, struct rb_findings *findings)
{
	for (uint32_t i = 0; i < reduced->shots; i++) {
		const struct rb_shot *shot = &reduced->shot[i];

		if (shot->kind == RB_END &&
		    reduced->book->row[shot->row].point == RB_NO_POINT)
			rb_findings_add(
				findings, RB_CODE_NO_NAME,
				rb_book_place(reduced->book, shot->row, RB_FORESIGHT),
				rb_text("foresight"), rb_nothing());
	}
	return rb_findings_allow_result(findings);
}

struct rb_reduced *rb_reduce(struct rb_arena *arena, struct rb_findings *findings,
			     const struct rb_book *book)
{
	struct reducer r = { .arena = arena, .findings = findings, .book = book };
	bool done;

	r.out = rb_arena_take_clear(arena, 1, sizeof *r.out);
	r.scratch = rb_arena_new(rb_arena_allocator(arena));
	done = reduce(&r);
	rb_arena_free(r.scratch);
	if (!done)
		return NULL;
	if (!rb_settle_kinds(r.out, rb_arena_allocator(arena)))
		rb_findings_no_memory(findings);
	return check_names(r.out, findings) ? r.out : NULL;
}

static bool holds(const struct rb_book *book, enum rb_column column, uint32_t row)
{
	return column == RB_ROD_ON ? book->rod_on[row] != RB_ON_UNSAID
				   : rb_length_given(rb_book_value(book, column, row));
}

uint32_t rb_shot_row(const struct rb_reduced *reduced, enum rb_column column,
		     uint32_t shot)
{
	const struct rb_shot *s = &reduced->shot[shot];
	uint32_t other = s->backsight_row;
	bool on_other = other != RB_NO_ROW && !holds(reduced->book, column, s->row) &&
			holds(reduced->book, column, other);

	return on_other ? other : s->row;
}

rb_length rb_shot_value(const struct rb_reduced *reduced, enum rb_column column,
			uint32_t shot)
{
	return rb_book_value(reduced->book, column, rb_shot_row(reduced, column, shot));
}

enum rb_rod_on rb_shot_rod_on(const struct rb_reduced *reduced, uint32_t shot)
{
	const struct rb_book *book = reduced->book;
	uint8_t place = book->rod_on[rb_shot_row(reduced, RB_ROD_ON, shot)];

	return place == RB_ON_UNSAID ? book->key.rod_on : (enum rb_rod_on)place;
}
