// Whether a frame and its loads can be analysed at all.
#pragma once

#include <string>

#include "studio/statics/frame_model.hpp"

namespace quadrille {

/// A sentence that says what is wrong with the model and where, or nothing: numbers that are not finite or out of range,
/// nodes that do not exist, elements or lines without length, too much of anything, and any part of the frame that neither
/// a support nor a line holds. Numbers are counted from 0. Lengths up to 1000 m, stiffnesses up to 1e15.
std::string frame_fault(const FrameModel& model);

/// The same for loads on a usable model. Forces and moments up to 1e9.
std::string loads_fault(const FrameModel& model, const FrameLoads& loads);

}  // namespace quadrille
