/* Exports a function where the table should be. */
#include "sdk/abi.h"

QUADRILLE_EXPORT int quadrille_pieces_v1(void);
int quadrille_pieces_v1(void) { return 1; }
