// SPDX-License-Identifier: MIT
#pragma once
#include "files/error.hpp"
#include <string>
#include <utility>

/// The message of the files::Error that `act` throws; "no error" if it throws none.
template <class Act>
std::string message_of(Act&& act) {
    try {
        std::forward<Act>(act)();
    } catch (const lightoff::files::Error& error) {
        return error.what();
    }
    return "no error";
}
