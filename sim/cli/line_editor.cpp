// SPDX-License-Identifier: MIT
#include "cli/line_editor.hpp"

#include "cli/text_layout.hpp"

#include <clocale>
#include <csignal>
#include <cstdio>
#include <histedit.h>
#include <sys/ioctl.h>
#include <unistd.h>

namespace lightoff::cli {
namespace {

constexpr int kLinesKept = 500;

struct EndEditing {
    void operator()(EditLine* editing) const { el_end(editing); }
};
struct EndHistory {
    void operator()(History* history) const { history_end(history); }
};

std::size_t terminal_width() {
    winsize size{};
    return ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col > 0 ? size.ws_col : kPageWidth;
}

/// The names that a word may go on with, in columns below the line.
void show(const std::vector<std::string>& words) {
    std::size_t widest = 0;
    for (const std::string& word : words)
        widest = std::max(widest, columns_of(word));
    const std::size_t columns = std::max<std::size_t>(1, terminal_width() / (widest + 2));
    std::string text = "\n";
    for (std::size_t i = 0; i < words.size(); ++i) {
        const bool last = i + 1 == words.size() || (i + 1) % columns == 0;
        text += last ? words[i] + "\n" : padded(words[i], widest + 2);
    }
    std::fputs(text.c_str(), stdout);
}

} // namespace

struct LineEditor::Editor {
    Completer completer;
    std::string prompt;
    std::unique_ptr<History, EndHistory> history{history_init()};
    std::unique_ptr<EditLine, EndEditing> editing{el_init("lightoff-cli", stdin, stdout, stderr)};
    /// Ctrl-C is a key here; struck before the terminal is told so, it must not end the program.
    void (*on_interrupt_before)(int) = std::signal(SIGINT, SIG_IGN);

    Editor() = default;
    Editor(const Editor&) = delete;
    Editor& operator=(const Editor&) = delete;
    ~Editor() { std::signal(SIGINT, on_interrupt_before); }

    static Editor& of(EditLine* editing) {
        void* self = nullptr;
        el_get(editing, EL_CLIENTDATA, &self);
        return *static_cast<Editor*>(self);
    }
    static char* ask(EditLine* editing) { return of(editing).prompt.data(); }

    static unsigned char go_on(EditLine* editing, int) {
        const LineInfo* line = el_line(editing);
        const std::string_view before(line->buffer, static_cast<std::size_t>(line->cursor - line->buffer));
        const visit::Completion found = of(editing).completer(before);
        if (found.words.empty())
            return CC_REFRESH_BEEP;
        const std::size_t typed = before.size() - found.start;
        std::string more = visit::common_start(found.words).substr(typed);
        if (found.words.size() == 1)
            more += ' ';
        if (more.empty()) {
            show(found.words);
            return CC_REDISPLAY;
        }
        return el_insertstr(editing, more.c_str()) == 0 ? CC_REFRESH : CC_REFRESH_BEEP;
    }

    static unsigned char empty_line(EditLine* editing, int) {
        const LineInfo* line = el_line(editing);
        el_cursor(editing, static_cast<int>(line->lastchar - line->cursor));
        el_deletestr(editing, static_cast<int>(line->lastchar - line->buffer));
        std::fputs("^C (`quit` leaves)\n", stdout);
        return CC_REDISPLAY;
    }
};

LineEditor::LineEditor(Completer completer) : editor_(std::make_unique<Editor>()) {
    std::setlocale(LC_CTYPE, ""); // how wide a character is; numbers stay as they are
    editor_->completer = std::move(completer);
    EditLine* editing = editor_->editing.get();
    if (editing == nullptr)
        return;
    HistEvent event;
    history(editor_->history.get(), &event, H_SETSIZE, kLinesKept);
    history(editor_->history.get(), &event, H_SETUNIQUE, 1);
    el_set(editing, EL_CLIENTDATA, editor_.get());
    el_set(editing, EL_PROMPT, &Editor::ask);
    el_set(editing, EL_EDITOR, "emacs");
    el_set(editing, EL_SIGNAL, 1);
    el_set(editing, EL_HIST, &history, editor_->history.get());
    el_set(editing, EL_ADDFN, "go-on", "complete the word", &Editor::go_on);
    el_set(editing, EL_BIND, "^I", "go-on", nullptr);
    el_set(editing, EL_ADDFN, "empty-line", "empty the line", &Editor::empty_line);
    el_set(editing, EL_BIND, "^C", "empty-line", nullptr);
    el_set(editing, EL_BIND, "^R", "em-inc-search-prev", nullptr);
    el_set(editing, EL_SETTY, "-d", "-isig", nullptr);
}

LineEditor::~LineEditor() = default;

std::optional<std::string> LineEditor::read(const std::string& prompt) {
    editor_->prompt = prompt;
    if (editor_->editing == nullptr)
        return std::nullopt;
    int count = 0;
    const char* got = el_gets(editor_->editing.get(), &count);
    if (got == nullptr || count <= 0)
        return std::nullopt;
    std::string line(got, static_cast<std::size_t>(count));
    while (!line.empty() && (line.back() == '\n' || line.back() == '\r'))
        line.pop_back();
    if (line.find_first_not_of(" \t") != std::string::npos) {
        HistEvent event;
        history(editor_->history.get(), &event, H_ENTER, line.c_str());
    }
    return line;
}

} // namespace lightoff::cli
