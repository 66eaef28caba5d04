// SPDX-License-Identifier: MIT
#pragma once
#include "files/json_text.hpp"
#include <cstddef>
#include <map>
#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <utility>
#include <vector>

/// Writes down the JSON Schema of a kind of file while its loader reads good examples. So each limit
/// stands once, in the loader; schemas are made from it, never by hand.
namespace lightoff::files {

class SchemaRecorder {
public:
    using KeyShapes = std::vector<std::pair<std::string, Json>>; ///< key and JSON Schema of its value

    /// A loader has opened the object at `place` (a JSON pointer with "*" for indices and free names).
    /// Returns the number of this visit.
    std::size_t visit(const std::string& place);
    /// On that visit it asked for one of these keys (one for each unit).
    void request(const std::string& place, std::size_t visit, const KeyShapes& keys, bool required);
    /// It asked whether the key is there, so that it may be missing.
    void may_lack(const std::string& place, const std::string& key);
    /// The keys of the object at `place` are free names of objects at `place`/*.
    void free_names(const std::string& place, std::size_t low, std::size_t high);

    /// Shape of an object of which the place tells more.
    static Json object_at(const std::string& place);

    /// The schema so far (draft 7), indented, with a line feed at its end.
    [[nodiscard]] std::string schema(const std::string& title) const;

private:
    struct Request {
        std::vector<std::pair<std::string, std::vector<Json>>>
            keys;                          ///< key and the shapes it was asked for in
        std::set<std::size_t> required_in; ///< visits
    };
    struct Place {
        std::size_t visits = 0;
        std::map<std::string, Request> requests; ///< by their first key
        std::set<std::string> may_lack;
        bool has_free_names = false;
        std::size_t low = 0;
        std::size_t high = 0;
    };
    [[nodiscard]] Json schema_of(const std::string& place) const;
    [[nodiscard]] Json resolved(Json shape) const;

    std::map<std::string, Place> places_;
};

} // namespace lightoff::files
