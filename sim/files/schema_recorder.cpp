// SPDX-License-Identifier: MIT
#include "files/schema_recorder.hpp"
#include <algorithm>

namespace lightoff::files {
namespace {

constexpr const char* kPlace = "$place"; ///< stands in a shape for the schema of that place

bool holds_no_container(const Json& value) {
    return std::none_of(value.begin(), value.end(),
                        [](const Json& v) { return v.is_object() || v.is_array(); });
}

/// Indented text in which what holds no other container is one line.
void print(const Json& value, const std::string& indent, std::string& out) {
    if (!value.is_structured() || value.empty() || holds_no_container(value)) {
        out += value.dump();
        return;
    }
    const std::string deeper = indent + "  ";
    const char* separator = "\n";
    out += value.is_object() ? "{" : "[";
    for (const auto& [key, member] : value.items()) {
        out += separator + deeper;
        if (value.is_object())
            out += Json(key).dump() + ": ";
        print(member, deeper, out);
        separator = ",\n";
    }
    out += "\n" + indent + (value.is_object() ? "}" : "]");
}

Json required(const std::string& key) {
    return {{"required", {key}}};
}

/// One of the keys, or at most one of them.
template <class Keys>
Json one_of(const Keys& keys, bool needed) {
    Json each = Json::array();
    for (const auto& key : keys)
        each.push_back(required(key.first));
    Json options = each;
    if (!needed)
        options.push_back({{"not", {{"anyOf", each}}}});
    return {{"oneOf", options}};
}

} // namespace

std::size_t SchemaRecorder::visit(const std::string& place) {
    return ++places_[place].visits;
}

void SchemaRecorder::request(const std::string& place, std::size_t visit, const KeyShapes& keys,
                             bool needed) {
    Request& request = places_[place].requests[keys.front().first];
    request.keys.resize(keys.size());
    for (std::size_t i = 0; i < keys.size(); ++i) {
        auto& [key, shapes] = request.keys[i];
        key = keys[i].first;
        if (std::find(shapes.begin(), shapes.end(), keys[i].second) == shapes.end())
            shapes.push_back(keys[i].second);
    }
    if (needed)
        request.required_in.insert(visit);
}

void SchemaRecorder::may_lack(const std::string& place, const std::string& key) {
    places_[place].may_lack.insert(key);
}

void SchemaRecorder::free_names(const std::string& place, std::size_t low, std::size_t high) {
    Place& at = places_[place];
    at.has_free_names = true;
    at.low = low;
    at.high = high;
}

Json SchemaRecorder::object_at(const std::string& place) {
    return {{kPlace, place}};
}

Json SchemaRecorder::resolved(Json shape) const {
    if (shape.is_object() && shape.contains(kPlace))
        return schema_of(shape[kPlace].get<std::string>());
    if (shape.is_structured())
        for (Json& member : shape)
            member = resolved(std::move(member));
    return shape;
}

Json SchemaRecorder::schema_of(const std::string& place) const {
    const auto found = places_.find(place);
    if (found == places_.end())
        return {{"type", "object"}}; // no example had one
    const Place& at = found->second;
    Json schema{{"type", "object"}};
    if (at.has_free_names) {
        schema["additionalProperties"] = schema_of(place + "/*");
        schema["minProperties"] = at.low;
        schema["maxProperties"] = at.high;
        return schema;
    }
    Json properties{{"note", {{"type", "string"}, {"maxLength", 4000}}}};
    if (place.empty())
        properties["$schema"] = properties["note"];
    Json needed_keys = Json::array();
    Json groups = Json::array();
    for (const auto& [first, request] : at.requests) {
        for (const auto& [key, shapes] : request.keys)
            properties[key] = resolved(shapes.size() == 1 ? shapes.front() : Json{{"anyOf", shapes}});
        const bool needed = request.required_in.size() == at.visits && at.may_lack.count(first) == 0;
        if (request.keys.size() > 1)
            groups.push_back(one_of(request.keys, needed));
        else if (needed)
            needed_keys.push_back(first);
    }
    schema["properties"] = std::move(properties);
    schema["additionalProperties"] = false;
    if (!needed_keys.empty())
        schema["required"] = std::move(needed_keys);
    if (!groups.empty())
        schema["allOf"] = std::move(groups);
    return schema;
}

std::string SchemaRecorder::schema(const std::string& title) const {
    Json schema = schema_of("");
    schema["$schema"] = "http://json-schema.org/draft-07/schema#";
    schema["title"] = title;
    std::string text;
    print(schema, "", text);
    return text + "\n";
}

} // namespace lightoff::files
