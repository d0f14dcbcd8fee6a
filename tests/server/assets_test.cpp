#include "server/assets.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "core/base/result.hpp"

namespace swathbook::server {
namespace {

namespace fs = std::filesystem;
using testing::HasSubstr;

/// A built app of a few files.
class Assets : public testing::Test {
protected:
    Assets() {
        std::string pattern = testing::TempDir() + "swathbook_web_XXXXXX";
        folder_ = mkdtemp(pattern.data());
        write("index.html", "<!doctype html>");
        write("index.html.gz", "gzip of the page");
        write("index.html.br", "brotli of the page");
        write("swathbook.wasm", std::string("\0asm", 4));
        write("manifest.webmanifest", "{}");
        write("service_worker.js", "worker");
        write("assets/index-BxY3kQ9z.js", "hashed");
        write("assets/index-BxY3kQ9z.js.gz", "gzip of hashed");
        write("assets/velocity.js", "plain name");
        write(".secret", "hidden");
        write(".git/config", "hidden");
        fs::create_symlink("/etc/passwd", folder_ / "passwd");
        auto read = AssetShelf::read(folder_.string());
        EXPECT_TRUE(read.has_value());
        shelf_ = std::move(*read);
    }
    ~Assets() override { fs::remove_all(folder_); }
    void write(const std::string& name, const std::string& content) const {
        fs::create_directories((folder_ / name).parent_path());
        std::ofstream(folder_ / name, std::ios::binary) << content;
    }
    [[nodiscard]] Response get(std::string_view target,
                               const std::vector<HeaderLine>& headers = {}) const {
        Request request;
        request.method = Method::get;
        request.target = target;
        request.headers = headers;
        return shelf_.answer(request);
    }
    static std::string header(const Response& response, std::string_view name) {
        for (const auto& [key, value] : response.headers) {
            if (key == name) {
                return value;
            }
        }
        return "";
    }

    fs::path folder_;
    AssetShelf shelf_;
};

TEST_F(Assets, the_root_is_the_page) {
    const Response page = get("/");
    EXPECT_EQ(page.status, Status::ok);
    EXPECT_EQ(page.content(), "<!doctype html>");
    EXPECT_EQ(page.type, "text/html; charset=utf-8");
    EXPECT_EQ(header(page, "Cache-Control"), "no-cache");
    EXPECT_EQ(header(page, "Vary"), "Accept-Encoding");
    EXPECT_EQ(get("/?from=home").content(), page.content());
}

TEST_F(Assets, each_coding_is_sent_to_who_takes_it_under_its_own_tag) {
    const Response brotli = get("/", {{"Accept-Encoding", "gzip, deflate, br"}});
    EXPECT_EQ(brotli.content(), "brotli of the page");
    EXPECT_EQ(header(brotli, "Content-Encoding"), "br");
    const Response gzip = get("/", {{"Accept-Encoding", "gzip, br;q=0"}});
    EXPECT_EQ(gzip.content(), "gzip of the page");
    EXPECT_EQ(header(gzip, "Content-Encoding"), "gzip");
    const Response plain = get("/", {{"Accept-Encoding", "identity"}});
    EXPECT_EQ(header(plain, "Content-Encoding"), "");
    EXPECT_NE(header(brotli, "ETag"), header(gzip, "ETag"));
    EXPECT_NE(header(gzip, "ETag"), header(plain, "ETag"));
    EXPECT_EQ(header(plain, "Vary"), "Accept-Encoding");
}

TEST_F(Assets, what_the_browser_has_is_not_sent_again) {
    const std::string tag = header(get("/service_worker.js"), "ETag");
    ASSERT_EQ(tag.front(), '"');
    for (const std::string& known : {tag, "\"other\", " + tag, "W/" + tag, std::string("*")}) {
        const Response again = get("/service_worker.js", {{"If-None-Match", known}});
        EXPECT_EQ(again.status, Status::not_modified) << known;
        EXPECT_EQ(again.content(), "");
        EXPECT_EQ(header(again, "ETag"), tag);
    }
    EXPECT_EQ(get("/service_worker.js", {{"If-None-Match", "\"other\""}}).status, Status::ok);
}

TEST_F(Assets, only_names_that_carry_a_digest_are_kept_for_ever) {
    EXPECT_EQ(header(get("/assets/index-BxY3kQ9z.js"), "Cache-Control"),
              "public, max-age=31536000, immutable");
    EXPECT_EQ(header(get("/assets/velocity.js"), "Cache-Control"), "no-cache");
    EXPECT_TRUE(is_hashed_name("core_spanish-Dq_z-rOp.js"));
    EXPECT_FALSE(is_hashed_name("tip-velocity.js")) << "a word of eight letters";
    EXPECT_FALSE(is_hashed_name("index.js"));
    EXPECT_FALSE(is_hashed_name("-BxY3kQ9z"));
}

TEST_F(Assets, types_are_those_that_browsers_insist_on) {
    EXPECT_EQ(get("/swathbook.wasm").type, "application/wasm");
    EXPECT_EQ(get("/swathbook.wasm").content(), std::string_view("\0asm", 4));
    EXPECT_EQ(get("/manifest.webmanifest").type, "application/manifest+json");
    EXPECT_EQ(get("/service_worker.js").type, "text/javascript; charset=utf-8");
}

TEST_F(Assets, nothing_outside_the_folder_can_be_named) {
    for (const char* path :
         {"/../etc/passwd", "/assets/../../etc/passwd", "/%2e%2e/etc/passwd", "//etc/passwd",
          "/passwd", "/.secret", "/.git/config", "/assets/", "/assets", "/index.html/",
          "/./index.html", "/index.html%00", "/INDEX.HTML", "/index.html.gz"}) {
        const Response response = get(path);
        EXPECT_EQ(response.status, Status::not_found) << path;
        EXPECT_EQ(response.type, "application/json") << path;
    }
}

TEST_F(Assets, an_asset_that_is_gone_is_never_answered_with_a_page) {
    const Response gone = get("/assets/index-Old12345.js", {{"Accept", "text/html"}});
    EXPECT_EQ(gone.status, Status::not_found);
    EXPECT_THAT(gone.body, HasSubstr(R"("code":"not_found")"));
}

TEST_F(Assets, a_folder_without_the_page_is_no_web_app) {
    fs::remove(folder_ / "index.html");
    EXPECT_EQ(AssetShelf::read(folder_.string()).error().code, ErrorCode::not_found);
    EXPECT_EQ(AssetShelf::read((folder_ / "nowhere").string()).error().code, ErrorCode::not_found);
}

TEST(AssetShelf, without_an_app_the_root_says_so_plainly) {
    const AssetShelf empty;
    Request request;
    request.method = Method::get;
    request.target = "/";
    const Response response = empty.answer(request);
    EXPECT_EQ(response.status, Status::unavailable);
    EXPECT_THAT(response.body, HasSubstr("swathbook serve --web FOLDER"));
}

// RFC 9110 section 12.5.3: a coding with weight 0 is not taken.
TEST(AssetShelf, codings_are_read_with_their_weights) {
    EXPECT_TRUE(accepts_coding("br", "br"));
    EXPECT_TRUE(accepts_coding("gzip;q=1.0, BR ; q=0.5", "br"));
    EXPECT_FALSE(accepts_coding("gzip, br;q=0", "br"));
    EXPECT_FALSE(accepts_coding("br;q=0.000", "br"));
    EXPECT_FALSE(accepts_coding("brotli", "br"));
    EXPECT_FALSE(accepts_coding("", "br"));
}

}  // namespace
}  // namespace swathbook::server
