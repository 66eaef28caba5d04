// SPDX-License-Identifier: MIT
#include "visit/papers.hpp"

#include "files/bundle_loader.hpp"

#include <catch2/catch.hpp>

using namespace lightoff;

namespace {

visit::Papers papers_after(const bench::Site& site, std::initializer_list<const char*> lines) {
    std::vector<visit::Visit::Done> done;
    for (const char* line : lines)
        done.push_back({done.size(), bench::parse_action(site, line)});
    return visit::papers_of(done);
}

} // namespace

TEST_CASE("a block is struck by a reading and taken back", "[visit]") {
    const files::LoadedBundle bundle = files::load_bundle("plugged-hose");
    visit::Papers papers = papers_after(bundle.site, {"strike power 2", "strike gas 0"});
    CHECK(papers.struck[static_cast<std::size_t>(faults::Group::power)] == 2);
    CHECK(papers.struck[static_cast<std::size_t>(faults::Group::gas)] == 0);
    CHECK_FALSE(papers.struck[static_cast<std::size_t>(faults::Group::draft)]);
    papers = papers_after(bundle.site, {"strike power 2", "unstrike power"});
    CHECK_FALSE(papers.struck[static_cast<std::size_t>(faults::Group::power)]);
}

TEST_CASE("what is said last stands", "[visit]") {
    const files::LoadedBundle bundle = files::load_bundle("plugged-hose");
    const visit::Papers papers =
        papers_after(bundle.site, {"stops-at 1", "stops-at 2", "cause hose_kinked", "cause hose_plugged",
                                   "tag pressure_switch 3", "as-found manifold 1", "as-left manifold 2",
                                   "found filter_dirty", "found filter_dirty", "disconnect off"});
    CHECK(papers.stops_at == 2);
    CHECK(papers.cause == bundle.site.catalogue.find_fault("hose_plugged"));
    CHECK_FALSE(papers.cause_behind);
    CHECK(papers.tags.at(bundle.site.catalogue.find_part("pressure_switch")) == 3);
    CHECK(papers.as_found.at(bench::ReportLine::manifold) == 1);
    CHECK(papers.as_left.at(bench::ReportLine::manifold) == 2);
    CHECK(papers.found.size() == 1);
}
