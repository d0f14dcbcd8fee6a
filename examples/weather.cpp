// Go or stop, with the limits of a label and of a contract.
#include "core/quantity/parse.hpp"
#include "core/quantity/units.hpp"
#include "core/weather/spray_window.hpp"
#include "examples/example.hpp"

namespace swathbook {
namespace {

Result<bool> show_window() {
    SWATHBOOK_TRY(wind, parse<Kind::speed>("9 mph"));
    SWATHBOOK_TRY(label_limit, parse<Kind::speed>("10 mph"));
    SWATHBOOK_TRY(contract_limit, parse<Kind::speed>("8 mph"));
    weather::SprayWindowRequest request;
    request.now = "2031-05-14T11:20-05:00";
    for (const char* from : {"350", "10"}) {
        weather::WeatherReading reading;
        reading.taken = "2031-05-14T11:16-05:00";
        reading.wind = wind;
        reading.wind_from = from;
        reading.cues = {weather::InversionCue::none_seen};
        request.readings.push_back(std::move(reading));
    }
    request.limits.resize(2);
    request.limits[0].name = "label";
    request.limits[0].max_wind = label_limit;
    request.limits[1].name = "contract";
    request.limits[1].max_wind = contract_limit;

    Notes notes;
    SWATHBOOK_TRY(answer, weather::spray_window(request, notes));
    // By hand: 350 and 10 degrees lie 10 either side of north, each arrow reaching cos 10 = 0.9848
    // along it. 9 mph is under the label's 10 and over the contract's 8: the stricter rules.
    const bool all = examples::agrees("Mean resultant length of two directions; " + answer.text,
                                      answer.resultant_length.value_or(0.0), {0.9848, "", 0.00005});
    return all && answer.verdict == weather::WindowVerdict::stop &&
           answer.mean_wind_from_word == "N";
}

}  // namespace
}  // namespace swathbook

int main() {
    return swathbook::examples::status_of(swathbook::show_window());
}
