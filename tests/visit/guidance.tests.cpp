// SPDX-License-Identifier: MIT
#include "visit/guidance.hpp"

#include "files/bundle_loader.hpp"
#include "files/data_folder.hpp"
#include "files/error.hpp"
#include "files/guide.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;

namespace {

const visit::Visit::Listener kNobody{[](const bench::Caption&) {}, [](const bench::Reading&, std::size_t) {},
                                     [] { return false; }};

void act(visit::Visit& visit, visit::Guidance& guidance, const char* line) {
    INFO(line);
    REQUIRE(visit.act(bench::parse_action(visit.site(), line), "student", kNobody).empty());
    guidance.look(visit);
}

} // namespace

TEST_CASE("every guide in the data folder belongs to a call and can be read", "[visit]") {
    for (const std::string& name : files::data_names(files::kGuidesFolder)) {
        const files::LoadedBundle bundle = files::load_bundle(name);
        CHECK(files::find_guide(name, bundle.site)->steps.size() > 3);
    }
}

TEST_CASE("the first call goes forward by what comes about", "[visit]") {
    const files::LoadedBundle bundle = files::load_bundle("first-call");
    visit::Visit visit(bundle, 0);
    visit::Guidance guidance(*files::find_guide("first-call", bundle.site));
    guidance.look(visit);
    CHECK(guidance.number() == 1);
    act(visit, guidance, "thermostat-set 75F");
    CHECK(guidance.number() == 2);
    act(visit, guidance, "wait 20s"); // the lamp winks
    CHECK(guidance.number() == 3);
    act(visit, guidance, "blower-door off");
    act(visit, guidance, "door-switch on");
    CHECK(guidance.number() == 5);
    act(visit, guidance, "leads board.W board.C"); // out of its order: it counts when its turn comes
    act(visit, guidance, "wait 5s");
    CHECK(guidance.number() == 5);
    act(visit, guidance, "leads board.R board.C");
    act(visit, guidance, "wait 5s");
    CHECK(guidance.number() == 7);
    act(visit, guidance, "leads thermostat.W thermostat.C");
    act(visit, guidance, "wait 5s");
    CHECK(guidance.number() == 8);
    act(visit, guidance, "leads board.C board.W.lug"); // either way round
    act(visit, guidance, "wait 5s");
    act(visit, guidance, "strike power 3");
    act(visit, guidance, "leads-off");
    act(visit, guidance, "door-switch off");
    act(visit, guidance, "disconnect off");
    act(visit, guidance, "tighten thermostat_cable");
    CHECK(guidance.number() == 12);
    act(visit, guidance, "disconnect on");
    act(visit, guidance, "blower-door on");
    CHECK(guidance.number() == 13);
    act(visit, guidance, "wait 1min");
    CHECK(guidance.number() == 14);
    act(visit, guidance, "sign-off");
    CHECK(guidance.step() == nullptr);
}

TEST_CASE("a guide that asks for what is not there is refused with its place", "[visit]") {
    const files::LoadedBundle bundle = files::load_bundle("first-call");
    const auto message = [&](const std::string& until) -> std::string {
        try {
            files::read_guide(
                files::parse_document(R"({"format": "lightoff-guide-1", "steps": [{"say": "x", "until": )" +
                                          until + "}]}",
                                      "g.json"),
                bundle.site);
        } catch (const files::Error& error) {
            return error.what();
        }
        return "no error";
    };
    CHECK(message(R"({"did": "fly away"})").find("/steps/0/until/did") != std::string::npos);
    CHECK(message(R"({"noticed": "ghosts"})").find("/steps/0/until/noticed") != std::string::npos);
    CHECK(message(R"({"read": ["board.R", "moon"]})").find("/steps/0/until/read") != std::string::npos);
    CHECK(message(R"({"is": "tired"})").find("proved-dead") != std::string::npos);
    CHECK(message(R"({"did": "thermostat-set"})") == "no error");
}
