#include "reports/phrases.hpp"

#include <gtest/gtest.h>

#include <set>

#include "core/mix/order.hpp"

namespace swathbook::reports {
namespace {

std::set<std::string> places_in(std::string_view text) {
    std::set<std::string> places;
    for (std::size_t at = 0; at + 2 < text.size(); ++at) {
        if (text[at] == '{' && text[at + 2] == '}') {
            places.insert(std::string(text.substr(at, 3)));
        }
    }
    return places;
}

TEST(Phrases, none_is_empty_in_either_language) {
    for (int i = 0; i < phrase_count; ++i) {
        const auto phrase = static_cast<Phrase>(i);
        EXPECT_FALSE(say(Language::english, phrase).empty()) << key_of(phrase);
        EXPECT_FALSE(say(Language::spanish, phrase).empty()) << key_of(phrase);
    }
}

TEST(Phrases, keys_are_unique) {
    std::set<std::string_view> keys;
    for (int i = 0; i < phrase_count; ++i) {
        EXPECT_TRUE(keys.insert(key_of(static_cast<Phrase>(i))).second);
    }
}

TEST(Phrases, both_languages_take_the_same_values) {
    for (int i = 0; i < phrase_count; ++i) {
        const auto phrase = static_cast<Phrase>(i);
        EXPECT_EQ(places_in(say(Language::english, phrase)),
                  places_in(say(Language::spanish, phrase)))
            << key_of(phrase);
    }
}

TEST(Phrases, nothing_is_left_in_english_by_mistake) {
    // The same word in both languages, or a language named in itself.
    const std::set<std::string_view> the_same = {"english_word", "spanish_word", "card_measure",
                                                 "job_temperature"};
    for (int i = 0; i < phrase_count; ++i) {
        const auto phrase = static_cast<Phrase>(i);
        if (!the_same.contains(key_of(phrase))) {
            EXPECT_NE(say(Language::english, phrase), say(Language::spanish, phrase))
                << key_of(phrase);
        }
    }
}

TEST(Phrases, spanish_questions_and_exclamations_open_with_their_sign) {
    for (int i = 0; i < phrase_count; ++i) {
        const std::string_view spanish = say(Language::spanish, static_cast<Phrase>(i));
        if (spanish.find('?') != std::string_view::npos) {
            EXPECT_NE(spanish.find("¿"), std::string_view::npos) << spanish;
        }
        if (spanish.find('!') != std::string_view::npos) {
            EXPECT_NE(spanish.find("¡"), std::string_view::npos) << spanish;
        }
    }
}

TEST(Phrases, every_step_of_every_published_mixing_order_has_its_spanish) {
    for (const mix::ConventionStep& step : mix::convention_steps()) {
        EXPECT_NE(in_language(Language::spanish, step.text), step.text) << step.text;
        EXPECT_EQ(in_language(Language::english, step.text), step.text);
    }
}

TEST(Phrases, values_are_put_in_their_places) {
    EXPECT_EQ(say(Language::english, Phrase::printed_on, {"2031-04-05"}), "Printed 2031-04-05");
    EXPECT_EQ(say(Language::spanish, Phrase::printed_on, {"2031-04-05"}), "Impreso 2031-04-05");
    EXPECT_EQ(say(Language::spanish, Phrase::printed_on, {}), "Impreso {0}");
}

}  // namespace
}  // namespace swathbook::reports
