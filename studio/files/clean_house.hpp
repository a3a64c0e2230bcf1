// A house as far as a file can give it back.
#pragma once

#include "studio/model/house.hpp"

namespace quadrille {

/// The house with every text as an XML file can hold it; see clean_text.
House with_clean_texts(House house);

/// The house without anything that was kept of a file.
House without_kept(House house);

}  // namespace quadrille
