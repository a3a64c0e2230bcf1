/* A plugin as an older version of the contract would have compiled it: its parameters end after the default, and its
 * balloons after the cluster. (Entries end on eight bytes, so that no padding can be taken for a field.) */
#include <stddef.h>

#include "sdk/abi.h"

typedef struct short_parameter {
  const char *key, *label, *hint, *group, *aliases, *default_text;
  const quadrille_choice* choices;
  uint32_t choice_count, kind;
  double hard_min, hard_max, display_min, display_max, default_number;
} short_parameter;

typedef struct short_balloon {
  double centre[3], neck[3], diameter, nominal;
  uint32_t slot, cluster;
} short_balloon;

static const short_parameter parameters[] = {
    {"across", "Across", "Inflated diameter.", "Balloon", "", "", NULL, 0, QUADRILLE_LENGTH, 0.1, 1, 0.1, 1, 0.25},
    {"up", "Up", "Height of the centre.", "Balloon", "", "", NULL, 0, QUADRILLE_LENGTH, 0, 3, 0, 3, 1.5}};

static int32_t build(const quadrille_value* values, uint32_t count, const quadrille_sink* sink) {
  short_balloon balloons[2] = {{{0, 0, 0}, {0, 0, 0}, 0, 11, 3, 0}, {{1, 0, 0}, {1, 0, 0}, 0, 5, 4, 0}};
  for (int i = 0; i < 2; ++i) {
    balloons[i].diameter = values[0].number;
    balloons[i].centre[2] = values[1].number;
  }
  if (count != 2) return QUADRILLE_INTERNAL;
  sink->push(sink->self, QUADRILLE_RECORD_BALLOON, balloons, 2, sizeof balloons[0]);
  return QUADRILLE_OK;
}

static const quadrille_piece_type types[] = {{"older", "Older", "Of an older version.",
                                              (const quadrille_parameter*)(const void*)parameters, 2,
                                              sizeof(short_parameter), build}};

extern QUADRILLE_EXPORT const quadrille_pieces quadrille_pieces_v1;
const quadrille_pieces quadrille_pieces_v1 = {sizeof(quadrille_pieces),
                                              QUADRILLE_ABI_MAJOR,
                                              QUADRILLE_ABI_MINOR,
                                              1,
                                              sizeof(quadrille_piece_type),
                                              0,
                                              "test.older",
                                              "0.9.0",
                                              types};
