// SPDX-License-Identifier: MIT
#include "cli/interrupt.hpp"

#include <csignal>

namespace lightoff::cli {

struct Interrupt::Masks {
    sigset_t watched{};
    sigset_t before{};
};

Interrupt::Interrupt() : masks_(std::make_unique<Masks>()) {
    sigemptyset(&masks_->watched);
    sigaddset(&masks_->watched, SIGINT);
    sigaddset(&masks_->watched, SIGTERM);
    sigprocmask(SIG_BLOCK, &masks_->watched, &masks_->before);
}

Interrupt::~Interrupt() {
    // Taken off the list before the mask goes back, or it would strike then.
    int signal = 0;
    while (asked())
        if (sigwait(&masks_->watched, &signal) != 0)
            break;
    sigprocmask(SIG_SETMASK, &masks_->before, nullptr);
}

bool Interrupt::asked() const {
    sigset_t pending;
    sigemptyset(&pending);
    sigpending(&pending);
    return sigismember(&pending, SIGINT) == 1 || sigismember(&pending, SIGTERM) == 1;
}

} // namespace lightoff::cli
