#include "server/net/connection.hpp"

#include <boost/asio/post.hpp>
#include <boost/asio/write.hpp>
#include <boost/beast/http/error.hpp>

#include <limits>

#include <fmt/format.h>

#include "server/doorkeeper.hpp"
#include "server/status.hpp"

namespace swathbook::server {
namespace {

namespace asio = boost::asio;
namespace http = boost::beast::http;

constexpr std::size_t header_piece = std::size_t{4} << 10;
constexpr std::size_t body_piece = std::size_t{64} << 10;
constexpr std::size_t kept_buffer = std::size_t{16} << 10;
constexpr std::size_t most_lingering_bytes = std::size_t{64} << 20;

Method method_of(http::verb verb) {
    switch (verb) {
        case http::verb::get: return Method::get;
        case http::verb::head: return Method::head;
        case http::verb::post: return Method::post;
        case http::verb::put: return Method::put;
        default: return Method::other;
    }
}

std::string_view view_of(boost::beast::string_view text) {
    return {text.data(), text.size()};
}

Response out_of_time() {
    return refusal(Status::request_timeout,
                   {ErrorCode::unavailable, "", "The request took too long to arrive."});
}

Response busy() {
    return refusal({ErrorCode::unavailable, "",
                    "Too many requests of this kind are waiting. Try again in a moment."});
}

/// What the reader of HTTP found wrong.
Response malformed(const boost::beast::error_code& fault, std::size_t most_bytes) {
    if (fault == http::error::body_limit) {
        return too_large(most_bytes);
    }
    if (fault == http::error::header_limit) {
        return refusal(Status::header_fields_too_large,
                       {ErrorCode::out_of_range, "", "The headers of the request are too long."});
    }
    return refusal(Status::bad_request,
                   {ErrorCode::invalid_input, "",
                    fmt::format("This is no HTTP/1.1 request: {}.", fault.message())});
}

}  // namespace

Connection::Connection(asio::ip::tcp::socket socket, IoThread& thread)
    : socket_(std::move(socket)), thread_(thread) {
    boost::system::error_code ignored;
    socket_.set_option(asio::ip::tcp::no_delay(true), ignored);
    thread_.enter(*this);
}

Connection::~Connection() {
    thread_.leave(*this);
}

void Connection::enter_stage(Stage stage, std::size_t bytes) {
    const Limits& limits = thread_.common().limits;
    const auto now = Clock::now();
    switch (stage) {
        case Stage::idle: deadline_ = now + limits.idle; break;
        case Stage::header: deadline_ = now + limits.header; break;
        case Stage::body: deadline_ = now + limits.transfer; break;
        case Stage::writing:
            deadline_ =
                now + limits.transfer + std::chrono::seconds(bytes / limits.bytes_per_second);
            break;
        case Stage::lingering: deadline_ = now + limits.linger; break;
        case Stage::working: deadline_ = Clock::time_point::max(); break;
    }
    stage_ = stage;
}

void Connection::begin() {
    parser_.reset();
    response_ = {};
    taken_bytes_ = 0;
    if (buffer_.capacity() > kept_buffer) {
        buffer_.shrink_to_fit();
    }
    enter_stage(Stage::idle);
    if (thread_.is_draining()) {
        close();
    } else if (buffer_.size() > 0) {  // the client did not wait for the answer
        take_in();
    } else {
        read_more();
    }
}

void Connection::read_more() {
    socket_.async_read_some(buffer_.prepare(stage_ == Stage::body ? body_piece : header_piece),
                            [self = shared_from_this()](Fault fault, std::size_t bytes) {
                                self->on_read(fault, bytes);
                            });
}

void Connection::on_read(Fault fault, std::size_t bytes) {
    if (is_out_of_time_) {
        respond(out_of_time(), true);
        return;
    }
    if (fault == asio::error::eof && parser_ && parser_->got_some()) {
        refuse_message(http::error::partial_message);
        return;
    }
    if (fault) {
        close();
        return;
    }
    buffer_.commit(bytes);
    take_in();
}

void Connection::take_in() {
    if (!parser_) {
        parser_.emplace();
        parser_->header_limit(thread_.common().limits.header_bytes);
        parser_->body_limit(std::numeric_limits<std::uint64_t>::max());  // until the route is known
        enter_stage(Stage::header);
    }
    while (buffer_.size() > 0) {
        Fault fault;
        const std::size_t used = parser_->put(buffer_.data(), fault);
        buffer_.consume(used);
        if (fault && fault != http::error::need_more) {
            refuse_message(fault);
            return;
        }
        if (stage_ == Stage::header && parser_->is_header_done() && !take_header()) {
            return;
        }
        if (parser_->is_done()) {
            dispatch();
            return;
        }
        taken_bytes_ += used;
        if (fault == http::error::need_more) {
            if (buffer_.size() > body_piece) {  // a line between two chunks that never ends
                refuse_message(http::error::bad_chunk_extension);
                return;
            }
            break;
        }
    }
    read_more();
}

void Connection::describe_request() {
    const auto& message = parser_->get();
    headers_.clear();
    for (const auto& field : message) {
        headers_.push_back({view_of(field.name_string()), view_of(field.value())});
    }
    request_.method = method_of(message.method());
    request_.target = view_of(message.target());
    request_.headers = headers_;
    request_.body = {};
}

bool Connection::take_header() {
    describe_request();
    const auto length = parser_->content_length();
    const bool is_framed = parser_->chunked() || length.has_value();
    auto admitted = admit(thread_.common().desk, request_,
                          length ? std::optional<std::uint64_t>(*length) : std::nullopt, is_framed);
    if (!admitted) {
        respond(std::move(admitted.error()), !parser_->is_done());
        return false;
    }
    admitted_ = *admitted;
    parser_->body_limit(admitted_.route->most_bytes);
    enter_stage(Stage::body);
    if (!parser_->is_done() && request_.header("Expect")) {
        allow_body();
        return false;
    }
    return true;
}

/// Tells a client that asks before it sends a body that it may.
void Connection::allow_body() {
    static constexpr std::string_view go_on = "HTTP/1.1 100 Continue\r\n\r\n";
    asio::async_write(socket_, asio::buffer(go_on),
                      [self = shared_from_this()](Fault fault, std::size_t) {
                          if (fault) {
                              self->close();
                          } else {
                              self->take_in();
                          }
                      });
}

void Connection::refuse_message(Fault fault) {
    const std::size_t most = stage_ == Stage::body ? admitted_.route->most_bytes : 0;
    respond(malformed(fault, most), true);
}

void Connection::dispatch() {
    request_.body = parser_->get().body();
    const Common& common = thread_.common();
    switch (lane_of(admitted_, request_.body.size())) {
        case Lane::here: respond(answer(common.desk, admitted_, request_), false); break;
        case Lane::compute: work_on(common.compute); break;
        case Lane::notebook: work_on(common.notebook); break;
        case Lane::paper: work_on(common.paper); break;
    }
}

void Connection::work_on(Worker& worker) {
    enter_stage(Stage::working);
    const bool is_taken = worker.post([self = shared_from_this()]() mutable {
        self->response_ = answer(self->thread_.common().desk, self->admitted_, self->request_);
        // The last owner must be the connection's thread: the job gives its share away.
        asio::io_context& home = self->thread_.context();
        asio::post(home,
                   [self = std::move(self)] { self->respond(std::move(self->response_), false); });
    });
    if (!is_taken) {
        respond(busy(), false);
    }
}

void Connection::write_head(bool is_last) {
    head_.clear();
    const auto out = std::back_inserter(head_);
    const Response& response = response_;
    fmt::format_to(out, "HTTP/1.1 {} {}\r\n", static_cast<int>(response.status),
                   phrase_of(response.status));
    head_ += thread_.date_line();
    head_ += security_headers();
    bool says_caching = false;
    for (const auto& [name, value] : response.headers) {
        fmt::format_to(out, "{}: {}\r\n", name, value);
        says_caching = says_caching || name == "Cache-Control";
    }
    if (!says_caching) {
        head_ += "Cache-Control: no-store\r\n";
    }
    if (!response.type.empty()) {
        fmt::format_to(out, "Content-Type: {}\r\n", response.type);
    }
    if (response.status != Status::not_modified) {
        fmt::format_to(out, "Content-Length: {}\r\n",
                       response.announced.value_or(response.content().size()));
    }
    const bool is_old = parser_ && parser_->is_header_done() && parser_->get().version() < 11;
    head_ += is_last ? "Connection: close\r\n" : is_old ? "Connection: keep-alive\r\n" : "";
    head_ += "\r\n";
}

void Connection::respond(Response response, bool is_last) {
    response_ = std::move(response);
    const bool has_request = parser_ && parser_->is_header_done();
    is_last = is_last || !has_request || thread_.is_draining() || !parser_->keep_alive();
    write_head(is_last);
    const bool has_content = !has_request || request_.method != Method::head;
    const std::string_view content = has_content ? response_.content() : std::string_view();
    enter_stage(Stage::writing, content.size());
    const std::array<asio::const_buffer, 2> parts{asio::buffer(head_), asio::buffer(content)};
    asio::async_write(socket_, parts,
                      [self = shared_from_this(), is_last](Fault fault, std::size_t) {
                          self->on_written(fault, is_last);
                      });
}

void Connection::on_written(Fault fault, bool is_last) {
    if (fault) {
        close();
    } else if (is_last) {
        linger();
    } else {
        begin();
    }
}

/// Closing while the client still sends would throw away the answer it has not read yet: first it
/// is told that nothing more comes, then what it sends is passed over for a moment.
void Connection::linger() {
    if (stage_ != Stage::lingering) {
        boost::system::error_code fault;
        socket_.shutdown(asio::ip::tcp::socket::shutdown_send, fault);
        buffer_.consume(buffer_.size());
        taken_bytes_ = 0;
        is_out_of_time_ = false;
        enter_stage(Stage::lingering);
    }
    socket_.async_read_some(buffer_.prepare(body_piece),
                            [self = shared_from_this()](Fault fault, std::size_t bytes) {
                                self->on_lingering(fault, bytes);
                            });
}

void Connection::on_lingering(Fault fault, std::size_t bytes) {
    taken_bytes_ += bytes;
    if (fault || taken_bytes_ > most_lingering_bytes) {
        close();
    } else {
        linger();
    }
}

void Connection::look_at_time(Clock::time_point now) {
    const Limits& limits = thread_.common().limits;
    auto end = deadline_;
    if (stage_ == Stage::body) {
        end += std::chrono::seconds(taken_bytes_ / limits.bytes_per_second);
    }
    if (now < end) {
        return;
    }
    if (stage_ == Stage::header || stage_ == Stage::body) {
        is_out_of_time_ = true;  // the reading ends, and its end answers
        boost::system::error_code fault;
        socket_.cancel(fault);
    } else {
        close();
    }
}

void Connection::drain() {
    if (stage_ == Stage::idle) {
        close();
    }
}

void Connection::close() {
    boost::system::error_code fault;
    socket_.close(fault);
}

}  // namespace swathbook::server
