#include "server/server.hpp"

#include <sys/resource.h>

#include <algorithm>
#include <memory>
#include <thread>

#include <boost/asio/ip/tcp.hpp>
#include <boost/asio/post.hpp>

#include <fmt/format.h>

#include "server/net/connection.hpp"
#include "server/status.hpp"

namespace swathbook::server {
namespace {

namespace asio = boost::asio;
using asio::ip::tcp;

constexpr std::size_t most_waiting_on_disk = 256;
constexpr std::size_t most_waiting_to_compute = 256;
constexpr std::size_t most_waiting_for_paper = 16;
constexpr std::chrono::milliseconds wait_for_descriptors{100};

std::size_t threads_wanted(std::size_t asked) {
    return asked > 0 ? asked : std::max(std::thread::hardware_concurrency(), 1U);
}

/// Every connection is an open file; the usual limit of 1024 is lower than what is served.
void allow_open_files(std::size_t connections) {
    rlimit limit{};
    const rlim_t wanted = connections + 64;
    if (getrlimit(RLIMIT_NOFILE, &limit) == 0 && limit.rlim_cur < wanted) {
        limit.rlim_cur = std::min<rlim_t>(wanted, limit.rlim_max);
        setrlimit(RLIMIT_NOFILE, &limit);
    }
}

tl::unexpected<Error> cannot_listen(std::uint16_t port, const boost::system::error_code& fault) {
    if (fault == asio::error::address_in_use) {
        return fail(ErrorCode::conflict, "port",
                    fmt::format("Another program listens on port {}. Stop it, or choose another: "
                                "--port 0 takes any that is free.",
                                port));
    }
    return fail(ErrorCode::io, "port",
                fmt::format("Port {} cannot be listened on: {}.", port, fault.message()));
}

/// 127.0.0.1 and nothing else: other machines cannot reach it.
Result<tcp::acceptor> listen(asio::io_context& context, std::uint16_t port) {
    boost::system::error_code fault;
    tcp::acceptor acceptor(context);
    acceptor.open(tcp::v4(), fault);
    if (!fault) {
        acceptor.set_option(tcp::acceptor::reuse_address(true), fault);
    }
    if (!fault) {
        acceptor.bind(tcp::endpoint(asio::ip::address_v4::loopback(), port), fault);
    }
    if (!fault) {
        acceptor.listen(tcp::socket::max_listen_connections, fault);
    }
    if (fault) {
        return cannot_listen(port, fault);
    }
    return acceptor;
}

Desk desk_of(ServerOptions& options, AssetShelf shelf, std::uint16_t port, std::string token) {
    return Desk{Doorkeeper(port, options.host_names, std::move(token)),
                std::move(shelf),
                std::move(options.notebook),
                std::move(options.notebook_name),
                std::move(options.paper_program),
                std::move(options.version)};
}

}  // namespace

/// All that runs. The members end in the opposite order: first the workers finish and hand their
/// answers in, then the threads' contexts go, then what they used.
class Server::Hall {
public:
    Hall(Desk desk, const Limits& limits, std::size_t threads)
        : desk_(std::move(desk)), limits_(limits) {
        const Common common{desk_, limits_, compute_, notebook_, paper_, connections_};
        for (std::size_t i = 0; i < threads; ++i) {
            io_.push_back(std::make_unique<IoThread>(common));
        }
    }
    Hall(const Hall&) = delete;
    Hall& operator=(const Hall&) = delete;
    ~Hall() {
        stop();
        wait();
    }

    void open(std::uint16_t port, boost::asio::ip::tcp::acceptor::native_handle_type handle) {
        port_ = port;
        acceptor_.emplace(io_.front()->context(), tcp::v4(), handle);
        retry_.emplace(io_.front()->context());
        accept();
        for (const auto& thread : io_) {
            threads_.emplace_back([&io = *thread] { io.run(); });
        }
    }
    void stop() {
        if (is_stopping_.exchange(true) || !acceptor_) {
            return;
        }
        asio::post(io_.front()->context(), [this] {
            boost::system::error_code fault;
            acceptor_->close(fault);
            retry_->cancel();
            for (const auto& thread : io_) {
                thread->drain();
            }
        });
    }
    void wait() { threads_.clear(); }

    [[nodiscard]] const Desk& desk() const { return desk_; }
    [[nodiscard]] std::uint16_t port() const { return port_; }

private:
    /// Connections go to the threads in turn.
    void accept() {
        IoThread& next = *io_[turn_++ % io_.size()];
        acceptor_->async_accept(next.context(),
                                [this, &next](boost::system::error_code fault, tcp::socket socket) {
                                    if (!acceptor_->is_open()) {
                                        return;
                                    }
                                    if (fault) {
                                        accept_later();
                                        return;
                                    }
                                    welcome(next, std::move(socket));
                                    accept();
                                });
    }
    /// No descriptor was free: the waiting client stays in the queue of the system.
    void accept_later() {
        retry_->expires_after(wait_for_descriptors);
        retry_->async_wait([this](const boost::system::error_code& fault) {
            if (!fault && acceptor_->is_open()) {
                accept();
            }
        });
    }
    void welcome(IoThread& thread, tcp::socket socket) {
        if (connections_ >= limits_.connections) {
            return;  // the socket closes
        }
        ++connections_;
        asio::post(thread.context(), [&thread, socket = std::move(socket)]() mutable {
            std::make_shared<Connection>(std::move(socket), thread)->begin();
        });
    }

    Desk desk_;
    Limits limits_;
    std::atomic<std::size_t> connections_{0};
    std::atomic<bool> is_stopping_{false};
    std::uint16_t port_ = 0;
    std::size_t turn_ = 0;
    std::vector<std::unique_ptr<IoThread>> io_;
    std::optional<tcp::acceptor> acceptor_;
    std::optional<asio::steady_timer> retry_;
    Worker compute_{threads_wanted(0), most_waiting_to_compute};
    Worker notebook_{1, most_waiting_on_disk};
    Worker paper_{1, most_waiting_for_paper};
    std::vector<std::jthread> threads_;
};

Server::Server(std::unique_ptr<Hall> hall) : hall_(std::move(hall)) {}
Server::~Server() = default;

Result<std::unique_ptr<Server>> Server::start(ServerOptions options) {
    AssetShelf shelf;
    if (!options.web_folder.empty()) {
        SWATHBOOK_TRY(read, AssetShelf::read(options.web_folder));
        shelf = std::move(read);
    }
    SWATHBOOK_TRY(token, make_token(store::system_outside()));
    allow_open_files(options.limits.connections);
    try {
        asio::io_context context;  // the real port must be known before anything is answered
        SWATHBOOK_TRY(acceptor, listen(context, options.port));
        const std::uint16_t port = acceptor.local_endpoint().port();
        auto hall =
            std::make_unique<Hall>(desk_of(options, std::move(shelf), port, std::move(token)),
                                   options.limits, threads_wanted(options.threads));
        hall->open(port, acceptor.release());
        return std::unique_ptr<Server>(new Server(std::move(hall)));
    } catch (const std::exception& error) {  // Boost throws where the system gives no resources
        return fail(ErrorCode::io, "", fmt::format("The server cannot start: {}.", error.what()));
    }
}

std::uint16_t Server::port() const {
    return hall_->port();
}
const std::string& Server::token() const {
    return hall_->desk().door.token();
}
std::string Server::address() const {
    return fmt::format("http://localhost:{}/#token={}", port(), token());
}
bool Server::has_web_app() const {
    return !hall_->desk().shelf.is_empty();
}
void Server::stop() {
    hall_->stop();
}
void Server::wait() {
    hall_->wait();
}

}  // namespace swathbook::server
