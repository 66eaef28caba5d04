// SPDX-License-Identifier: MIT
#include "lesson/look_alikes.hpp"

#include <algorithm>
#include <array>

namespace lightoff::lesson {
namespace {

using Sheet = std::vector<SheetReading>;

constexpr std::array<double, 5> kSeverities{0.0, 0.25, 0.5, 0.75, 1.0};
constexpr double kWorthALook = 4.0; ///< distance in steps beyond which no finer search is made
constexpr int kThirds = 3;

bool is_all_or_nothing(const faults::Fault& fault) {
    return std::all_of(fault.changes.begin(), fault.changes.end(),
                       [](const faults::Change& c) { return c.least == c.most; }) &&
           std::all_of(fault.bridges.begin(), fault.bridges.end(),
                       [](const faults::BridgeChange& b) { return b.least_ohm == b.most_ohm; });
}

class Search {
public:
    Search(const bench::Site& site, const Scenario& scenario)
        : site_(site), scenario_(scenario), workspace_(site.model) {
        for (const faults::Fault& fault : site.catalogue.faults) {
            std::vector<Sheet> of_fault;
            for (const double severity : kSeverities)
                if (severity == 1.0 || !is_all_or_nothing(fault))
                    of_fault.push_back(sheet(fault, severity));
            sheets_.push_back(std::move(of_fault));
        }
    }

    std::vector<Imitation> all() {
        std::vector<Imitation> found;
        const auto count = static_cast<int>(sheets_.size());
        for (int fault = 0; fault < count; ++fault)
            for (int by = 0; by < count; ++by) {
                if (fault == by)
                    continue;
                const Imitation best = closest(fault, by);
                if (best.distance <= 1.0)
                    found.push_back(best);
            }
        return found;
    }

private:
    [[nodiscard]] Sheet sheet(const faults::Fault& fault, double severity) {
        return standard_sheet(site_, scenario_, &fault, severity, workspace_);
    }
    [[nodiscard]] const std::vector<Sheet>& sheets_of(int fault) const {
        return sheets_[static_cast<std::size_t>(fault)];
    }

    Imitation closest(int fault, int by) {
        const Sheet& worst = sheets_of(fault).back();
        const std::vector<Sheet>& others = sheets_of(by);
        Imitation best{fault, by, 1.0, distance(worst, others.back())};
        if (others.size() == 1)
            return best;
        for (std::size_t i = 0; i < others.size(); ++i)
            if (const double d = distance(worst, others[i]); d < best.distance)
                best = {fault, by, kSeverities[i], d};
        return best.distance > 1.0 && best.distance < kWorthALook ? refined(worst, best) : best;
    }

    Imitation refined(const Sheet& worst, Imitation best) {
        const faults::Fault& other = site_.catalogue.faults[static_cast<std::size_t>(best.by)];
        double low = std::max(0.0, best.severity - 0.25);
        double high = std::min(1.0, best.severity + 0.25);
        const auto at = [&](double severity) {
            const double d = distance(worst, sheet(other, severity));
            if (d < best.distance) {
                best.distance = d;
                best.severity = severity;
            }
            return d;
        };
        for (int i = 0; i < kThirds && best.distance > 1.0; ++i) {
            const double third = (high - low) / 3.0;
            if (at(low + third) < at(high - third))
                high -= third;
            else
                low += third;
        }
        return best;
    }

    const bench::Site& site_;
    const Scenario& scenario_;
    furnace::Workspace workspace_;
    std::vector<std::vector<Sheet>> sheets_; ///< by fault; the worst last
};

} // namespace

std::vector<Imitation> find_imitations(const bench::Site& site, const Scenario& scenario) {
    return Search(site, scenario).all();
}

} // namespace lightoff::lesson
