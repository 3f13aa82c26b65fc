/* SPDX-License-Identifier: MIT */
/* laid.c - shots on a laid pipe, turned into inverts and judged. */
#include "drain/laid.h"

#include <stdlib.h>

#include "drain/match.h"
#include "drain/ponds.h"
#include "level/fall.h"
#include "level/shot_again.h"

/* What the steps below work on. */
struct work {
	struct rb_arena *arena;
	struct rb_findings *findings; /* about the book */
	struct rb_findings *of_plan;
	const struct rb_minimum *minimum;
	struct rb_laid *laid;
	const struct rb_spot *elsewhere; /* the first that was not shot on the pipe */
	uint32_t elsewheres;
	rb_length *step; /* by shot: the planned steps between the one before and it,
			    taken as they are planned */
};

/* Benchmarks and turning points carry the levels; all else, and what stands on the line,
 * is a shot of the pipe. */
static bool is_shot(const struct rb_spot *spot, uint32_t station)
{
	if (station != RB_NO_STATION || rb_length_given(spot->chainage))
		return spot->kind != RB_BENCHMARK;
	return spot->kind == RB_SIDE_POINT || spot->kind == RB_END;
}

/* From the invert up to where the rod stood; none where the pipe is not known. */
static rb_length above_invert(const struct rb_pipe *pipe, enum rb_rod_on place)
{
	if (place == RB_ON_TOP_OF_PIPE)
		return rb_pipe_top(pipe);
	return place == RB_ON_INSIDE_TOP ? rb_pipe_inside(pipe) : rb_length_of(0);
}

static struct rb_place place_of(const struct work *w, uint32_t row, enum rb_column column)
{
	return rb_book_place(w->laid->spots->book, row, column);
}

/* Where the shot stands on the line, and the exact invert that the plan has there. */
static bool set_planned(const struct work *w, const struct rb_spot *spot,
			struct rb_laid_shot *shot, struct rb_exact *invert)
{
	const struct rb_inverts *inverts = w->laid->inverts;

	if (shot->station != RB_NO_STATION) {
		const struct rb_station *station = &inverts->station[shot->station];

		shot->chainage = station->chainage;
		shot->comes_in = rb_match_comes_in(station, spot->name);
		*invert = shot->comes_in ? station->in : station->out;
	} else if (!rb_length_given(spot->chainage) ||
		   !rb_inverts_at(inverts, spot->chainage, invert)) {
		rb_findings_add(w->findings, RB_CODE_SHOT_OFF_THE_LINE,
				place_of(w, spot->chainage_row, RB_CHAINAGE),
				rb_text(spot->name), rb_nothing());
		return false;
	}
	shot->run = rb_length_absolute(
		rb_length_sub(shot->chainage, inverts->station[0].chainage));
	shot->planned = rb_exact_round(*invert);
	return true;
}

/* Beyond the tolerance, high or low; where none is given, nothing is. */
static bool is_out(struct rb_exact deviation, rb_length tolerance)
{
	return rb_length_given(tolerance) &&
	       (rb_exact_compare(deviation, rb_exact_of(tolerance)) > 0 ||
		rb_exact_compare(deviation, rb_exact_of(rb_length_negate(tolerance))) <
			0);
}

static bool set_invert(const struct work *w, const struct rb_spot *spot,
		       struct rb_laid_shot *shot, struct rb_exact planned)
{
	const struct rb_plan *plan = w->laid->inverts->plan;
	rb_length above = above_invert(&plan->pipe, spot->rod_on);
	struct rb_exact deviation;

	if (!rb_length_given(above)) {
		rb_findings_add(w->findings, RB_CODE_PIPE_NEEDED,
				place_of(w, spot->rod_on_row, RB_ROD_ON),
				rb_text(rb_rod_on_name(spot->rod_on)), rb_nothing());
		return false; /* an error: nothing is given out */
	}
	shot->invert = rb_length_sub(spot->elevation, above);
	deviation = rb_exact_sub(rb_exact_of(shot->invert), planned);
	shot->deviation = rb_exact_round(deviation);
	shot->out = is_out(deviation, plan->grade_tolerance);
	return true;
}

static void take_spot(struct work *w, const struct rb_spot *spot, uint32_t station)
{
	struct rb_laid_shot *shot = &w->laid->shot[w->laid->shots];
	struct rb_exact planned;

	if (!is_shot(spot, station))
		return;
	if (spot->rod_on == RB_ON_UNSAID)
		rb_findings_add(w->findings, RB_CODE_LAID_WITHOUT_ROD_ON,
				place_of(w, spot->rod_on_row, RB_ROD_ON),
				rb_text(spot->name), rb_nothing());
	else if (!rb_rod_on_pipe(spot->rod_on) && !w->elsewheres++)
		w->elsewhere = spot;
	if (!rb_rod_on_pipe(spot->rod_on) ||
	    rb_was_shot_again(w->findings, w->laid->spots, spot))
		return;
	*shot = (struct rb_laid_shot){ .name = spot->name,
				       .row = spot->row,
				       .station = station,
				       .rod_on = spot->rod_on,
				       .chainage = spot->chainage };
	if (set_planned(w, spot, shot, &planned) && set_invert(w, spot, shot, planned))
		w->laid->shots++;
}

static int downstream(const void *left, const void *right)
{
	const struct rb_laid_shot *a = left, *b = right;
	int order = rb_length_compare(a->run, b->run);

	if (!order)
		order = b->comes_in - a->comes_in;
	return order ? order : (a->row > b->row) - (a->row < b->row);
}

static bool any(const struct rb_spot *spot)
{
	(void)spot;
	return true;
}

/* A point that is reached again with another hanging on it keeps its elevation. */
static bool is_reached_again(const struct work *w, const struct rb_laid_shot *shot,
			     const struct rb_laid_shot *later)
{
	const struct rb_row *row = w->laid->spots->book->row;

	return shot->rod_on == later->rod_on &&
	       row[shot->row].point == row[later->row].point;
}

/* A place that was shot on two surfaces, or under two names, has no slope of its own: the
 * later shot stands, which was taken after it was brought back. */
static void sort_shots(struct work *w)
{
	struct rb_laid_shot *shot = w->laid->shot;
	const struct rb_book *book = w->laid->spots->book;
	uint32_t kept = 0;

	if (w->laid->shots)
		qsort(shot, w->laid->shots, sizeof *shot, downstream);
	for (uint32_t i = 0; i < w->laid->shots; i++) {
		bool same = kept && shot[kept - 1].run.nm == shot[i].run.nm &&
			    shot[kept - 1].comes_in == shot[i].comes_in;

		if (same && is_reached_again(w, &shot[kept - 1], &shot[i]))
			continue;
		if (same)
			rb_findings_add(w->findings, RB_CODE_SHOT_AGAIN,
					rb_book_row_place(book, shot[--kept].row),
					rb_line(rb_book_line(book, shot[i].row)),
					rb_nothing());
		shot[kept++] = shot[i];
	}
	w->laid->shots = kept;
}

/* -- what is not judged -- */

static void say_elsewhere(const struct work *w)
{
	const struct rb_spot *spot = w->elsewhere;

	if (spot)
		rb_findings_add(w->findings, RB_CODE_NOT_ON_PIPE,
				place_of(w, spot->rod_on_row, RB_ROD_ON),
				rb_text(rb_rod_on_name(spot->rod_on)),
				w->elsewheres > 1 ? rb_number(w->elsewheres - 1)
						  : rb_nothing());
}

static void say_part(const struct work *w, const char *from, const char *to,
		     rb_length length)
{
	enum rb_unit unit = rb_unit_of_runs(w->laid->inverts->plan->unit);

	if (length.nm)
		rb_findings_add4(w->findings, RB_CODE_LAID_IN_PART, rb_in_file(),
				 (struct rb_argument[RB_ARGUMENTS]){
					 rb_text(from),
					 rb_text(to),
					 rb_measure(length, unit),
				 });
}

/* Above the first shot of the pipe, and below the last. */
static void say_parts(const struct work *w)
{
	const struct rb_laid_shot *first = w->laid->shot;
	const struct rb_laid_shot *last = first + w->laid->shots - 1;
	const struct rb_station *upper = w->laid->inverts->station;
	const struct rb_station *outlet = upper + w->laid->inverts->stations - 1;

	say_part(w, upper->name, first->name, first->run);
	say_part(w, last->name, outlet->name, rb_length_sub(outlet->run, last->run));
}

static bool take_shots(struct work *w)
{
	const struct rb_spots *spots = w->laid->spots;
	uint32_t *station = rb_match(w->arena, w->findings, w->laid->inverts, spots, any);

	if (!station)
		return false;
	for (uint32_t i = 0; i < spots->count; i++)
		take_spot(w, &spots->spot[i], station[i]);
	if (!rb_findings_allow_result(w->findings))
		return false;
	sort_shots(w);
	say_elsewhere(w);
	if (w->laid->shots)
		say_parts(w);
	else
		rb_findings_add(w->findings, RB_CODE_NO_LAID_SHOTS, rb_in_file(),
				rb_nothing(), rb_nothing());
	return w->laid->shots;
}

/* -- judging -- */

/* Is the step of a station above a shot? */
static bool is_above(const struct rb_station *station, const struct rb_laid_shot *shot)
{
	int order = rb_length_compare(station->run, shot->run);

	return order < 0 || (!order && !shot->comes_in);
}

static void say_step(const struct work *w, const struct rb_laid_shot *shot,
		     const struct rb_station *station, rb_length step)
{
	rb_findings_add4(w->findings, RB_CODE_STEP_NOT_SHOT,
			 rb_book_row_place(w->laid->spots->book, shot->row),
			 (struct rb_argument[RB_ARGUMENTS]){
				 rb_text(station->name),
				 rb_measure(step, w->laid->inverts->plan->unit),
			 });
}

/* The steps between each shot and the one before; both ends of a step that were shot have
 * none between them that is taken as planned. */
static void set_steps(struct work *w)
{
	const struct rb_inverts *inverts = w->laid->inverts;
	uint32_t station = 0;

	for (uint32_t i = 0; i < w->laid->shots; i++) {
		const struct rb_laid_shot *shot = &w->laid->shot[i];
		bool is_drop = i && shot[-1].comes_in && shot[-1].run.nm == shot->run.nm;

		w->step[i] = rb_length_of(0);
		for (; station < inverts->stations &&
		       is_above(&inverts->station[station], shot);
		     station++) {
			rb_length step = rb_station_step(&inverts->station[station]);

			if (!i || is_drop || !step.nm)
				continue;
			w->step[i] = rb_length_add(w->step[i], step);
			say_step(w, shot, &inverts->station[station], step);
		}
	}
}

static void judge_shot(const struct work *w, const struct rb_laid_shot *shot)
{
	const struct rb_plan *plan = w->laid->inverts->plan;

	if (shot->out)
		rb_findings_add4(w->findings, RB_CODE_LAID_OUT,
				 rb_book_row_place(w->laid->spots->book, shot->row),
				 (struct rb_argument[RB_ARGUMENTS]){
					 rb_measure(rb_length_absolute(shot->deviation),
						    plan->unit),
					 rb_measure(plan->grade_tolerance, plan->unit),
					 rb_text(shot->deviation.nm > 0 ? "high" : "low"),
				 });
}

/* From shot i to the next, where pipe lies between them. */
static void judge_leg(struct work *w, uint32_t i)
{
	const struct rb_laid_shot *from = &w->laid->shot[i], *to = from + 1;
	rb_length length = rb_length_sub(to->run, from->run);
	struct rb_leg *leg = &w->laid->leg[w->laid->legs];
	struct rb_place place = rb_book_row_place(w->laid->spots->book, from->row);

	if (!length.nm)
		return;
	w->laid->legs++;
	*leg = (struct rb_leg){
		.from = from->name,
		.to = to->name,
		.upper = from->invert,
		.lower = rb_length_add(to->invert, w->step[i + 1]),
		.length = length,
		.minimum = w->minimum->slope,
	};
	leg->fall = rb_length_sub(leg->upper, leg->lower);
	leg->slope = (rb_slope){ leg->fall, length };
	if (rb_length_given(w->laid->step))
		leg->uncertainty = (rb_slope){ w->laid->step, length };
	rb_leg_judge(leg);
	if (leg->verdict == RB_LEG_FLAT && leg->within_reading)
		rb_findings_add4(w->findings, RB_CODE_LAID_FLAT_WITHIN, place,
				 (struct rb_argument[RB_ARGUMENTS]){
					 rb_text(leg->from),
					 rb_text(leg->to),
					 rb_ratio_of(leg->slope),
					 rb_ratio_of(leg->minimum),
				 });
	else
		rb_leg_report(w->findings, leg, place);
}

static void report_ponds(const struct work *w)
{
	const struct rb_laid *laid = w->laid;
	enum rb_unit unit = laid->inverts->plan->unit;

	for (uint32_t i = 0; i < laid->ponds; i++) {
		const struct rb_pond *pond = &laid->pond[i];

		rb_findings_add4(w->findings, RB_CODE_POND,
				 rb_book_row_place(laid->spots->book,
						   laid->shot[pond->deepest].row),
				 (struct rb_argument[RB_ARGUMENTS]){
					 rb_measure(pond->depth, unit),
					 rb_measure(pond->wet, rb_unit_of_runs(unit)),
					 rb_text(laid->shot[pond->to].name),
				 });
	}
}

static void judge(struct work *w)
{
	for (uint32_t i = 0; i < w->laid->shots; i++)
		judge_shot(w, &w->laid->shot[i]);
	for (uint32_t i = 0; i + 1 < w->laid->shots; i++)
		judge_leg(w, i);
	report_ponds(w);
	if (!rb_length_given(w->laid->inverts->plan->grade_tolerance))
		rb_findings_add(w->of_plan, RB_CODE_NO_GRADE_TOLERANCE, rb_in_file(),
				rb_nothing(), rb_nothing());
}

static bool take_room(struct work *w, uint32_t spots)
{
	w->laid = rb_arena_take_clear(w->arena, 1, sizeof *w->laid);
	w->step = rb_arena_take(w->arena, (size_t)spots + 1, sizeof *w->step);
	if (!w->laid || !w->step)
		return rb_findings_no_memory(w->findings);
	w->laid->shot = rb_arena_take(w->arena, (size_t)spots + 1, sizeof *w->laid->shot);
	w->laid->leg = rb_arena_take(w->arena, (size_t)spots + 1, sizeof *w->laid->leg);
	return (w->laid->shot && w->laid->leg) || rb_findings_no_memory(w->findings);
}

struct rb_laid *rb_laid(struct rb_arena *arena, struct rb_findings *findings,
			struct rb_findings *of_plan, const struct rb_inverts *inverts,
			const struct rb_spots *spots, const struct rb_minimum *minimum)
{
	struct work w = { .arena = arena,
			  .findings = findings,
			  .of_plan = of_plan,
			  .minimum = minimum };

	if (!take_room(&w, spots->count))
		return NULL;
	w.laid->inverts = inverts;
	w.laid->spots = spots;
	w.laid->step = spots->step;
	if (!take_shots(&w))
		return NULL;
	set_steps(&w);
	if (!rb_ponds(arena, w.laid, w.step))
		return rb_findings_no_memory(findings), NULL;
	judge(&w);
	return rb_findings_allow_result(findings) ? w.laid : NULL;
}
