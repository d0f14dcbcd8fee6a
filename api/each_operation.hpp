#pragma once

#include "api/operation.hpp"

namespace swathbook::api {

/// One function for each operation, calibrate_operation() and so on: who asks for a few by name
/// does not bring in all.
#define OPERATION(name) Operation name##_operation();
#include "api/operations/list.def"
#undef OPERATION

}  // namespace swathbook::api
