// SPDX-License-Identifier: MIT
#pragma once
#include <cstddef>
#include <stdexcept>
#include <string>
#include <string_view>

namespace lightoff::cli {

/// Standard output could not be written: a full disk, a closed pipe.
class OutputError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

enum class Style { heading, quiet, good, bad, warm };

/// Standard output: UTF-8 text, styled only on a terminal, every failure noticed.
class Output {
public:
    /// Looks whether standard output is a terminal; NO_COLOR and TERM=dumb are obeyed.
    Output();

    /// Throws OutputError.
    void write(std::string_view text);
    void line(std::string_view text = "");
    /// Throws OutputError if anything written so far did not get through.
    void flush();

    [[nodiscard]] bool is_terminal() const { return terminal_; }
    /// Columns of the terminal, or 80.
    [[nodiscard]] std::size_t width() const;
    [[nodiscard]] std::string styled(Style style, std::string_view text) const;
    [[nodiscard]] std::string heading(std::string_view text) const { return styled(Style::heading, text); }

private:
    [[noreturn]] static void fail();
    bool terminal_ = false;
    bool colour_ = false;
};

/// Puts a harmless file in place of standard input, output and error where the caller closed them, so that
/// no file opened later takes their number; and lets a closed pipe be an error instead of a silent death.
void secure_standard_streams();

} // namespace lightoff::cli
