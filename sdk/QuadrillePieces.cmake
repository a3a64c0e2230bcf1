# quadrille_add_pieces(NAME source…): a plugin library that exports quadrille_pieces_v1 and nothing else.
set(QUADRILLE_PIECES_EXPORTS ${CMAKE_CURRENT_LIST_DIR}/pieces.map)

function(quadrille_add_pieces name)
  add_library(${name} MODULE ${ARGN})
  target_link_libraries(${name} PRIVATE Quadrille::sdk)
  target_link_options(${name} PRIVATE -Wl,--version-script=${QUADRILLE_PIECES_EXPORTS} -Wl,--no-undefined)
  set_target_properties(${name} PROPERTIES
    PREFIX "" CXX_VISIBILITY_PRESET hidden VISIBILITY_INLINES_HIDDEN ON CXX_EXTENSIONS OFF
    LINK_DEPENDS ${QUADRILLE_PIECES_EXPORTS}
    LIBRARY_OUTPUT_DIRECTORY ${CMAKE_BINARY_DIR}/pieces)
endfunction()
