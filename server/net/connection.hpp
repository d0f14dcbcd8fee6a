#pragma once

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include <boost/asio/ip/tcp.hpp>
#include <boost/beast/core/flat_buffer.hpp>
#include <boost/beast/http/parser.hpp>
#include <boost/beast/http/string_body.hpp>

#include "server/net/io_thread.hpp"

namespace swathbook::server {

/// One client: reads a request, has it answered, writes, and begins again. One operation is under
/// way at any time, so the steps below follow each other and never meet.
class Connection : public std::enable_shared_from_this<Connection> {
public:
    Connection(boost::asio::ip::tcp::socket socket, IoThread& thread);
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection();

    void begin();
    /// Ends what has taken too long.
    void look_at_time(Clock::time_point now);
    /// Closes when nothing is being asked; else the running request is the last.
    void drain();
    void close();

private:
    enum class Stage : std::uint8_t { idle, header, body, working, writing, lingering };
    using Fault = boost::beast::error_code;
    using Parser = boost::beast::http::request_parser<boost::beast::http::string_body>;

    void read_more();
    void on_read(Fault fault, std::size_t bytes);
    void take_in();
    [[nodiscard]] bool take_header();
    void allow_body();
    void refuse_message(Fault fault);
    void dispatch();
    void work_on(Worker& worker);
    void respond(Response response, bool is_last);
    void write_head(bool is_last);
    void on_written(Fault fault, bool is_last);
    void linger();
    void on_lingering(Fault fault, std::size_t bytes);
    void describe_request();
    /// Says what is being done now, and until when it must be done.
    void enter_stage(Stage stage, std::size_t bytes = 0);

    boost::asio::ip::tcp::socket socket_;
    IoThread& thread_;
    boost::beast::flat_buffer buffer_;
    std::optional<Parser> parser_;
    std::vector<HeaderLine> headers_;
    Request request_;
    Admitted admitted_;
    Response response_;
    std::string head_;
    Stage stage_ = Stage::idle;
    Clock::time_point deadline_ = Clock::time_point::max();
    bool is_out_of_time_ = false;
    std::size_t taken_bytes_ = 0;  ///< of a body, or while lingering
};

}  // namespace swathbook::server
