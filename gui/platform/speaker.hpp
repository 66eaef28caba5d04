// SPDX-License-Identifier: MIT
#pragma once
#include <cstdint>
#include <functional>
#include <memory>
#include <span>

namespace lightoff::platform {

/// The sound device. Where there is none it is silent, and nobody is told: captions carry every sound.
class Speaker {
public:
    /// Fills a buffer of mono samples; called from a thread of its own.
    using Source = std::function<void(std::span<std::int16_t>)>;

    Speaker(Source source, unsigned rate_Hz);
    ~Speaker();
    Speaker(const Speaker&) = delete;
    Speaker& operator=(const Speaker&) = delete;

    /// Sound, or none.
    void turn_on(bool on);
    /// Whether sound comes out, or would.
    [[nodiscard]] bool works() const;

private:
    struct Stream;
    std::unique_ptr<Stream> stream_;
};

} // namespace lightoff::platform
