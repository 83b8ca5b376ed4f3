/* Put before the system's library: the call number FAULT_AT, counted from 0 among those that
 * change a disk or read a file in the folder FAULT_IN (or one named by a relative path), fails with
 * the error number FAULT_HOW, or with "kill" is the end of the process. A process that makes fewer
 * such calls ends with status 99, whatever its own is. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

static long at = -1, calls;
static const char *how, *folder;
static char is_read[1024];

__attribute__((constructor)) static void begin(void) {
    const char *number = getenv("FAULT_AT");
    how = getenv("FAULT_HOW");
    folder = getenv("FAULT_IN");
    if (number && how) at = atol(number);
}

__attribute__((destructor)) static void end(void) {
    if (at >= calls) _exit(99);
}

static int fails(void) {
    if (at < 0 || __sync_fetch_and_add(&calls, 1) != at) return 0;
    if (strcmp(how, "kill") == 0) kill(getpid(), SIGKILL);
    errno = atoi(how);
    return 1;
}

#define WRAP(result, name, parameters, arguments) \
    result name parameters { \
        static result (*real) parameters; \
        if (!real) real = (result (*) parameters) dlsym(RTLD_NEXT, #name); \
        return fails() ? -1 : real arguments; \
    }

WRAP(int, rename, (const char *a, const char *b), (a, b))
WRAP(int, link, (const char *a, const char *b), (a, b))
WRAP(int, linkat, (int c, const char *a, int d, const char *b, int e), (c, a, d, b, e))
WRAP(int, unlink, (const char *a), (a))
WRAP(int, mkdir, (const char *a, mode_t m), (a, m))
WRAP(int, rmdir, (const char *a), (a))
WRAP(int, fsync, (int f), (f))
WRAP(int, fdatasync, (int f), (f))
WRAP(int, fchmod, (int f, mode_t m), (f, m))
WRAP(int, fchown, (int f, uid_t u, gid_t g), (f, u, g))
WRAP(int, flock, (int f, int o), (f, o))

ssize_t write(int f, const void *b, size_t n) {
    static ssize_t (*real)(int, const void *, size_t);
    if (!real) real = (ssize_t (*)(int, const void *, size_t)) dlsym(RTLD_NEXT, "write");
    return f > 2 && fails() ? -1 : real(f, b, n);
}

ssize_t read(int f, void *b, size_t n) {
    static ssize_t (*real)(int, void *, size_t);
    if (!real) real = (ssize_t (*)(int, void *, size_t)) dlsym(RTLD_NEXT, "read");
    return f >= 0 && f < 1024 && is_read[f] && fails() ? -1 : real(f, b, n);
}

int open64(const char *path, int flags, ...) {
    static int (*real)(const char *, int, ...);
    if (!real) real = (int (*)(const char *, int, ...)) dlsym(RTLD_NEXT, "open64");
    va_list rest;
    va_start(rest, flags);
    mode_t mode = flags & O_CREAT ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    int counts = flags & O_CREAT || path[0] != '/' ||
        (folder && strncmp(path, folder, strlen(folder)) == 0);
    if (counts && fails()) return -1;
    int file = real(path, flags, mode);
    if (file >= 0 && file < 1024) is_read[file] = counts;
    return file;
}
