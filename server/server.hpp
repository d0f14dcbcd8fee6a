#pragma once

#include <chrono>
#include <cstdint>
#include <memory>
#include <string>
#include <vector>

#include "core/base/result.hpp"
#include "store/notebook_store.hpp"

namespace swathbook::server {

/// What a connection may take in time and room.
struct Limits {
    using Milliseconds = std::chrono::milliseconds;

    std::uint32_t header_bytes = 16U << 10U;  ///< first line and headers together
    std::size_t connections = 2000;           ///< at the same time; one more is closed at once
    Milliseconds idle{75'000};                ///< between two requests
    Milliseconds header{10'000};              ///< from the first byte to the end of the headers
    Milliseconds transfer{30'000};            ///< for a body in or out, and a second more for each
    std::size_t bytes_per_second = 16U << 10U;  ///< this many bytes
    Milliseconds linger{2'000};                 ///< for the other side to read the answer and close
    Milliseconds drain{10'000};                 ///< for running requests when the server is stopped
    Milliseconds sweep{250};                    ///< how often the times above are looked at
};

struct ServerOptions {
    std::uint16_t port = 8420;                       ///< 0: any that is free
    std::vector<std::string> host_names;             ///< beside localhost, 127.0.0.1 and [::1]
    std::string web_folder;                          ///< empty: no web app
    std::unique_ptr<store::NotebookStore> notebook;  ///< null: no sync
    std::string notebook_name;
    std::string paper_program;  ///< path of swathbook-paper
    std::string version;
    std::size_t threads = 0;  ///< for connections; 0: as many as the machine has
    Limits limits;
};

/// The HTTP server on 127.0.0.1. Asynchronous: an idle or slow client costs a socket, not a thread.
class Server {
public:
    /// Listens and answers from when it returns.
    ///
    /// @errors as AssetShelf::read; conflict{port} when another program listens there;
    ///         io when the system gives no socket
    [[nodiscard]] static Result<std::unique_ptr<Server>> start(ServerOptions options);
    Server(const Server&) = delete;
    Server& operator=(const Server&) = delete;
    /// Stops and waits.
    ~Server();

    [[nodiscard]] std::uint16_t port() const;
    [[nodiscard]] const std::string& token() const;
    /// "http://localhost:8420/#token=...": the part after # never leaves the browser.
    [[nodiscard]] std::string address() const;
    [[nodiscard]] bool has_web_app() const;

    /// Takes no new request, finishes those that run, closes. Returns at once; may be called twice.
    void stop();
    /// Returns when everything is closed, which is after a stop().
    void wait();

private:
    class Hall;
    explicit Server(std::unique_ptr<Hall> hall);
    std::unique_ptr<Hall> hall_;
};

}  // namespace swathbook::server
