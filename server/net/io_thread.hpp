#pragma once

#include <atomic>
#include <chrono>
#include <ctime>
#include <set>
#include <string>

#include <boost/asio/executor_work_guard.hpp>
#include <boost/asio/io_context.hpp>
#include <boost/asio/steady_timer.hpp>

#include "server/routes.hpp"
#include "server/server.hpp"
#include "server/worker.hpp"

namespace swathbook::server {

class Connection;
using Clock = std::chrono::steady_clock;

/// What all connections share. Outlives them.
struct Common {
    Desk& desk;
    const Limits& limits;
    Worker& compute;
    Worker& notebook;
    Worker& paper;
    std::atomic<std::size_t>& connections;  ///< how many there are
};

/// One thread and the connections it serves. Everything of a connection happens on its thread, so
/// nothing here needs a lock.
class IoThread {
public:
    explicit IoThread(const Common& common);

    boost::asio::io_context& context() { return context_; }
    [[nodiscard]] const Common& common() const { return common_; }
    [[nodiscard]] bool is_draining() const { return is_draining_; }
    /// The Date header of this second.
    [[nodiscard]] const std::string& date_line();

    /// Runs until drained.
    void run();
    /// No further request on any connection; idle ones are closed. From any thread.
    void drain();

    void enter(Connection& connection);
    void leave(Connection& connection);

private:
    void drain_now();
    void watch();
    void sweep();
    void end_if_empty();

    Common common_;
    std::set<Connection*> connections_;
    bool is_running_ = false;
    bool is_watching_ = false;
    bool is_draining_ = false;
    Clock::time_point drain_end_;
    std::time_t date_second_ = -1;
    std::string date_line_;
    // Last, so that it goes first: what it still holds are connections, which take their leave.
    boost::asio::io_context context_{1};
    boost::asio::executor_work_guard<boost::asio::io_context::executor_type> work_;
    boost::asio::steady_timer timer_;
};

}  // namespace swathbook::server
