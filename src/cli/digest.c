/* SPDX-License-Identifier: MIT */
/* SHA-256 in hexadecimal. */
#include "cli/digest.h"

#include <stdint.h>
#include <stdio.h>
#include <sys/types.h>

#include <sha2.h>

void rb_digest(char text[static RB_DIGEST_TEXT], const char *bytes, size_t length)
{
	uint8_t digest[SHA256_DIGEST_LENGTH];
	SHA2_CTX context;

	SHA256Init(&context);
	SHA256Update(&context, (const uint8_t *)bytes, length);
	SHA256Final(digest, &context);
	for (size_t i = 0; i < sizeof digest; i++)
		snprintf(text + 2 * i, 3, "%02x", digest[i]);
}
