/* SPDX-License-Identifier: MIT */
/* drain_csv.c - columns in a table, rows by station. */
#include "report/drain_csv.h"

#include <string.h>

#include "report/csv.h"
#include "report/decimal.h"
#include "report/leg_json.h"

/* Everything that a row is made of. */
struct row {
	const struct rb_station *station;
	const struct rb_cut *cut;
	const struct rb_plan_row *plan;
	const struct rb_laid_shot *shot;
	rb_length invert_in;
	rb_length rod[RB_SURFACES], rod_in[RB_SURFACES];
};

static rb_length chainage(const struct row *row)
{
	return row->station->chainage;
}

static rb_length invert_in(const struct row *row)
{
	return row->invert_in;
}

static rb_length invert(const struct row *row)
{
	return row->cut->invert;
}

static rb_length top_of_pipe(const struct row *row)
{
	return row->cut->top_of_pipe;
}

static rb_length trench_bottom(const struct row *row)
{
	return row->cut->trench_bottom;
}

static rb_length ground(const struct row *row)
{
	return row->cut->ground;
}

static rb_length cut(const struct row *row)
{
	return row->cut->cut;
}

static rb_length cut_to_trench(const struct row *row)
{
	return row->cut->cut_to_trench;
}

static rb_length cover(const struct row *row)
{
	return row->cut->cover;
}

static rb_length cover_in(const struct row *row)
{
	return row->cut->cover_in;
}

static rb_length hub(const struct row *row)
{
	return row->cut->hub;
}

static rb_length hub_offset(const struct row *row)
{
	return row->plan ? row->plan->offset : rb_length_none();
}

static rb_length hub_cut(const struct row *row)
{
	return row->cut->hub_cut;
}

static rb_length hub_cut_to_trench(const struct row *row)
{
	return row->cut->hub_cut_to_trench;
}

static rb_length board(const struct row *row)
{
	return row->cut->board;
}

static rb_length rod_invert(const struct row *row)
{
	return row->rod[RB_INVERT];
}

static rb_length rod_top(const struct row *row)
{
	return row->rod[RB_TOP_OF_PIPE];
}

static rb_length rod_trench(const struct row *row)
{
	return row->rod[RB_TRENCH_BOTTOM];
}

static rb_length rod_in_invert(const struct row *row)
{
	return row->rod_in[RB_INVERT];
}

static rb_length rod_in_top(const struct row *row)
{
	return row->rod_in[RB_TOP_OF_PIPE];
}

static rb_length rod_in_trench(const struct row *row)
{
	return row->rod_in[RB_TRENCH_BOTTOM];
}

static rb_length laid(const struct row *row)
{
	return row->shot ? row->shot->invert : rb_length_none();
}

static rb_length deviation(const struct row *row)
{
	return row->shot ? row->shot->deviation : rb_length_none();
}

/* -- columns -- */

enum what { NUMBER, INCHES, NAME, SIDE, BETWEEN, UNIT };

/* clang-format off */
static const struct column {
	const char *heading;
	enum what what;
	rb_length (*value)(const struct row *row);
} columns[] = {
	{ "point",                         NAME,    NULL },
	{ "chainage",                      NUMBER,  chainage },
	{ "invert_in",                     NUMBER,  invert_in },
	{ "invert",                        NUMBER,  invert },
	{ "top_of_pipe",                   NUMBER,  top_of_pipe },
	{ "trench_bottom",                 NUMBER,  trench_bottom },
	{ "ground",                        NUMBER,  ground },
	{ "ground_interpolated",           BETWEEN, NULL },
	{ "cut",                           NUMBER,  cut },
	{ "cut_ft_in",                     INCHES,  cut },
	{ "cut_to_trench",                 NUMBER,  cut_to_trench },
	{ "cut_to_trench_ft_in",           INCHES,  cut_to_trench },
	{ "cover",                         NUMBER,  cover },
	{ "cover_in",                      NUMBER,  cover_in },
	{ "hub",                           NUMBER,  hub },
	{ "hub_offset",                    NUMBER,  hub_offset },
	{ "hub_side",                      SIDE,    NULL },
	{ "hub_cut",                       NUMBER,  hub_cut },
	{ "hub_cut_ft_in",                 INCHES,  hub_cut },
	{ "hub_cut_to_trench",             NUMBER,  hub_cut_to_trench },
	{ "hub_cut_to_trench_ft_in",       INCHES,  hub_cut_to_trench },
	{ "board_above_hub",               NUMBER,  board },
	{ "board_above_hub_ft_in",         INCHES,  board },
	{ "grade_rod_invert",              NUMBER,  rod_invert },
	{ "grade_rod_invert_ft_in",        INCHES,  rod_invert },
	{ "grade_rod_top_of_pipe",         NUMBER,  rod_top },
	{ "grade_rod_top_of_pipe_ft_in",   INCHES,  rod_top },
	{ "grade_rod_trench_bottom",       NUMBER,  rod_trench },
	{ "grade_rod_trench_bottom_ft_in", INCHES,  rod_trench },
	{ "grade_rod_in_invert",           NUMBER,  rod_in_invert },
	{ "grade_rod_in_invert_ft_in",     INCHES,  rod_in_invert },
	{ "grade_rod_in_top_of_pipe",      NUMBER,  rod_in_top },
	{ "grade_rod_in_top_of_pipe_ft_in",   INCHES, rod_in_top },
	{ "grade_rod_in_trench_bottom",    NUMBER,  rod_in_trench },
	{ "grade_rod_in_trench_bottom_ft_in", INCHES, rod_in_trench },
	{ "laid",                          NUMBER,  laid },
	{ "deviation",                     NUMBER,  deviation },
	{ "unit",                          UNIT,    NULL },
};
/* clang-format on */

#define COLUMNS (sizeof columns / sizeof *columns)

static void put_number(struct rb_csv *csv, rb_length a, struct rb_json_lengths lengths)
{
	char text[RB_DECIMAL_TEXT];
	size_t length = 0;

	if (rb_length_given(a))
		length = rb_decimal_write(text, a, lengths.unit, lengths.decimals, 0);
	rb_csv_number(csv, text, length);
}

static void put_inches(struct rb_csv *csv, rb_length a, int fraction)
{
	char text[RB_LENGTH_TEXT];

	rb_length_format(text, a, (struct rb_style){ RB_FEET_INCHES, 0, fraction, true });
	rb_csv_number(csv, text, strlen(text));
}

static void put(struct rb_csv *csv, const struct column *column, const struct row *row,
		const struct rb_drain_result *r)
{
	struct rb_json_lengths lengths = rb_json_lengths_of(r->style.unit, r->decimals);

	switch (column->what) {
	case NUMBER:
		put_number(csv, column->value(row), lengths);
		break;
	case INCHES:
		put_inches(csv, column->value(row), r->fraction);
		break;
	case NAME:
		rb_csv_text(csv, row->station->name);
		break;
	case SIDE:
		rb_csv_text(csv, row->plan ? row->plan->side : "");
		break;
	case BETWEEN:
		rb_csv_text(csv, row->cut->how == RB_GROUND_BETWEEN ? "yes" : "");
		break;
	case UNIT:
		rb_csv_text(csv, rb_unit_name(lengths.unit));
		break;
	}
}

void rb_drain_write_csv(struct rb_sink *sink, const struct rb_drain_result *r)
{
	struct rb_csv csv;

	rb_csv_init(&csv, sink);
	for (size_t c = 0; c < COLUMNS; c++)
		rb_csv_text(&csv, columns[c].heading);
	rb_csv_end_row(&csv);
	for (uint32_t i = 0; i < r->inverts->stations; i++) {
		struct row row = { .station = &r->inverts->station[i],
				   .cut = &r->sheet->cut[i],
				   .plan = rb_drain_row(r, i),
				   .shot = rb_drain_laid_at(r, i),
				   .invert_in = rb_drain_invert_in(r, i) };

		for (enum rb_surface s = RB_INVERT; s < RB_SURFACES; s++) {
			row.rod[s] =
				r->rods ? r->rods->rod[i][s].reading : rb_length_none();
			row.rod_in[s] = r->rods ? r->rods->rod_in[i][s].reading
						: rb_length_none();
		}
		for (size_t c = 0; c < COLUMNS; c++)
			put(&csv, &columns[c], &row, r);
		rb_csv_end_row(&csv);
	}
}
