// SPDX-License-Identifier: MIT
#include "cli/output.hpp"

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <fcntl.h>
#include <sys/ioctl.h>
#include <system_error>
#include <unistd.h>

namespace lightoff::cli {
namespace {

constexpr std::size_t kPlainWidth = 80;

bool is_set(const char* variable) {
    const char* value = std::getenv(variable);
    return value != nullptr && *value != '\0';
}

bool is_dumb_terminal() {
    const char* term = std::getenv("TERM");
    return term == nullptr || std::string_view(term) == "dumb";
}

std::string_view code_of(Style style) {
    switch (style) {
    case Style::heading:
        return "\x1b[1m";
    case Style::quiet:
        return "\x1b[2m";
    case Style::good:
        return "\x1b[32m";
    case Style::bad:
        return "\x1b[1;31m";
    case Style::warm:
        return "\x1b[33m";
    }
    return "";
}

} // namespace

Output::Output()
    : terminal_(isatty(STDOUT_FILENO) == 1 && !is_dumb_terminal()),
      colour_(terminal_ && !is_set("NO_COLOR")) {}

void Output::fail() {
    throw OutputError("standard output can't be written: " + std::generic_category().message(errno));
}

void Output::write(std::string_view text) {
    if (std::fwrite(text.data(), 1, text.size(), stdout) != text.size())
        fail();
}

void Output::line(std::string_view text) {
    write(text);
    write("\n");
}

void Output::flush() {
    if (std::fflush(stdout) != 0 || std::ferror(stdout) != 0)
        fail();
}

std::size_t Output::width() const {
    winsize size{};
    if (!terminal_ || ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 || size.ws_col == 0)
        return kPlainWidth;
    return size.ws_col;
}

std::string Output::styled(Style style, std::string_view text) const {
    if (!colour_)
        return std::string(text);
    return std::string(code_of(style)) + std::string(text) + "\x1b[0m";
}

void secure_standard_streams() {
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
        if (fcntl(stream, F_GETFD) == -1) {
            // Opened the wrong way round: using it stays an error. The lowest free number is `stream`.
            const int filler = open("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY);
            static_cast<void>(filler);
        }
    std::signal(SIGPIPE, SIG_IGN);
}

} // namespace lightoff::cli
