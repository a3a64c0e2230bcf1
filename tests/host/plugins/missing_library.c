/* Refers to a function that nobody has. */
#include "sdk/abi.h"

int32_t function_of_nobody(const quadrille_value* values, uint32_t count, const quadrille_sink* sink);

static const quadrille_piece_type types[] = {
    {"orphan", "Orphan", "Cannot be loaded.", NULL, 0, sizeof(quadrille_parameter), function_of_nobody}};

extern QUADRILLE_EXPORT const quadrille_pieces quadrille_pieces_v1;
const quadrille_pieces quadrille_pieces_v1 = {sizeof(quadrille_pieces),
                                              QUADRILLE_ABI_MAJOR,
                                              QUADRILLE_ABI_MINOR,
                                              1,
                                              sizeof(quadrille_piece_type),
                                              0,
                                              "test.orphan",
                                              "1.0.0",
                                              types};
