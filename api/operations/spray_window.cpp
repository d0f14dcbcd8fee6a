#include "core/weather/spray_window.hpp"

#include "api/operation.hpp"

namespace swathbook::api {

template <>
struct Description<weather::InversionCue> {
    static constexpr std::string_view name = "InversionCue";
    static Choices<weather::InversionCue> choices() {
        using C = weather::InversionCue;
        return {{C::none_seen, "none_seen", "Somebody looked and saw none of them."},
                {C::still_air, "still_air", "No wind to feel, or from all sides in turn."},
                {C::smoke_or_dust_hangs, "smoke_or_dust_hangs", "In a layer, not rising."},
                {C::fog_or_dew, "fog_or_dew", "Fog, mist, dew or frost."},
                {C::clear_calm_dusk_to_dawn, "clear_calm_dusk_to_dawn",
                 "Clear sky and little wind between evening and morning."},
                {C::clouds_dying_out, "clouds_dying_out", "Fair-weather clouds vanish."},
                {C::cold_air_pools, "cold_air_pools", "Colder in the hollow than on the slope."}};
    }
};

template <>
struct Description<weather::MeasuredInversion> {
    static constexpr std::string_view name = "MeasuredInversion";
    static constexpr auto fields() {
        using T = weather::MeasuredInversion;
        return std::array{
            field<&T::low_height>("low_height", "Height of the low thermometer.")
                .required()
                .like("3 ft"),
            field<&T::low_temperature>("low_temperature", "What it reads.").required(),
            field<&T::high_height>("high_height", "Height of the high thermometer.")
                .required()
                .like("10 ft"),
            field<&T::high_temperature>("high_temperature", "What it reads.").required()};
    }
};

template <>
struct Description<weather::WeatherReading> {
    static constexpr std::string_view name = "WeatherReading";
    static constexpr auto fields() {
        using T = weather::WeatherReading;
        return std::array{
            field<&T::taken>("taken", "When, with the zone: 2031-05-04T14:20-05:00.").required(),
            field<&T::wind>("wind", "Wind speed; 0 mph is calm.").required().like("6 mph"),
            field<&T::gust>("gust", "Highest gust of the same minutes.").like("9 mph"),
            field<&T::wind_from>("wind_from",
                                 "Where it comes from: degrees, or a point of the compass."),
            field<&T::temperature>("temperature", "Air temperature."),
            field<&T::humidity>("humidity", "Relative humidity."),
            field<&T::at_height>("at_height", "Height above ground it was read at.").like("6 ft"),
            field<&T::cues>("cues", "Signs of an inversion seen, or none_seen."),
            field<&T::measured_inversion>("measured_inversion", "Temperature at two heights.")};
    }
};

template <>
struct Description<weather::WindSector> {
    static constexpr std::string_view name = "WindSector";
    static constexpr auto fields() {
        using T = weather::WindSector;
        return std::array{
            field<&T::name>("name", "The place: school, creek."),
            field<&T::bearing>("bearing", "Degrees, or a point of the compass.").required(),
            field<&T::half_angle>("half_angle", "Angle to each side; 45 degrees unless said.")
                .like("45 deg")};
    }
};

template <>
struct Description<weather::WeatherLimits> {
    static constexpr std::string_view name = "WeatherLimits";
    static constexpr auto fields() {
        using T = weather::WeatherLimits;
        return std::array{
            field<&T::name>("name", "Whose limits: product, contract, state rule.").required(),
            field<&T::max_wind>("max_wind", "Highest wind.").like("10 mph"),
            field<&T::min_wind>("min_wind", "Lowest wind.").like("3 mph"),
            field<&T::max_gust>("max_gust", "Highest gust.").like("15 mph"),
            field<&T::max_temperature>("max_temperature", "Highest air temperature."),
            field<&T::min_temperature>("min_temperature", "Lowest air temperature."),
            field<&T::min_humidity>("min_humidity", "Lowest relative humidity."),
            field<&T::keep_away>("keep_away", "Places the wind must not blow at, by bearing."),
            field<&T::wind_from_allowed>("wind_from_allowed", "Where the wind must come from."),
            field<&T::rainfast>("rainfast", "Dry time the label asks before rain.").like("4 h")};
    }
};

template <>
struct Description<weather::SprayWindowRequest> {
    static constexpr std::string_view name = "SprayWindowRequest";
    static constexpr auto fields() {
        using T = weather::SprayWindowRequest;
        return std::array{
            field<&T::readings>("readings", "The weather as read where the spraying is.")
                .required(),
            field<&T::limits>("limits", "Limits as typed, one entry for each label or rule."),
            field<&T::now>("now", "The time of asking, with the zone.").required(),
            field<&T::reading_good_for>("reading_good_for",
                                        "How long a reading counts; 30 min unless said.")
                .like("30 min"),
            field<&T::rain_expected>("rain_expected", "When rain is forecast, with the zone."),
            field<&T::rainfast>("rainfast", "Longest dry time the job asks before rain.")
                .like("4 h")};
    }
};

template <>
struct Description<weather::WindowCheck> {
    static constexpr std::string_view name = "WindowCheck";
    static Choices<weather::WindowCheck> choices() {
        using W = weather::WindowCheck;
        return {{W::reading_age, "reading_age", "Whether a reading still counts."},
                {W::inversion, "inversion", "Warm air above cool, seen or measured."},
                {W::calm, "calm", "Wind under 3 mph."},
                {W::max_wind, "max_wind", "Highest wind."},
                {W::min_wind, "min_wind", "Lowest wind."},
                {W::max_gust, "max_gust", "Highest gust."},
                {W::max_temperature, "max_temperature", "Highest temperature."},
                {W::min_temperature, "min_temperature", "Lowest temperature."},
                {W::min_humidity, "min_humidity", "Lowest humidity."},
                {W::keep_away, "keep_away", "Places the wind must not blow at."},
                {W::wind_from_allowed, "wind_from_allowed", "Where the wind must come from."},
                {W::rain, "rain", "Time to dry before rain."}};
    }
};

template <>
struct Description<weather::CheckVerdict> {
    static constexpr std::string_view name = "CheckVerdict";
    static Choices<weather::CheckVerdict> choices() {
        using V = weather::CheckVerdict;
        return {{V::go, "go", "Within the strictest limit entered."},
                {V::stop, "stop", "Beyond it."},
                {V::not_known, "not_known", "Nothing read to judge it by."},
                {V::not_entered, "not_entered", "No such limit was typed; not the same as none."}};
    }
};

template <>
struct Description<weather::WindowVerdict> {
    static constexpr std::string_view name = "WindowVerdict";
    static Choices<weather::WindowVerdict> choices() {
        using V = weather::WindowVerdict;
        return {{V::go, "go", "Go by the limits entered."},
                {V::stop, "stop", "Stop."},
                {V::not_known, "not_known", "Something that decides it is not known."}};
    }
};

template <>
struct Description<weather::WindowRow> {
    static constexpr std::string_view name = "WindowRow";
    static constexpr auto fields() {
        using T = weather::WindowRow;
        return std::array{
            field<&T::what>("what", "What is judged."),
            field<&T::verdict>("verdict", "Go, stop, not known or not entered."),
            field<&T::reading>("reading", "The worst of the readings that count."),
            field<&T::limit>("limit", "The strictest limit entered."),
            field<&T::whose>("whose", "Who sets it."),
            field<&T::margin>("margin", "What is left; below zero when beyond."),
            field<&T::not_entered_by>("not_entered_by", "Limits it was not entered for.")
                .labelled("Not entered for"),
            field<&T::text>("text", "The same in words.").labelled("In words")};
    }
};

template <>
struct Description<weather::SprayWindowAnswer> {
    static constexpr std::string_view name = "SprayWindowAnswer";
    static constexpr auto fields() {
        using T = weather::SprayWindowAnswer;
        return std::array{
            field<&T::verdict>("verdict", "Go by the limits entered, stop, or not known."),
            field<&T::text>("text", "Why.").labelled("In words"),
            field<&T::readings_used>("readings_used", "Readings that still count."),
            field<&T::last_reading_age>("last_reading_age", "Age of the last reading.")
                .shown_in("min", "min"),
            field<&T::readings_good_until>("readings_good_until", "When to read again."),
            field<&T::mean_wind>("mean_wind", "Mean of the readings that count."),
            field<&T::lowest_wind>("lowest_wind", "Lowest of them."),
            field<&T::highest_wind>("highest_wind", "Highest of them."),
            field<&T::greatest_gust>("greatest_gust", "Greatest gust."),
            field<&T::mean_wind_from>("mean_wind_from", "Mean direction on the circle."),
            field<&T::mean_wind_from_word>("mean_wind_from_word", "Its point of the compass.")
                .labelled("Mean wind from, word"),
            field<&T::resultant_length>("resultant_length",
                                        "1 when all directions agree, 0 when they cancel."),
            field<&T::direction_deviation>("direction_deviation", "Circular standard deviation."),
            field<&T::checks>("checks", "Row by row."),
            field<&T::not_entered>("not_entered", "What nobody typed, or not for all."),
            field<&T::latest_stop>("latest_stop", "Rain expected less the rainfast time."),
            field<&T::time_left>("time_left", "Until then.").shown_in("min", "min")};
    }
};

Operation spray_window_operation() {
    return operation<&weather::spray_window>(
        "spray-window",
        "Go or stop by the readings just taken and the strictest of the limits you typed.",
        {8, 19});
}

}  // namespace swathbook::api
