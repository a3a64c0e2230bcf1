// What a part of the window sees of the open event, and how it changes it. The main window is the one desk there is.
#pragma once

#include <cstddef>
#include <filesystem>
#include <memory>
#include <string>
#include <vector>

#include "studio/form/slot_fields.hpp"
#include "studio/model/event.hpp"
#include "studio/model/palette.hpp"

namespace quadrille {

struct LoadedPalettes;
struct PieceTypes;
struct Study;

class EventDesk {
 public:
  virtual bool is_open() const = 0;
  /// The open event. Only while there is one, as there is while area() is not null.
  virtual const Event& event() const = 0;
  /// Its file; empty while it has none. Only while it is open.
  virtual const std::filesystem::path& file() const = 0;
  /// What is worked out of the event as it is now; null while that is under way.
  virtual std::shared_ptr<const Study> study_now() const = 0;
  /// The area that is shown; null: no event is open, or it has no area.
  virtual const Area* area() const = 0;
  /// Those that the event's colours are looked up in.
  virtual const std::vector<Palette>& palettes() const = 0;
  /// As palettes(), and what was said of them; without an open event those that a new one would have.
  virtual std::shared_ptr<const LoadedPalettes> loaded_palettes() const = 0;
  /// Null while they are being looked for.
  virtual const PieceTypes* types() const = 0;
  /// True where an event is open that may be changed; otherwise the status line says why not.
  virtual bool may_edit_event() = 0;
  /// As may_edit_event, without a word.
  virtual bool can_edit() const = 0;
  /// Makes `event` the present one, as a step of that name.
  virtual void commit(const std::string& name, Event event) = 0;
  /// As commit, but within one step until settle() ends it.
  virtual void amend(const std::string& name, Event event) = 0;
  virtual void settle() = 0;
  /// Takes what stands in a field and was not entered yet.
  virtual void settle_fields() = 0;
  /// In the status line, until something else is told there.
  virtual void say(const std::string& sentence) = 0;
  /// Above the panes, until it is put away.
  virtual void inform(const std::string& sentence) = 0;
  /// Has the open event worked out once more, since something changed that counts for it, such as the house.
  virtual void reckon_anew() = 0;
  /// Where a piece comes to stand for which nobody has said it: in the middle of what is shown [m]. While there is an area.
  virtual double middle_m() const = 0;
  /// Puts a new piece into the area, as a step of that verb, with an id and a name of its own, and selects it.
  virtual void put_in(const char* verb, PlacedPiece piece) = 0;
  /// The piece that was selected last, or null.
  virtual const PlacedPiece* lead_piece() const = 0;
  /// Its colour slots; none where it may not be changed.
  virtual std::vector<SlotField> lead_slots() const = 0;
  /// Gives its slot (0 = A) this colour, as a step.
  virtual void colour_lead(std::size_t slot, const ColourReference& colour) = 0;

 protected:
  ~EventDesk() = default;
};

}  // namespace quadrille
