/* A whole plugin in plain C11: proof that the contract needs no C++. It builds one balloon of the size asked for. */
#include "abi_layout.h"

static const quadrille_parameter parameters[] = {{"size", "Size", "Inflated diameter of the balloon.", "Balloon", "",
                                                  "", NULL, 0, QUADRILLE_LENGTH, 0.1, 1.0, 0.1, 1.0, 0.28, 3,
                                                  QUADRILLE_NO_HANDLE, 0, 0, 0, ""}};

static int32_t build(const quadrille_value* values, uint32_t value_count, const quadrille_sink* sink) {
  quadrille_balloon balloon = {{0, 0, 0}, {0, 0, 0}, 0, 11, 0, 0, 0, QUADRILLE_ROLE_BODY};
  if (value_count != 1) return QUADRILLE_INTERNAL;
  balloon.diameter = values[0].number;
  balloon.centre[2] = balloon.diameter / 2;
  sink->push(sink->self, QUADRILLE_RECORD_BALLOON, &balloon, 1, sizeof balloon);
  return QUADRILLE_OK;
}

static const quadrille_piece_type types[] = {
    {"single", "Single balloon", "One balloon on the floor.", parameters, 1, sizeof(quadrille_parameter), build}};

QUADRILLE_EXPORT const quadrille_pieces quadrille_pieces_v1 = {sizeof(quadrille_pieces),
                                                               QUADRILLE_ABI_MAJOR,
                                                               QUADRILLE_ABI_MINOR,
                                                               1,
                                                               sizeof(quadrille_piece_type),
                                                               0,
                                                               "tests.plain-c",
                                                               "1.0.0",
                                                               types};
