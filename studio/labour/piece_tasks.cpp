#include "studio/labour/piece_tasks.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string_view>
#include <utility>

#include "sdk/number.hpp"
#include "sdk/quoted.hpp"
#include "studio/labour/add_task.hpp"
#include "studio/labour/effort.hpp"
#include "studio/labour/loads.hpp"
#include "studio/model/amounts.hpp"
#include "studio/model/figures.hpp"
#include "studio/model/lengths.hpp"
#include "studio/takeoff/air.hpp"

namespace quadrille {
namespace {

/// Work that has its own place among the tasks, or follows from the balloons; all other is added as it comes.
constexpr std::array<std::string_view, 11> placed_work{"inflate",      "tie",      "make-cluster",  "mount-cluster",
                                                       "tie-to-frame", "join-rod", "carry-ballast", "place-base",
                                                       "raise-frame",  "hang",     "glue-filler"};

constexpr double sea_level_pa = 101'325;  // what altitude changes of the air's time is less than hands do
constexpr double highest_small_in = 6, highest_medium_in = 13, highest_large_in = 20;

double units_of(const PieceJob& job, std::string_view key) {
  double units = 0;
  if (job.piece != nullptr)
    for (const Work& work : job.piece->work)
      if (work.key == key) units += std::max(work.quantity, 0.0);
  return units;
}

double height_m(const Frame& frame) {
  double height = 0;
  for (const Vec3& node : frame.nodes) height = std::max(height, node.z());
  return height;
}

/// True where the list has the line that ties the clusters together: the piece type asks for it at such a place.
bool ties_together(const PieceCount& count) {
  return std::ranges::count(count.supplies, "clusters-together-line", &SupplyLine::key) > 0;
}

std::string_view class_of(double nominal_in) {
  if (nominal_in <= highest_small_in) return "small";
  if (nominal_in <= highest_medium_in) return "medium";
  return nominal_in <= highest_large_in ? "large" : "giant";
}

/// Puts the tasks of one piece together, each waiting for those that its kind waits for.
class PieceTasks {
 public:
  PieceTasks(Labour& labour, const PieceJob& job, const House& house) : labour_(labour), job_(job), house_(house) {}

  void build(const WorkOptions& options) {
    frame();
    balloons(options);
    if (job_.piece != nullptr) others();
    secure();
  }

  void strike() {
    Effort dressing(house_);
    dressing.add("take-down-point", units_of(job_, "hang"));
    dressing.add("take-down-cluster", static_cast<double>(job_.count->clusters));
    dressing.add("burst", static_cast<double>(job_.count->balloons));
    add("take-down", "Take down and burst " + so_many(static_cast<double>(job_.count->balloons), "balloon"),
        dressing.task(Phase::strike, 4), {});
    const auto lines = static_cast<double>(job_.placed->lines.size());
    Effort releasing(house_), lowering(house_), parting(house_), packing(house_);
    releasing.add("release-line", lines);
    add("release", "Take off " + so_many(lines, "line"), releasing.task(Phase::strike, 2), {mine("take-down")});
    lowering.add("lower-frame", units_of(job_, "raise-frame"));
    Task lower = lowering.task(Phase::strike, 2);
    if (lower.work_s > 0) want_two(lower);
    add("lower", "Lower the frame", lower, {mine("take-down"), mine("release")});
    parting.add("part-rod", units_of(job_, "join-rod"));
    parting.add("take-ballast", units_of(job_, "carry-ballast"));
    parting.add("lift-base", units_of(job_, "place-base"));
    add("part", "Take the frame and its bases apart", parting.task(Phase::strike, 2),
        {mine("take-down"), mine("release"), mine("lower")});
    packing.add("pack", 1);
    add("pack", "Pack up", packing.task(Phase::strike, 2),
        {mine("take-down"), mine("release"), mine("lower"), mine("part")});
  }

 private:
  std::string mine(const char* what) const { return job_.placed->id + "/" + what; }
  std::string of_area(const char* what) const { return job_.area->id + "/" + what; }

  /// Where nothing that it waits for is there, it waits for the area to be unpacked.
  void add(const std::string& what, std::string text, Task task, const std::vector<std::string>& after) {
    task.area = job_.area->id;
    task.piece = job_.placed->id;
    std::vector<std::string> there = listed(labour_.tasks, after);
    if (there.empty() && task.phase != Phase::strike && task.phase != Phase::day_before) there = {of_area("unpack")};
    add_task(labour_.tasks, job_.placed->id + "/" + what, std::move(text), std::move(task), there);
  }

  void add_frame_work(const std::string& what, std::string text, Task task, const std::vector<std::string>& after) {
    task.of_frame = true;
    add(what, std::move(text), std::move(task), after);
  }

  void want_two(Task& task) const {
    const double height = height_m(job_.piece->frame);
    if (height <= rate_of(house_, "tall-frame")) return;
    task.crew_least = task.crew_most = 2;
    task.alone_factor = rate_of(house_, "alone");
    task.reason = print_length(height, lengths_in(job_.units)) + " high";
  }

  void frame() {
    Effort joints(house_), bases(house_), raising(house_);
    joints.add("join-rod", units_of(job_, "join-rod"));
    add_frame_work("join", "Join and tape " + so_many(units_of(job_, "join-rod"), "joint") + " of the frame",
                   joints.task(Phase::build, 2), {of_area("unpack")});
    const double places = units_of(job_, "place-base"), ballast = units_of(job_, "carry-ballast");
    bases.add("place-base", places);
    bases.add("carry-ballast", ballast);
    add_frame_work("base",
                   "Place " + so_many(places, "base") +
                       (ballast > 0 ? " with " + print_load(ballast, job_.units) + " of ballast" : std::string()),
                   bases.task(Phase::build, 2), {of_area("unpack")});
    raising.add("raise-frame", units_of(job_, "raise-frame"));
    Task raise = raising.task(Phase::build, 2);
    if (raise.work_s > 0) want_two(raise);
    add_frame_work("raise", "Raise the frame", raise, {mine("join"), mine("base")});
  }

  void balloons(const WorkOptions& options) {
    const Phase phase = options.prepare_clusters ? Phase::day_before : Phase::build;
    add("inflate", "Inflate and tie " + so_many(static_cast<double>(job_.count->balloons), "balloon"), inflating(phase),
        {of_area("power")});
    const bool known = job_.piece != nullptr;
    const auto last = static_cast<double>(job_.count->clusters);
    const double made = known ? units_of(job_, "make-cluster") : last,
                 mounted = known ? units_of(job_, "mount-cluster") : last;
    Effort making(house_), mounting(house_);
    making.add("make-cluster", made);
    Task make = making.task(phase, 3);
    make.can_be_before = true;
    add("make", "Make " + so_many(made, "cluster"), make, {mine("inflate")});
    mounting.add("mount-cluster", mounted);
    mounting.add("climb", std::min(mounted, above_reach()));
    const int hands = static_cast<int>(std::clamp(mounted / 8, 1.0, 4.0));
    add("mount", "Mount " + so_many(mounted, "cluster"), mounting.task(Phase::build, hands),
        {mine("make"), mine("inflate"), mine("raise"), mine("base"), mine("join"), of_area("unpack")});
    Effort hanging(house_), gluing(house_);
    hanging.add("hang", units_of(job_, "hang"));
    add("hang", "Hang or tie it at " + so_many(units_of(job_, "hang"), "point"), hanging.task(Phase::build, 2),
        {mine("mount")});
    gluing.add("glue-filler", units_of(job_, "glue-filler"));
    add("fill", "Glue in " + so_many(units_of(job_, "glue-filler"), "filler"), gluing.task(Phase::build, 3),
        {mine("inflate"), mine("mount"), mine("hang")});
  }

  /// The air's own time is the nozzles' together, however many stand at them.
  Task inflating(Phase phase) const {
    const Inflator by_hand{"", "", 0.7, 1, 0, 0, "", {}};
    const Inflator* const owned = inflator_in_use(house_);
    const Inflator& inflator = owned != nullptr ? *owned : by_hand;
    const auto nozzles = static_cast<double>(nozzles_of(inflator));
    const double over_pa = figure_of(house_, "balloon-pressure");
    Effort effort(house_);
    SecondsByRate air;
    double air_s = 0, small = 0, large = 0;
    for (const BalloonLine& line : job_.count->lines) {
      const std::string size(class_of(line.nominal_in));
      const auto balloons = static_cast<double>(line.used);
      const double litres = litres_to_blow(line.inflated_m, sea_level_pa, over_pa) * balloons;
      const double blowing = inflator.litres_per_s > 0 ? litres / (inflator.litres_per_s * nozzles) : 0;
      effort.add("inflate-" + size, balloons);
      air[size] += blowing;
      air_s += blowing;
      (line.nominal_in <= highest_medium_in ? small : large) += balloons;
    }
    const double pairs = std::floor(small / 2);
    effort.add("tie-pair", pairs);
    effort.add("tie-single", small - 2 * pairs + large);
    Task task = effort.task(phase, static_cast<int>(nozzles) + 1);
    for (const auto& [size, seconds] : air) {
      task.seconds_by_rate["inflate-" + size] += seconds;
      task.seconds_by_rate["air-" + size] += seconds;
    }
    task.fixed_s = air_s;
    task.at_inflator = true;
    task.can_be_before = true;
    return task;
  }

  double above_reach() const {
    if (job_.piece == nullptr) return 0;
    const double reach = rate_of(house_, "reach");
    return static_cast<double>(
        std::ranges::count_if(job_.piece->clusters, [&](const Cluster& c) { return c.centre.z() > reach; }));
  }

  /// Work that only this piece type knows.
  void others() {
    for (const Work& work : job_.piece->work) {
      if (!(work.quantity > 0) || std::ranges::count(placed_work, work.key) > 0) continue;
      const std::optional<double> own = rate_of_foreign_work(house_, work.key);
      const double each = own.value_or(rate_of(house_, "other-work"));
      Effort effort(house_);
      effort.add_seconds(own ? foreign_work + work.key : "other-work", each * work.quantity);
      const std::string label = work.label.empty() ? work.key : work.label;
      add(free_name("work-" + work.key), label, effort.task(Phase::build, 1),
          {mine("raise"), mine("mount"), mine("hang"), mine("fill")});
      if (own) continue;
      labour_.findings.push_back({Weight::note, "work-without-rate", job_.area->id, job_.placed->id,
                                  foreign_work + work.key,
                                  "How long " + quoted(label) + " takes is not known; " + print_number(each) +
                                      " s are taken for each of " + print_number(work.quantity) + ".",
                                  "Give the house a rate " + quoted(foreign_work + work.key) + "."});
    }
  }

  /// `name`, or with a number behind it where the piece has such a task already.
  std::string free_name(const std::string& name) const {
    std::string free = name;
    for (int number = 2; std::ranges::count(labour_.tasks, job_.placed->id + "/" + free, &Task::id) > 0; ++number)
      free = name + "-" + std::to_string(number);
    return free;
  }

  void secure() {
    Effort tying(house_), together(house_), rigging(house_);
    tying.add("tie-to-frame", units_of(job_, "tie-to-frame"));
    add("tie-to-frame", "Tie " + so_many(units_of(job_, "tie-to-frame"), "cluster") + " to the frame",
        tying.task(Phase::secure, 2), {mine("mount"), mine("hang")});
    if (ties_together(*job_.count)) together.add("tie-together", static_cast<double>(job_.count->clusters));
    add("tie-together", "Run a line from cluster to cluster", together.task(Phase::secure, 2),
        {mine("mount"), mine("hang")});
    for (const SecuringLine& line : job_.placed->lines) {
      rigging.add("rig-line", 1);
      rigging.add("drive-stake", line.anchor == AnchorKind::stake ? 1 : 0);
      rigging.add("place-weight", line.anchor == AnchorKind::dead_weight ? 1 : 0);
      rigging.add("carry-ballast", line.anchor == AnchorKind::dead_weight ? line.mass_kg : 0);
      rigging.add("tie-structure", line.anchor == AnchorKind::structure ? 1 : 0);
    }
    const auto lines = static_cast<double>(job_.placed->lines.size());
    const std::string after = units_of(job_, "raise-frame") > 0 ? mine("raise") : mine("hang");
    add("lines", "Rig " + so_many(lines, "line"),
        rigging.task(Phase::secure, static_cast<int>(std::clamp(lines, 1., 4.))), {after, mine("base")});
  }

  Labour& labour_;
  const PieceJob& job_;
  const House& house_;
};

}  // namespace

std::string so_many(double number, const std::string& what) {
  return print_fixed(number, 0) + " " + what + (number == 1 ? "" : "s");
}

void add_building(Labour& labour, const PieceJob& job, const House& house, const WorkOptions& options) {
  PieceTasks(labour, job, house).build(options);
}

void add_striking(Labour& labour, const PieceJob& job, const House& house) { PieceTasks(labour, job, house).strike(); }

}  // namespace quadrille
