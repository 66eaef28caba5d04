// SPDX-License-Identifier: MIT
#pragma once
#include <csignal>
#include <fcntl.h>
#include <fstream>
#include <spawn.h>
#include <sstream>
#include <stdexcept>
#include <string>
#include <sys/wait.h>
#include <unistd.h>
#include <vector>

extern char** environ;

namespace lightoff::test {

/// How a program ended and what it said.
struct Ran {
    int code = 0; ///< exit status; 128 + signal if it was killed
    std::string out;
    std::string err;
};

struct Surroundings {
    std::vector<std::string> environment{}; ///< "NAME=value", on top of this program's
    std::string out_path{};                 ///< standard output goes there and is not read
    double interrupt_after_s = 0.0;         ///< SIGINT then; 0: never
};

namespace detail {

/// A file without a name, for what a program says: any amount, no reader needed.
class Sink {
public:
    Sink() {
        char name[] = "/tmp/lightoff-said-XXXXXX";
        descriptor_ = mkstemp(name);
        if (descriptor_ < 0)
            throw std::runtime_error("no temporary file");
        unlink(name);
    }
    ~Sink() { close(descriptor_); }
    Sink(const Sink&) = delete;
    Sink& operator=(const Sink&) = delete;
    [[nodiscard]] int descriptor() const { return descriptor_; }
    [[nodiscard]] std::string text() const {
        std::string all;
        char buffer[65536];
        lseek(descriptor_, 0, SEEK_SET);
        for (ssize_t got; (got = read(descriptor_, buffer, sizeof buffer)) > 0;)
            all.append(buffer, static_cast<std::size_t>(got));
        return all;
    }

private:
    int descriptor_ = -1;
};

inline std::vector<char*> pointers(std::vector<std::string>& texts) {
    std::vector<char*> all;
    for (std::string& text : texts)
        all.push_back(text.data());
    all.push_back(nullptr);
    return all;
}

} // namespace detail

/// Runs `words` (the program's path first), standard input empty, and waits for its end.
inline Ran run_program(std::vector<std::string> words, const Surroundings& around = {}) {
    const detail::Sink out;
    const detail::Sink err;
    posix_spawn_file_actions_t files;
    posix_spawn_file_actions_init(&files);
    posix_spawn_file_actions_addopen(&files, STDIN_FILENO, "/dev/null", O_RDONLY, 0);
    if (around.out_path.empty())
        posix_spawn_file_actions_adddup2(&files, out.descriptor(), STDOUT_FILENO);
    else
        posix_spawn_file_actions_addopen(&files, STDOUT_FILENO, around.out_path.c_str(), O_WRONLY, 0);
    posix_spawn_file_actions_adddup2(&files, err.descriptor(), STDERR_FILENO);

    std::vector<std::string> variables = around.environment;
    for (char** variable = environ; *variable != nullptr; ++variable)
        variables.emplace_back(*variable); // the first of a name is the one that is found
    std::vector<char*> argv = detail::pointers(words);
    std::vector<char*> envp = detail::pointers(variables);
    pid_t child = 0;
    const int failed = posix_spawn(&child, argv[0], &files, nullptr, argv.data(), envp.data());
    posix_spawn_file_actions_destroy(&files);
    if (failed != 0)
        throw std::runtime_error("can't start " + words[0]);
    if (around.interrupt_after_s > 0.0) {
        usleep(static_cast<useconds_t>(around.interrupt_after_s * 1e6));
        kill(child, SIGINT);
    }
    int status = 0;
    waitpid(child, &status, 0);
    return {WIFSIGNALED(status) ? 128 + WTERMSIG(status) : WEXITSTATUS(status), out.text(), err.text()};
}

} // namespace lightoff::test
