// SPDX-License-Identifier: MIT
#include "cli/replay_attempt.hpp"

#include "cli/exit_codes.hpp"
#include "cli/playthrough.hpp"
#include "cli/text_layout.hpp"
#include "cli/world_dump.hpp"
#include "files/attempt_log.hpp"
#include "files/disk.hpp"
#include "files/error.hpp"
#include "lesson/replay.hpp"
#include "units/field_checks.hpp"

#include <optional>

namespace lightoff::cli {
namespace {

std::string at_tick(std::uint64_t tick) {
    return "tick " + std::to_string(tick) + " (" + fixed(seconds_of(tick), 2) + " s)";
}

std::string marks_text(std::size_t marks) {
    return std::to_string(marks) + (marks == 1 ? " mark" : " marks");
}

/// Compares Worlds, mark by mark, with a dump that was made elsewhere.
class Comparison {
public:
    explicit Comparison(const std::string& path) : path_(path), there_(path) {}

    void look(const bench::World& here) {
        if (difference_)
            return;
        const std::optional<bench::World> there = there_.next();
        if (!there)
            throw files::Error({path_, "", "a dump that ends before " + at_tick(here.tick),
                                "a dump of the whole attempt", ""});
        if (there->tick != here.tick)
            throw files::Error({path_, "", "a World of " + at_tick(there->tick), at_tick(here.tick),
                                "it was made from another attempt"});
        if (there->seed != here.seed)
            throw files::Error({path_, "", "a World of seed " + std::to_string(there->seed),
                                "seed " + std::to_string(here.seed), "it was made from another attempt"});
        difference_ = units::diff_fields(*there, here);
        tick_ = here.tick;
        ++marks_;
    }

    /// One page about it; true if nothing differed.
    bool tell(Output& out) const {
        if (!difference_) {
            out.line("compared with " + path_ + ": the same in every field at " + marks_text(marks_));
            return true;
        }
        const std::size_t dot = difference_->path.rfind('.');
        const bool nested = dot != std::string::npos;
        const std::string unit = difference_->unit.empty() ? "" : " " + difference_->unit;
        out.line(out.styled(Style::bad, "first difference") + " from " + path_ + ": at " + at_tick(tick_));
        write_labelled(out, "  part", 10, nested ? difference_->path.substr(0, dot) : "World");
        write_labelled(out, "  field", 10, nested ? difference_->path.substr(dot + 1) : difference_->path);
        write_labelled(out, "  there", 10, difference_->left + unit);
        write_labelled(out, "  here", 10, difference_->right + unit);
        return false;
    }

private:
    std::string path_;
    DumpReader there_;
    std::optional<units::FieldDifference> difference_;
    std::uint64_t tick_ = 0;
    std::size_t marks_ = 0;
};

void tell_divergence(Output& out, const lesson::Divergence& d, bool compared) {
    out.line(out.styled(Style::bad, "different") + ": at " + at_tick(d.tick) + " " + d.what);
    if (d.recorded_hash == d.replayed_hash)
        return;
    out.line("  recorded  " + files::hex(d.recorded_hash));
    out.line("  replayed  " + files::hex(d.replayed_hash));
    if (!compared)
        write_wrapped(out,
                      "To find the field: `replay --dump FILE` on the machine that recorded it, then "
                      "`replay --compare FILE` here.",
                      2);
}

/// True if there were marks and all came out the same.
bool tell_marks(Output& out, const lesson::ReplayResult& result, const lesson::Log& log, bool compared) {
    if (result.divergence) {
        tell_divergence(out, *result.divergence, compared);
        return false;
    }
    if (result.marks_compared == 0) {
        out.line("nothing compared: the attempt holds no mark");
        return false;
    }
    out.line(out.styled(Style::good, "same") + ": " + marks_text(result.marks_compared) + " compared, " +
             std::to_string(log.entries.size()) + (log.entries.size() == 1 ? " action, " : " actions, ") +
             fixed(seconds_of(result.world.tick), 2) + " s");
    return true;
}

void tell_state_of_file(Output& out, const files::Attempt& attempt) {
    if (attempt.unfinished_bytes > 0)
        out.line("note: the last line was cut when it was written; " +
                 std::to_string(attempt.unfinished_bytes) + " bytes are left out");
    if (attempt.abandoned())
        out.line("note: the attempt was abandoned: it has no end");
}

} // namespace

int replay_attempt(Output& out, const ReplayOptions& options) {
    const files::Attempt attempt = files::read_attempt(options.attempt, furnace::kPhysicsVersion);
    const files::LoadedBundle bundle =
        files::load_bundle(options.scenario.empty() ? attempt.header.scenario : options.scenario);
    files::check_bundle(attempt, options.attempt, bundle.site.model.bundle_hash);
    const lesson::Log log = files::log_of(attempt, options.attempt, bundle.site);

    std::optional<files::OutputFile> dump;
    if (!options.dump.empty())
        dump.emplace(options.dump);
    std::optional<Comparison> comparison;
    if (!options.compare.empty())
        comparison.emplace(options.compare);
    const auto look = [&](const bench::World& world) {
        if (dump)
            dump->write(dump_line(world));
        if (comparison)
            comparison->look(world);
    };
    const lesson::ReplayResult result = lesson::replay(bundle.site, bundle.scenario, log, look);

    tell_state_of_file(out, attempt);
    const bool same_marks = tell_marks(out, result, log, comparison.has_value());
    const bool same_fields = !comparison || comparison->tell(out);
    return same_marks && same_fields ? kDone : kNegative;
}

} // namespace lightoff::cli
