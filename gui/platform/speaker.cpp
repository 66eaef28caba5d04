// SPDX-License-Identifier: MIT
#include "gui/platform/speaker.hpp"

#include <SFML/Audio/SoundStream.hpp>
#include <array>
#include <cstdlib>
#include <filesystem>

namespace lightoff::platform {
namespace {

constexpr std::size_t kChunk = 1024; ///< samples, 23 ms

bool is_there(const std::filesystem::path& path) {
    std::error_code none;
    return std::filesystem::exists(path, none);
}

/// Whether a sound card or a sound server can be found. SFML and the library below it only learn it by
/// trying, and write a page of complaints on standard error if there is none.
bool has_device() {
    if (is_there("/dev/snd/seq") || is_there("/dev/snd/timer") || std::getenv("PULSE_SERVER") != nullptr)
        return true;
    const char* run = std::getenv("XDG_RUNTIME_DIR");
    return run != nullptr && (is_there(std::filesystem::path(run) / "pulse" / "native") ||
                              is_there(std::filesystem::path(run) / "pipewire-0"));
}

} // namespace

struct Speaker::Stream : sf::SoundStream {
    Stream(Source its_source, unsigned rate_Hz) : source(std::move(its_source)) { initialize(1, rate_Hz); }
    Stream(const Stream&) = delete;
    Stream& operator=(const Stream&) = delete;
    ~Stream() override { stop(); }

    bool onGetData(Chunk& chunk) override {
        source(samples);
        chunk.samples = samples.data();
        chunk.sampleCount = samples.size();
        return true;
    }
    void onSeek(sf::Time) override {}

    Source source;
    std::array<std::int16_t, kChunk> samples{};
};

Speaker::Speaker(Source source, unsigned rate_Hz)
    : stream_(has_device() ? std::make_unique<Stream>(std::move(source), rate_Hz) : nullptr) {}

Speaker::~Speaker() = default;

void Speaker::turn_on(bool on) {
    if (!stream_)
        return;
    const bool plays = stream_->getStatus() == sf::SoundSource::Playing;
    if (on && !plays)
        stream_->play();
    else if (!on && plays)
        stream_->stop();
}

bool Speaker::works() const {
    return stream_ != nullptr;
}

} // namespace lightoff::platform
