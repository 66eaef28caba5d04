// SPDX-License-Identifier: MIT
#pragma once
#include "faults/catalogue.hpp"
#include "files/reader.hpp"

#include <string>
#include <vector>

/// The catalogue as its files have it: everything read and within its limits, names not yet looked up in a
/// furnace. fault_catalogue.hpp is for everybody else.
namespace lightoff::files {

/// A name in a file, and where it stands there.
struct Named {
    std::string name;
    std::string pointer;
};

struct AccessText {
    bool burner_door_off = false;
    bool blower_door_off = false;
    std::vector<Named> off;
    std::vector<Named> on;
};

struct SettingText {
    Named condition;
    double value = 0.0;
};

struct ServiceText {
    faults::Service service; ///< all but what has names
    AccessText access;
    std::vector<Named> restores;
    std::vector<SettingText> sets;
    Named adjusts; ///< empty: not by turns
};

struct SightText {
    Named condition;
    std::vector<std::string> has;
    std::vector<faults::Band> bands;
    faults::Wear wear = faults::Wear::dirt;
    std::vector<double> steps;
    double until = 0;
};

/// Two conductors that should not touch.
struct ApartText {
    Named a;
    Named b;
    std::vector<std::string> has;
};

struct PartText {
    faults::Part part; ///< all but what has names
    std::string pointer;
    std::vector<std::string> has;
    std::vector<Named> tested_at;
    bool tested_elsewhere = false; ///< than at what it has
    AccessText look;
    std::vector<SightText> sights;
    std::vector<SightText> bench_sights;
    std::vector<Named> bench_elements;
    std::vector<ApartText> apart;
    std::vector<ServiceText> services;
};

struct ChangeText {
    Named condition;
    faults::Change change;
};

struct BridgeText {
    Named a;
    Named b;
    double least_ohm = 0.0;
    double most_ohm = 0.0;
};

struct ServiceRefText {
    faults::ServiceKind kind = faults::ServiceKind::replace;
    Named part;
};

struct LookAlikeText {
    Named fault;
    std::string because;
};

struct FaultText {
    faults::Fault fault; ///< all but what has names
    std::size_t file = 0;
    std::string pointer;
    Named part;
    std::vector<std::string> has;
    std::vector<ChangeText> changes;
    std::vector<BridgeText> bridges;
    std::vector<ServiceRefText> repairs;
    std::vector<ServiceRefText> seeming;
    std::vector<Named> damages;
    std::vector<LookAlikeText> look_alikes;
};

std::vector<PartText> read_parts(const Document& document);
/// `file` is the document's number among the files of faults.
std::vector<FaultText> read_faults(const Document& document, std::size_t file);

/// The texts of a list with their places.
std::vector<Named> named_texts_at(const Object& object, std::string_view key, Count count);
Named named_at(const Object& object, std::string_view key);
faults::Group read_group(const Object& object);

} // namespace lightoff::files
