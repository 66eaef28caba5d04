// SPDX-License-Identifier: MIT
#pragma once
#include <memory>

namespace lightoff::cli {

/// While one of these lives, Ctrl-C (SIGINT) and SIGTERM wait to be asked about instead of killing the
/// program. The signals are only kept pending, so there is no handler and no variable that it would write to.
class Interrupt {
public:
    Interrupt();
    ~Interrupt();
    Interrupt(const Interrupt&) = delete;
    Interrupt& operator=(const Interrupt&) = delete;

    [[nodiscard]] bool asked() const;

private:
    struct Masks; ///< hidden: <csignal> has macros with names that others use
    std::unique_ptr<Masks> masks_;
};

} // namespace lightoff::cli
