/* A plugin whose answer is a layout of almost a megabyte, in which 20 seams run to and fro between
 * the same two points 4500 times. */
#include <stdio.h>
#include <stdlib.h>
#include "seatwright_plugin.h"

#define NO_PATTERN
static int pattern(const SeatwrightRequest1 *request, SeatwrightAnswer1 *answer) {
    char *text = malloc(1 << 20), *end = text;
    end += sprintf(end,
        "format = 1\nkind = \"layout\"\nname = \"faulty\"\ntitle = \"Without end\"\n"
        "about = \"For tests.\"\nclass = \"skin protection\"\nwall_height = 80\nstock_crown = 10\n"
        "rating_from = \"tests\"\nsizes = [{ size = \"440x400\", max_user_weight_kg = 60 }]\n"
        "[points]\na = [-220, 0]\nb = [220, 0]\nc = [220, 400]\nd = [-220, 400]\n"
        "e = [-200, 190]\nf = [200, 210]\n"
        "[seams]\noutline = { through = [\"a\", \"b\", \"c\", \"d\"], closed = true }\n");
    for (int seam = 0; seam < 20; seam++) {
        end += sprintf(end, "s%d = { through = [", seam);
        for (int at = 0; at < 4500; at++) end += sprintf(end, "\"e\", \"f\", ");
        end += sprintf(end, "] }\n");
    }
    end += sprintf(end, "[compartments]\n"
        "rear = { seed = [0, 100], number = 1, words = \"rear\", for = \"seat bone\" }\n");
    answer->text = text;
    answer->length = end - text;
    return SEATWRIGHT_OK;
}
