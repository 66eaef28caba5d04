// SPDX-License-Identifier: MIT
#pragma once
#include "files/error.hpp"
#include "files/json_text.hpp"
#include "files/unit_suffix.hpp"
#include <array>
#include <cstdint>
#include <functional>
#include <initializer_list>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// A strict reader of JSON files. A loader asks for each key by name, with its unit and its limits,
/// and in the end for `finish()`; what is missing, of the wrong type, out of range, in a wrong unit
/// or never asked for becomes an Error with file and JSON pointer. Every object may hold a text
/// `note`, and the top one `$schema`: JSON has no comments.
///
///     const Document document = read_document("scenarios/equipment/x.json");
///     const Object root = document.root();
///     const double pressure_pa = root.number("manifold_pressure", {0.5, 14.0, "inwc"});
///     root.finish();
namespace lightoff::files {

/// Limits of a number, both allowed, in the unit of that suffix. The key may use any unit of the same
/// quantity ("inwc": manifold_pressure_inwc, manifold_pressure_Pa ...), one of them, once.
struct Range {
    double low;
    double high;
    std::string_view unit = "";
};

/// Limits of a count of characters, elements or members.
struct Count {
    std::size_t low;
    std::size_t high;
};

/// A column of a table: its name without the unit, and the limits of each value.
struct Column {
    std::string_view name;
    Range range;
};

/// How the values of a curve must go as x increases.
enum class Trend { any, rising, falling };

/// Points of a curve, SI, x strictly increasing.
struct Curve {
    std::vector<double> x;
    std::vector<double> y;
};

class SchemaRecorder;
struct Source; ///< the file, its value and what was asked for so far

class Object {
public:
    /// The value at `name` in SI.
    double number(std::string_view name, Range range) const;
    double number_or(std::string_view name, Range range, double otherwise_si) const;
    /// A list of numbers in one unit, in SI: "warm_up_s": [0, 5, 20].
    std::vector<double> numbers(std::string_view name, Range range, Count count) const;
    /// A whole number.
    std::int64_t integer(std::string_view name, std::int64_t low, std::int64_t high) const;
    std::int64_t integer_or(std::string_view name, std::int64_t low, std::int64_t high,
                            std::int64_t otherwise) const;
    /// A time that is a whole number of 50 ms ticks, in ticks; `range` in a unit of time.
    std::int64_t ticks(std::string_view name, Range range) const;
    std::int64_t ticks_or(std::string_view name, Range range, std::int64_t otherwise) const;
    bool flag(std::string_view name) const;
    bool flag_or(std::string_view name, bool otherwise) const;
    /// Text of `count` bytes without control characters (line feeds may stand in it).
    std::string text(std::string_view name, Count count = {1, 4000}) const;
    std::string text_or(std::string_view name, std::string otherwise, Count count = {1, 4000}) const;
    std::vector<std::string> texts(std::string_view name, Count count) const;

    /// The value that belongs to the word at `name`:
    ///     choice<Fuel>("fuel", {{"natural-gas", Fuel::natural_gas}, {"propane", Fuel::propane}})
    template <class Value>
    Value choice(std::string_view name,
                 std::initializer_list<std::pair<std::string_view, Value>> choices) const {
        return (choices.begin() + static_cast<std::ptrdiff_t>(choice_index(name, words_of(choices), true)))
            ->second;
    }
    template <class Value>
    Value choice_or(std::string_view name, std::initializer_list<std::pair<std::string_view, Value>> choices,
                    Value otherwise) const {
        const std::size_t index = choice_index(name, words_of(choices), false);
        return index == choices.size() ? otherwise
                                       : (choices.begin() + static_cast<std::ptrdiff_t>(index))->second;
    }

    Object object(std::string_view name) const;
    std::optional<Object> optional_object(std::string_view name) const;
    std::vector<Object> objects(std::string_view name, Count count) const;
    /// Empty if the key is not there.
    std::vector<Object> optional_objects(std::string_view name, Count count) const;
    /// The members of an object whose keys are names chosen by the author (of parts, of nodes), in
    /// order of the names. A name has letters, digits, '-', '_', '.' and ':', 64 at most.
    std::vector<std::pair<std::string, Object>> members(std::string_view name, Count count) const;

    /// An object of free names with one kind of value each; empty if the key is not there.
    std::vector<std::pair<std::string, bool>> named_flags(std::string_view name, std::size_t most) const;
    std::vector<std::pair<std::string, std::int64_t>>
    named_integers(std::string_view name, std::size_t most, std::int64_t low, std::int64_t high) const;
    std::vector<std::pair<std::string, std::vector<std::string>>>
    named_texts(std::string_view name, std::size_t most, Count count) const;

    /// A curve as an object of two lists of equal length:
    ///     "fan_curve": {"flow_cfm": [0, 20, 40], "suction_inwc": [1.2, 1.1, 0.9]}
    Curve curve(std::string_view name, Column x, Column y, Trend trend, Count points = {2, 64}) const;

    bool
    has(std::string_view name) const; ///< is a key of exactly this name there (it still has to be asked for)
    bool has_number(std::string_view name,
                    std::string_view unit) const; ///< in whatever unit of that quantity
    /// The value as canonical JSON text, unread: nothing below it has to be asked for.
    std::string raw(std::string_view name) const;

    /// Throws for the first key, here or in any object reached from here, that nobody asked for.
    void finish() const;

    /// An Error about this object's `key`, for what only the loader can judge (a name that is nowhere
    /// declared, say). `found` is filled in from the file.
    Error error(std::string_view key, std::string allowed, std::string advice = "") const;
    const std::string& pointer() const { return pointer_; }

private:
    friend class Document;
    Object(std::shared_ptr<Source> source, const Json& value, std::string pointer, std::string place);

    template <class Value>
    static std::vector<std::string>
    words_of(std::initializer_list<std::pair<std::string_view, Value>> choices) {
        std::vector<std::string> words;
        for (const auto& choice : choices)
            words.emplace_back(choice.first);
        return words;
    }
    template <class Read>
    void for_each_named(std::string_view name, std::size_t most, Json shape, const Read& read) const;
    std::size_t choice_index(std::string_view name, const std::vector<std::string>& words,
                             bool required) const;
    struct Found {
        const Json* value = nullptr; ///< nullptr: not there, and need not be
        std::string pointer;
        Unit unit{};
    };
    using Shape = std::function<Json(const Unit&)>; ///< JSON Schema of the value, in that unit
    Found ask(std::string_view name, bool required, const Shape& shape) const;
    Found ask_in_unit(std::string_view name, std::string_view unit, bool required, const Shape& shape) const;
    Found ask_keys(std::string_view name, const std::vector<Unit>& units, bool required,
                   const Shape& shape) const;
    [[nodiscard]] Object open(const Found& found, std::string place) const;
    std::optional<double> find_number(std::string_view name, Range range, bool required) const;
    std::optional<std::int64_t> find_integer(std::string_view name, std::int64_t low, std::int64_t high,
                                             bool required) const;
    std::optional<std::int64_t> find_ticks(std::string_view name, Range range, bool required) const;
    std::optional<std::string> find_text(std::string_view name, Count count, bool required) const;
    std::vector<Object> find_objects(std::string_view name, Count count, bool required) const;
    [[noreturn]] void refuse(const std::string& where, std::string found, std::string allowed,
                             std::string advice = "") const;
    [[noreturn]] void refuse_missing(std::string_view name, const std::vector<Unit>& units) const;
    double in_range(const Json& value, const std::string& where, Range range, const Unit& unit) const;
    std::string as_text(const Json& value, const std::string& where, Count count) const;
    const Json& as_array(const Json& value, const std::string& where, Count count) const;

    std::shared_ptr<Source> source_;
    const Json* value_;
    std::string pointer_;
    std::string place_;     ///< the pointer with "*" for array indices and free names
    std::size_t visit_ = 0; ///< the recorder's number of it
};

/// A parsed file. Copies share one value.
class Document {
public:
    Document(Json value, std::string file);
    /// The top value, which must be an object.
    Object root() const;
    const std::string& file() const;
    const Json& value() const;
    std::string canonical() const;
    /// An Error about the value at a JSON pointer, for what only a builder can judge.
    [[nodiscard]] Error error_at(const std::string& pointer, std::string advice) const;
    /// Lets `recorder` hear everything that is asked for from now on.
    void record(SchemaRecorder* recorder) const;

private:
    std::shared_ptr<Source> source_;
};

Document parse_document(std::string_view text, const std::string& file);
/// Reads and parses; nothing of the content is judged yet.
Document read_document(const std::string& path);

} // namespace lightoff::files
