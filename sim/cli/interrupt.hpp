// SPDX-License-Identifier: MIT
#pragma once
#include <csignal>

namespace lightoff::cli {

/// While one of these lives, Ctrl-C (SIGINT) and SIGTERM wait to be asked about instead of killing the
/// program. The signals are only kept pending, so there is no handler and no variable that it would write to.
class Interrupt {
public:
    Interrupt() {
        sigemptyset(&watched_);
        sigaddset(&watched_, SIGINT);
        sigaddset(&watched_, SIGTERM);
        sigprocmask(SIG_BLOCK, &watched_, &before_);
    }
    ~Interrupt() {
        // Taken off the list before the mask goes back, or it would strike then.
        int signal = 0;
        while (asked())
            if (sigwait(&watched_, &signal) != 0)
                break;
        sigprocmask(SIG_SETMASK, &before_, nullptr);
    }
    Interrupt(const Interrupt&) = delete;
    Interrupt& operator=(const Interrupt&) = delete;

    [[nodiscard]] bool asked() const {
        sigset_t pending;
        sigemptyset(&pending);
        sigpending(&pending);
        return sigismember(&pending, SIGINT) == 1 || sigismember(&pending, SIGTERM) == 1;
    }

private:
    sigset_t watched_{};
    sigset_t before_{};
};

} // namespace lightoff::cli
