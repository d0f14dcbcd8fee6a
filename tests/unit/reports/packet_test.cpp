#include "reports/packet/packet.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "api/json/json.hpp"
#include "reports/pdf/render.hpp"
#include "tests/unit/reports/pdf_probe.hpp"

/// The demo scenario printed and read back with poppler. Figures are those of the stories; what
/// they must be is judged in tests/cases/stories.
namespace swathbook::reports {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

std::string text_of_file(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

struct DemoRequest {
    const char* file;
    const char* operation;
};

constexpr DemoRequest demo_requests[] = {{"01-calibrate-boom-rig", "calibrate"},
                                         {"02-calibrate-utv-boomless", "calibrate"},
                                         {"03-tip-check-boom-rig", "tip-check"},
                                         {"04-crew-five-backpacks", "crew"},
                                         {"05-area-heron-flat", "area"},
                                         {"06-area-kettle-draw", "area"},
                                         {"07-area-spur-ridge", "area"},
                                         {"08-loads-heron-flat", "loads"},
                                         {"09-record-check-heron-flat", "record-check"}};

PacketInput demo_packet(UnitSystem units = UnitSystem::us) {
    const auto story = api::parse_json(text_of_file("data/demo/packet.json")).value();
    const auto word = [&](const char* key) { return story["job"][key].get<std::string>(); };
    PacketInput packet;
    packet.units = units;
    packet.job = {word("name"),        word("place"),         word("customer"), word("target"),
                  word("planned_for"), word("operator_name"), word("licence"),  word("supervised")};
    packet.printed_at = "2031-05-13T18:00:00Z";
    packet.notebook = "demo-7F3A";
    packet.model_version = "Swathbook 0.1.0";
    for (const auto& [field, value] : story["record_values"].items()) {
        packet.record_values.push_back({field, value.get<std::string>()});
    }
    for (const DemoRequest& request : demo_requests) {
        const std::string path = std::string("data/demo/") + request.file + ".json";
        const Result<void> added =
            add_to_packet(packet, story["names"][request.file].get<std::string>(),
                          request.operation, text_of_file(path));
        EXPECT_TRUE(added.has_value()) << request.file << ": " << (added ? "" : added.error().field)
                                       << ": " << (added ? "" : added.error().detail);
    }
    return packet;
}

probe::Pdf printed(const PacketInput& packet, const std::string& name) {
    const Result<std::string> bytes = packet_pdf(packet);
    EXPECT_TRUE(bytes.has_value()) << (bytes ? "" : bytes.error().detail);
    return bytes ? probe::look_at(*bytes, name) : probe::Pdf{};
}

TEST(Packet, the_demo_prints_on_both_papers_in_both_languages_with_nothing_clipped) {
    for (const PaperSize paper : {PaperSize::letter, PaperSize::a4}) {
        for (const Language language : {Language::english, Language::spanish}) {
            for (const UnitSystem units : {UnitSystem::us, UnitSystem::metric}) {
                PacketInput packet = demo_packet(units);
                packet.paper = paper;
                packet.language = language;
                const std::string name = std::string("packet_") +
                                         (language == Language::english ? "en" : "es") +
                                         (units == UnitSystem::us ? "_us" : "_metric") +
                                         (paper == PaperSize::letter ? "_letter" : "_a4");
                const probe::Pdf pdf = printed(packet, name);
                EXPECT_THAT(probe::words_outside(pdf, 45), IsEmpty()) << name;
                EXPECT_THAT(probe::words_overlapping(pdf), IsEmpty()) << name;
                for (const probe::Font& font : pdf.fonts) {
                    EXPECT_TRUE(font.embedded) << font.name;
                    EXPECT_THAT(font.name, HasSubstr("Inter"))
                        << "a letter is missing from the typeface";
                }
            }
        }
    }
}

TEST(Packet, the_figures_of_the_stories_stand_on_it) {
    const std::string words = probe::flowed(printed(demo_packet(), "packet_figures"));
    // Stories 1, 2, 5 and 15 (docs/stories.md).
    for (const char* expected :
         {"12.99 gal/ac", "3.81 mph", "45.88 gal", "30.71 gal/ac", "+13.0 %", "0.452", "-8.8 %"}) {
        EXPECT_THAT(words, HasSubstr(expected));
    }
}

TEST(Packet, label_limits_stand_as_they_were_typed_whatever_the_units) {
    PacketInput packet = demo_packet(UnitSystem::metric);
    packet.language = Language::spanish;
    const std::string words = probe::flowed(printed(packet, "packet_typed"));
    for (const char* typed : {"85 °F (29.44 °C)", "10 mph (", "12 h", "2.5 qt/ac",
                              "Long-sleeved shirt", "Demoherb 4 SL"}) {
        EXPECT_THAT(words, HasSubstr(typed));
    }
}

TEST(Packet, what_was_not_typed_never_passes_for_no_limit) {
    const std::string words = probe::flowed(printed(demo_packet(), "packet_not_entered"));
    EXPECT_THAT(words, HasSubstr("Not entered, which is not the same as no limit"));
    EXPECT_THAT(words, HasSubstr("Dairy grazing after"));
}

TEST(Packet, a_card_shows_the_amounts_and_marks_in_both_languages) {
    Document document = packet_document(demo_packet()).value();
    std::erase_if(document.sheets,
                  [](const Sheet& sheet) { return sheet.title.find("Mixing card") != 0; });
    ASSERT_EQ(document.sheets.size(), 2U) << "the load that takes rinse water stands alone";
    const std::string words = probe::flowed(probe::look_at(pdf::render(document).value(), "card"));
    // 7.4 ac at 2 qt/ac in three loads: 157.87 fl oz each = 1 gal 29.9 fl oz (unit arithmetic).
    for (const char* expected :
         {"1 gal 29.9 fl oz", "2 × full 64 fl oz", "2 × lleno 64 fl oz", "30 fl oz mark",
          "62 oz wt", "Ponga los líquidos solubles.", "Tarjeta de mezcla", "45.88 gal",
          // 45.88 gal less 157.87 and 14.68 fl oz; a 2.5 gal jug rinsed 3 times, a quarter full
          "of 44.53 gal of water, 1.875 gal is the rinse water of the jugs emptied (1): 42.66 gal "
          "to run in"}) {
        EXPECT_THAT(words, HasSubstr(expected));
    }
}

TEST(Packet, a_broken_label_limit_is_shown_on_the_cover_and_on_the_card) {
    PacketInput packet = demo_packet();
    packet.loads.clear();
    std::string request = text_of_file("data/demo/08-loads-heron-flat.json");
    const std::string asked = "\"rate\": \"2 qt/ac\"";
    request.replace(request.find(asked), asked.size(), "\"rate\": \"3 qt/ac\"");
    ASSERT_TRUE(add_to_packet(packet, "Too much", "loads", request).has_value());
    const Document document = packet_document(packet).value();
    const auto has_stop = [](const Sheet& sheet) {
        return std::any_of(sheet.blocks.begin(), sheet.blocks.end(), [](const Block& block) {
            const Remark* remark = std::get_if<Remark>(&block.content);
            return remark != nullptr && remark->severity == Severity::stop;
        });
    };
    EXPECT_TRUE(has_stop(document.sheets[0])) << "cover";
    EXPECT_TRUE(has_stop(document.sheets[2])) << document.sheets[2].title;
}

TEST(Packet, a_crew_that_cannot_share_one_recipe_is_said_on_the_cover) {
    const probe::Pdf pdf = printed(demo_packet(), "packet_cover");
    EXPECT_THAT(probe::words_of_page(pdf, 1), HasSubstr("Stop: Five backpacks"));
    EXPECT_THAT(probe::words_of_page(pdf, 1), HasSubstr("One recipe cannot keep everyone within"));
}

TEST(Packet, an_empty_packet_is_a_blank_cover_and_job_sheet) {
    PacketInput packet;
    packet.printed_at = "2031-05-13T18:00:00Z";
    const probe::Pdf pdf = printed(packet, "packet_empty");
    EXPECT_GE(pdf.pages.size(), 2U);
    EXPECT_THAT(probe::flowed(pdf), HasSubstr("The label is the law"));
}

TEST(Packet, a_date_that_is_none_and_an_operation_without_a_sheet_are_refused) {
    PacketInput packet;
    packet.printed_at = "yesterday";
    const Result<std::string> bytes = packet_pdf(packet);
    ASSERT_FALSE(bytes.has_value());
    EXPECT_EQ(bytes.error().code, ErrorCode::invalid_input);
    EXPECT_EQ(bytes.error().field, "printed_at");
    const Result<void> added = add_to_packet(packet, "x", "course", "{}");
    ASSERT_FALSE(added.has_value());
    EXPECT_EQ(added.error().code, ErrorCode::unsupported);
    const Result<void> refused = add_to_packet(
        packet, "x", "calibrate", R"({"width": "0 ft", "speed": "4 mph", "flow": "1 gal/min"})");
    ASSERT_FALSE(refused.has_value());
    EXPECT_EQ(refused.error().field, "width");
    EXPECT_TRUE(packet.calibrations.empty());
}

TEST(Packet, cautions_stand_where_the_act_happens) {
    const PacketInput packet = demo_packet();
    const Document document = packet_document(packet).value();
    const auto words_of_sheet = [](const Document& whole, const std::string& title) {
        Document one = whole;
        std::erase_if(one.sheets, [&](const Sheet& sheet) {
            return sheet.title.find(title) == std::string::npos;
        });
        EXPECT_FALSE(one.sheets.empty()) << title;
        return probe::flowed(probe::look_at(pdf::render(one).value(), "one_sheet"));
    };
    EXPECT_THAT(words_of_sheet(document, "Calibration:"), HasSubstr("Clean water only"));
    const std::string card = words_of_sheet(document, "Mixing card");
    EXPECT_THAT(card, HasSubstr("Mix away from wells"));
    EXPECT_THAT(card, HasSubstr("Rinse each emptied jug three times"));
    const std::string job = words_of_sheet(document, "Job sheet");
    EXPECT_THAT(job, HasSubstr("inversion"));
    EXPECT_THAT(job, HasSubstr("Heat"));
    EXPECT_THAT(job, HasSubstr("Keep people and animals out until"));
    EXPECT_THAT(job, HasSubstr("The label is the law"));
}

}  // namespace
}  // namespace swathbook::reports
