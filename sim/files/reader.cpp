// SPDX-License-Identifier: MIT
#include "files/reader.hpp"
#include "files/disk.hpp"
#include "files/schema_recorder.hpp"
#include "files/utf8.hpp"
#include "units/constants.hpp"
#include <algorithm>
#include <charconv>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>

namespace lightoff::files {

struct Source { // NOLINT(bugprone-exception-escape): tidy takes the library's destructor for one that throws
    /// What was asked for in one object.
    struct Asked {
        std::vector<std::string> keys;
        std::vector<std::pair<std::string, std::vector<Unit>>> names_with_units;
    };
    std::string file;
    Json root;
    std::map<const Json*, Asked> asked;
    SchemaRecorder* recorder = nullptr;
};

namespace {

constexpr std::string_view kNote = "note";
constexpr std::string_view kSchema = "$schema";
constexpr Count kNoteLength{1, 4000};
constexpr Count kNameLength{1, 64};
constexpr Unit kNoUnit{"", "number", "pure number", 1.0, 0.0};

/// Limits in another unit are rounded to six digits, so that a message can show them as they are.
double limit_in(const Unit& unit, double limit, const Unit& of_range) {
    if (unit.suffix == of_range.suffix)
        return limit;
    const std::string text = rounded_text(from_si(unit, to_si(of_range, limit)));
    double rounded = 0.0;
    std::from_chars(text.data(), text.data() + text.size(), rounded);
    return rounded;
}

Range range_in(const Unit& unit, Range range) {
    const Unit& of_range = unit_of(range.unit);
    return {limit_in(unit, range.low, of_range), limit_in(unit, range.high, of_range), unit.suffix};
}

std::string from_to(double low, double high) {
    return number_text(low) + " to " + number_text(high);
}
std::string from_to(Count count, const std::string& of_what) {
    return std::to_string(count.low) + " to " + std::to_string(count.high) + " " + of_what;
}

Json number_shape(Range range, const Unit& unit) {
    const Range limits = range_in(unit, range);
    return {{"type", "number"}, {"minimum", limits.low}, {"maximum", limits.high}};
}
Json text_shape(Count count) {
    return {{"type", "string"}, {"minLength", count.low}, {"maxLength", count.high}};
}
Json array_shape(Json items, Count count) {
    return {
        {"type", "array"}, {"items", std::move(items)}, {"minItems", count.low}, {"maxItems", count.high}};
}

std::vector<std::string> keys_in(std::string_view name, const std::vector<Unit>& units) {
    std::vector<std::string> keys;
    for (const Unit& unit : units)
        keys.push_back(key_in(name, unit));
    return keys;
}

bool is_name(std::string_view text) {
    const auto allowed = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
               c == '_' || c == '.' || c == ':';
    };
    return text.size() >= kNameLength.low && text.size() <= kNameLength.high &&
           std::all_of(text.begin(), text.end(), allowed);
}

/// The first of `names` of which `key` looks like a spelling with a wrong unit.
template <class Names>
const typename Names::value_type* name_with_wrong_unit(const std::string& key, const Names& names) {
    for (const auto& name : names)
        if (key == name.first || key.rfind(name.first + "_", 0) == 0)
            return &name;
    return nullptr;
}

} // namespace

Object::Object(std::shared_ptr<Source> source, const Json& value, std::string pointer, std::string place)
    : source_(std::move(source)), value_(&value), pointer_(std::move(pointer)), place_(std::move(place)) {
    if (!value.is_object())
        refuse(pointer_, describe(value), "an object");
    source_->asked[value_]; // from now on its keys must be asked for
    if (source_->recorder != nullptr)
        visit_ = source_->recorder->visit(place_);
}

void Object::refuse(const std::string& where, std::string found, std::string allowed,
                    std::string advice) const {
    throw Error({source_->file, where, std::move(found), std::move(allowed), std::move(advice)});
}

void Object::refuse_missing(std::string_view name, const std::vector<Unit>& units) const {
    const std::vector<std::string> keys = keys_in(name, units);
    const auto& asked = source_->asked[value_].keys;
    std::string meant;
    for (const auto& [key, value] : value_->items()) {
        if (std::find(asked.begin(), asked.end(), key) != asked.end())
            continue;
        const bool other_unit = units.size() > 1 && value.is_number() && key.rfind(std::string(name), 0) == 0;
        if (other_unit || !nearest(key, keys).empty()) {
            meant = "is " + in_quotes(key) + " meant?";
            break;
        }
    }
    refuse(pointer_, "no key " + listed(keys), units.size() > 1 ? "one of them" : "", meant);
}

Object::Found Object::ask_keys(std::string_view name, const std::vector<Unit>& units, bool required,
                               const Shape& shape) const {
    auto& asked = source_->asked[value_];
    Found found;
    for (const Unit& unit : units) {
        std::string key = key_in(name, unit);
        const auto at = value_->find(key);
        asked.keys.push_back(key);
        if (at == value_->end())
            continue;
        if (found.value != nullptr)
            refuse(pointer_to(pointer_, key), "this key beside " + found.pointer, "one of them");
        found = {&*at, pointer_to(pointer_, key), unit};
    }
    if (units.size() > 1)
        asked.names_with_units.emplace_back(name, units);
    if (source_->recorder != nullptr) {
        SchemaRecorder::KeyShapes shapes;
        for (const Unit& unit : units)
            shapes.emplace_back(key_in(name, unit), shape(unit));
        source_->recorder->request(place_, visit_, shapes, required);
    }
    if (required && found.value == nullptr)
        refuse_missing(name, units);
    return found;
}

Object::Found Object::ask(std::string_view name, bool required, const Shape& shape) const {
    return ask_keys(name, {kNoUnit}, required, shape);
}

Object::Found Object::ask_in_unit(std::string_view name, std::string_view unit, bool required,
                                  const Shape& shape) const {
    return ask_keys(name, units_like(unit_of(unit)), required, shape);
}

double Object::in_range(const Json& value, const std::string& where, Range range, const Unit& unit) const {
    const Range limits = range_in(unit, range);
    const std::string allowed = from_to(limits.low, limits.high);
    if (!value.is_number())
        refuse(where, describe(value), "a number from " + allowed);
    const double written = value.get<double>() + 0.0; // minus zero becomes zero
    if (!(written >= limits.low && written <= limits.high))
        refuse(where, describe(value), allowed);
    return to_si(unit, written);
}

std::optional<double> Object::find_number(std::string_view name, Range range, bool required) const {
    const Found found =
        ask_in_unit(name, range.unit, required, [&](const Unit& u) { return number_shape(range, u); });
    if (found.value == nullptr)
        return std::nullopt;
    return in_range(*found.value, found.pointer, range, found.unit);
}

double Object::number(std::string_view name, Range range) const {
    return *find_number(name, range, true);
}
double Object::number_or(std::string_view name, Range range, double otherwise_si) const {
    return find_number(name, range, false).value_or(otherwise_si);
}

std::vector<double> Object::numbers(std::string_view name, Range range, Count count) const {
    const Found found = ask_in_unit(
        name, range.unit, true, [&](const Unit& u) { return array_shape(number_shape(range, u), count); });
    std::vector<double> values;
    for (const Json& element : as_array(*found.value, found.pointer, count))
        values.push_back(in_range(element, pointer_to(found.pointer, values.size()), range, found.unit));
    return values;
}

std::optional<std::int64_t> Object::find_integer(std::string_view name, std::int64_t low, std::int64_t high,
                                                 bool required) const {
    const Found found = ask(name, required, [&](const Unit&) {
        return Json{{"type", "integer"}, {"minimum", low}, {"maximum", high}};
    });
    if (found.value == nullptr)
        return std::nullopt;
    const Json& value = *found.value;
    const bool fits = value.is_number_integer() &&
                      (!value.is_number_unsigned() || value.get<std::uint64_t>() <= std::uint64_t{INT64_MAX});
    const std::int64_t number = fits ? value.get<std::int64_t>() : 0;
    if (!fits || number < low || number > high)
        refuse(found.pointer, describe(value),
               "a whole number from " + std::to_string(low) + " to " + std::to_string(high));
    return number;
}

std::int64_t Object::integer(std::string_view name, std::int64_t low, std::int64_t high) const {
    return *find_integer(name, low, high, true);
}
std::int64_t Object::integer_or(std::string_view name, std::int64_t low, std::int64_t high,
                                std::int64_t otherwise) const {
    return find_integer(name, low, high, false).value_or(otherwise);
}

std::optional<std::int64_t> Object::find_ticks(std::string_view name, Range range, bool required) const {
    const Found found =
        ask_in_unit(name, range.unit, required, [&](const Unit& u) { return number_shape(range, u); });
    if (found.value == nullptr)
        return std::nullopt;
    const double ticks = in_range(*found.value, found.pointer, range, found.unit) * units::ticks_per_second;
    const auto whole = static_cast<std::int64_t>(ticks < 0.0 ? ticks - 0.5 : ticks + 0.5);
    constexpr double kRoundingOfDecimals = 1e-6;
    if (std::abs(ticks - static_cast<double>(whole)) > kRoundingOfDecimals)
        refuse(found.pointer, describe(*found.value),
               "a whole number of ticks of " + number_text(from_si(found.unit, units::seconds_per_tick)) +
                   " " + std::string(found.unit.suffix));
    return whole;
}

std::int64_t Object::ticks(std::string_view name, Range range) const {
    return *find_ticks(name, range, true);
}
std::int64_t Object::ticks_or(std::string_view name, Range range, std::int64_t otherwise) const {
    return find_ticks(name, range, false).value_or(otherwise);
}

bool Object::flag(std::string_view name) const {
    const Found found = ask(name, true, [](const Unit&) { return Json{{"type", "boolean"}}; });
    if (!found.value->is_boolean())
        refuse(found.pointer, describe(*found.value), "true or false");
    return found.value->get<bool>();
}
bool Object::flag_or(std::string_view name, bool otherwise) const {
    const Found found = ask(name, false, [](const Unit&) { return Json{{"type", "boolean"}}; });
    if (found.value == nullptr)
        return otherwise;
    if (!found.value->is_boolean())
        refuse(found.pointer, describe(*found.value), "true or false");
    return found.value->get<bool>();
}

std::string Object::as_text(const Json& value, const std::string& where, Count count) const {
    if (!value.is_string())
        refuse(where, describe(value), "a text of " + from_to(count, "characters"));
    const auto& text = value.get_ref<const std::string&>();
    const std::size_t length = character_count(text);
    if (length < count.low || length > count.high)
        refuse(where, "a text of " + std::to_string(length) + " characters", from_to(count, "characters"));
    if (find_control_character(text) != std::string::npos)
        refuse(where, in_quotes(text), "text without control characters");
    return text;
}

std::optional<std::string> Object::find_text(std::string_view name, Count count, bool required) const {
    const Found found = ask(name, required, [&](const Unit&) { return text_shape(count); });
    if (found.value == nullptr)
        return std::nullopt;
    return as_text(*found.value, found.pointer, count);
}

std::string Object::text(std::string_view name, Count count) const {
    return *find_text(name, count, true);
}
std::string Object::text_or(std::string_view name, std::string otherwise, Count count) const {
    return find_text(name, count, false).value_or(std::move(otherwise));
}

const Json& Object::as_array(const Json& value, const std::string& where, Count count) const {
    if (!value.is_array())
        refuse(where, describe(value), "an array of " + from_to(count, "elements"));
    if (value.size() < count.low || value.size() > count.high)
        refuse(where, describe(value), from_to(count, "elements"));
    return value;
}

std::vector<std::string> Object::texts(std::string_view name, Count count) const {
    constexpr Count length{1, 4000};
    const Found found = ask(name, true, [&](const Unit&) { return array_shape(text_shape(length), count); });
    std::vector<std::string> values;
    for (const Json& element : as_array(*found.value, found.pointer, count))
        values.push_back(as_text(element, pointer_to(found.pointer, values.size()), length));
    return values;
}

std::size_t Object::choice_index(std::string_view name, const std::vector<std::string>& words,
                                 bool required) const {
    const Found found = ask(name, required, [&](const Unit&) { return Json{{"enum", words}}; });
    if (found.value == nullptr)
        return words.size();
    if (!found.value->is_string())
        refuse(found.pointer, describe(*found.value), listed(words));
    const auto& word = found.value->get_ref<const std::string&>();
    const auto at = std::find(words.begin(), words.end(), word);
    if (at == words.end()) {
        const std::string close = nearest(word, words);
        refuse(found.pointer, in_quotes(word), listed(words),
               close.empty() ? "" : "did you mean " + close + "?");
    }
    return static_cast<std::size_t>(at - words.begin());
}

Object Object::open(const Found& found, std::string place) const {
    return {source_, *found.value, found.pointer, std::move(place)};
}

Object Object::object(std::string_view name) const {
    const std::string place = pointer_to(place_, name);
    return open(ask(name, true, [&](const Unit&) { return SchemaRecorder::object_at(place); }), place);
}

std::optional<Object> Object::optional_object(std::string_view name) const {
    const std::string place = pointer_to(place_, name);
    const Found found = ask(name, false, [&](const Unit&) { return SchemaRecorder::object_at(place); });
    if (found.value == nullptr)
        return std::nullopt;
    return open(found, place);
}

std::vector<Object> Object::objects(std::string_view name, Count count) const {
    return find_objects(name, count, true);
}

std::vector<Object> Object::optional_objects(std::string_view name, Count count) const {
    return find_objects(name, count, false);
}

std::vector<Object> Object::find_objects(std::string_view name, Count count, bool required) const {
    const std::string place = pointer_to(place_, name) + "/*";
    const Found found = ask(
        name, required, [&](const Unit&) { return array_shape(SchemaRecorder::object_at(place), count); });
    std::vector<Object> elements;
    if (found.value == nullptr)
        return elements;
    for (const Json& element : as_array(*found.value, found.pointer, count))
        elements.push_back(open({&element, pointer_to(found.pointer, elements.size()), {}}, place));
    return elements;
}

std::vector<std::pair<std::string, Object>> Object::members(std::string_view name, Count count) const {
    const Object holder = object(name);
    if (source_->recorder != nullptr)
        source_->recorder->free_names(holder.place_, count.low, count.high);
    const Json& value = *holder.value_;
    if (value.size() < count.low || value.size() > count.high)
        refuse(holder.pointer_, std::to_string(value.size()) + " members", from_to(count, "members"));
    std::vector<std::pair<std::string, Object>> members;
    for (const auto& [key, member] : value.items()) {
        std::string pointer = pointer_to(holder.pointer_, key);
        if (!is_name(key))
            refuse(pointer, "the name " + in_quotes(key), "1 to 64 letters, digits or any of - _ . :");
        source_->asked[holder.value_].keys.push_back(key);
        members.emplace_back(key, open({&member, std::move(pointer), {}}, holder.place_ + "/*"));
    }
    return members;
}

/// Calls read(key, value, pointer) for every member of an optional object of free names.
template <class Read>
void Object::for_each_named(std::string_view name, std::size_t most, Json shape, const Read& read) const {
    const Found found = ask(name, false, [&](const Unit&) {
        return Json{{"type", "object"}, {"maxProperties", most}, {"additionalProperties", std::move(shape)}};
    });
    if (found.value == nullptr)
        return;
    if (!found.value->is_object())
        refuse(found.pointer, describe(*found.value), "an object");
    if (found.value->size() > most)
        refuse(found.pointer, std::to_string(found.value->size()) + " members",
               from_to({0, most}, "members"));
    for (const auto& [key, value] : found.value->items()) {
        const std::string pointer = pointer_to(found.pointer, key);
        if (!is_name(key))
            refuse(pointer, "the name " + in_quotes(key), "1 to 64 letters, digits or any of - _ . :");
        read(key, value, pointer);
    }
}

std::vector<std::pair<std::string, bool>> Object::named_flags(std::string_view name, std::size_t most) const {
    std::vector<std::pair<std::string, bool>> flags;
    for_each_named(name, most, {{"type", "boolean"}},
                   [&](const std::string& key, const Json& value, const std::string& at) {
                       if (!value.is_boolean())
                           refuse(at, describe(value), "true or false");
                       flags.emplace_back(key, value.get<bool>());
                   });
    return flags;
}

std::vector<std::pair<std::string, std::int64_t>>
Object::named_integers(std::string_view name, std::size_t most, std::int64_t low, std::int64_t high) const {
    std::vector<std::pair<std::string, std::int64_t>> integers;
    const Json shape{{"type", "integer"}, {"minimum", low}, {"maximum", high}};
    for_each_named(name, most, shape, [&](const std::string& key, const Json& value, const std::string& at) {
        const bool fits = value.is_number_integer() && value >= low && value <= high;
        if (!fits)
            refuse(at, describe(value),
                   "a whole number, " + std::to_string(low) + " to " + std::to_string(high));
        integers.emplace_back(key, value.get<std::int64_t>());
    });
    return integers;
}

std::vector<std::pair<std::string, std::vector<std::string>>>
Object::named_texts(std::string_view name, std::size_t most, Count count) const {
    constexpr Count length{1, 4000};
    std::vector<std::pair<std::string, std::vector<std::string>>> lists;
    for_each_named(name, most, array_shape(text_shape(length), count),
                   [&](const std::string& key, const Json& value, const std::string& at) {
                       std::vector<std::string> texts;
                       for (const Json& element : as_array(value, at, count))
                           texts.push_back(as_text(element, pointer_to(at, texts.size()), length));
                       lists.emplace_back(key, std::move(texts));
                   });
    return lists;
}

Curve Object::curve(std::string_view name, Column x, Column y, Trend trend, Count points) const {
    const Object table = object(name);
    Curve curve{table.numbers(x.name, x.range, points), table.numbers(y.name, y.range, points)};
    if (curve.x.size() != curve.y.size())
        refuse(table.pointer_,
               std::to_string(curve.x.size()) + " and " + std::to_string(curve.y.size()) + " values",
               "lists of equal length");
    const auto check = [&](const std::vector<double>& values, const Column& column, bool rising) {
        const auto in_order = [&](double a, double b) { return rising ? a < b : a > b; };
        for (std::size_t i = 1; i < values.size(); ++i) {
            if (in_order(values[i - 1], values[i]))
                continue;
            const Found list = table.ask_in_unit(column.name, column.range.unit, true, [&](const Unit& u) {
                return array_shape(number_shape(column.range, u), points);
            });
            refuse(pointer_to(list.pointer, i),
                   describe((*list.value)[i]) + " after " + describe((*list.value)[i - 1]),
                   rising ? "values that rise from point to point" : "values that fall from point to point");
        }
    };
    check(curve.x, x, true);
    if (trend != Trend::any)
        check(curve.y, y, trend == Trend::rising);
    return curve;
}

bool Object::has(std::string_view name) const {
    const std::string key{name};
    if (source_->recorder != nullptr)
        source_->recorder->may_lack(place_, key);
    return value_->contains(key);
}

bool Object::has_number(std::string_view name, std::string_view unit) const {
    const auto units = units_like(unit_of(unit));
    return std::count_if(units.begin(), units.end(), [&](const Unit& u) { return has(key_in(name, u)); }) > 0;
}

std::string Object::raw(std::string_view name) const {
    return canonical_text(*ask(name, true, [](const Unit&) { return Json::object(); }).value);
}

namespace {

/// Walks down from an object whose keys were asked for.
class Finish {
public:
    explicit Finish(const Source& source) : source_(source) {}

    void check(const Json& node, const std::string& pointer) const {
        if (node.is_array())
            for (std::size_t i = 0; i < node.size(); ++i)
                check(node[i], pointer_to(pointer, i));
        const auto asked = source_.asked.find(&node);
        if (!node.is_object() || asked == source_.asked.end())
            return;
        for (const auto& [key, value] : node.items()) {
            const std::string below = pointer_to(pointer, key);
            const auto& keys = asked->second.keys;
            if (std::find(keys.begin(), keys.end(), key) != keys.end())
                check(value, below);
            else if (key == kNote || (key == kSchema && &node == &source_.root))
                check_note(value, below);
            else
                refuse_unknown(asked->second, key, below);
        }
    }

private:
    void check_note(const Json& value, const std::string& where) const {
        if (!value.is_string() || character_count(value.get_ref<const std::string&>()) > kNoteLength.high)
            throw Error(
                {source_.file, where, describe(value), "a text of " + from_to(kNoteLength, "characters")});
    }
    void refuse_unknown(const Source::Asked& asked, const std::string& key, const std::string& where) const {
        if (const auto* name = name_with_wrong_unit(key, asked.names_with_units))
            throw Error(
                {source_.file, where, "a key of unknown unit", listed(keys_in(name->first, name->second))});
        const std::string close = nearest(key, asked.keys);
        throw Error(
            {source_.file, where, "an unknown key", "", close.empty() ? "" : "did you mean " + close + "?"});
    }
    const Source& source_;
};

} // namespace

void Object::finish() const {
    Finish(*source_).check(*value_, pointer_);
}

Error Object::error(std::string_view key, std::string allowed, std::string advice) const {
    const auto at = value_->find(std::string(key));
    return Error({source_->file, pointer_to(pointer_, key), at == value_->end() ? "nothing" : describe(*at),
                  std::move(allowed), std::move(advice)});
}

Document::Document(Json value, std::string file) : source_(std::make_shared<Source>()) {
    source_->root = std::move(value);
    source_->file = std::move(file);
}
Object Document::root() const {
    return {source_, source_->root, "", ""};
}
const std::string& Document::file() const {
    return source_->file;
}
const Json& Document::value() const {
    return source_->root;
}
std::string Document::canonical() const {
    return canonical_text(source_->root);
}
Error Document::error_at(const std::string& pointer, std::string advice) const {
    const Json::json_pointer where(pointer);
    const bool there = source_->root.contains(where);
    return Error({source_->file, pointer, there ? describe(source_->root.at(where)) : "nothing", "",
                  std::move(advice)});
}
void Document::record(SchemaRecorder* recorder) const {
    source_->recorder = recorder;
}

Document parse_document(std::string_view text, const std::string& file) {
    return {parse_json(text, file), file};
}
Document read_document(const std::string& path) {
    return parse_document(read_file(path), path);
}

} // namespace lightoff::files
