# quadrille_add_pieces(NAME source…): a plugin library NAME.so that exports quadrille_pieces_v1 and nothing else. It
# serves this source tree and, beside QuadrilleConfig.cmake, whoever uses the installed SDK. The library lands where
# CMAKE_LIBRARY_OUTPUT_DIRECTORY or the caller's own properties say.
function(quadrille_add_pieces name)
  set(exports ${CMAKE_CURRENT_FUNCTION_LIST_DIR}/pieces.map)
  add_library(${name} MODULE ${ARGN})
  target_link_libraries(${name} PRIVATE Quadrille::sdk)
  target_link_options(${name} PRIVATE "-Wl,--version-script=${exports}" -Wl,--no-undefined)
  set_target_properties(${name} PROPERTIES
    PREFIX "" CXX_VISIBILITY_PRESET hidden VISIBILITY_INLINES_HIDDEN ON CXX_EXTENSIONS OFF LINK_DEPENDS "${exports}")
endfunction()
