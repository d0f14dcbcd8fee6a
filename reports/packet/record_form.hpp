#pragma once

#include <string>
#include <vector>

#include "core/notebook/record_check.hpp"
#include "reports/packet/common.hpp"
#include "reports/packet/computed.hpp"

namespace swathbook::reports {

using ComputedRecordCheck = Computed<notebook::RecordCheckRequest, notebook::RecordCheckAnswer>;

/// What is already known of one field of the record, as it is to stand on the form.
struct RecordValue {
    std::string field;  ///< key, as in data/rules/fields.tsv: "product_name"
    std::string value;
};

/// The application record: who asks for it and until when, every field with its value or a line to
/// write on, and the place to sign. A field's mark says whether a rule in force requires it.
[[nodiscard]] Sheet record_form(const ComputedRecordCheck& check,
                                const std::vector<RecordValue>& values, const Voice& voice);

}  // namespace swathbook::reports
