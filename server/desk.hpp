#pragma once

#include <memory>
#include <string>

#include "server/assets.hpp"
#include "server/doorkeeper.hpp"
#include "store/notebook_store.hpp"

namespace swathbook::server {

/// What the handlers work with. Nothing changes after the start but the notebook, which only the
/// notebook's own thread touches.
struct Desk {
    Doorkeeper door;
    AssetShelf shelf;
    std::unique_ptr<store::NotebookStore> notebook;  ///< null: sync is refused
    std::string notebook_name;                       ///< what people call it: the name of its file
    std::string paper_program;                       ///< the program that makes PDF
    std::string version;
};

}  // namespace swathbook::server
