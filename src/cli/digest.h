/* SPDX-License-Identifier: MIT */
/*
 * digest.h - by which bytes a file is known again.
 *
 * SHA-256 (FIPS 180-4), from libmd; only the command line knows of it, and hands it on as
 * text.
 */
#ifndef RB_CLI_DIGEST_H
#define RB_CLI_DIGEST_H

#include <stddef.h>

#define RB_DIGEST_TEXT 65 /* bytes: 64 hexadecimal digits and a NUL */

/* Write the digest of the bytes. */
void rb_digest(char text[static RB_DIGEST_TEXT], const char *bytes, size_t length);

#endif
