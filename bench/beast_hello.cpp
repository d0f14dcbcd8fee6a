// The rival of the server: the least that Boost.Beast can be asked to do. Reads a request whole,
// checks nothing, answers so many bytes that were ready before. As many threads as the machine has,
// one io_context. Prints its port and runs until it is killed.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <string>
#include <thread>
#include <vector>

#include <boost/asio/io_context.hpp>
#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/strand.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/http.hpp>

namespace {

namespace asio = boost::asio;
namespace http = boost::beast::http;
using asio::ip::tcp;
using Fault = boost::beast::error_code;

class Session : public std::enable_shared_from_this<Session> {
public:
    Session(tcp::socket socket, const std::string& content)
        : socket_(std::move(socket)), answer_(http::status::ok, 11) {
        socket_.set_option(tcp::no_delay(true));
        answer_.set(http::field::content_type, "application/json");
        answer_.body() = content;
        answer_.prepare_payload();
    }
    void read() {
        request_ = {};
        http::async_read(socket_, buffer_, request_,
                         [self = shared_from_this()](Fault fault, std::size_t) {
                             if (!fault) {
                                 self->write();
                             }
                         });
    }

private:
    void write() {
        http::async_write(socket_, answer_, [self = shared_from_this()](Fault fault, std::size_t) {
            if (!fault) {
                self->read();
            }
        });
    }

    tcp::socket socket_;
    boost::beast::flat_buffer buffer_;
    http::request<http::string_body> request_;
    http::response<http::string_body> answer_;
};

void accept(tcp::acceptor& acceptor, asio::io_context& context, const std::string& content) {
    acceptor.async_accept(context, [&](Fault fault, tcp::socket socket) {
        if (!fault) {
            std::make_shared<Session>(std::move(socket), content)->read();
        }
        accept(acceptor, context, content);
    });
}

}  // namespace

int main(int count, char** words) {
    const std::string content(count > 1 ? std::strtoul(words[1], nullptr, 10) : 1024, 'x');
    const unsigned threads = std::max(std::thread::hardware_concurrency(), 1U);
    asio::io_context context(static_cast<int>(threads));
    tcp::acceptor acceptor(context, {asio::ip::address_v4::loopback(), 0});
    accept(acceptor, context, content);
    std::printf("%u\n", acceptor.local_endpoint().port());
    std::fflush(stdout);
    std::vector<std::jthread> others;
    for (unsigned i = 1; i < threads; ++i) {
        others.emplace_back([&context] { context.run(); });
    }
    context.run();
}
