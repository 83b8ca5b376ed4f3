/* The contract between Seatwright and a plugin, version 1.
 * Made from crates/plugin-abi/src/lib.rs: do not edit; run the tests of plugin-abi with
 * REWRITE_HEADER=1 instead.
 *
 * A plugin exports one function, declared at the end. The host calls one function at a
 * time, always from the same thread. No exception may leave a function. Numbers in the
 * text have a decimal point, as printf writes it in the locale C, in which a process
 * starts.
 *
 * A structure of this version is never changed: a later version has new structures with
 * a new number, and every description begins with its version and its size.
 */

#ifndef SEATWRIGHT_PLUGIN_H
#define SEATWRIGHT_PLUGIN_H

#include <stdint.h>

// The version of this contract.
#define SEATWRIGHT_ABI 1

// The answer holds a layout's text.
#define SEATWRIGHT_OK 0

// The request cannot be met, and the answer says why: a matter of the person who asked.
#define SEATWRIGHT_REFUSED 1

// The plugin failed, and the answer may say why: a matter of the plugin's author.
#define SEATWRIGHT_FAILED 2

// A parameter that is bound to no measure of the client.
#define SEATWRIGHT_NO_MEASURE 0

// Between the lowest points of the ischial tuberosities.
#define SEATWRIGHT_SEAT_BONE_SPACING 1

// Back of the buttock to the back of the knee, on the client's left.
#define SEATWRIGHT_THIGH_DEPTH_LEFT 2

// Back of the buttock to the back of the knee, on the client's right.
#define SEATWRIGHT_THIGH_DEPTH_RIGHT 3

// Greatest width of hips or thighs.
#define SEATWRIGHT_HIP_WIDTH 4

// Between the outsides of the trochanters.
#define SEATWRIGHT_TROCHANTER_WIDTH 5

// A flag of a parameter: its default is only a start for drawing; for a client it must be given
// or measured.
#define SEATWRIGHT_MUST_BE_GIVEN 1

// A parameter of a plugin's layout. All texts are UTF-8 with a zero at the end and live as long
// as the library.
typedef struct {
  // What files and the command line call it: lower-case letters, digits, hyphens.
  const char *name;
  // What it means, in a few words.
  const char *words;
  // Its unit, `mm` or empty.
  const char *unit;
  // The least value that is taken.
  double least;
  // The greatest value that is taken.
  double greatest;
  // The value where none is given, between the two.
  double standard;
  // The client's measure by which it may be set, one of the `SEATWRIGHT_...` measures; 0 none.
  uint32_t measure;
  // Flags, added up.
  uint32_t flags;
} SeatwrightParameter1;

// What a plugin is asked for. It and the values are the host's, which keeps them unchanged during
// the call; they end with it, so a plugin keeps no pointer to them.
typedef struct {
  // Bytes of this structure.
  uint32_t size;
  // How many values there are: as many as the plugin has parameters.
  uint32_t value_count;
  // Width of the cushion, mm.
  double width_mm;
  // Depth of the cushion, mm.
  double depth_mm;
  // A value for each parameter, in order, each finite and within its range; may be null where
  // there are none.
  const double *values;
} SeatwrightRequest1;

// What a plugin answers. The structure is the host's, zero but for its size before the call; what
// `text` points at is the plugin's, which keeps it unchanged until the host calls `release` with
// the same structure.
typedef struct {
  // Bytes of this structure, written by the host.
  uint32_t size;
  // Zero.
  uint32_t reserved;
  // The layout's text in UTF-8, or the reason of a refusal; no zero is needed at its end.
  const char *text;
  // How many bytes `text` has.
  uint64_t length;
} SeatwrightAnswer1;

// What a plugin is. Returned by the exported function; the plugin's own, unchanged and valid as
// long as the library is loaded.
typedef struct {
  // `SEATWRIGHT_ABI` of the contract that it was built for. Read before anything else.
  uint32_t abi;
  // Bytes of this structure.
  uint32_t size;
  // What files and the command line call it: lower-case letters, digits, hyphens.
  const char *name;
  // The plugin's own version: 1 to 32 letters, digits or signs of ASCII without spaces. It is
  // printed with the pattern.
  const char *version;
  // Whom its layout suits, in a sentence.
  const char *about;
  // How many parameters there are.
  uint32_t parameter_count;
  // Bytes of one parameter's structure.
  uint32_t parameter_size;
  // The parameters; may be null where there are none.
  const SeatwrightParameter1 *parameters;
  // Draws a pattern: fills in `answer` and returns one of the `SEATWRIGHT_...` results.
  //
  // Ownership: both structures are the host's; the text becomes the plugin's debt, see
  // `release`. Lifetime: both pointers hold during the call only, and neither is null. Thread:
  // the one that called the exported function. Failure: `SEATWRIGHT_REFUSED` with the reason
  // as text, `SEATWRIGHT_FAILED` with the reason or with null; any other number is taken for
  // `SEATWRIGHT_FAILED`. Whatever it returns, `release` is called once afterwards.
  int (*pattern)(const SeatwrightRequest1 *request, SeatwrightAnswer1 *answer);
  // Frees what `answer->text` leads to; does nothing where that is null.
  //
  // Ownership: the text goes back to the plugin, the structure stays the host's. Lifetime: the
  // pointer holds during the call only, and is not null. Thread: that of `pattern`. Failure:
  // none; it cannot fail.
  void (*release)(SeatwrightAnswer1 *answer);
} SeatwrightPlugin1;

// The type of the exported function, `seatwright_plugin`.
//
// Ownership and lifetime: it returns the plugin's own description, valid as long as the library is
// loaded. Thread: any one, the same for all calls. Failure: null, where the plugin cannot describe
// itself. It may be called more than once, and returns the same each time.
typedef const SeatwrightPlugin1 *(*SeatwrightEntry)(void);

#ifdef __cplusplus
extern "C"
#endif
// The one function that a plugin exports, of the type SeatwrightEntry.
const SeatwrightPlugin1 *seatwright_plugin(void);

#endif  /* SEATWRIGHT_PLUGIN_H */
