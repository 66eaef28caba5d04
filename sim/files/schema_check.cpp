// SPDX-License-Identifier: MIT
// The only file that includes valijson: it takes long to compile.
#include "files/schema_check.hpp"
#include "files/error.hpp"
#include <algorithm>
#include <nlohmann/json.hpp>
#include <valijson/adapters/nlohmann_json_adapter.hpp>
#include <valijson/schema.hpp>
#include <valijson/schema_parser.hpp>
#include <valijson/validation_results.hpp>
#include <valijson/validator.hpp>
#include <vector>

namespace lightoff::files {
namespace {

using Adapter = valijson::adapters::NlohmannJsonAdapter;

/// A place in the checked file and what the schema says of it.
struct Place {
    std::string pointer;
    const Json* value;
    const Json* schema; ///< nullptr where it can't be told
};

const Json* member(const Json* schema, const std::string& key) {
    if (schema == nullptr || !schema->contains(key))
        return nullptr;
    return &(*schema)[key];
}

const Json* schema_below(const Json* schema, const Json& value, const std::string& key) {
    if (value.is_array())
        return member(schema, "items");
    const Json* const named = member(member(schema, "properties"), key);
    return named != nullptr ? named : member(schema, "additionalProperties");
}

/// Follows valijson's context: "<root>", "[gas]", "[0]".
Place follow(const std::vector<std::string>& context, const Json& root, const Json& schema) {
    Place place{"", &root, &schema};
    for (std::size_t i = 1; i < context.size(); ++i) {
        const std::string key = context[i].substr(1, context[i].size() - 2);
        const Json& parent = *place.value;
        place.schema = schema_below(place.schema, parent, key);
        place.pointer = pointer_to(place.pointer, key);
        place.value = parent.is_array() ? &parent.at(std::stoul(key)) : &parent.at(key);
    }
    return place;
}

std::vector<std::string> keys_of(const Json* object) {
    std::vector<std::string> keys;
    if (object != nullptr)
        for (const auto& [key, value] : object->items())
            keys.push_back(key);
    return keys;
}

std::string limits(const Json& schema, const char* low, const char* high, const std::string& of_what) {
    if (!schema.contains(low) || !schema.contains(high))
        return "";
    const std::string range = describe(schema[low]) + " to " + describe(schema[high]) + of_what;
    return (of_what.empty() ? " from " : " of ") + range;
}

/// The keys of the first group of "exactly one of these" that `value` does not keep to.
std::string broken_group(const Json& schema, const Json& value) {
    const Json* const groups = member(&schema, "allOf");
    if (groups == nullptr || !value.is_object())
        return "";
    for (const Json& group : *groups) {
        std::vector<std::string> keys;
        bool needed = true;
        for (const Json& option : group.value("oneOf", Json::array()))
            if (option.contains("required"))
                keys.push_back(option["required"][0].get<std::string>());
            else
                needed = false;
        const auto present =
            std::count_if(keys.begin(), keys.end(), [&](const auto& key) { return value.contains(key); });
        if (present > 1 || (needed && present == 0))
            return "one of " + listed(keys);
    }
    return "";
}

std::string allowed_by(const Json* schema, const Json& value) {
    if (schema == nullptr || !schema->is_object())
        return "";
    if (const Json* const words = member(schema, "enum")) {
        std::vector<std::string> names;
        for (const Json& word : *words)
            names.push_back(describe(word));
        return listed(names);
    }
    if (const Json* const options = member(schema, "anyOf")) {
        std::string all;
        for (const Json& option : *options)
            all += (all.empty() ? "" : " or ") + allowed_by(&option, value);
        return all;
    }
    const std::string type = schema->value("type", "");
    if (type == "object") {
        const std::string group = broken_group(*schema, value);
        return group.empty() ? "an object" + limits(*schema, "minProperties", "maxProperties", " members")
                             : group;
    }
    if (type == "array")
        return "an array" + limits(*schema, "minItems", "maxItems", " elements");
    if (type == "string")
        return "a text" + limits(*schema, "minLength", "maxLength", " characters");
    if (type == "number" || type == "integer")
        return (type == "number" ? "a number" : "a whole number") + limits(*schema, "minimum", "maximum", "");
    return type == "boolean" ? "true or false" : type;
}

/// What stands in quotes behind `before`, to the last quote.
std::string quoted_after(const std::string& text, std::string_view before) {
    const auto at = text.find(before);
    const auto last = text.rfind('\'');
    const auto first = at + before.size();
    return at == std::string::npos || last < first ? std::string{} : text.substr(first, last - first);
}

Error error_of(const valijson::ValidationResults::Error& failure, const std::string& file, const Json& root,
               const Json& schema) {
    const Place place = follow(failure.context, root, schema);
    const std::string missing = quoted_after(failure.description, "Missing required property '");
    if (!missing.empty())
        return Error({file, place.pointer, "no key " + missing});
    if (failure.description.rfind("Object contains a property", 0) == 0) {
        const std::string name = quoted_after(failure.description, "constraints: '");
        const std::string close = nearest(name, keys_of(member(place.schema, "properties")));
        return Error({file, pointer_to(place.pointer, name), "an unknown key", "",
                      close.empty() ? "" : "did you mean " + close + "?"});
    }
    return Error({file, place.pointer, describe(*place.value), allowed_by(place.schema, *place.value)});
}

} // namespace

struct SchemaCheck::Parts {
    Json text;
    valijson::Schema schema;
};

SchemaCheck::SchemaCheck(const std::string& schema_text, const std::string& file)
    : parts_(std::make_unique<Parts>()) {
    parts_->text = parse_json(schema_text, file);
    try {
        valijson::SchemaParser parser;
        parser.populateSchema(Adapter(parts_->text), parts_->schema);
    } catch (const std::exception& problem) {
        throw Error({file, "", "a schema that can't be used", "JSON Schema draft 7", problem.what()});
    }
}

SchemaCheck::~SchemaCheck() = default;
SchemaCheck::SchemaCheck(SchemaCheck&&) noexcept = default;
SchemaCheck& SchemaCheck::operator=(SchemaCheck&&) noexcept = default;

void SchemaCheck::check(const Json& value, const std::string& file) const {
    valijson::Validator validator;
    valijson::ValidationResults results;
    if (validator.validate(parts_->schema, Adapter(value), &results))
        return;
    const auto deepest = std::max_element(results.begin(), results.end(), [](const auto& a, const auto& b) {
        return a.context.size() < b.context.size();
    });
    if (deepest == results.end())
        throw Error({file, "", "something that the schema does not allow"});
    throw error_of(*deepest, file, value, parts_->text);
}

} // namespace lightoff::files
