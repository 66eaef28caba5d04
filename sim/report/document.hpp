// SPDX-License-Identifier: MIT
#pragma once
#include "files/attempt.hpp"
#include "files/bundle_loader.hpp"
#include "lesson/debrief.hpp"
#include "report/drawing.hpp"

#include <string>
#include <variant>
#include <vector>

/// The report of a finished attempt as blocks that every writer can set, so that all files say the same.
namespace lightoff::report {

struct Heading {
    std::string words;
};
struct Paragraph {
    std::string words;
    enum class Weight { ordinary, strong, alarm, small } weight = Weight::ordinary;
};
struct Table {
    struct Column {
        std::string head;
        double share = 1.0;   ///< of the width
        bool figures = false; ///< to the right
    };
    std::vector<Column> columns;
    std::vector<std::vector<std::string>> rows;
};
struct Figure {
    Drawing drawing;
    std::string caption;
};
using Block = std::variant<Heading, Paragraph, Table, Figure>;

struct Document {
    std::string title;
    std::string subtitle;
    std::vector<Block> blocks;
};

/// Where an attempt came from.
struct Origin {
    std::string file; ///< its name, without folders
    files::AttemptHeader header;
    files::Digest chain{};  ///< of its lines
    std::string end;        ///< how the attempt ended: "signed off"; empty: it did not
    std::string twin_title; ///< of the contrast call; empty: none, or not to be found
};

/// In the order of a debrief: the frozen moment if there was one, what could be known when, one better test,
/// the attempt over time, what was read and said, then points and hazards, then what comes next.
Document make_document(const files::LoadedBundle& bundle, const lesson::Debrief& debrief,
                       const Origin& origin);

} // namespace lightoff::report
