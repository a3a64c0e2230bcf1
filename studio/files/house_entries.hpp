// Reads and writes the entries of the house's lists: one inflator, one supply, one piece of the repertoire…
#pragma once

#include <string>

#include "studio/files/element_reader.hpp"
#include "studio/model/house.hpp"

namespace quadrille {

/// How an entry is addressed among its siblings, "supply:base-plate": two of one address make a file unreadable. Packings
/// and jobs may repeat and go by their number.
std::string address_of(const Inflator& inflator);
std::string address_of(const FailureRate& failure);
std::string address_of(const BalloonStock& stock);
std::string address_of(const SupplyStock& supply);
std::string address_of(const FrameKit& kit);
std::string address_of(const RepertoirePiece& piece);

/// Each throws Unreadable where a figure is missing that an entry cannot do without, or cannot be meant.
void read_entry(const XmlNode& element, Reading& reading, Inflator& inflator);
void read_entry(const XmlNode& element, Reading& reading, FailureRate& failure);
void read_entry(const XmlNode& element, Reading& reading, BalloonStock& stock);
void read_entry(const XmlNode& element, Reading& reading, SupplyStock& supply);
void read_entry(const XmlNode& element, Reading& reading, FrameKit& kit);
void read_entry(const XmlNode& element, Reading& reading, RepertoirePiece& piece);
void read_entry(const XmlNode& element, Reading& reading, PackingCalibration& packing);
void read_entry(const XmlNode& element, Reading& reading, JobRecord& job);

/// Each returns the entry's lines, at depth 2. What is usual is left out: nothing on hand, no rental, no mass.
std::string entry_lines(const Inflator& inflator);
std::string entry_lines(const FailureRate& failure);
std::string entry_lines(const BalloonStock& stock);
std::string entry_lines(const SupplyStock& supply);
std::string entry_lines(const FrameKit& kit);
std::string entry_lines(const RepertoirePiece& piece);
std::string entry_lines(const PackingCalibration& packing);
std::string entry_lines(const JobRecord& job);

}  // namespace quadrille
