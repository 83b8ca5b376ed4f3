/* Put before the system's library: the call number FAULT_AT, counted from 0 among those that
 * change a disk or read a file in the folder FAULT_IN (or one named by a relative path), fails with
 * the error number FAULT_HOW, or with "kill" is the end of the process. A process that makes fewer
 * such calls ends with status 99, whatever its own is.
 *
 * With FAULT_HOW "short" no call fails, but whatever is read or written goes by halves; with
 * "eintr" each call that a signal may interrupt is interrupted once before it is made.
 *
 * Files get their names by the kernel's own call and not by the library's, so that one is caught
 * by a filter: it raises SIGSYS, which counts and, where the call is to be made, makes it with a
 * sixth argument that the filter lets pass. Where the kernel refuses the filter, or the machine is
 * of another kind, a line on stderr says that these calls are left out. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <linux/filter.h>
#include <linux/seccomp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>
#include <sys/prctl.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/types.h>
#include <ucontext.h>
#include <unistd.h>

static long at = -1, calls;
static const char *how, *folder;
static char is_read[1024];

/* The sixth argument of a call that is let pass. */
#define PASSES 0x5ea75ea7

#if defined __x86_64__
#define GIVEN(own, n) (own)->uc_mcontext.gregs[(int[]) { REG_RDI, REG_RSI, REG_RDX, REG_R10, REG_R8 }[n]]
#define ANSWER(own) (own)->uc_mcontext.gregs[REG_RAX]
#elif defined __aarch64__
#define GIVEN(own, n) (own)->uc_mcontext.regs[n]
#define ANSWER(own) (own)->uc_mcontext.regs[0]
#endif

#ifdef ANSWER
static void is_named(int, siginfo_t *, void *);

/* Asks the kernel to send the calls that name a file to `is_named`; returns 0 where it does. */
static int filter(void) {
#define LOAD(what) BPF_STMT(BPF_LD | BPF_W | BPF_ABS, offsetof(struct seccomp_data, what))
#define EQUAL(value, yes, no) BPF_JUMP(BPF_JMP | BPF_JEQ | BPF_K, value, yes, no)
#ifdef __NR_rename
    const int plain = __NR_rename;
#else
    const int plain = -1;
#endif
    struct sock_filter code[] = {
        LOAD(nr), EQUAL(plain, 2, 0), EQUAL(__NR_renameat, 1, 0), EQUAL(__NR_renameat2, 0, 3),
        LOAD(args[5]), EQUAL(PASSES, 1, 0),
        BPF_STMT(BPF_RET | BPF_K, SECCOMP_RET_TRAP), BPF_STMT(BPF_RET | BPF_K, SECCOMP_RET_ALLOW),
    };
    struct sock_fprog program = { sizeof code / sizeof *code, code };
    struct sigaction action = { .sa_sigaction = is_named, .sa_flags = SA_SIGINFO | SA_NODEFER };
    return sigaction(SIGSYS, &action, 0) || prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) ||
        prctl(PR_SET_SECCOMP, SECCOMP_MODE_FILTER, &program);
}
#else
static int filter(void) {
    return -1;
}
#endif

static void say(const char *words) {
    if (syscall(SYS_write, 2, words, strlen(words)) < 0) _exit(98);
}

__attribute__((constructor)) static void begin(void) {
    const char *number = getenv("FAULT_AT");
    how = getenv("FAULT_HOW");
    folder = getenv("FAULT_IN");
    if (!number || !how) return;
    at = atol(number);
    if (filter()) say("Renames are not trapped here: they are left out.\n");
}

__attribute__((destructor)) static void end(void) {
    if (at >= calls) _exit(99);
}

static int is_short(void) {
    return at >= 0 && strcmp(how, "short") == 0;
}

static int is_eintr(void) {
    return at >= 0 && strcmp(how, "eintr") == 0;
}

/* Whether a call is interrupted: each second one of a thread is. */
static int interrupted(void) {
    static __thread int made;
    if (!is_eintr() || (made = !made) == 0) return 0;
    __sync_fetch_and_add(&calls, 1);
    errno = EINTR;
    return 1;
}

/* How many of so many bytes are let through: some half of them. */
static size_t some(size_t n) {
    if (!is_short() || n <= 2) return n;
    __sync_fetch_and_add(&calls, 1);
    return 1 + n / 2;
}

static int fails(void) {
    if (at < 0 || is_short() || is_eintr() || __sync_fetch_and_add(&calls, 1) != at) return 0;
    if (strcmp(how, "kill") == 0) kill(getpid(), SIGKILL);
    errno = atoi(how);
    return 1;
}

#ifdef ANSWER
static void is_named(int signal, siginfo_t *info, void *context) {
    (void) signal;
    ucontext_t *own = context;
    int before = errno;
    long done = fails() ? -1 : syscall(info->si_syscall, GIVEN(own, 0), GIVEN(own, 1),
        GIVEN(own, 2), GIVEN(own, 3), GIVEN(own, 4), (long) PASSES);
    ANSWER(own) = done < 0 ? -errno : done;
    errno = before;
}
#endif

/* Whether a path is in the folder, or relative to where the program runs. */
static int is_ours(const char *path) {
    return path[0] != '/' || (folder && strncmp(path, folder, strlen(folder)) == 0);
}

#define WRAP(result, name, parameters, arguments) \
    result name parameters { \
        static result (*real) parameters; \
        if (!real) real = (result (*) parameters) dlsym(RTLD_NEXT, #name); \
        return fails() ? -1 : real arguments; \
    }

#define WRAP_INTERRUPTED(result, name, parameters, arguments) \
    result name parameters { \
        static result (*real) parameters; \
        if (!real) real = (result (*) parameters) dlsym(RTLD_NEXT, #name); \
        return interrupted() || fails() ? -1 : real arguments; \
    }

WRAP(int, link, (const char *a, const char *b), (a, b))
WRAP(int, linkat, (int c, const char *a, int d, const char *b, int e), (c, a, d, b, e))
WRAP(int, unlink, (const char *a), (a))
WRAP(int, mkdir, (const char *a, mode_t m), (a, m))
WRAP(int, rmdir, (const char *a), (a))
WRAP_INTERRUPTED(int, fsync, (int f), (f))
WRAP_INTERRUPTED(int, fdatasync, (int f), (f))
WRAP_INTERRUPTED(int, fchmod, (int f, mode_t m), (f, m))
WRAP(int, fchown, (int f, uid_t u, gid_t g), (f, u, g))
WRAP(int, flock, (int f, int o), (f, o))

/* Reading a folder: it may fail to be opened. */
void *opendir(const char *path) {
    static void *(*real)(const char *);
    if (!real) real = (void *(*)(const char *)) dlsym(RTLD_NEXT, "opendir");
    return is_ours(path) && fails() ? 0 : real(path);
}

/* Links are followed. */
char *realpath(const char *path, char *to) {
    static char *(*real)(const char *, char *);
    if (!real) real = (char *(*)(const char *, char *)) dlsym(RTLD_NEXT, "realpath");
    return is_ours(path) && fails() ? 0 : real(path, to);
}

ssize_t write(int f, const void *b, size_t n) {
    static ssize_t (*real)(int, const void *, size_t);
    if (!real) real = (ssize_t (*)(int, const void *, size_t)) dlsym(RTLD_NEXT, "write");
    return f > 2 && (interrupted() || fails()) ? -1 : real(f, b, f > 2 ? some(n) : n);
}

ssize_t read(int f, void *b, size_t n) {
    static ssize_t (*real)(int, void *, size_t);
    if (!real) real = (ssize_t (*)(int, void *, size_t)) dlsym(RTLD_NEXT, "read");
    if (f < 0 || f >= 1024 || !is_read[f]) return real(f, b, n);
    return interrupted() || fails() ? -1 : real(f, b, some(n));
}

int open64(const char *path, int flags, ...) {
    static int (*real)(const char *, int, ...);
    if (!real) real = (int (*)(const char *, int, ...)) dlsym(RTLD_NEXT, "open64");
    va_list rest;
    va_start(rest, flags);
    mode_t mode = flags & O_CREAT ? va_arg(rest, mode_t) : 0;
    va_end(rest);
    int counts = flags & O_CREAT || is_ours(path);
    if (counts && (interrupted() || fails())) return -1;
    int file = real(path, flags, mode);
    if (file >= 0 && file < 1024) is_read[file] = counts;
    return file;
}

int statx(int at, const char *path, int flags, unsigned mask, struct statx *about) {
    static int (*real)(int, const char *, int, unsigned, struct statx *);
    if (!real) real = (int (*)(int, const char *, int, unsigned, struct statx *))
        dlsym(RTLD_NEXT, "statx");
    /* Rust's library asks with nothing whether the kernel has the call at all; that the header
     * promises something must not take the question away. */
    const char *volatile given = path;
    if (!given) return real(at, path, flags, mask, about);
    int counts = *path ? is_ours(path) : at >= 0 && at < 1024 && is_read[at];
    return counts && fails() ? -1 : real(at, path, flags, mask, about);
}
