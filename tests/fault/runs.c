/* SPDX-License-Identifier: MIT */
/* Run the program in a process of its own and see what came of it. */
#include "runs.h"

#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <grp.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#define SECONDS_MOST 10    /* a run that takes longer hangs */
#define FEW          5     /* places of a fault in a run, where runs are slow */
#define NOBODY       65534 /* the user and the group that own nothing */

int __real_main(int argc, char **argv);

static char scratch[] = "/tmp/rodbook-fault-XXXXXX";
static int output_fd, messages_fd;
static bool as_nobody, uncounted;

static void must(bool done, const char *what)
{
	if (done)
		return;
	perror(what);
	exit(2);
}

/* -- files ----------------------------------------------------------------------- */

static void read_fd(int fd, struct bytes *bytes)
{
	struct stat about;

	must(!fstat(fd, &about), "fstat");
	bytes->length = (size_t)about.st_size;
	if (bytes->length >= bytes->room) {
		bytes->room = 2 * bytes->length + 1024;
		bytes->byte = realloc(bytes->byte, bytes->room);
		must(bytes->byte, "memory");
	}
	must(pread(fd, bytes->byte, bytes->length, 0) == (ssize_t)bytes->length, "pread");
	bytes->byte[bytes->length] = '\0';
}

void get_file(const char *name, struct bytes *bytes)
{
	int fd = open(name, O_RDONLY);

	must(fd >= 0, name);
	read_fd(fd, bytes);
	close(fd);
}

void put_file(const char *name, const char *text, size_t length)
{
	int fd = open(name, O_WRONLY | O_CREAT | O_TRUNC, 0666);

	must(fd >= 0, name);
	must(write(fd, text, length) == (ssize_t)length, name);
	close(fd);
}

static void copy_file(const char *from, const char *to)
{
	struct bytes bytes = { NULL, 0, 0 };

	get_file(from, &bytes);
	put_file(to, bytes.byte, bytes.length);
	free(bytes.byte);
}

static int is_name(const struct dirent *entry)
{
	return strcmp(entry->d_name, ".") && strcmp(entry->d_name, "..");
}

/* Do something with every file in a folder, in the order of their names. */
static void each_file(const char *folder, void (*act)(const char *path, void *self),
		      void *self)
{
	struct dirent **list;
	int count = scandir(folder, &list, is_name, alphasort);
	char path[512];

	must(count >= 0, folder);
	for (int i = 0; i < count; i++) {
		snprintf(path, sizeof path, "%s/%s", folder, list[i]->d_name);
		act(path, self);
		free(list[i]);
	}
	free(list);
}

static void copy_sample(const char *path, void *self)
{
	struct stat about;
	char to[512];

	(void)self;
	must(!stat(path, &about), path);
	snprintf(to, sizeof to, "%s/%s", scratch, strrchr(path, '/') + 1);
	if (S_ISREG(about.st_mode))
		copy_file(path, to);
}

static void remove_file(const char *path, void *self)
{
	(void)self;
	if (unlink(path))
		rmdir(path);
}

static void append(struct bytes *all, const char *text, size_t length)
{
	if (all->length + length >= all->room) {
		all->room = 2 * (all->length + length) + 1024;
		all->byte = realloc(all->byte, all->room);
		must(all->byte, "memory");
	}
	memcpy(all->byte + all->length, text, length);
	all->length += length;
	all->byte[all->length] = '\0';
}

static void add_file(const char *path, void *self)
{
	struct bytes bytes = { NULL, 0, 0 };
	struct stat about;
	char head[600];
	int length;

	must(!lstat(path, &about), path);
	if (S_ISREG(about.st_mode) && !access(path, R_OK))
		get_file(path, &bytes);
	length = snprintf(head, sizeof head, "%s, mode %o, %zu bytes:\n", path,
			  (unsigned)about.st_mode, bytes.length);
	append(self, head, (size_t)length);
	if (bytes.length)
		append(self, bytes.byte, bytes.length);
	free(bytes.byte);
}

void look(struct bytes *folder)
{
	folder->length = 0;
	append(folder, "", 0);
	each_file("out", add_file, folder);
}

/* As if it had been written some time ago: what is written to it now is then later by any
 * clock, however coarse. */
static void age(const char *name)
{
	const struct timespec then[2] = { { 1000000000, 0 }, { 1000000000, 0 } };

	must(!utimensat(AT_FDCWD, name, then, 0), name);
}

void prepare(const struct scene *scene, struct bytes *folder)
{
	each_file("out", remove_file, NULL);
	if (scene->old_name) {
		copy_file(scene->old_file, scene->old_name);
		age(scene->old_name);
	}
	look(folder);
}

/* -- the folder ------------------------------------------------------------------ */

static int unnamed_file(void)
{
	char name[] = "/tmp/rodbook-fault-XXXXXX";
	int fd = mkstemp(name);

	must(fd >= 0, name);
	unlink(name);
	return fd;
}

int runs_begin(void **state)
{
	int shared = unnamed_file();

	(void)state;
	umask(022);
	unsetenv("NO_COLOR");
	output_fd = unnamed_file();
	messages_fd = unnamed_file();
	must(!ftruncate(shared, sizeof *fault), "ftruncate");
	fault = mmap(NULL, sizeof *fault, PROT_READ | PROT_WRITE, MAP_SHARED, shared, 0);
	must(fault != MAP_FAILED, "mmap");
	close(shared);
	must(mkdtemp(scratch) && !chmod(scratch, 0755), scratch);
	each_file("samples", copy_sample, NULL);
	each_file("samples/rules", copy_sample, NULL);
	must(!chdir(scratch) && !mkdir("out", 0777) && !mkdir("rules", 0777), scratch);
	copy_file("ipc.csv", "rules/ipc.csv");
	return 0;
}

int runs_end(void **state)
{
	(void)state;
	each_file("out", remove_file, NULL);
	each_file("rules", remove_file, NULL);
	each_file(scratch, remove_file, NULL);
	return chdir("/") || rmdir(scratch);
}

/* -- running --------------------------------------------------------------------- */

bool run_as_nobody(bool nobody)
{
	as_nobody = nobody && !geteuid();
	return as_nobody || geteuid();
}

static void become_nobody(void)
{
	const char *what = "becoming nobody";

	must(!setgroups(0, NULL) && !setgid(NOBODY) && !setuid(NOBODY), what);
}

/* The test's own ways with signals are not the program's. */
static void forget_signals(void)
{
	static const int kept[] = { SIGFPE, SIGILL,  SIGSEGV, SIGBUS, SIGSYS,
				    SIGINT, SIGTERM, SIGHUP,  SIGQUIT };

	for (size_t i = 0; i < sizeof kept / sizeof *kept; i++)
		signal(kept[i], SIG_DFL);
}

void runs_are_not_counted(void)
{
	uncounted = true;
}

/* What a run has reached is counted where the program ends as it should. */
static void dump_coverage(void)
{
#ifdef RB_COVERAGE
	void __gcov_dump(void);

	fault->armed = false;
	if (!uncounted)
		__gcov_dump();
#endif
}

static void be_the_program(const struct scene *scene)
{
	char *argv[WORDS_MOST + 2] = { (char[]){ "rodbook" } };
	int argc = 1, status;
	int input = open(scene->input ? scene->input : "/dev/null", O_RDONLY);

	must(input >= 0, "standard input");
	for (; scene->word[argc - 1]; argc++) {
		argv[argc] = strdup(scene->word[argc - 1]);
		must(argv[argc], "memory");
	}
	if (as_nobody)
		become_nobody();
	forget_signals();
	alarm(SECONDS_MOST);
	must(dup2(input, 0) == 0 && dup2(output_fd, 1) == 1 && dup2(messages_fd, 2) == 2,
	     "dup2");
	if (scene->in_child)
		scene->in_child();
	fault->armed = true;
	status = __real_main(argc, argv);
	dump_coverage();
	_exit(status);
}

void run(const struct scene *scene, const struct fault_plan *plan,
	 struct outcome *outcome)
{
	static const struct fault_plan none = { .room = -1 };
	pid_t child;

	must(!ftruncate(output_fd, 0) && !ftruncate(messages_fd, 0), "ftruncate");
	must(!lseek(output_fd, 0, SEEK_SET) && !lseek(messages_fd, 0, SEEK_SET), "lseek");
	*fault = plan ? *plan : none;
	fflush(NULL);
	child = fork();
	must(child >= 0, "fork");
	if (!child)
		be_the_program(scene);
	must(waitpid(child, &outcome->status, 0) == child, "waitpid");
	fault->armed = false;
	read_fd(output_fd, &outcome->output);
	read_fd(messages_fd, &outcome->messages);
	look(&outcome->folder);
}

unsigned long stride_of(unsigned long places, unsigned long most)
{
	const char *which = getenv("RODBOOK_FAULTS");

	if (which && !strcmp(which, "all"))
		return 1;
	if (which && !strcmp(which, "few") && most > FEW)
		most = FEW;
	if (which && atoi(which) > 0 && most < (unsigned long)atoi(which))
		most = (unsigned long)atoi(which);
	return 1 + places / most;
}

/* -- judging --------------------------------------------------------------------- */

bool are_equal(const struct bytes *a, const struct bytes *b)
{
	return a->length == b->length && !memcmp(a->byte, b->byte, a->length);
}

bool is_same(const struct outcome *a, const struct outcome *b)
{
	return a->status == b->status && are_equal(&a->output, &b->output) &&
	       are_equal(&a->messages, &b->messages) && are_equal(&a->folder, &b->folder);
}

bool ended(const struct outcome *outcome, int status)
{
	return WIFEXITED(outcome->status) && WEXITSTATUS(outcome->status) == status;
}

bool is_one_message(const struct bytes *messages, const char *words, const char *more)
{
	const char *end = memchr(messages->byte, '\n', messages->length);

	return end && end + 1 == messages->byte + messages->length &&
	       !strncmp(messages->byte, "rodbook", 7) &&
	       (!words || strstr(messages->byte, words)) &&
	       (!more || strstr(messages->byte, more));
}

void free_outcome(struct outcome *outcome)
{
	free(outcome->output.byte);
	free(outcome->messages.byte);
	free(outcome->folder.byte);
	*outcome = (struct outcome){ .status = 0 };
}

const char *line_of(const struct scene *scene)
{
	static char line[400];
	size_t used = 0;

	line[0] = '\0';
	for (int i = 0; scene->word[i] && used < sizeof line; i++)
		used += (size_t)snprintf(line + used, sizeof line - used, "%s%s",
					 i ? " " : "", scene->word[i]);
	return line;
}
