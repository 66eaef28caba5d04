// SPDX-License-Identifier: MIT
#pragma once
#include "files/json_text.hpp"
#include <memory>
#include <string>

namespace lightoff::files {

/// A JSON Schema (draft 7) ready to check files with. It judges shape, types and ranges, for editors
/// and as a second opinion; the reader judges all of that by itself, names what belongs together
/// and what is nowhere declared.
class SchemaCheck {
public:
    /// `file` is only named in errors. Throws Error for a schema that can't be used.
    SchemaCheck(const std::string& schema_text, const std::string& file);
    ~SchemaCheck();
    SchemaCheck(SchemaCheck&&) noexcept;
    SchemaCheck& operator=(SchemaCheck&&) noexcept;

    /// Throws Error for the deepest thing in `value` that the schema does not allow.
    void check(const Json& value, const std::string& file) const;

private:
    struct Parts;
    std::unique_ptr<Parts> parts_;
};

} // namespace lightoff::files
