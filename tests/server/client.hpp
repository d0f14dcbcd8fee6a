#pragma once

#include <cstdint>
#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace swathbook::tests {

/// What came back.
struct Answer {
    int status = 0;
    std::map<std::string, std::string> headers;  ///< names in lower case
    std::string body;

    [[nodiscard]] std::string header(const std::string& name) const {
        const auto found = headers.find(name);
        return found == headers.end() ? "" : found->second;
    }
};

/// One plain socket to the server: sends any bytes, right or wrong.
class Client {
public:
    explicit Client(std::uint16_t port);
    ~Client();
    Client(const Client&) = delete;
    Client& operator=(const Client&) = delete;

    [[nodiscard]] bool is_connected() const { return socket_ >= 0; }
    /// @return false when the other side no longer takes anything
    bool send(std::string_view bytes);
    /// Nothing more will be sent.
    void end_sending();
    /// The next answer; nothing when the connection ends, or nothing comes in 20 s, before a whole
    /// one.
    [[nodiscard]] std::optional<Answer> read(bool is_to_head = false);
    /// Waits for the other side to close; false when bytes come instead.
    [[nodiscard]] bool is_closed();

private:
    bool receive();

    int socket_ = -1;
    std::string received_;
};

struct Ask {
    std::string method{"GET"};
    std::string path{"/"};
    std::string body{};
    std::string type{};             ///< Content-Type
    std::string more{};             ///< whole header lines
    std::string host{"localhost"};  ///< the port is added
};

/// The bytes of a request, well formed.
[[nodiscard]] std::string request_text(const Ask& ask, std::uint16_t port);
/// Asks over a connection of its own.
[[nodiscard]] std::optional<Answer> ask(std::uint16_t port, const Ask& ask);

}  // namespace swathbook::tests
