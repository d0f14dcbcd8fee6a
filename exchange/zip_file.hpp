#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "core/base/result.hpp"

struct zip;

namespace swathbook::exchange {

/// Reads the files of a zip that lies in memory.
class ZipReader {
public:
    /// @param bytes must outlive the reader
    /// @errors corrupt_data{bundle} when it is no whole zip
    [[nodiscard]] static Result<ZipReader> open(std::string_view bytes);

    [[nodiscard]] bool holds(const std::string& name) const;
    /// The content of one file, never more than `most` bytes whatever the zip says of itself.
    /// @errors corrupt_data{bundle}, out_of_range{bundle}
    [[nodiscard]] Result<std::string> read(const std::string& name, std::size_t most) const;

private:
    struct Close {
        void operator()(zip* archive) const;
    };
    explicit ZipReader(zip* archive) : archive_(archive) {}
    std::unique_ptr<zip, Close> archive_;
};

struct ZipPart {
    std::string name;
    std::string content;
};

/// A zip of the parts, in their order.
/// @errors internal
[[nodiscard]] Result<std::string> write_zip(std::span<const ZipPart> parts);

}  // namespace swathbook::exchange
