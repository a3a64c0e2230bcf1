// What becomes of an event's texts in a file.
#pragma once

#include "studio/model/event.hpp"

namespace quadrille {

/// The event with every text as an XML file can hold it; see clean_text.
Event with_clean_texts(Event event);

}  // namespace quadrille
