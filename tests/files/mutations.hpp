// SPDX-License-Identifier: MIT
#pragma once
#include "files/error.hpp"
#include "files/json_text.hpp"
#include <nlohmann/json.hpp>
#include <string>

/// Small damages to a good JSON value, one at a time, at every place: each key deleted, each value of
/// another type, an unknown key in each object, each number far out, each list and object emptied.
struct Mutation {
    enum class Kind { deleted_key, other_type, unknown_key, far_out, emptied };
    Kind kind;
    std::string pointer;
    lightoff::files::Json value; ///< the whole, damaged
};

namespace mutations_detail {

using lightoff::files::Json;

inline Json of_another_type(const Json& value) {
    if (value.is_string())
        return 7;
    if (value.is_boolean() || value.is_structured())
        return "text";
    return Json{{"an", "object"}};
}

template <class Visit>
void each(const Json& whole, const Json& here, const std::string& pointer, const Visit& visit) {
    const Json::json_pointer at(pointer);
    const auto add = [&](Mutation::Kind kind, const std::string& where, Json value) {
        visit(Mutation{kind, where, std::move(value)});
    };
    const auto with = [&](Json replacement) {
        Json copy = whole;
        copy[at] = std::move(replacement);
        return copy;
    };
    add(Mutation::Kind::other_type, pointer, with(of_another_type(here)));
    add(Mutation::Kind::other_type, pointer, with(nullptr));
    if (here.is_number()) {
        add(Mutation::Kind::far_out, pointer, with(1e15));
        add(Mutation::Kind::far_out, pointer, with(-1e15));
    }
    if (here.is_object()) {
        Json more = here;
        more["never heard of"] = 1;
        add(Mutation::Kind::unknown_key, pointer, with(std::move(more)));
        for (const auto& [key, member] : here.items()) {
            Json fewer = here;
            fewer.erase(key);
            const std::string below = lightoff::files::pointer_to(pointer, key);
            add(Mutation::Kind::deleted_key, below, with(std::move(fewer)));
            each(whole, member, below, visit);
        }
    }
    if (here.is_array())
        for (std::size_t i = 0; i < here.size(); ++i)
            each(whole, here[i], lightoff::files::pointer_to(pointer, i), visit);
    if (here.is_structured() && !here.empty())
        add(Mutation::Kind::emptied, pointer, with(here.is_array() ? Json::array() : Json::object()));
}

} // namespace mutations_detail

/// Calls visit(Mutation) for each; one at a time, for a large file has thousands.
template <class Visit>
void for_each_mutation(const lightoff::files::Json& good, const Visit& visit) {
    mutations_detail::each(good, good, "", visit);
}
