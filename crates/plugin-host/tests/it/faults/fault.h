/* A right plugin that draws two halves; each fault defines one thing otherwise before including
 * this file. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include "seatwright_plugin.h"

#ifndef ABI
#define ABI SEATWRIGHT_ABI
#endif
#ifndef SIZE
#define SIZE sizeof(SeatwrightPlugin1)
#endif
#ifndef NAME
#define NAME "faulty"
#endif
#ifndef PATTERN
#define PATTERN pattern
#endif
#ifndef RELEASE
#define RELEASE release
#endif
#ifndef PARAMETERS
#define PARAMETERS 0
#endif
#ifndef CORNER
#define CORNER w / 2
#endif
#ifndef LENGTH
#define LENGTH length
#endif
#ifndef BEFORE
#define BEFORE
#endif
#ifndef WIDTH
#define WIDTH request->width_mm
#endif
#ifndef SECOND
#define SECOND "front = { seed = [0, %g], number = 2, words = \"front\", for = \"thigh\" }\n"
#endif

#ifndef NO_PATTERN
static int pattern(const SeatwrightRequest1 *request, SeatwrightAnswer1 *answer) {
    BEFORE;
    double w = WIDTH, d = request->depth_mm;
    char *text = malloc(4096);
    int length = snprintf(text, 4096,
        "format = 1\nkind = \"layout\"\nname = \"faulty\"\ntitle = \"Halves\"\n"
        "about = \"For tests.\"\nclass = \"skin protection\"\nwall_height = 80\nstock_crown = 10\n"
        "rating_from = \"tests\"\nsizes = [{ size = \"%gx%g\", max_user_weight_kg = 60 }]\n"
        "[points]\na = [%g, 0]\nb = [%g, 0]\nc = [%g, %g]\nd = [%g, %g]\n"
        "e = { on = \"outline\", from = \"b\", to = \"c\", at = \"50%%\" }\n"
        "f = { on = \"outline\", from = \"d\", to = \"a\", at = \"50%%\" }\n"
        "[seams]\noutline = { through = [\"a\", \"b\", \"c\", \"d\"], closed = true }\n"
        "across = { through = [\"e\", \"f\"] }\n[compartments]\n"
        "rear = { seed = [0, %g], number = 1, words = \"rear\", for = \"seat bone\" }\n" SECOND,
        w, d, -w / 2, w / 2, CORNER, d, -w / 2, d, d / 4, 3 * d / 4);
    answer->text = text;
    answer->length = LENGTH;
    return SEATWRIGHT_OK;
}
#endif

static void release(SeatwrightAnswer1 *answer) { free((void *)answer->text); }

#ifndef NO_ENTRY
const SeatwrightPlugin1 *seatwright_plugin(void) {
#ifdef NULL_ENTRY
    return NULL;
#endif
    static SeatwrightPlugin1 plugin;
    plugin.abi = ABI;
    plugin.size = SIZE;
    plugin.name = NAME;
    plugin.version = "1.0";
    plugin.about = "For tests.";
    plugin.pattern = PATTERN;
    plugin.release = RELEASE;
    plugin.parameter_count = PARAMETERS;
    plugin.parameter_size = sizeof(SeatwrightParameter1);
    return &plugin;
}
#endif
