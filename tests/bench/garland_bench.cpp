// How the packing of garlands grows with their size in time and memory, beside the Bullet physics library relaxing the
// same spheres to the same overlap in the same run.
#include <btBulletDynamicsCommon.h>
#include <malloc.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <new>
#include <vector>

#include "plugins/garland/core.hpp"
#include "plugins/garland/measure.hpp"
#include "plugins/garland/pack.hpp"
#include "sdk/random.hpp"

namespace {

/// What is allocated by new, and the most that was since the last look.
struct Memory {
  std::size_t now = 0, most = 0;
} memory;

}  // namespace

void* operator new(std::size_t size) {
  void* block = std::malloc(size);
  if (block == nullptr) throw std::bad_alloc();
  memory.now += malloc_usable_size(block);
  memory.most = std::max(memory.most, memory.now);
  return block;
}
void operator delete(void* block) noexcept {
  memory.now -= malloc_usable_size(block);
  std::free(block);
}
void operator delete(void* block, std::size_t) noexcept { operator delete(block); }

using namespace quadrille;
using namespace quadrille::garland;

namespace {

double seconds_since(std::chrono::steady_clock::time_point start) {
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

Request wave(int balloons) {
  Request request;
  request.mix = {{16, 0.33, 0.12}, {11, 0.24, 0.36}, {5, 0.10, 0.52}};
  request.filler = 0.5;
  request.thickness = request.thickness_end = 2.06 * 0.33;
  const double length = balloons / 10.5 * 0.3048;
  const int points = std::max(4, static_cast<int>(length / 1.5));
  for (int i = 0; i <= points; ++i) request.points.emplace_back(length * i / points, 0, 3 + 0.25 * std::sin(i * 1.0));
  return request;
}

struct Packed {
  std::vector<Ball> balls;
  double seconds = 0;  ///< the quickest of five times
  double bytes = 0;    ///< most memory in use above what was before
};

Packed packed(const Request& request) {
  Packed packed;
  packed.seconds = 1e300;
  const Curve line = course_of(request);
  for (int round = 0; round < 5; ++round) {
    packed.balls = {};
    const std::size_t before = memory.most = memory.now;
    const auto start = std::chrono::steady_clock::now();
    packed.balls = pack(request, line);
    packed.seconds = std::min(packed.seconds, seconds_since(start));
    packed.bytes = static_cast<double>(memory.most - before);
  }
  return packed;
}

/// Where the spheres start in Bullet.
enum class Start {
  spread,  ///< where the garland has them, at twice their distance from the line: all that is left is to close up
  loose,   ///< anywhere in a tube of twice the garland's thickness about their place of the line: as a garland starts
};

struct BulletRun {
  double seconds = 1e300;  ///< of its steps alone, without our looking at them
  double nearness = 0;     ///< mean distance from the line over that of the garland
  Overlaps overlaps;
  int steps = 0;
  bool reached = false;
};

double mean_distance(const std::vector<Ball>& balls, const std::vector<Vec3>& on_line) {
  double total = 0;
  for (std::size_t i = 0; i < balls.size(); ++i) total += (balls[i].centre - on_line[i]).norm();
  return total / static_cast<double>(balls.size());
}

Vec3 started(const Ball& ball, const Vec3& on_line, Start start, const Request& request, Random& chance) {
  if (start == Start::spread) return on_line + 2 * (ball.centre - on_line);
  Vec3 off;
  do off = Vec3(chance.within(-1, 1), chance.within(-1, 1), chance.within(-1, 1));
  while (off.squaredNorm() > 1);
  return on_line + request.thickness * off;
}

/// Spheres of the garland pulled to the line by `force` N each (they weigh 1 kg and are strongly damped) until they lie
/// on average as near to it as in the garland and press no deeper than there, on average, in the core and anywhere; at
/// most 300 steps of 1/60 s.
BulletRun relax_in_bullet(const std::vector<Ball>& balls, const Request& request, Start start, double force) {
  btDefaultCollisionConfiguration configuration;
  btCollisionDispatcher dispatcher(&configuration);
  btDbvtBroadphase broadphase;
  btSequentialImpulseConstraintSolver solver;
  btDiscreteDynamicsWorld world(&dispatcher, &broadphase, &solver, &configuration);
  world.setGravity(btVector3(0, 0, 0));
  std::vector<std::unique_ptr<btSphereShape>> shapes;
  std::vector<std::unique_ptr<btRigidBody>> bodies;
  std::vector<Ball> moving = balls;
  const Curve line = course_of(request);
  Random chance(1);
  std::vector<Vec3> on_line;
  for (const Ball& ball : balls) {
    on_line.push_back(line.point(ball.at));
    const Vec3 place = started(ball, on_line.back(), start, request, chance);
    shapes.push_back(std::make_unique<btSphereShape>(btScalar(ball.radius)));
    bodies.push_back(
        std::make_unique<btRigidBody>(btRigidBody::btRigidBodyConstructionInfo(1, nullptr, shapes.back().get())));
    btTransform transform;
    transform.setIdentity();
    transform.setOrigin(btVector3(btScalar(place.x()), btScalar(place.y()), btScalar(place.z())));
    bodies.back()->setWorldTransform(transform);
    bodies.back()->setDamping(0.9f, 0.9f);
    bodies.back()->setActivationState(DISABLE_DEACTIVATION);
    world.addRigidBody(bodies.back().get());
  }
  const Overlaps wanted = overlaps_of(balls, request);
  const double packed_distance = mean_distance(balls, on_line);
  BulletRun run;
  run.seconds = 0;
  while (run.steps < 300 && !run.reached) {
    const auto step_start = std::chrono::steady_clock::now();
    for (std::size_t i = 0; i < bodies.size(); ++i) {
      const btVector3 at = bodies[i]->getWorldTransform().getOrigin();
      const btVector3 goal(btScalar(on_line[i].x()), btScalar(on_line[i].y()), btScalar(on_line[i].z()));
      if ((goal - at).length2() > 1e-12f) bodies[i]->applyCentralForce((goal - at).normalized() * btScalar(force));
    }
    world.stepSimulation(1.f / 60, 0);
    run.seconds += seconds_since(step_start);
    if (++run.steps % 5 != 0) continue;
    for (std::size_t i = 0; i < bodies.size(); ++i) {
      const btVector3 at = bodies[i]->getWorldTransform().getOrigin();
      moving[i].centre = Vec3(at.x(), at.y(), at.z());
    }
    run.overlaps = overlaps_of(moving, request);
    run.nearness = mean_distance(moving, on_line) / packed_distance;
    run.reached = run.nearness <= 1 && run.overlaps.deepest <= wanted.deepest &&
                  run.overlaps.deepest_core <= wanted.deepest_core && run.overlaps.mean <= wanted.mean;
  }
  for (auto& body : bodies) world.removeRigidBody(body.get());
  return run;
}

/// Bullet at its best: with the force that brings it there soonest.
void compare(const Packed& ours, const Request& request, Start start, const char* name) {
  BulletRun best;
  double best_force = 0;
  for (const double force : {2.0, 5.0, 10.0, 20.0}) {
    const BulletRun run = relax_in_bullet(ours.balls, request, start, force);
    if (best_force > 0 && (run.reached < best.reached || (run.reached == best.reached && run.seconds > best.seconds)))
      continue;
    best = run;
    best_force = force;
  }
  std::printf(
      "  %s: %s after %d steps pulled by %.0f N, %.3f s, %.2f times the distance from the line, overlap mean %.3f, "
      "core "
      "%.3f, deepest %.3f: %.0f times as long\n",
      name, best.reached ? "there" : "not there", best.steps, best_force, best.seconds, best.nearness,
      best.overlaps.mean, best.overlaps.deepest_core, best.overlaps.deepest, best.seconds / ours.seconds);
}

}  // namespace

int main() {
  std::printf("%9s %9s %10s %8s %10s %8s %9s\n", "asked", "balloons", "seconds", "growth", "peak kB", "growth",
              "B/balloon");
  double last_seconds = 0, last_count = 0, last_bytes = 0;
  double first_seconds = 0, first_count = 0, first_bytes = 0;
  for (const int asked : {300, 1000, 3000, 10000, 30000}) {
    const Packed done = packed(wave(asked));
    const auto count = static_cast<double>(done.balls.size());
    const double rate = std::log(count / last_count);
    std::printf("%9d %9.0f %10.4f %8.2f %10.0f %8.2f %9.0f\n", asked, count, done.seconds,
                last_count > 0 ? std::log(done.seconds / last_seconds) / rate : 0.0, done.bytes / 1024,
                last_count > 0 ? std::log(done.bytes / last_bytes) / rate : 0.0, done.bytes / count);
    if (last_count == 0) first_seconds = done.seconds, first_count = count, first_bytes = done.bytes;
    last_seconds = done.seconds;
    last_count = count;
    last_bytes = done.bytes;
  }
  const double rate = std::log(last_count / first_count);
  std::printf("From the first to the last: time grows as n^%.2f, memory as n^%.2f.\n",
              std::log(last_seconds / first_seconds) / rate, std::log(last_bytes / first_bytes) / rate);
  const Request request = wave(3000);
  const Packed ours = packed(request);
  const Overlaps overlaps = overlaps_of(ours.balls, request);
  std::printf("\nOf %zu balloons here, %.4f s: overlap mean %.3f, core %.3f, deepest %.3f. In Bullet\n",
              ours.balls.size(), ours.seconds, overlaps.mean, overlaps.deepest_core, overlaps.deepest);
  compare(ours, request, Start::spread, "spread apart");
  compare(ours, request, Start::loose, "loose about the line");
  return 0;
}
