/* Three piece types in one plugin: a sound one between one with a bad table and one that gives no reason to refuse. */
#include "sdk/abi.h"

static const quadrille_parameter upside_down[] = {
    {"width", "Width", "How wide.", "Size", "", "", NULL, 0, QUADRILLE_LENGTH, 5, 1, 1, 5, 2, 2, 0, 0, 0, 0, ""}};

static int32_t build(const quadrille_value* values, uint32_t count, const quadrille_sink* sink) {
  (void)values;
  (void)count;
  (void)sink;
  return QUADRILLE_OK;
}
static int32_t refuse(const quadrille_value* values, uint32_t count, const quadrille_sink* sink) {
  (void)values;
  (void)count;
  (void)sink;
  return QUADRILLE_INFEASIBLE;
}

static const quadrille_piece_type types[] = {
    {"upside-down", "Upside down", "Its range is.", upside_down, 1, sizeof(quadrille_parameter), build},
    {"sound", "Sound", "It is.", NULL, 0, sizeof(quadrille_parameter), build},
    {"silent", "Silent", "Refuses without a word.", NULL, 0, sizeof(quadrille_parameter), refuse}};

extern QUADRILLE_EXPORT const quadrille_pieces quadrille_pieces_v1;
const quadrille_pieces quadrille_pieces_v1 = {sizeof(quadrille_pieces),
                                              QUADRILLE_ABI_MAJOR,
                                              QUADRILLE_ABI_MINOR,
                                              3,
                                              sizeof(quadrille_piece_type),
                                              0,
                                              "test.three",
                                              "1.0.0",
                                              types};
