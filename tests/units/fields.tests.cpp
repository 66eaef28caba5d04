// SPDX-License-Identifier: MIT
#include "units/fields.hpp"
#include "units/field_checks.hpp"

#include <catch2/catch.hpp>

#include <cstring>
#include <limits>
#include <set>

using namespace lightoff::units;

namespace {

enum class Mode : std::uint8_t { off, on };

struct Rotor {
    double speed = 1.5;
    std::array<std::uint16_t, 2> marks{3, 4};
    std::int32_t turns = -7;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("speed", "rad/s", self.speed);
        visit("marks", "", self.marks);
        visit("turns", "", self.turns);
    }
};

struct Machine {
    std::array<Rotor, 2> rotors{};
    double temperature_k = 300.0;
    std::uint32_t count = 9;
    float share = 0.25F;
    std::array<std::uint8_t, 6> lit{1, 0, 1, 0, 0, 0};
    bool running = true;
    Mode mode = Mode::on;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("rotors", self.rotors);
        visit("temperature", "K", self.temperature_k);
        visit("count", "", self.count);
        visit("share", "", self.share);
        visit("lit", "", self.lit);
        visit("running", "", self.running);
        visit("mode", "", self.mode);
    }
};
static_assert(std::is_trivially_copyable_v<Machine>);

struct Forgetful {
    double named = 0.0;
    double forgotten = 0.0;

    template <class Self, class Visit>
    static void fields(Self& self, Visit& visit) {
        visit("named", "", self.named);
    }
};

} // namespace

TEST_CASE("fields are visited depth first in the order of declaration, with path and unit") {
    const Machine machine;
    std::string seen;
    for_each_field(machine, [&](const std::string& path, std::string_view unit, const auto& value) {
        seen += path + "|" + std::string(unit) + "|" + text_of(value) + "\n";
    });
    CHECK(seen ==
          "rotors[0].speed|rad/s|1.5\nrotors[0].marks[0]||3\nrotors[0].marks[1]||4\nrotors[0].turns||-7\n"
          "rotors[1].speed|rad/s|1.5\nrotors[1].marks[0]||3\nrotors[1].marks[1]||4\nrotors[1].turns||-7\n"
          "temperature|K|300\ncount||9\nshare||0.25\n"
          "lit[0]||1\nlit[1]||0\nlit[2]||1\nlit[3]||0\nlit[4]||0\nlit[5]||0\nrunning||1\nmode||1\n");
}

TEST_CASE("the walk without names visits the same values in the same order") {
    const Machine machine;
    std::vector<std::string> named;
    std::vector<std::string> bare;
    for_each_field(machine,
                   [&](const auto&, const auto&, const auto& value) { named.push_back(text_of(value)); });
    for_each_value(machine, [&](const auto& value) { bare.push_back(text_of(value)); });
    CHECK(named == bare);
}

TEST_CASE("fields can be written through the list") {
    Machine machine;
    for_each_value(machine, [](auto& value) { value = {}; });
    CHECK(machine.temperature_k == 0.0);
    CHECK(machine.rotors[1].turns == 0);
    CHECK(machine.mode == Mode::off);
}

TEST_CASE("every single bit of a struct changes its hash, each to another value") {
    const Machine before;
    std::set<std::uint64_t> hashes{hash_fields(before)};
    for (std::size_t bit = 0; bit < sizeof(Machine) * 8; ++bit) {
        std::array<unsigned char, sizeof(Machine)> bytes{};
        std::memcpy(bytes.data(), &before, sizeof(Machine));
        if (bit / 8 == offsetof(Machine, running))
            continue; // a bool has only two legal patterns; see below
        bytes[bit / 8] = static_cast<unsigned char>(bytes[bit / 8] ^ (1U << (bit % 8)));
        Machine after;
        std::memcpy(&after, bytes.data(), sizeof(Machine));
        INFO("bit " << bit);
        CHECK(hashes.insert(hash_fields(after)).second);
    }
    Machine stopped;
    stopped.running = false;
    CHECK(hashes.insert(hash_fields(stopped)).second);
}

TEST_CASE("the hash sees the order of equal values") {
    Machine a;
    Machine b;
    a.rotors[0].marks = {1, 2};
    b.rotors[0].marks = {2, 1};
    CHECK(hash_fields(a) != hash_fields(b));
    CHECK(hash_fields(a) == hash_fields(Machine(a)));
}

TEST_CASE("a difference names the first field and both values") {
    const Machine a;
    Machine b;
    CHECK_FALSE(diff_fields(a, b));
    b.temperature_k = 300.1;
    b.rotors[1].marks[1] = 5;
    const auto difference = diff_fields(a, b);
    REQUIRE(difference);
    CHECK(difference->path == "rotors[1].marks[1]");
    CHECK(difference->unit.empty());
    CHECK(difference->left == "4");
    CHECK(difference->right == "5");
    b.rotors[1].marks[1] = 4;
    CHECK(diff_fields(a, b)->path == "temperature");
    CHECK(diff_fields(a, b)->unit == "K");
    CHECK(diff_fields(a, b)->right == "300.1");
}

TEST_CASE("a difference goes by the bits") {
    Machine a;
    Machine b;
    a.temperature_k = 0.0;
    b.temperature_k = -0.0;
    REQUIRE(diff_fields(a, b));
    CHECK(diff_fields(a, b)->right == "-0");
    a.temperature_k = b.temperature_k = std::numeric_limits<double>::quiet_NaN();
    CHECK_FALSE(diff_fields(a, b));
}

TEST_CASE("the first number that is not finite is found by its path") {
    Machine machine;
    CHECK_FALSE(first_nonfinite(machine));
    machine.share = std::numeric_limits<float>::quiet_NaN();
    CHECK(first_nonfinite(machine) == "share");
    machine.rotors[1].speed = -std::numeric_limits<double>::infinity();
    CHECK(first_nonfinite(machine) == "rotors[1].speed");
}

TEST_CASE("a member missing from the list shows in the bytes visited") {
    CHECK(visited_bytes(Rotor{}) == sizeof(Rotor));
    CHECK(visited_bytes(Machine{}) == sizeof(Machine));
    CHECK(visited_bytes(Forgetful{}) != sizeof(Forgetful));
}
