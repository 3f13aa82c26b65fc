/* SPDX-License-Identifier: MIT */
/*
 * target.h - what every target of the fuzzer has.
 *
 * A target takes any bytes and ends the process where a promise is broken.  It is built
 * twice: with libFuzzer (make fuzz), and with again.c, which hands it the files of found/
 * and the seeds (make test).
 */
#ifndef RB_TESTS_FUZZ_TARGET_H
#define RB_TESTS_FUZZ_TARGET_H

#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

_Noreturn static inline void broken(const char *file, int line, const char *promise)
{
	fprintf(stderr, "%s:%d: broken: %s\n", file, line, promise);
	abort();
}

#define HOLDS(promise) ((promise) ? (void)0 : broken(__FILE__, __LINE__, #promise))

#endif
