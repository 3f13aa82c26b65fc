/* SPDX-License-Identifier: MIT */
/* Remove what is half-written when a signal ends the program. */
#include "cli/scrap.h"

#include <errno.h>
#include <stddef.h>
#include <string.h>
#include <unistd.h>

#define PATH_ROOM 4096

/* A handler is given nothing but the signal's number, so what it needs is static. */
static char scrap[PATH_ROOM];
static volatile sig_atomic_t there;

static const int ending[] = { SIGINT, SIGTERM, SIGHUP, SIGQUIT };
#define ENDINGS (sizeof ending / sizeof *ending)

static void remove_scrap(int number)
{
	if (there)
		unlink(scrap);
	(void)signal(number, SIG_DFL);
	(void)raise(number);
}

/* A signal that the parent had ignored (nohup) stays ignored. */
static void catch (int number)
{
	struct sigaction now, before;

	memset(&now, 0, sizeof now);
	now.sa_handler = remove_scrap;
	sigemptyset(&now.sa_mask);
	if (!sigaction(number, NULL, &before) && before.sa_handler != SIG_IGN)
		sigaction(number, &now, NULL);
}

void rb_scrap_hold(sigset_t *before)
{
	sigset_t held;

	sigemptyset(&held);
	for (size_t i = 0; i < ENDINGS; i++)
		sigaddset(&held, ending[i]);
	sigprocmask(SIG_BLOCK, &held, before);
}

void rb_scrap_release(const sigset_t *before)
{
	sigprocmask(SIG_SETMASK, before, NULL);
}

bool rb_scrap_set(const char *path)
{
	size_t length = path ? strlen(path) : 0;

	there = 0;
	if (!path)
		return true;
	if (length >= sizeof scrap) {
		errno = ENAMETOOLONG;
		return false;
	}
	memcpy(scrap, path, length + 1);
	there = 1;
	for (size_t i = 0; i < ENDINGS; i++)
		catch (ending[i]);
	return true;
}
