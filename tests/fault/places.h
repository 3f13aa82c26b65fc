/* SPDX-License-Identifier: MIT */
/* places.h - one run after another where the system itself sets the fault. */
#ifndef RB_TESTS_FAULT_PLACES_H
#define RB_TESTS_FAULT_PLACES_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "scenes.h"

/* What is in out/ before the run, and what came of it. */
extern struct bytes before;
extern struct outcome got;

void go(const struct scene *scene);

/* It ended with 3, said why and of which file in one line, and left all as it was. */
void assert_fails(const char *name, int error);

/* The teardown of a test. */
int forget(void **state);

#endif
