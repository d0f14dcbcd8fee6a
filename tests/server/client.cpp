#include "tests/server/client.hpp"

#include <arpa/inet.h>
#include <netinet/in.h>
#include <sys/socket.h>
#include <sys/time.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>

#include <fmt/format.h>

namespace swathbook::tests {

Client::Client(std::uint16_t port) {
    sockaddr_in where{};
    where.sin_family = AF_INET;
    where.sin_port = htons(port);
    where.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
    socket_ = socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    const timeval longest{20, 0};
    setsockopt(socket_, SOL_SOCKET, SO_RCVTIMEO, &longest, sizeof longest);
    if (connect(socket_, reinterpret_cast<const sockaddr*>(&where), sizeof where) != 0) {
        close(socket_);
        socket_ = -1;
    }
}

Client::~Client() {
    if (socket_ >= 0) {
        close(socket_);
    }
}

bool Client::send(std::string_view bytes) {
    while (!bytes.empty()) {
        const ssize_t sent = ::send(socket_, bytes.data(), bytes.size(), MSG_NOSIGNAL);
        if (sent <= 0) {
            return false;
        }
        bytes.remove_prefix(static_cast<std::size_t>(sent));
    }
    return true;
}

void Client::end_sending() {
    shutdown(socket_, SHUT_WR);
}

bool Client::receive() {
    std::array<char, 1U << 16U> piece{};
    const ssize_t got = recv(socket_, piece.data(), piece.size(), 0);
    received_.append(piece.data(), got > 0 ? static_cast<std::size_t>(got) : 0);
    return got > 0;
}

std::optional<Answer> Client::read(bool is_to_head) {
    std::size_t end = 0;
    while ((end = received_.find("\r\n\r\n")) == std::string::npos) {
        if (!receive()) {
            return std::nullopt;
        }
    }
    Answer answer;
    answer.status = std::atoi(received_.c_str() + std::string_view("HTTP/1.1 ").size());
    std::string_view lines = std::string_view(received_).substr(0, end + 2);
    lines.remove_prefix(lines.find("\r\n") + 2);
    while (!lines.empty()) {
        const std::string_view line = lines.substr(0, lines.find("\r\n"));
        lines.remove_prefix(line.size() + 2);
        std::string name(line.substr(0, line.find(':')));
        std::transform(name.begin(), name.end(), name.begin(),
                       [](unsigned char letter) { return std::tolower(letter); });
        answer.headers[name] = line.substr(std::min(name.size() + 2, line.size()));
    }
    received_.erase(0, end + 4);
    const std::size_t length =
        is_to_head ? 0 : std::strtoul(answer.header("content-length").c_str(), nullptr, 10);
    while (received_.size() < length) {
        if (!receive()) {
            return std::nullopt;
        }
    }
    answer.body = received_.substr(0, length);
    received_.erase(0, length);
    return answer;
}

bool Client::is_closed() {
    return received_.empty() && !receive();
}

std::string request_text(const Ask& ask, std::uint16_t port) {
    std::string text = fmt::format("{} {} HTTP/1.1\r\nHost: {}:{}\r\n{}", ask.method, ask.path,
                                   ask.host, port, ask.more);
    if (!ask.type.empty()) {
        text += fmt::format("Content-Type: {}\r\n", ask.type);
    }
    if (ask.method == "POST" || ask.method == "PUT") {
        text += fmt::format("Content-Length: {}\r\n", ask.body.size());
    }
    return text + "\r\n" + ask.body;
}

std::optional<Answer> ask(std::uint16_t port, const Ask& ask) {
    Client client(port);
    if (!client.is_connected()) {
        return std::nullopt;
    }
    client.send(request_text(ask, port));
    return client.read(ask.method == "HEAD");
}

}  // namespace swathbook::tests
