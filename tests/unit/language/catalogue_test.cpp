#include "core/language/catalogue.hpp"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

namespace swathbook::language {
namespace {

Catalogue of(const std::string& text) {
    auto read = Catalogue::read(text);
    EXPECT_TRUE(read) << (read ? "" : read.error().detail);
    return read ? std::move(*read) : Catalogue();
}

const std::string sample =
    "# remarks are passed over\n"
    " and \t y \n"
    " or \t o \n"
    "The unit is missing.\tFalta la unidad.\n"
    "Width\tel ancho\n"
    "Speed\tla velocidad\n"
    "{w} is {}. It must be above 0.\tEl dato de {0} es {1}. Tiene que ser mayor de 0.\n"
    "{} of \"{}\" at {n}\tcon {2}: {0} en «{1}»\n"
    "Leave out {w}.\tDeje fuera {0}.\n"
    "{l} hold the same.\t{0} llevan lo mismo.\n"
    "{n} days\t{0} días\n"
    "Wait {w} before mowing again.\tEspere {0} antes de volver a cortar.\n"
    "Check it.\tRevíselo.\n";

TEST(Catalogue, a_sentence_without_places_is_looked_up) {
    const Said said = of(sample).say("The unit is missing.");
    EXPECT_EQ(said.text, "Falta la unidad.");
    EXPECT_TRUE(said.is_complete);
}

TEST(Catalogue, values_move_to_where_the_other_language_has_them) {
    EXPECT_EQ(of(sample).say("12.5 gal of \"Lower paddock\" at 40 psi").text,
              "con 40 psi: 12.5 gal en «Lower paddock»");
}

TEST(Catalogue, a_sentence_it_does_not_know_comes_back_whole) {
    const Said said = of(sample).say("Nobody wrote this down. Not this either.");
    EXPECT_EQ(said.text, "Nobody wrote this down. Not this either.");
    EXPECT_FALSE(said.is_complete);
}

TEST(Catalogue, what_a_person_typed_is_never_translated) {
    // The product is called like a word of the catalogue, and holds the words of the template.
    EXPECT_EQ(of(sample).say("Width of \"Speed of \"x\" at 3\" at 40 psi").text,
              "con 40 psi: Width en «Speed of \"x\" at 3»");
    EXPECT_EQ(of(sample).say("Width is Width. It must be above 0.").text,
              "El dato de el ancho es Width. Tiene que ser mayor de 0.");
}

TEST(Catalogue, a_value_that_holds_the_template_is_told_apart_by_what_its_place_may_hold) {
    EXPECT_EQ(of(sample).say("Width is 5 is 6. It must be above 0.").text,
              "El dato de el ancho es 5 is 6. Tiene que ser mayor de 0.");
    EXPECT_EQ(of(sample).say("a at b of \"c\" at 4\" at 7 psi").text,
              "con 7 psi: a at b en «c\" at 4»");
}

TEST(Catalogue, words_are_said_in_lists_too) {
    EXPECT_EQ(of(sample).say("Leave out Width, Speed and 3 days.").text,
              "Deje fuera el ancho, la velocidad y 3 días.");
    EXPECT_EQ(of(sample).say("Tom, Ann and Width hold the same.").text,
              "Tom, Ann y Width llevan lo mismo.");
}

TEST(Catalogue, amounts_keep_their_digits_and_units) {
    EXPECT_EQ(of(sample).say("Wait 2.5 h before mowing again.").text,
              "Espere 2.5 h antes de volver a cortar.");
    EXPECT_EQ(of(sample).say("Wait 3 days before mowing again.").text,
              "Espere 3 días antes de volver a cortar.");
}

TEST(Catalogue, a_word_it_does_not_know_stays_and_is_told) {
    const Said said = of(sample).say("Wait a while before mowing again.");
    EXPECT_EQ(said.text, "Espere a while antes de volver a cortar.");
    EXPECT_FALSE(said.is_complete);
}

TEST(Catalogue, sentences_one_after_the_other_are_each_said) {
    const Said said = of(sample).say("The unit is missing. Leave out Width. Check it.");
    EXPECT_EQ(said.text, "Falta la unidad. Deje fuera el ancho. Revíselo.");
    EXPECT_TRUE(said.is_complete);
}

TEST(Catalogue, a_formula_needs_no_words) {
    EXPECT_TRUE(of(sample).say("495 x 2.6 gal/min / (3.8 mph x 26 ft)").is_complete);
    EXPECT_TRUE(of(sample).say("").is_complete);
    EXPECT_FALSE(of(sample).say("176 ft over 31.5 s").is_complete);
}

TEST(Catalogue, a_line_that_cannot_be_used_is_refused_by_number) {
    for (const std::string bad :
         {"no tab", "two\ttabs\there", "{} lost\tperdido", "none\tuno {0}", "{x} place\t{0} lugar",
          "{} one\t{0} {1}", "\tnothing before", "nothing behind\t"}) {
        const auto read = Catalogue::read("Good.\tBien.\n" + bad + "\n");
        ASSERT_FALSE(read) << bad;
        EXPECT_EQ(read.error().code, ErrorCode::corrupt_data);
        EXPECT_NE(read.error().detail.find("ine 2"), std::string::npos) << read.error().detail;
    }
}

TEST(Catalogue, nothing_in_it_says_nothing) {
    EXPECT_EQ(Catalogue().say("The unit is missing.").text, "The unit is missing.");
    EXPECT_EQ(of("").say("The unit is missing.").text, "The unit is missing.");
}

TEST(Catalogue, hostile_text_ends_soon) {
    std::string text;
    for (int i = 0; i < 4000; ++i) {
        text += "is. of \" at ";
    }
    EXPECT_EQ(of(sample).say(text).text, text);
    EXPECT_FALSE(of(sample).say(text.substr(0, 3000)).text.empty());
}

RC_GTEST_PROP(Catalogue, values_that_hold_no_literal_come_back_as_they_went_in, ()) {
    static const Catalogue catalogue = of(sample);
    const auto letters = rc::gen::container<std::string>(rc::gen::elementOf(
        std::string("abcdefghijklmnopqrstuvwxyzABCDEFGH0123456789.,-+{}\\%\n\t ")));
    const std::string first = "x" + *letters;
    const std::string second = "y" + *letters;
    RC_PRE(first.find(" of \"") == std::string::npos);
    const std::string english = first + " of \"" + second + "\" at 12 gal/ac";
    RC_ASSERT(catalogue.say(english).text == "con 12 gal/ac: " + first + " en «" + second + "»");
}

RC_GTEST_PROP(Catalogue, any_bytes_are_answered_and_none_are_lost_where_nothing_matches,
              (const std::string& text)) {
    static const Catalogue catalogue = of(sample);
    const Said said = catalogue.say(text);
    if (!said.is_complete && said.text != text) {
        RC_ASSERT(!said.text.empty());
    }
    RC_ASSERT(said.text.empty() == text.empty());
}

}  // namespace
}  // namespace swathbook::language
