#pragma once

#include <string>

#include "core/base/notes.hpp"

namespace swathbook::reports {

/// One operation as it was asked, answered and remarked on. `name` is the user's own word for what
/// it is about ("Boom rig", "Heron Flat").
template <class Request, class Answer>
struct Computed {
    std::string name;
    Request request;
    Answer answer;
    Notes notes{};
};

}  // namespace swathbook::reports
