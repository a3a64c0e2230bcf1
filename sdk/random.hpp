// The SDK's own chance: the same seed gives the same numbers in every build and on every machine, because only whole-
// number arithmetic and exact scaling are used. For looks and layouts, not for secrets.
#pragma once

#include <array>
#include <bit>
#include <cassert>
#include <cstddef>
#include <cstdint>
#include <iterator>
#include <span>
#include <utility>

namespace quadrille {

/// The next number of the sequence SplitMix64, whose state is one counter; spreads small seeds over 64 bits.
/// Source: Steele, Lea and Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014; constants as in
/// Vigna's public-domain reference code.
constexpr std::uint64_t splitmix64(std::uint64_t& state) {
  state += 0x9E3779B97F4A7C15u;
  std::uint64_t mixed = state;
  mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9u;
  mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EBu;
  return mixed ^ (mixed >> 31);
}

/// A seeded sequence: xoshiro256**. Copy it to draw the same numbers twice; one object belongs to one thread.
/// Source: Blackman and Vigna, "Scrambled linear pseudorandom number generators", ACM TOMS 47(4), 2021.
class Random {
 public:
  explicit constexpr Random(std::uint64_t seed) {
    for (std::uint64_t& word : state_) word = splitmix64(seed);
  }
  /// `state` is not all zero.
  static constexpr Random from_state(const std::array<std::uint64_t, 4>& state) {
    Random random(0);
    random.state_ = state;
    return random;
  }

  /// 64 even bits.
  constexpr std::uint64_t next() {
    const std::uint64_t drawn = std::rotl(state_[1] * 5, 7) * 9;
    const std::uint64_t shifted = state_[1] << 17;
    state_[2] ^= state_[0];
    state_[3] ^= state_[1];
    state_[1] ^= state_[2];
    state_[0] ^= state_[3];
    state_[2] ^= shifted;
    state_[3] = std::rotl(state_[3], 45);
    return drawn;
  }

  /// A real in [0, 1): one of the 2^53 multiples of 2^-53, each as likely.
  constexpr double unit() { return static_cast<double>(next() >> 11) * 0x1p-53; }

  /// A real in [least, most]; least ≤ most, both finite.
  constexpr double within(double least, double most) { return least + (most - least) * unit(); }

  /// A whole number from 0 to count − 1, each exactly as likely. `count` is at least 1.
  constexpr std::uint64_t below(std::uint64_t count) {
    assert(count > 0);
    // Draws from the incomplete last round of `count` would favour small numbers: draw again. 2^64 mod count of them.
    const std::uint64_t surplus = (0 - count) % count;
    std::uint64_t drawn = next();
    while (drawn < surplus) drawn = next();
    return drawn % count;
  }

  /// Which of `shares` was hit, each with a chance in proportion to its share. There is at least one; none is negative
  /// and their sum is finite and above 0. A share of 0 is never hit.
  constexpr std::size_t pick(std::span<const double> shares) {
    double sum = 0;
    std::size_t last = 0;
    for (std::size_t i = 0; i < shares.size(); ++i) {
      sum += shares[i];
      if (shares[i] > 0) last = i;
    }
    assert(sum > 0);
    const double aim = unit() * sum;
    double reached = 0;
    for (std::size_t i = 0; i < last; ++i) {
      reached += shares[i];
      if (aim < reached) return i;
    }
    return last;
  }

  /// Puts `items` (a vector, array or span) in an order of which each is as likely (Fisher and Yates).
  template <class Items>
  constexpr void shuffle(Items&& items) {
    for (std::size_t left = std::size(items); left > 1; --left) {
      const auto chosen = static_cast<std::size_t>(below(left));
      std::swap(items[left - 1], items[chosen]);
    }
  }

 private:
  std::array<std::uint64_t, 4> state_{};
};

}  // namespace quadrille
