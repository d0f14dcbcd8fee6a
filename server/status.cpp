#include "server/status.hpp"

#include "api/call.hpp"

namespace swathbook::server {

Status status_of(ErrorCode code) {
    switch (code) {
        case ErrorCode::invalid_input: return Status::bad_request;
        case ErrorCode::out_of_range:
        case ErrorCode::inconsistent:
        case ErrorCode::unsupported: return Status::unprocessable;
        case ErrorCode::not_found: return Status::not_found;
        case ErrorCode::conflict: return Status::conflict;
        case ErrorCode::not_permitted: return Status::forbidden;
        case ErrorCode::unavailable: return Status::unavailable;
        case ErrorCode::corrupt_data:  // what this side keeps is damaged
        case ErrorCode::io:
        case ErrorCode::internal: return Status::internal_error;
    }
    return Status::internal_error;
}

std::string_view phrase_of(Status status) {
    switch (status) {
        case Status::ok: return "OK";
        case Status::not_modified: return "Not Modified";
        case Status::bad_request: return "Bad Request";
        case Status::forbidden: return "Forbidden";
        case Status::not_found: return "Not Found";
        case Status::method_not_allowed: return "Method Not Allowed";
        case Status::request_timeout: return "Request Timeout";
        case Status::conflict: return "Conflict";
        case Status::length_required: return "Length Required";
        case Status::content_too_large: return "Content Too Large";
        case Status::unsupported_media_type: return "Unsupported Media Type";
        case Status::expectation_failed: return "Expectation Failed";
        case Status::unprocessable: return "Unprocessable Content";
        case Status::header_fields_too_large: return "Request Header Fields Too Large";
        case Status::internal_error: return "Internal Server Error";
        case Status::unavailable: return "Service Unavailable";
    }
    return "Internal Server Error";
}

Response refusal(const Error& error) {
    return refusal(status_of(error.code), error);
}

Response refusal(Status status, const Error& error) {
    Response response;
    response.status = status;
    response.body = api::error_json(error) + "\n";
    return response;
}

}  // namespace swathbook::server
