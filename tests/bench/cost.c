/* SPDX-License-Identifier: MIT */
/*
 * cost TIMES COMMAND...: run a command and say what it cost: the least processor time of
 * so many runs (its own and the system's for it, which other work on the machine disturbs
 * less than the clock), in seconds, and the peak memory, in KiB.  Its output is dropped.
 */
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

static double seconds(struct timeval t)
{
	return (double)t.tv_sec + (double)t.tv_usec / 1e6;
}

/* Processor time of the commands so far. */
static double used(void)
{
	struct rusage usage;

	getrusage(RUSAGE_CHILDREN, &usage);
	return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

static void become(char **command)
{
	int nowhere = open("/dev/null", O_WRONLY);

	if (nowhere >= 0 && dup2(nowhere, 1) >= 0 && dup2(nowhere, 2) >= 0)
		execvp(*command, command);
	_exit(127);
}

/* The seconds that the command took; less than 0 where it did not run. */
static double once(char **command)
{
	double before = used();
	pid_t child = fork();
	int status;

	if (!child)
		become(command);
	if (child < 0 || waitpid(child, &status, 0) < 0 || !WIFEXITED(status) ||
	    WEXITSTATUS(status) > 1)
		return -1;
	return used() - before;
}

int main(int argc, char **argv)
{
	struct rusage usage;
	double least = 1e9;

	if (argc < 3)
		return 2;
	for (int times = atoi(argv[1]); times > 0; times--) {
		double took = once(argv + 2);

		if (took < 0)
			return 1;
		least = took < least ? took : least;
	}
	getrusage(RUSAGE_CHILDREN, &usage);
	return printf("%.5f %ld\n", least, usage.ru_maxrss) < 0;
}
