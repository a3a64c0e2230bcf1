#include "studio/host/sink.hpp"

#include <algorithm>
#include <cstring>
#include <utility>

#include "sdk/records.hpp"
#include "studio/host/limits.hpp"
#include "studio/host/plugin_text.hpp"
#include "studio/host/table_check.hpp"

namespace quadrille {
namespace {

template <class Item>
void clean_texts(Item&) {}
void clean_texts(TiePoint& t) { t.label = cleaned(t.label); }
void clean_texts(Supply& s) {
  for (std::string* text : {&s.key, &s.label, &s.unit}) *text = cleaned(*text);
}
void clean_texts(Work& w) {
  for (std::string* text : {&w.key, &w.label}) *text = cleaned(*text);
}
void clean_texts(AnchoringRule& a) {
  for (std::string* text : {&a.key, &a.text, &a.reason, &a.source}) *text = cleaned(*text);
}
void clean_texts(Message& m) {
  for (std::string* text : {&m.key, &m.text, &m.remedy}) *text = cleaned(*text);
}
void clean_texts(Fact& f) { f.key = cleaned(f.key); }

/// No record of ours is near this long; a plugin of a later minor version could append to it.
constexpr std::size_t longest_record = 64u << 10;

}  // namespace

void Sink::fail(FaultKind kind, std::string sentence) {
  if (!fault_) fault_ = Fault{kind, std::move(sentence)};
}

template <class Record, class Item>
void Sink::take_all(const char* name, const void* records, std::size_t count, std::size_t record_size,
                    std::vector<Item>& into, std::size_t most) {
  if (count > most - into.size())
    return fail(FaultKind::too_large,
                std::string("it pushed more than ") + std::to_string(most) + " records of the kind '" + name + "'.");
  if (records == nullptr || record_size == 0 || record_size > longest_record || !is_stride_of<Record>(record_size))
    return fail(FaultKind::broken, std::string("it pushed records of the kind '") + name + "' without place or size.");
  for (std::size_t i = 0; i < count; ++i) {
    const auto which = [&] { return std::string(name) + " " + std::to_string(into.size() + 1) + " "; };
    const Record record = entry_at<Record>(records, i, record_size);
    if (const auto fault = fault_of(record)) return fail(fault->kind, which() + fault->sentence);
    for (const char* text : texts_of(record)) {
      if (text == nullptr) return fail(FaultKind::broken, which() + "has a text that is missing (NULL).");
      text_bytes_ += ::strnlen(text, most_text + 1);
      if (text_bytes_ > most_text) return fail(FaultKind::too_large, "it pushed more text than the studio takes.");
    }
    into.push_back(from_record(record));
    clean_texts(into.back());
  }
}

void Sink::dispatch(std::uint32_t kind, const void* r, std::size_t n, std::size_t size) {
  constexpr std::size_t others = most_other_records;
  switch (kind) {
    case QUADRILLE_RECORD_BALLOON:
      return take_all<quadrille_balloon>("balloon", r, n, size, piece_.balloons, most_balloons);
    case QUADRILLE_RECORD_CLUSTER:
      return take_all<quadrille_cluster>("cluster", r, n, size, piece_.clusters, most_clusters);
    case QUADRILLE_RECORD_SPINE_POINT:
      return take_all<quadrille_spine_point>("spine point", r, n, size, piece_.spine, most_spine_points);
    case QUADRILLE_RECORD_FRAME_NODE:
      return take_all<quadrille_frame_node>("frame node", r, n, size, piece_.frame.nodes, most_frame_nodes);
    case QUADRILLE_RECORD_FRAME_MEMBER:
      return take_all<quadrille_frame_member>("frame member", r, n, size, piece_.frame.members, most_frame_members);
    case QUADRILLE_RECORD_SUPPORT:
      return take_all<quadrille_support>("support", r, n, size, piece_.supports, others);
    case QUADRILLE_RECORD_TIE_POINT:
      return take_all<quadrille_tie_point>("tie point", r, n, size, piece_.tie_points, others);
    case QUADRILLE_RECORD_SUPPLY:
      return take_all<quadrille_supply>("supply", r, n, size, piece_.supplies, others);
    case QUADRILLE_RECORD_WORK:
      return take_all<quadrille_work>("work", r, n, size, piece_.work, others);
    case QUADRILLE_RECORD_ANCHORING:
      return take_all<quadrille_anchoring>("anchoring rule", r, n, size, piece_.anchoring, others);
    case QUADRILLE_RECORD_MESSAGE:
      return take_all<quadrille_message>("message", r, n, size, piece_.messages, others);
    case QUADRILLE_RECORD_FACT:
      return take_all<quadrille_fact>("fact", r, n, size, piece_.facts, others);
    default:
      return fail(FaultKind::broken, "it pushed records of the unknown kind " + std::to_string(kind) + ".");
  }
}

std::int32_t Sink::push(void* self, std::uint32_t kind, const void* records, std::size_t count,
                        std::size_t record_size) noexcept {
  if (self == nullptr) return 1;
  Sink& sink = *static_cast<Sink*>(self);
  if (sink.fault_) return 1;
  if (count == 0) return 0;
  try {
    sink.dispatch(kind, records, count, record_size);
  } catch (...) {
    sink.fault_ = std::move(sink.memory_full_);  // made beforehand, for now nothing can be
  }
  return sink.fault_ ? 1 : 0;
}

}  // namespace quadrille
