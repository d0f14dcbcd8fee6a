#include "server/worker.hpp"

#include <algorithm>

namespace swathbook::server {

Worker::Worker(std::size_t threads, std::size_t most_waiting) : most_waiting_(most_waiting) {
    for (std::size_t i = 0; i < std::max<std::size_t>(threads, 1); ++i) {
        threads_.emplace_back([this] { run(); });
    }
}

Worker::~Worker() {
    {
        const std::lock_guard lock(mutex_);
        is_ending_ = true;
    }
    has_news_.notify_all();
}

bool Worker::post(std::function<void()> job) {
    {
        const std::lock_guard lock(mutex_);
        if (waiting_.size() >= most_waiting_ || is_ending_) {
            return false;
        }
        waiting_.push_back(std::move(job));
    }
    has_news_.notify_one();
    return true;
}

void Worker::run() {
    for (;;) {
        std::function<void()> job;
        {
            std::unique_lock lock(mutex_);
            has_news_.wait(lock, [this] { return is_ending_ || !waiting_.empty(); });
            if (waiting_.empty()) {
                return;
            }
            job = std::move(waiting_.front());
            waiting_.pop_front();
        }
        job();
    }
}

}  // namespace swathbook::server
