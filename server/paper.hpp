#pragma once

#include <string>
#include <string_view>

#include "server/desk.hpp"
#include "server/http.hpp"

namespace swathbook::server {

/// POST /api/packet: the order that `swathbook packet` makes of a folder -> application/pdf.
/// Language, paper, units and time of printing may be left out. The order stands in
/// docs/serving.md.
[[nodiscard]] Response packet(Desk& desk, const Request& request, std::string_view rest);
/// POST /api/worksheet: {"language", "paper", "units", "tips"}, each may be left out.
[[nodiscard]] Response worksheet(Desk& desk, const Request& request, std::string_view rest);

/// What a program did with its input.
struct ProgramEnd {
    bool is_well = false;  ///< started, ended by itself, with status 0
    std::string out;
    std::string err;
};
/// Runs a program with one argument, its streams in memory. It is ended after 60 seconds.
[[nodiscard]] ProgramEnd run_program(const std::string& path, const std::string& argument,
                                     std::string_view input);

}  // namespace swathbook::server
