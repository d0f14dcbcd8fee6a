#pragma once

#include <condition_variable>
#include <cstddef>
#include <deque>
#include <functional>
#include <mutex>
#include <thread>
#include <vector>

namespace swathbook::server {

/// Threads that take jobs from one queue, in order. With one thread, jobs never run side by side.
class Worker {
public:
    /// @param threads at least 1
    /// @param most_waiting jobs that may wait; one more is turned away
    Worker(std::size_t threads, std::size_t most_waiting);
    Worker(const Worker&) = delete;
    Worker& operator=(const Worker&) = delete;
    /// Finishes every job that was taken in.
    ~Worker();

    /// @return false when too many jobs are waiting: then the job was not taken in
    [[nodiscard]] bool post(std::function<void()> job);

private:
    void run();

    std::mutex mutex_;
    std::condition_variable has_news_;
    std::deque<std::function<void()>> waiting_;
    std::size_t most_waiting_;
    bool is_ending_ = false;
    std::vector<std::jthread> threads_;  // the last member: ended before what the threads use
};

}  // namespace swathbook::server
