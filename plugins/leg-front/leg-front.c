/* Cuts the front edge for each leg, where the client's thigh depths differ.
 *
 * Build:  cc -shared -fPIC -O2 -o libleg_front.so leg-front.c -I ../../crates/plugin-abi/include
 *
 * Each side of the cushion ends 50 mm before the back of the knee (common practice: two to three
 * fingers), never by the mean of both legs. Both thigh depths must be measured.
 */
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include "seatwright_plugin.h"

#define GAP 50.0       /* behind the knee, mm */
#define LEAST_ROW 62.0 /* a row of the thigh, mm: a cell goes in, behind the rounded corner too */

struct text {
    char *start;
    size_t length, room;
};

static void add(struct text *text, const char *form, ...) {
    va_list values;
    va_start(values, form);
    int wanted = vsnprintf(text->start ? text->start + text->length : NULL,
                           text->start ? text->room - text->length : 0, form, values);
    va_end(values);
    if (wanted > 0 && text->start && text->length + (size_t)wanted < text->room)
        text->length += (size_t)wanted;
}

static int finish(SeatwrightAnswer1 *answer, const struct text *text, int status) {
    answer->text = text->start;
    answer->length = text->length;
    return text->start ? status : SEATWRIGHT_FAILED;
}

static double least(double a, double b) { return a < b ? a : b; }

/* What the size is rated for, kg: nobody tested this pattern, so it is less than any built-in layout
 * of the size is rated for, and no more than 60. */
static double rating(double w, double d) { return least((int)(400 * w * d * 1e-6), 60); }

static void write_layout(struct text *t, double w, double d, double left, double right) {
    double half = w / 2, seat = 0.42 * d;
    double thigh = seat + (least(left, right) - seat) / 2;
    add(t, "format = 1\nkind = \"layout\"\nname = \"leg-front\"\ntitle = \"Front edge by each leg\"\n"
           "about = \"For a client whose thighs are of unequal depth.\"\n"
           "class = \"skin protection\"\nwall_height = 80\nstock_crown = 8\n"
           "rating_from = \"Not found by a test or the model: 400 kg for each square metre, less than the "
           "built-in layouts of this size, and 60 kg at most. It must be tested before use.\"\n"
           "sizes = [{ size = \"%gx%g\", max_user_weight_kg = %g }]\n", w, d, rating(w, d));
    add(t, "[points]\nrear-left = [%g, 0, \"round 25\"]\nrear = [0, 0]\nrear-right = [%g, 0, \"round 25\"]\n",
        -half, half);
    add(t, "seat-right = [%g, %g]\nthigh-right = [%g, %g]\nfront-right = [%g, %g, \"round 30\"]\n",
        half, seat, half, thigh, half, right);
    add(t, "seat-left = [%g, %g]\nthigh-left = [%g, %g]\nfront-left = [%g, %g, \"round 30\"]\n",
        -half, seat, -half, thigh, -half, left);
    add(t, "seat-mid = [0, %g]\nthigh-mid = [0, %g]\nfront-mid = [0, %g]\n", seat, thigh, least(left, right));
    const char *step = "";
    if (left > right) {
        add(t, "step = [0, %g]\n", left);
        step = "\"front-mid\", \"step\", ";
    } else if (right > left) {
        add(t, "step = [0, %g]\n", right);
        step = "\"step\", \"front-mid\", ";
    } else {
        step = "\"front-mid\", ";
    }
    add(t, "[seams]\noutline = { closed = true, through = [\"rear-left\", \"rear\", \"rear-right\", \"seat-right\", "
           "\"thigh-right\", \"front-right\", %s\"front-left\", \"thigh-left\", \"seat-left\"] }\n", step);
    add(t, "centre = { through = [\"rear\", \"seat-mid\", \"thigh-mid\", \"front-mid\"] }\n"
           "seat = { through = [\"seat-left\", \"seat-mid\", \"seat-right\"] }\n"
           "thigh = { through = [\"thigh-left\", \"thigh-mid\", \"thigh-right\"] }\n[compartments]\n");
    for (int side = 0; side < 2; side++) {
        const char *word = side ? "right" : "left";
        double x = side ? half / 2 : -half / 2, front = side ? right : left;
        add(t, "seat-%s = { seed = [%g, %g], number = %d, words = \"under the seat bone, client's %s\", for = \"seat bone\" }\n",
            word, x, seat / 2, 1 + side, word);
        add(t, "thigh-%s = { seed = [%g, %g], number = %d, words = \"under the thigh, client's %s\", for = \"thigh\" }\n",
            word, x, (seat + thigh) / 2, 3 + side, word);
        add(t, "knee-%s = { seed = [%g, %g], number = %d, words = \"behind the knee, client's %s\", for = \"front edge\" }\n",
            word, x, (thigh + least(front, least(left, right))) / 2, 5 + side, word);
    }
}

static int pattern(const SeatwrightRequest1 *request, SeatwrightAnswer1 *answer) {
    struct text text = {malloc(8192), 0, 8192};
    if (request->size != sizeof(SeatwrightRequest1) || request->value_count != 2) {
        add(&text, "the host gave another request than this plugin was built for");
        return finish(answer, &text, SEATWRIGHT_FAILED);
    }
    double d = request->depth_mm;
    double left = least(d, request->values[0] - GAP), right = least(d, request->values[1] - GAP);
    if (least(left, right) < 0.42 * d + 2 * LEAST_ROW) {
        add(&text, "the shorter thigh leaves no room for three rows; take a size of less depth");
        return finish(answer, &text, SEATWRIGHT_REFUSED);
    }
    if (left < d && right < d) {
        add(&text, "both thighs are too short for a depth of %g mm; take a size of %g mm or less", d,
            left > right ? left : right);
        return finish(answer, &text, SEATWRIGHT_REFUSED);
    }
    /* One of the two is d. A step of less than 10 mm is not worth a corner in the cover; the
     * shorter side keeps more than 40 mm behind the knee. */
    if (least(left, right) > d - 10)
        left = right = d;
    write_layout(&text, request->width_mm, d, left, right);
    return finish(answer, &text, SEATWRIGHT_OK);
}

static void release(SeatwrightAnswer1 *answer) {
    free((void *)answer->text);
    answer->text = NULL;
}

const SeatwrightPlugin1 *seatwright_plugin(void) {
    static const SeatwrightParameter1 parameters[] = {
        {"thigh-left", "thigh depth on the client's left, measured", "mm", 150, 750, 480,
         SEATWRIGHT_THIGH_DEPTH_LEFT, SEATWRIGHT_MUST_BE_GIVEN},
        {"thigh-right", "thigh depth on the client's right, measured", "mm", 150, 750, 480,
         SEATWRIGHT_THIGH_DEPTH_RIGHT, SEATWRIGHT_MUST_BE_GIVEN},
    };
    static const SeatwrightPlugin1 plugin = {
        SEATWRIGHT_ABI, sizeof(SeatwrightPlugin1), "leg-front", "1.0.0",
        "Cuts the front edge for each leg, where the thigh depths differ.",
        2, sizeof(SeatwrightParameter1), parameters, pattern, release,
    };
    return &plugin;
}
