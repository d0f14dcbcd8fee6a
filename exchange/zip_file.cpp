#include "exchange/zip_file.hpp"

#include <zip.h>

#include <fmt/format.h>

namespace swathbook::exchange {
namespace {

std::string words_of(zip_error_t& error) {
    std::string words = zip_error_strerror(&error);
    zip_error_fini(&error);
    return words;
}

tl::unexpected<Error> damaged(std::string_view what) {
    return fail(ErrorCode::corrupt_data, "bundle",
                fmt::format("This copy is damaged ({}). Nothing was taken in. Make the copy again "
                            "on the other device.",
                            what));
}

tl::unexpected<Error> not_made(std::string_view what) {
    return fail(ErrorCode::internal, "bundle", fmt::format("The copy was not made: {}.", what));
}

}  // namespace

void ZipReader::Close::operator()(zip* archive) const {
    zip_discard(archive);
}

Result<ZipReader> ZipReader::open(std::string_view bytes) {
    zip_error_t error;
    zip_error_init(&error);
    zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
    if (source == nullptr) {
        return damaged(words_of(error));
    }
    zip_t* archive = zip_open_from_source(source, ZIP_RDONLY | ZIP_CHECKCONS, &error);
    if (archive == nullptr) {
        zip_source_free(source);
        return damaged(words_of(error));
    }
    zip_error_fini(&error);
    return ZipReader(archive);
}

bool ZipReader::holds(const std::string& name) const {
    return zip_name_locate(archive_.get(), name.c_str(), ZIP_FL_ENC_RAW) >= 0;
}

Result<std::string> ZipReader::read(const std::string& name, std::size_t most) const {
    zip_file_t* file = zip_fopen(archive_.get(), name.c_str(), ZIP_FL_ENC_RAW);
    if (file == nullptr) {
        return damaged(fmt::format("{} is missing", name));
    }
    constexpr std::size_t piece = 1U << 16;
    std::string content;
    zip_int64_t got = 0;
    do {
        const std::size_t before = content.size();
        content.resize(before + piece);
        got = zip_fread(file, content.data() + before, piece);
        content.resize(before + static_cast<std::size_t>(got > 0 ? got : 0));
    } while (got > 0 && content.size() <= most);
    zip_fclose(file);
    if (got < 0) {
        return damaged(name);
    }
    if (content.size() > most) {
        return fail(ErrorCode::out_of_range, "bundle",
                    fmt::format("{} is larger than {} bytes, the most a notebook takes. Nothing "
                                "was taken in.",
                                name, most));
    }
    return content;
}

Result<std::string> write_zip(std::span<const ZipPart> parts) {
    zip_error_t error;
    zip_error_init(&error);
    zip_source_t* target = zip_source_buffer_create(nullptr, 0, 0, &error);
    if (target == nullptr) {
        return not_made(words_of(error));
    }
    zip_source_keep(target);  // the archive lets go of it when it closes; we still read it then
    zip_t* archive = zip_open_from_source(target, ZIP_TRUNCATE, &error);
    if (archive == nullptr) {
        zip_source_free(target);
        zip_source_free(target);
        return not_made(words_of(error));
    }
    for (const ZipPart& part : parts) {
        zip_source_t* content =
            zip_source_buffer(archive, part.content.data(), part.content.size(), 0);
        if (content == nullptr ||
            zip_file_add(archive, part.name.c_str(), content, ZIP_FL_ENC_UTF_8) < 0) {
            zip_source_free(content);
            const std::string words = zip_strerror(archive);
            zip_discard(archive);
            zip_source_free(target);
            return not_made(words);
        }
    }
    if (zip_close(archive) != 0) {
        const std::string words = zip_strerror(archive);
        zip_discard(archive);
        zip_source_free(target);
        return not_made(words);
    }
    zip_stat_t size;
    zip_stat_init(&size);
    std::string bytes;
    if (zip_source_stat(target, &size) == 0 && zip_source_open(target) == 0) {
        bytes.resize(size.size);
        const zip_int64_t got = zip_source_read(target, bytes.data(), bytes.size());
        bytes.resize(static_cast<std::size_t>(got > 0 ? got : 0));
        zip_source_close(target);
    }
    zip_source_free(target);
    return bytes;
}

}  // namespace swathbook::exchange
