/* The same rule in C: every dart that takes in more than 40 mm is a warning.
 *
 * A plugin is any program that WebAssembly can be made of, and that reads tables
 * from standard input and writes answers to standard output. What this one needs
 * of C is in every compiler; to make a module of it:
 *
 *   clang --target=wasm32-wasi -O2 -o dart-intake.wasm dart_intake.c
 *
 * (Debian has what that takes in clang, lld, wasi-libc and libclang-rt-dev-wasm32.)
 * To try it without: cc -o dart-intake dart_intake.c, and give it a table.
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MOST 40.0 /* mm */

/* cut ends a word at the next tab or end of line and gives what follows. */
static char *cut(char *at) {
    at += strcspn(at, "\t\n");
    if (*at)
        *at++ = 0;
    return at;
}

int main(void) {
    static char line[1 << 16];
    printf("plugin\t1\n");
    fflush(stdout); /* every answer must leave at once */
    while (fgets(line, sizeof line, stdin)) {
        /* "address TAB figure TAB value"; the first line of a table is
         * "table TAB version TAB number", the last "end". */
        char *address = line;
        char *figure = cut(address);
        char *value = cut(figure);
        cut(value);
        if (!strcmp(address, "end")) {
            printf("end\n");
            fflush(stdout);
        } else if (!strcmp(address, "table")) {
            if (strcmp(figure, "1")) {
                fprintf(stderr, "this plugin speaks version 1, not %s\n", figure);
                return 1;
            }
            printf("answer\t1\t%s\n", value);
        } else if (strstr(address, ".dart.") && !strcmp(figure, "intake")) {
            double intake = strtod(value, NULL);
            /* rule, verdict, address, measured, limit, unit, message */
            if (intake > MOST)
                printf("dart-intake\twarning\t%s\t%s\t%g\tmm\tthis dart takes in %.1f cm; from %.1f cm on make two of it\n",
                       address, value, MOST, intake / 10, MOST / 10);
            else
                printf("dart-intake\tpassed\t%s\t%s\t%g\tmm\t\n", address, value, MOST);
        }
    }
    return 0;
}
