/* SPDX-License-Identifier: MIT */
/* cut_sheet.c - cuts, covers and boards. */
#include "drain/cut_sheet.h"

#include "drain/match.h"
#include "level/shot_again.h"

/* What the steps below work on. */
struct work {
	struct rb_arena *arena;
	struct rb_findings *findings; /* about the plan */
	struct rb_findings *of_ground;
	const struct rb_plan *plan;
	struct rb_cut_sheet *sheet;
	const struct rb_spot
		*nowhere; /* the first shot that is at no place of the line */
	uint32_t nowheres;
};

/* From a surface of the pipe up to a place over it, exactly; false where the surface is
 * not known. */
static bool climb(const struct work *w, struct rb_exact place, struct rb_exact invert,
		  enum rb_surface surface, struct rb_exact *up)
{
	rb_length above = rb_surface_above(w->plan, surface);

	if (!rb_length_given(above))
		return false;
	*up = rb_exact_sub(rb_exact_sub(place, invert), rb_exact_of(above));
	return true;
}

/* Is a cover less than the plan asks for? */
static bool is_short(const struct work *w, struct rb_exact cover)
{
	return rb_length_given(w->plan->cover) &&
	       rb_exact_compare(cover, rb_exact_of(w->plan->cover)) < 0;
}

static rb_length height(const struct work *w, struct rb_exact place,
			struct rb_exact invert, enum rb_surface surface)
{
	struct rb_exact up;

	return climb(w, place, invert, surface, &up) ? rb_exact_round(up)
						     : rb_length_none();
}

static bool is_more(rb_length a, rb_length b)
{
	return rb_length_given(a) && (!rb_length_given(b) || rb_length_compare(a, b) > 0);
}

/* One line for what cannot be worked out, with the key that would do. */
static void note_missing(const struct work *w)
{
	for (enum rb_surface s = RB_TOP_OF_PIPE; s < RB_SURFACES; s++) {
		const char *key = rb_surface_key(w->plan, s);

		if (key)
			rb_findings_add(w->findings, RB_CODE_KEYS_MISSING, rb_in_file(),
					rb_text(rb_surface_name(s)), rb_text(key));
	}
}

static void set_pipe(const struct work *w, uint32_t i)
{
	const rb_length none = rb_length_none();
	struct rb_exact invert = w->sheet->inverts->station[i].out;

	w->sheet->cut[i] = (struct rb_cut){
		.invert = rb_surface_at(w->plan, RB_INVERT, invert),
		.top_of_pipe = rb_surface_at(w->plan, RB_TOP_OF_PIPE, invert),
		.trench_bottom = rb_surface_at(w->plan, RB_TRENCH_BOTTOM, invert),
		.ground = none,
		.cut = none,
		.cut_to_trench = none,
		.cover = none,
		.cover_in = none,
		.hub = none,
		.hub_cut = none,
		.hub_cut_to_trench = none,
		.board = none,
	};
}

/* -- shots -- */

static bool is_wanted(const struct rb_spot *spot)
{
	return rb_is_ground(spot) || spot->rod_on == RB_ON_HUB;
}

/* Points that were levelled for their own sake: turning points and benchmarks carry the
 * levels, and so does a last foresight that does not say what the rod stood on. */
static void note_nowhere(struct work *w, const struct rb_spot *spot)
{
	bool own = spot->kind == RB_SIDE_POINT ||
		   (spot->kind == RB_END && spot->rod_on != RB_ON_UNSAID);

	if (own && !w->nowheres++)
		w->nowhere = spot;
}

static void say_nowhere(const struct work *w)
{
	if (w->nowhere)
		rb_findings_add(
			w->of_ground, RB_CODE_NOWHERE_ON_LINE,
			rb_book_row_place(w->sheet->ground->book, w->nowhere->row),
			rb_text(w->nowhere->rod_on == RB_ON_HUB ? "hub" : "ground"),
			w->nowheres > 1 ? rb_number(w->nowheres - 1) : rb_nothing());
}

static void take_spot(struct work *w, const struct rb_spot *spot, uint32_t station)
{
	struct rb_cut *cut = station == RB_NO_STATION ? NULL : &w->sheet->cut[station];
	rb_length chainage = spot->chainage;

	if (spot->rod_on == RB_ON_HUB) {
		if (cut && !rb_length_given(cut->hub))
			cut->hub = spot->elevation;
		if (!cut)
			note_nowhere(w, spot);
		return;
	}
	if (cut && cut->how == RB_GROUND_UNKNOWN) {
		cut->ground = spot->elevation;
		cut->exact_ground = rb_exact_of(spot->elevation);
		cut->how = RB_GROUND_SHOT;
	}
	if (cut && !rb_length_given(chainage))
		chainage = w->sheet->inverts->station[station].chainage;
	if (rb_length_given(chainage))
		w->sheet->along.point[w->sheet->along.points++] =
			(struct rb_ground_point){ spot->name, chainage, spot->elevation,
						  spot->row };
	else
		note_nowhere(w, spot);
}

static bool take_spots(struct work *w)
{
	const struct rb_spots *spots = w->sheet->ground;
	uint32_t *station =
		rb_match(w->arena, w->of_ground, w->sheet->inverts, spots, is_wanted);

	w->sheet->along.point = rb_arena_take(w->arena, (size_t)spots->count + 1,
					      sizeof *w->sheet->along.point);
	if (!w->sheet->along.point)
		return rb_findings_no_memory(w->findings);
	if (!station)
		return false;
	for (uint32_t i = 0; i < spots->count; i++)
		if (is_wanted(&spots->spot[i]) &&
		    !rb_was_shot_again(w->of_ground, spots, &spots->spot[i]))
			take_spot(w, &spots->spot[i], station[i]);
	rb_ground_sort(&w->sheet->along);
	say_nowhere(w);
	return true;
}

static void interpolate(const struct work *w, uint32_t i)
{
	struct rb_cut *cut = &w->sheet->cut[i];
	bool is_shot;

	if (cut->how != RB_GROUND_UNKNOWN)
		return;
	if (!rb_ground_at(&w->sheet->along, w->sheet->inverts->station[i].chainage,
			  &is_shot, &cut->exact_ground))
		return;
	cut->ground = rb_exact_round(cut->exact_ground);
	cut->how = RB_GROUND_BETWEEN;
}

/* -- cuts -- */

/* Each from the exact heights, and rounded once. */
static void set_cuts(const struct work *w, uint32_t i)
{
	const struct rb_station *station = &w->sheet->inverts->station[i];
	struct rb_exact invert = station->out, cover;
	struct rb_cut *cut = &w->sheet->cut[i];

	if (rb_length_given(cut->ground)) {
		cut->cut = height(w, cut->exact_ground, invert, RB_INVERT);
		cut->cut_to_trench =
			height(w, cut->exact_ground, invert, RB_TRENCH_BOTTOM);
		cut->cover = height(w, cut->exact_ground, invert, RB_TOP_OF_PIPE);
		if (rb_station_step(station).nm)
			cut->cover_in =
				height(w, cut->exact_ground, station->in, RB_TOP_OF_PIPE);
		cut->is_short = climb(w, cut->exact_ground, station->in, RB_TOP_OF_PIPE,
				      &cover) &&
				is_short(w, cover);
	}
	if (rb_length_given(cut->hub)) {
		struct rb_exact hub = rb_exact_of(cut->hub);

		cut->hub_cut = height(w, hub, invert, RB_INVERT);
		cut->hub_cut_to_trench = height(w, hub, invert, RB_TRENCH_BOTTOM);
	}
}

/* The next whole foot, or half metre, above every cut. */
static rb_length board_height(const struct work *w)
{
	int64_t step =
		rb_unit_of_runs(w->plan->unit) == RB_METRES ? RB_METRE / 2 : RB_FOOT;
	rb_length highest = rb_length_none();

	for (uint32_t i = 0; i < w->sheet->inverts->stations; i++) {
		const struct rb_cut *cut = &w->sheet->cut[i];

		if (is_more(cut->cut, highest))
			highest = cut->cut;
		if (is_more(cut->hub_cut, highest))
			highest = cut->hub_cut;
	}
	if (!rb_length_given(highest))
		return highest;
	return rb_length_of(highest.nm < 0 ? step : (highest.nm / step + 1) * step);
}

static void set_boards(struct work *w, rb_length board)
{
	w->sheet->board = rb_length_given(board) ? board : board_height(w);
	for (uint32_t i = 0; i < w->sheet->inverts->stations; i++) {
		struct rb_cut *cut = &w->sheet->cut[i];

		if (rb_length_given(w->sheet->board) && rb_length_given(cut->hub_cut))
			cut->board = rb_length_sub(w->sheet->board, cut->hub_cut);
	}
}

/* -- depth and cover -- */

/* Is it the greatest so far (sign 1), or the least (-1)?  Of equals the first is. */
static bool is_new(const struct rb_extreme *extreme, struct rb_exact value, int sign)
{
	return !rb_length_given(extreme->value) ||
	       sign * rb_exact_compare(value, extreme->exact) > 0;
}

/* From the ground down to the pipe that goes out, and to the one that comes in: no step
 * goes up. */
static void look_at(struct work *w, const char *name, rb_length chainage,
		    struct rb_exact ground, struct rb_exact invert,
		    struct rb_exact invert_in)
{
	struct rb_exact depth = rb_exact_add(rb_exact_sub(ground, invert),
					     rb_exact_of(rb_trench_at_least(w->plan)));
	struct rb_cut_sheet *sheet = w->sheet;
	struct rb_exact cover;

	if (is_new(&sheet->deepest, depth, 1))
		sheet->deepest = (struct rb_extreme){ rb_exact_round(depth), depth, name,
						      chainage };
	if (!climb(w, ground, invert_in, RB_TOP_OF_PIPE, &cover))
		return;
	if (is_new(&sheet->least_cover, cover, -1))
		sheet->least_cover = (struct rb_extreme){ rb_exact_round(cover), cover,
							  name, chainage };
	if (is_short(w, cover))
		rb_findings_add4(w->findings, RB_CODE_COVER_SHORT,
				 rb_at(0, RB_WHOLE_ROW, name, NULL),
				 (struct rb_argument[RB_ARGUMENTS]){
					 rb_measure(rb_exact_round(cover), w->plan->unit),
					 rb_measure(w->plan->cover, w->plan->unit),
					 rb_text(name),
				 });
}

/* Stations, then the ground shots between them: the deepest place may be a bank between
 * two manholes. */
static void find_extremes(struct work *w)
{
	const struct rb_inverts *inverts = w->sheet->inverts;

	for (uint32_t i = 0; i < inverts->stations; i++) {
		const struct rb_station *station = &inverts->station[i];

		if (rb_length_given(w->sheet->cut[i].ground))
			look_at(w, station->name, station->chainage,
				w->sheet->cut[i].exact_ground, station->out, station->in);
	}
	for (uint32_t i = 0; i < w->sheet->along.points; i++) {
		const struct rb_ground_point *point = &w->sheet->along.point[i];
		struct rb_exact invert;

		if (rb_inverts_at(inverts, point->chainage, &invert) &&
		    !rb_inverts_station_at(inverts, point->chainage))
			look_at(w, point->name, point->chainage,
				rb_exact_of(point->elevation), invert, invert);
	}
}

static bool take_room(struct work *w, const struct rb_inverts *inverts)
{
	w->sheet = rb_arena_take_clear(w->arena, 1, sizeof *w->sheet);
	if (w->sheet)
		w->sheet->cut =
			rb_arena_take(w->arena, inverts->stations, sizeof *w->sheet->cut);
	return (w->sheet && w->sheet->cut) || rb_findings_no_memory(w->findings);
}

struct rb_cut_sheet *rb_cut_sheet(struct rb_arena *arena, struct rb_findings *findings,
				  struct rb_findings *of_ground,
				  const struct rb_inverts *inverts,
				  const struct rb_spots *ground, rb_length board)
{
	struct work w = { .arena = arena,
			  .findings = findings,
			  .of_ground = of_ground,
			  .plan = inverts->plan };

	if (!take_room(&w, inverts))
		return NULL;
	w.sheet->inverts = inverts;
	w.sheet->ground = ground;
	w.sheet->deepest.value = w.sheet->least_cover.value = rb_length_none();
	w.sheet->at_least =
		!rb_length_given(rb_surface_above(inverts->plan, RB_TRENCH_BOTTOM));
	note_missing(&w);
	for (uint32_t i = 0; i < inverts->stations; i++)
		set_pipe(&w, i);
	if (ground && !take_spots(&w))
		return NULL;
	for (uint32_t i = 0; i < inverts->stations; i++) {
		interpolate(&w, i);
		set_cuts(&w, i);
	}
	set_boards(&w, board);
	find_extremes(&w);
	return findings->out_of_memory || (ground && of_ground->out_of_memory) ? NULL
									       : w.sheet;
}
