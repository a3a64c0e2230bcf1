// The repertoire: a piece is kept in the house file and comes back equal.
#include <wx/textdlg.h>

#include "answering.hpp"
#include "own_house.hpp"
#include "studio/model/edits.hpp"
#include "studio/model/repertoire.hpp"
#include "studio/window/commands/commands.hpp"
#include "studio/window/dialogs/keep_dialog.hpp"
#include "studio/window/dialogs/repertoire_dialog.hpp"
#include "studio/window/repertoire_hands.hpp"
#include "studio/window/toolkit/wx_text.hpp"

namespace quadrille {
TEST_CASE("a kept piece comes back equal in another window, from the house file alone") {
  const OwnHouse house;
  ScratchFolder folder;
  PlacedPiece kept;
  {
    OpenWindow window;
    window.open(put_event(folder));
    window->select("a1", PieceIds{"p1"});
    Answering answering({[](wxDialog& dialog) {
      auto& keep = dynamic_cast<KeepDialog&>(dialog);
      CHECK(keep.name_field().GetValue() == "Door arch");
      keep.name_field().SetValue("");
      keep.price_field().SetValue("a lot");
      CHECK(!keep.check());
      CHECK(!keep.name_fault().empty());
      CHECK(!keep.price_fault().empty());
      keep.name_field().SetValue("Arch of the door");
      keep.price_field().SetValue("185,50");
      CHECK(keep.check());
      CHECK(keep.price_fault().empty());
      return int{wxID_OK};
    }});
    window.command(command_keep);
    kept = piece(window, "p1");
    window.settle();
  }
  const House on_disk = house.read();
  REQUIRE(on_disk.repertoire.size() == 1);
  CHECK(on_disk.repertoire[0].price_minor == 18550);

  OpenWindow window;
  window.open(put_event(folder, harvest_event(), "next.quadrille"));
  {
    Answering answering({[&](wxDialog& dialog) {
      auto& repertoire = dynamic_cast<RepertoireDialog&>(dialog);
      REQUIRE(repertoire.table().model->rows().size() == 1);
      CHECK(repertoire.table().model->rows()[0].cells[0] == "Arch of the door");
      CHECK(repertoire.table().model->rows()[0].cells[2] == "185.50 USD");
      CHECK(repertoire.chosen() == "piece-1");
      CHECK(window.pump_until([&] { return repertoire.has_picture("piece-1"); }));
      return int{wxID_OK};
    }});
    window.command(command_repertoire);
  }
  CHECK(window->document()->history().undo_name() == "Insert Arch of the door");
  PlacedPiece inserted = piece(window, window->selected_piece());
  CHECK(inserted.id != kept.id);
  CHECK(inserted.price_minor == 18550);
  kept.id = inserted.id, kept.name = "Arch of the door", kept.x_m = inserted.x_m, kept.price_minor = 18550;
  CHECK(inserted == kept);
  window.settle();
}

TEST_CASE("a name that is there is replaced only after a question; entries are renamed and removed in the list") {
  const OwnHouse house;
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", PieceIds{"p1"});
  REQUIRE(window->repertoire().keep("Arch", 100));
  window->select("a1", PieceIds{"p2"});
  REQUIRE(window->repertoire().keep("Small arch", {}));
  const auto keep_as = [](const char* name) {
    return [name](wxDialog& dialog) {
      dynamic_cast<KeepDialog&>(dialog).name_field().SetValue(name);
      return int{wxID_OK};
    };
  };
  const auto answer = [](int id) { return [id](wxDialog&) { return id; }; };
  {
    Answering answering({keep_as("Arch"), answer(wxID_CANCEL), keep_as("Arch"), answer(wxID_OK)});
    window.command(command_keep);
    CHECK(house.read().repertoire[0].values.at("span").number == 2.4);
    window.command(command_keep);
    CHECK(house.read().repertoire[0].values.at("span").number == 2.0);
  }
  // Somebody else writes into the house meanwhile.
  House other = house.read();
  other.contact = "By post";
  REQUIRE(!save_house(house.file(), other));
  {
    const auto rename_to = [](const char* name) {
      return [name](wxDialog& dialog) {
        dynamic_cast<wxTextEntryDialog&>(dialog).SetValue(name);
        return int{wxID_OK};
      };
    };
    const auto press_named = [](wxDialog& dialog, const char* start) {
      for (wxWindow* child : dialog.GetChildren())
        if (auto* button = dynamic_cast<wxButton*>(child); button && button->GetLabelText().StartsWith(start))
          press(dialog, button->GetId());
    };
    Answering answering({[&](wxDialog& dialog) {
                           auto& repertoire = dynamic_cast<RepertoireDialog&>(dialog);
                           press_named(repertoire, "Rename");
                           CHECK(repertoire.table().model->rows()[0].cells[0] == "Way in");
                           press_named(repertoire, "Rename");
                           CHECK(repertoire.table().model->rows()[0].cells[0] == "Way in");
                           press_named(repertoire, "Remove");
                           REQUIRE(repertoire.table().model->rows().size() == 1);
                           CHECK(repertoire.table().model->rows()[0].cells[0] == "Small arch");
                           return int{wxID_CANCEL};
                         },
                         rename_to("Way in"), rename_to("Small arch"), answer(wxID_OK), answer(wxID_OK)});
    window.command(command_repertoire);
  }
  const House now = house.read();
  CHECK(now.contact == "By post");
  REQUIRE(now.repertoire.size() == 1);
  CHECK(now.repertoire[0].name == "Small arch");
  CHECK(window->document()->event() == harvest_event());
  window.settle();
}

TEST_CASE("a house file that cannot be read is told, and stays as it is") {
  const OwnHouse house;
  put(house.file(), "<house");
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->select("a1", PieceIds{"p1"});
  Dialogs dialogs({wxID_OK});
  CHECK(!window->repertoire().keep("Arch", {}));
  CHECK(dialogs.said()[0].find("own.quadrille-house") != std::string::npos);
  CHECK(contents(house.file()) == "<house");
}

TEST_CASE("a price of another currency stays in the house, and the status line says so") {
  const OwnHouse house;
  House euros = standard_house("EUR");
  euros.repertoire.push_back({"gate", "Gate", "arch", {}, {{"house", "coral"}}, 5000, "", {}});
  REQUIRE(!save_house(house.file(), euros));
  ScratchFolder folder;
  OpenWindow window;
  window.open(put_event(folder));
  window->repertoire().insert("gate");
  CHECK(!piece(window, window->selected_piece()).price_minor);
  CHECK(text_of(window->GetStatusBar()->GetStatusText()).find("EUR") != std::string::npos);
  window.settle();
}

}  // namespace quadrille
