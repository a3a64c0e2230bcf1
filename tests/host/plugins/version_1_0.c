/* A plugin as version 1.0 of the contract compiled it: its structs are copied from there and stay as they are. What lies
 * behind the last entry of each array would be garbage to whoever read as far as later versions' entries go. */
#include <stdint.h>

#include "sdk/abi.h"

typedef struct parameter_1_0 {
  const char *key, *label, *hint, *group, *aliases, *default_text;
  const quadrille_choice* choices;
  uint32_t choice_count, kind;
  double hard_min, hard_max, display_min, display_max, default_number;
  uint32_t decimals, handle_end, handle_axis, flags;
} parameter_1_0;

typedef struct message_1_0 {
  uint32_t severity, topic;
  const char *key, *text;
} message_1_0;

#define POISON \
  { 0xA5A5A5A5A5A5A5A5u, 0xA5A5A5A5A5A5A5A5u, 0xA5A5A5A5A5A5A5A5u, 0xA5A5A5A5A5A5A5A5u }

static const struct {
  parameter_1_0 entries[2];
  uint64_t behind[4];
} parameters = {{{"across", "Across", "Inflated diameter.", "Balloon", "", "", NULL, 0, QUADRILLE_LENGTH, 0.1, 1, 0.1, 1,
                  0.25, 2, QUADRILLE_HANDLE_TOP, 2, 0},
                 {"up", "Up", "Height of the centre.", "Balloon", "", "", NULL, 0, QUADRILLE_LENGTH, 0, 3, 0, 3, 1.5, 2,
                  QUADRILLE_NO_HANDLE, 0, QUADRILLE_ADVANCED}},
                POISON};

static int32_t build(const quadrille_value* values, uint32_t count, const quadrille_sink* sink) {
  static const struct {
    message_1_0 entries[2];
    uint64_t behind[4];
  } messages = {{{QUADRILLE_NOTE, QUADRILLE_ABOUT_OTHER, "", "The first."},
                 {QUADRILLE_WARNING, QUADRILLE_ABOUT_OTHER, "up", "The second."}},
                POISON};
  quadrille_balloon balloon = {{0, 0, 0}, {0, 0, 0}, 0, 11, 0, 0, 0, QUADRILLE_ROLE_BODY};
  if (count != 2) return QUADRILLE_INTERNAL;
  balloon.diameter = values[0].number;
  balloon.centre[2] = values[1].number;
  sink->push(sink->self, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon);
  sink->push(sink->self, QUADRILLE_RECORD_MESSAGE, messages.entries, 2, sizeof messages.entries[0]);
  return QUADRILLE_OK;
}

static const quadrille_piece_type types[] = {{"version-1-0", "Version 1.0", "Of the first version.",
                                              (const quadrille_parameter*)(const void*)parameters.entries, 2,
                                              sizeof(parameter_1_0), build}};

extern QUADRILLE_EXPORT const quadrille_pieces quadrille_pieces_v1;
const quadrille_pieces quadrille_pieces_v1 = {
    sizeof(quadrille_pieces), 1, 0, 1, sizeof(quadrille_piece_type), 0, "test.first", "1.0.0", types};
