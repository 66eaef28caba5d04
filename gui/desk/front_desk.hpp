// SPDX-License-Identifier: MIT
#pragma once
#include "gui/canvas/canvas.hpp"
#include "gui/desk/calls.hpp"
#include "gui/sheet/column.hpp"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace lightoff::desk {

/// What somebody at the front desk wants next.
struct DeskWants {
    std::optional<std::string> take;    ///< name of a call to begin
    std::optional<std::string> go_on;   ///< path of an attempt to continue
    std::optional<std::string> debrief; ///< path of a finished one to look at again
    std::optional<std::string> explore; ///< name of a call to look into, everything shown
    std::optional<std::string> open;    ///< path of a call's or an attempt's file, as it was typed
    bool settings = false;
    bool close = false;
};

/// The front desk: calls to choose from, with what was done of them so far.
class FrontDesk {
public:
    explicit FrontDesk(std::string attempts_folder) : folder_(std::move(attempts_folder)) { look_again(); }

    /// Reads calls and attempts anew.
    void look_again();
    DeskWants draw(const canvas::Canvas& canvas, canvas::Rect page);

    /// A sentence to stand under the list until the next choice.
    void say(std::string words) { said_ = std::move(words); }
    [[nodiscard]] const std::string& said() const { return said_; }
    [[nodiscard]] const std::vector<Call>& calls() const { return calls_; }
    [[nodiscard]] std::size_t chosen() const { return chosen_; }
    void choose(std::string_view name);
    /// The field for a file's path.
    void ask_path(bool asks) { asks_path_ = path_takes_focus_ = asks; }

private:
    void draw_file(const canvas::Canvas& canvas, canvas::Rect& rest, DeskWants& wants);
    void draw_wishes(const canvas::Canvas& canvas, canvas::Rect& rest);
    void draw_list(const canvas::Canvas& canvas, canvas::Rect area, DeskWants& wants);
    void draw_call(const canvas::Canvas& canvas, canvas::Rect area, DeskWants& wants);
    void draw_said(const canvas::Canvas& canvas, canvas::Rect& rest) const;
    void draw_attempts(sheet::Column& column, const Call& call, DeskWants& wants);
    enum class Leaf : std::uint8_t { calls, find, call };
    void draw_leaves(const canvas::Canvas& canvas, canvas::Rect rest, DeskWants& wants);

    std::string folder_;
    std::vector<Call> calls_;
    std::vector<std::string> problems_;
    Wish wish_;
    std::array<char, 64> words_{};
    std::array<char, 1024> path_{};
    bool asks_path_ = false;        ///< the field for a file is there
    bool path_takes_focus_ = false; ///< in the next frame
    std::size_t chosen_ = 0;
    Leaf leaf_ = Leaf::calls; ///< where list and call take turns
    std::string said_;
};

} // namespace lightoff::desk
