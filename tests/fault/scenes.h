/* SPDX-License-Identifier: MIT */
/* scenes.h - every command in every format, over small samples. */
#ifndef RB_TESTS_FAULT_SCENES_H
#define RB_TESTS_FAULT_SCENES_H

#include "runs.h"

/* The command line of a scene. */
#define LINE(...) .word = { __VA_ARGS__, NULL }

extern const struct scene scenes[];
extern const size_t scene_count;

/* runs_begin(), and the files that the scenes need beside the samples. */
int scenes_begin(void **state);

#endif
