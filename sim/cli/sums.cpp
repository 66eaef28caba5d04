// SPDX-License-Identifier: MIT
#include "cli/sums.hpp"

namespace lightoff::cli {

const std::vector<Sum>& sums() {
    static const std::vector<Sum> all = [] {
        std::vector<Sum> list;
        for (std::vector<Sum> (*of_room)() : {gas_sums, combustion_sums, air_sums, electrical_sums})
            for (Sum& sum : of_room())
                list.push_back(std::move(sum));
        return list;
    }();
    return all;
}

} // namespace lightoff::cli
