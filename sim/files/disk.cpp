// SPDX-License-Identifier: MIT
#include "files/disk.hpp"
#include "files/error.hpp"
#include <cerrno>
#include <filesystem>
#include <system_error>
#include <utility>
#if defined(__unix__) || defined(__APPLE__)
#include <unistd.h>
#endif

namespace lightoff::files {
namespace {

namespace fs = std::filesystem;

std::string reason(int error) {
    return std::generic_category().message(error);
}

[[noreturn]] void refuse(const std::string& path, std::string found, std::string allowed,
                         std::string advice = "") {
    throw Error({path, "", std::move(found), std::move(allowed), std::move(advice)});
}

[[noreturn]] void refuse_system(const std::string& path, int error, std::string advice) {
    refuse(path, "the system's answer " + in_quotes(reason(error)), "", std::move(advice));
}

[[noreturn]] void refuse_size(const std::string& path, const std::string& found, std::size_t limit) {
    refuse(path, found, "at most " + std::to_string(limit) + " bytes", "is it the right file?");
}

OwnedFile open(const std::string& path, const char* mode, const char* advice) {
    errno = 0;
    OwnedFile file{std::fopen(path.c_str(), mode)};
    if (!file)
        refuse_system(path, errno, advice);
    // No buffer: what a call could not write must not turn up behind a later one.
    std::setvbuf(file.get(), nullptr, _IONBF, 0);
    return file;
}

/// False with errno set if not all of `text` was written.
bool write(std::FILE* file, std::string_view text) {
    errno = 0;
    return std::fwrite(text.data(), 1, text.size(), file) == text.size() && std::fflush(file) == 0;
}

/// The one place that asks the system to put a file on the disk itself. False with errno set.
bool sync_to_disk([[maybe_unused]] std::FILE* file) {
#if defined(__unix__)
    // EINVAL: a pipe or a device, which has no disk under it.
    return ::fdatasync(::fileno(file)) == 0 || errno == EINVAL || errno == EROFS;
#elif defined(__APPLE__)
    return ::fsync(::fileno(file)) == 0 || errno == EINVAL || errno == ENOTSUP;
#else
    return true;
#endif
}

const char* write_advice(int error) {
    if (error == ENOSPC || error == EFBIG || error == EDQUOT)
        return "free some space; what was written before is whole";
    return "check the folder and your right to write there";
}

} // namespace

std::string read_file(const std::string& path, std::size_t limit) {
    std::error_code ignored;
    const fs::file_status status = fs::status(path, ignored);
    if (fs::is_directory(status))
        refuse(path, "a folder", "a file");
    if (fs::is_regular_file(status)) {
        const auto size = fs::file_size(path, ignored);
        if (!ignored && size > limit)
            refuse_size(path, std::to_string(size) + " bytes", limit);
    }
    const OwnedFile file = open(path, "rb", "check the name and your right to read it");
    std::string text;
    constexpr std::size_t chunk = 65536;
    for (std::size_t got = chunk; got == chunk;) {
        const std::size_t size = text.size();
        text.resize(size + chunk);
        got = std::fread(text.data() + size, 1, chunk, file.get());
        text.resize(size + got);
        if (text.size() > limit)
            refuse_size(path, "more than " + std::to_string(limit) + " bytes", limit);
    }
    if (std::ferror(file.get()) != 0)
        refuse_system(path, errno, "the file could not be read to its end");
    return text;
}

AppendFile::AppendFile(std::string path, OwnedFile file, std::size_t size)
    : path_(std::move(path)), file_(std::move(file)), size_(size) {}

AppendFile AppendFile::create(const std::string& path) {
    std::error_code ignored;
    if (fs::is_regular_file(path, ignored) && fs::file_size(path, ignored) != 0)
        refuse(path, "a file of that name", "a new name", "nothing was overwritten");
    return {path, open(path, "ab", "check the folder and your right to write there"), 0};
}

AppendFile AppendFile::reopen(const std::string& path, std::size_t keep) {
    std::error_code error;
    fs::resize_file(path, keep, error);
    if (error)
        refuse_system(path, error.value(), "check your right to write to it");
    return {path, open(path, "ab", "check your right to write to it"), keep};
}

void AppendFile::append(std::string_view text, Sync sync) {
    if (write(file_.get(), text) && (sync == Sync::to_system || sync_to_disk(file_.get()))) {
        size_ += text.size();
        return;
    }
    const int error = errno;
    std::clearerr(file_.get());
    std::error_code ignored;
    if (fs::is_regular_file(path_, ignored))
        fs::resize_file(path_, size_, ignored); // drop the part that got through
    refuse_system(path_, error, write_advice(error));
}

OutputFile::OutputFile(const std::string& path)
    : path_(path), file_(open(path, "wb", "check the folder and your right to write there")) {}

void OutputFile::write(std::string_view text) {
    if (!lightoff::files::write(file_.get(), text))
        refuse_system(path_, errno, write_advice(errno));
}

void replace_file(const std::string& path, std::string_view text) {
    std::error_code error;
    const fs::file_status status = fs::status(path, error);
    if (fs::is_directory(status))
        refuse(path, "a folder", "a file name");
    if (fs::exists(status) &&
        !fs::is_regular_file(status)) { // a device or a pipe has no old content to protect
        const OwnedFile file = open(path, "wb", "check your right to write to it");
        if (!write(file.get(), text))
            refuse_system(path, errno, write_advice(errno));
        return;
    }
    const std::string part = path + ".part";
    int failure = 0;
    {
        const OwnedFile file = open(part, "wb", "check the folder and your right to write there");
        if (!write(file.get(), text) || !sync_to_disk(file.get()))
            failure = errno;
    }
    if (failure == 0) {
        fs::rename(part, path, error);
        if (!error)
            return;
        failure = error.value();
    }
    fs::remove(part, error);
    refuse_system(path, failure, write_advice(failure));
}

} // namespace lightoff::files
