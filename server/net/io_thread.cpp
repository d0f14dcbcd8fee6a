#include "server/net/io_thread.hpp"

#include <array>

#include <boost/asio/post.hpp>

#include "server/net/connection.hpp"

namespace swathbook::server {

IoThread::IoThread(const Common& common)
    : common_(common), work_(boost::asio::make_work_guard(context_)), timer_(context_) {}

const std::string& IoThread::date_line() {
    const std::time_t now = std::time(nullptr);
    if (now != date_second_) {
        date_second_ = now;
        std::tm parts{};
        gmtime_r(&now, &parts);
        std::array<char, 64> text{};  // the locale of the program is always "C"
        const std::size_t size =
            std::strftime(text.data(), text.size(), "Date: %a, %d %b %Y %H:%M:%S GMT\r\n", &parts);
        date_line_.assign(text.data(), size);
    }
    return date_line_;
}

void IoThread::run() {
    is_running_ = true;
    context_.run();
    is_running_ = false;
}

void IoThread::enter(Connection& connection) {
    connections_.insert(&connection);
    watch();
}

void IoThread::leave(Connection& connection) {
    connections_.erase(&connection);
    --common_.connections;
    end_if_empty();
}

/// The times of all connections are looked at a few times a second, which costs less than a timer
/// each; without connections nothing wakes up.
void IoThread::watch() {
    if (is_watching_ || connections_.empty()) {
        return;
    }
    is_watching_ = true;
    timer_.expires_after(common_.limits.sweep);
    timer_.async_wait([this](const boost::system::error_code& fault) {
        is_watching_ = false;
        if (!fault) {
            sweep();
            watch();
        }
    });
}

void IoThread::sweep() {
    const auto now = Clock::now();
    const bool is_over = is_draining_ && now >= drain_end_;
    for (Connection* connection : connections_) {  // closing takes none out before its handler ran
        if (is_over) {
            connection->close();
        } else {
            connection->look_at_time(now);
        }
    }
}

void IoThread::drain() {
    boost::asio::post(context_, [this] { drain_now(); });
}

void IoThread::drain_now() {
    if (is_draining_) {
        return;
    }
    is_draining_ = true;
    drain_end_ = Clock::now() + common_.limits.drain;
    for (Connection* connection : connections_) {
        connection->drain();
    }
    end_if_empty();
}

void IoThread::end_if_empty() {
    if (is_running_ && is_draining_ && connections_.empty()) {
        timer_.cancel();
        work_.reset();
    }
}

}  // namespace swathbook::server
