// An event as far as a file can give it back.
#pragma once

#include "studio/model/event.hpp"

namespace quadrille {

/// The event with every text as an XML file can hold it; see clean_text.
Event with_clean_texts(Event event);

/// The event without anything that was kept of a file.
Event without_kept(Event event);

}  // namespace quadrille
