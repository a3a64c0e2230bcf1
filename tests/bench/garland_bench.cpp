// How the packing of garlands grows with their size, beside the Bullet physics library relaxing the same spheres to the
// same overlap in the same run.
#include <btBulletDynamicsCommon.h>
#include <malloc.h>

#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <memory>
#include <vector>

#include "plugins/garland/core.hpp"
#include "plugins/garland/fillers.hpp"
#include "plugins/garland/measure.hpp"

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
  double seconds = 0;
  double bytes = 0;  ///< most memory in use above what was before
};

Packed pack(const Request& request) {
  Packed packed;
  packed.seconds = 1e300;
  const Curve line = course_of(request);
  for (int round = 0; round < 3; ++round) {
    const auto before = mallinfo2().uordblks;
    const auto start = std::chrono::steady_clock::now();
    std::vector<Ball> balls = pack_core(request, line);
    add_fillers(balls, request, line);
    packed.seconds = std::min(packed.seconds, seconds_since(start));
    packed.bytes = static_cast<double>(mallinfo2().uordblks - before);
    packed.balls = std::move(balls);
  }
  return packed;
}

/// Spheres in Bullet, started apart at twice their distance from the line and pulled to it until they lie as near to it
/// as in the packed garland and none presses deeper than there; at most 600 steps of 1/60 s.
struct BulletRun {
  double seconds = 0, deepest = 0, nearness = 0;  ///< nearness: mean distance from the line over that of the garland
  int steps = 0;
};

double mean_distance(const std::vector<Ball>& balls, const std::vector<Vec3>& on_line) {
  double total = 0;
  for (std::size_t i = 0; i < balls.size(); ++i) total += (balls[i].centre - on_line[i]).norm();
  return total / static_cast<double>(balls.size());
}

BulletRun relax_in_bullet(const std::vector<Ball>& balls, const Request& request) {
  btDefaultCollisionConfiguration configuration;
  btCollisionDispatcher dispatcher(&configuration);
  btDbvtBroadphase broadphase;
  btSequentialImpulseConstraintSolver solver;
  btDiscreteDynamicsWorld world(&dispatcher, &broadphase, &solver, &configuration);
  world.setGravity(btVector3(0, 0, 0));
  std::vector<std::unique_ptr<btSphereShape>> shapes;
  std::vector<std::unique_ptr<btDefaultMotionState>> states;
  std::vector<std::unique_ptr<btRigidBody>> bodies;
  std::vector<Ball> moving = balls;
  const Curve line = course_of(request);
  std::vector<Vec3> on_line;
  for (const Ball& ball : balls) on_line.push_back(line.point(ball.at));
  const double packed_distance = mean_distance(balls, on_line), packed_depth = overlaps_of(balls, request).deepest;
  for (std::size_t i = 0; i < balls.size(); ++i) {
    const Ball& ball = balls[i];
    const Vec3 start = on_line[i] + 2.0 * (ball.centre - on_line[i]);
    shapes.push_back(std::make_unique<btSphereShape>(btScalar(ball.radius)));
    btTransform place;
    place.setIdentity();
    place.setOrigin(btVector3(btScalar(start.x()), btScalar(start.y()), btScalar(start.z())));
    states.push_back(std::make_unique<btDefaultMotionState>(place));
    bodies.push_back(std::make_unique<btRigidBody>(
        btRigidBody::btRigidBodyConstructionInfo(1, states.back().get(), shapes.back().get())));
    bodies.back()->setDamping(0.9f, 0.9f);
    bodies.back()->setActivationState(DISABLE_DEACTIVATION);
    world.addRigidBody(bodies.back().get());
  }
  BulletRun run;
  const auto start = std::chrono::steady_clock::now();
  while (run.steps < 600) {
    for (std::size_t i = 0; i < bodies.size(); ++i) {
      const btVector3 at = bodies[i]->getWorldTransform().getOrigin();
      const btVector3 goal(btScalar(on_line[i].x()), btScalar(on_line[i].y()), btScalar(on_line[i].z()));
      bodies[i]->applyCentralForce((goal - at).normalized() * btScalar(20));
    }
    world.stepSimulation(1.f / 60, 0);
    if (++run.steps % 10 != 0) continue;
    for (std::size_t i = 0; i < bodies.size(); ++i) {
      const btVector3 at = bodies[i]->getWorldTransform().getOrigin();
      moving[i].centre = Vec3(at.x(), at.y(), at.z());
    }
    run.deepest = overlaps_of(moving, request).deepest;
    run.nearness = mean_distance(moving, on_line) / packed_distance;
    if (run.nearness < 1.1 && run.deepest <= packed_depth) break;
  }
  run.seconds = seconds_since(start);
  for (auto& body : bodies) world.removeRigidBody(body.get());
  return run;
}

}  // namespace

int main() {
  std::printf("%9s %9s %10s %8s %10s %8s\n", "asked", "balloons", "seconds", "growth", "kB kept", "growth");
  double last_seconds = 0, last_count = 0, last_bytes = 0;
  for (const int asked : {300, 1000, 3000, 10000, 30000}) {
    const Packed packed = pack(wave(asked));
    const auto count = static_cast<double>(packed.balls.size());
    const double rate = std::log(count / last_count);
    std::printf("%9d %9.0f %10.4f %8.2f %10.0f %8.2f\n", asked, count, packed.seconds,
                last_count > 0 ? std::log(packed.seconds / last_seconds) / rate : 0.0, packed.bytes / 1024,
                last_count > 0 ? std::log(packed.bytes / last_bytes) / rate : 0.0);
    last_seconds = packed.seconds;
    last_count = count;
    last_bytes = packed.bytes;
  }
  const Packed packed = pack(wave(3000));
  const BulletRun bullet = relax_in_bullet(packed.balls, wave(3000));
  std::printf(
      "3000 balloons: here %.3f s. Bullet brings the same spheres to %.2f times the distance from the line with an "
      "overlap of %.3f in %d steps, %.3f s: %.0f times as long.\n",
      packed.seconds, bullet.nearness, bullet.deepest, bullet.steps, bullet.seconds, bullet.seconds / packed.seconds);
  return 0;
}
