// SPDX-License-Identifier: MIT
#include "evidence/on_all_cores.hpp"

#include <algorithm>
#include <atomic>
#include <exception>
#include <mutex>
#include <system_error>
#include <thread>
#include <vector>

namespace lightoff::evidence {

void on_all_cores(const furnace::Model& model, std::size_t count,
                  const std::function<void(std::size_t, furnace::Workspace&)>& work,
                  const std::function<void(std::size_t)>& done) {
    if (count == 0)
        return;
    std::atomic<std::size_t> next{0};
    std::mutex mutex;
    std::exception_ptr failure;
    const auto labour = [&](bool tells) {
        try {
            if (tells)
                done(0);
            furnace::Workspace workspace(model);
            for (std::size_t i = next++; i < count; i = next++) {
                work(i, workspace);
                if (tells)
                    done(std::min(next.load(), count));
            }
        } catch (...) {
            next = count; // the others take no more
            const std::lock_guard lock(mutex);
            if (!failure)
                failure = std::current_exception();
        }
    };
    {
        std::vector<std::jthread> others;
        try {
            for (std::size_t n = 1; n < std::min<std::size_t>(std::thread::hardware_concurrency(), count);
                 ++n)
                others.emplace_back(labour, false);
        } catch (const std::system_error&) {
            // The system gives no more threads: those that are there do it all.
        }
        labour(true);
    }
    if (failure)
        std::rethrow_exception(failure);
}

} // namespace lightoff::evidence
