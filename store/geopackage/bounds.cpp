#include "store/geopackage/bounds.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstring>

namespace swathbook::store {

namespace {

/// Reads numbers of either byte order and never past the end.
class ByteReader {
public:
    explicit ByteReader(std::span<const std::uint8_t> bytes) : bytes_(bytes) {}

    [[nodiscard]] std::optional<std::uint8_t> byte() {
        if (place_ >= bytes_.size()) {
            return std::nullopt;
        }
        return bytes_[place_++];
    }
    template <class Unsigned>
    [[nodiscard]] std::optional<Unsigned> number(bool is_little_endian) {
        if (bytes_.size() - place_ < sizeof(Unsigned)) {
            return std::nullopt;
        }
        Unsigned value = 0;
        for (std::size_t i = 0; i < sizeof(Unsigned); ++i) {
            const std::size_t from = is_little_endian ? sizeof(Unsigned) - 1 - i : i;
            value = static_cast<Unsigned>(value << 8 | bytes_[place_ + from]);
        }
        place_ += sizeof(Unsigned);
        return value;
    }
    [[nodiscard]] std::optional<double> real(bool is_little_endian) {
        const auto bits = number<std::uint64_t>(is_little_endian);
        return bits ? std::optional(std::bit_cast<double>(*bits)) : std::nullopt;
    }
    [[nodiscard]] std::size_t left() const { return bytes_.size() - place_; }
    void skip(std::size_t count) { place_ += std::min(count, left()); }

private:
    std::span<const std::uint8_t> bytes_;
    std::size_t place_ = 0;
};

constexpr int deepest_geometry = 8;

bool read_points(ByteReader& reader, bool order, std::uint32_t count, int dimensions,
                 std::optional<Bounds>& bounds) {
    for (std::uint32_t i = 0; i < count; ++i) {
        const auto x = reader.real(order);
        const auto y = reader.real(order);
        if (!x || !y || reader.left() < 8U * static_cast<unsigned>(dimensions - 2)) {
            return false;
        }
        reader.skip(8U * static_cast<unsigned>(dimensions - 2));
        include(bounds, *x, *y);
    }
    return true;
}

bool read_wkb(ByteReader& reader, int levels_left, std::optional<Bounds>& bounds) {
    const auto order_byte = reader.byte();
    const bool order = order_byte == 1;
    const auto type = reader.number<std::uint32_t>(order);
    if (levels_left <= 0 || !order_byte || *order_byte > 1 || !type) {
        return false;
    }
    const std::uint32_t shape = *type % 1000;
    const std::uint32_t extra = *type / 1000;  // 0 xy, 1 xyz, 2 xym, 3 xyzm
    if (shape < 1 || shape > 7 || extra > 3) {
        return false;
    }
    const int dimensions = extra == 0 ? 2 : extra == 3 ? 4 : 3;
    if (shape == 1) {
        return read_points(reader, order, 1, dimensions, bounds);
    }
    const auto count = reader.number<std::uint32_t>(order);
    if (!count) {
        return false;
    }
    if (shape == 2) {
        return read_points(reader, order, *count, dimensions, bounds);
    }
    for (std::uint32_t i = 0; i < *count; ++i) {
        if (shape == 3) {
            const auto points = reader.number<std::uint32_t>(order);
            if (!points || !read_points(reader, order, *points, dimensions, bounds)) {
                return false;
            }
        } else if (!read_wkb(reader, levels_left - 1, bounds)) {
            return false;
        }
    }
    return true;
}

constexpr std::size_t envelope_numbers[] = {0, 4, 6, 6, 8};

}  // namespace

void include(std::optional<Bounds>& bounds, double x, double y) {
    if (std::isnan(x) || std::isnan(y)) {
        return;  // an empty point
    }
    if (!bounds) {
        bounds = Bounds{x, x, y, y};
        return;
    }
    bounds->min_x = std::min(bounds->min_x, x);
    bounds->max_x = std::max(bounds->max_x, x);
    bounds->min_y = std::min(bounds->min_y, y);
    bounds->max_y = std::max(bounds->max_y, y);
}

std::optional<GeometryHeader> read_header(std::span<const std::uint8_t> blob) {
    if (blob.size() < 8 || blob[0] != 'G' || blob[1] != 'P') {
        return std::nullopt;
    }
    const std::uint8_t flags = blob[3];
    const bool order = (flags & 1) != 0;
    const unsigned envelope = (flags >> 1) & 7;
    GeometryHeader header;
    header.is_empty = (flags & 0x10) != 0;
    if (envelope > 4) {
        return std::nullopt;
    }
    if (header.is_empty) {
        return header;
    }
    ByteReader reader(blob.subspan(8));
    if (envelope > 0) {
        const auto min_x = reader.real(order);
        const auto max_x = reader.real(order);
        const auto min_y = reader.real(order);
        const auto max_y = reader.real(order);
        if (reader.left() + 32 < envelope_numbers[envelope] * 8 || !max_y) {
            return std::nullopt;
        }
        header.bounds = Bounds{*min_x, *max_x, *min_y, *max_y};
        return header;
    }
    if (!read_wkb(reader, deepest_geometry, header.bounds)) {
        return std::nullopt;
    }
    header.is_empty = !header.bounds;
    return header;
}

}  // namespace swathbook::store
