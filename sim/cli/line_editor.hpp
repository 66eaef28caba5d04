// SPDX-License-Identifier: MIT
#pragma once
#include "visit/play_line.hpp"

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <string_view>

namespace lightoff::cli {

/// Reads lines from a terminal, with editing, history and completion by TAB. Ctrl-C empties the line, Ctrl-D
/// on an empty one is the end. While one lives, SIGINT is ignored unless an Interrupt waits for it.
class LineEditor {
public:
    using Completer = std::function<visit::Completion(std::string_view)>;
    explicit LineEditor(Completer completer);
    ~LineEditor();
    LineEditor(const LineEditor&) = delete;
    LineEditor& operator=(const LineEditor&) = delete;

    /// A line without its end; none at the end of input.
    std::optional<std::string> read(const std::string& prompt);

private:
    struct Editor;
    std::unique_ptr<Editor> editor_;
};

} // namespace lightoff::cli
