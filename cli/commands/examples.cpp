#include "cli/commands/examples.hpp"

#include <array>

namespace swathbook::cli {
namespace {

struct Example {
    std::string_view command;
    std::string_view line;
};

// Figures, names and places are invented, of the size met in the field.
constexpr std::array examples{
    Example{
        "adjust",
        R"x(swathbook adjust --rate 10 gal/ac --target 12 gal/ac --speed 4 mph --pressure 30 psi)x"},
    Example{
        "area",
        R"x(swathbook area --geometry '{"type":"Polygon","coordinates":[[[-128.4,-38.65],[-128.398,-38.65],[-128.398,-38.649],[-128.4,-38.65]]]}' --position-error 3 m)x"},
    Example{
        "balance",
        R"x(swathbook balance --planned-area 11.3 ac --exclusions 'name=pond; area=1.2 ac' --covered-area 10.1 ac --products 'name=Demoherb 4 SL; rate=64 fl oz/ac; used=5.6 gal')x"},
    Example{
        "calibrate",
        R"x(swathbook calibrate --sprayer boomless --width 26 ft --course-length 176 ft --course-times 31.5 31.2 31.9 s --flow 2.60 gal/min)x"},
    Example{
        "calibrate",
        R"x(swathbook calibrate --sprayer boom --tips 9 --spacing 30 in --course-length 136 ft --course-times 21.2 s --catches 'amount=18.6 fl oz' --catch-covers one_tip --working)x"},
    Example{"choose-tip",
            R"x(swathbook choose-tip --rate 15 gal/ac --speed 4 mph --spacing 20 in)x"},
    Example{"course", R"x(swathbook course --width 26 ft)x"},
    Example{
        "crew",
        R"x(swathbook crew --people 'name=Ada; output=22 gal/ac' 'name=Bo; output=27 gal/ac' 'name=Cleo; output=31 gal/ac' --product-rate 2 qt/ac)x"},
    Example{
        "learners",
        R"x(swathbook learners --width 5 ft --course-length 68 ft --learners 'name=Ada; times=22 s; catches=24 fl oz; hand_answer=24 gal/ac' 'name=Bo; times=19 s; catches=21 fl oz; hand_answer=210 gal/ac')x"},
    Example{
        "leftover",
        R"x(swathbook leftover --left 6 gal --mix-per-area 18.6 gal/ac --products 'card.name=Demoherb 4 SL; rate=2 qt/ac' --ground 'name=Kettle Draw; net_area=3 ac; on_label=yes')x"},
    Example{
        "loads",
        R"x(swathbook loads --net-area 7.4 ac --mix-per-area 18.6 gal/ac --tank-usable 47 gal --products 'card.name=Demoherb 4 SL; rate=2 qt/ac')x"},
    Example{"practice", R"x(swathbook practice --seed 7 --topics calibration crew --count 2)x"},
    Example{
        "record-check",
        R"x(swathbook record-check --authorities 'Minnesota 18B.37' --date 2031-05-14 --as-of 2031-05-16 --fields customer_name product_name area_treated)x"},
    Example{
        "reentry",
        R"x(swathbook reentry --places 'name=Kettle Draw; ended=2031-05-14T11:20-05:00' --products '{"name":"Demoherb 4 SL","limits":{"reentry":{"after":"12 h","where":"page 2"}}}')x"},
    Example{"rinse",
            R"x(swathbook rinse --trapped 2 gal --rinse-volume 5 gal --rinses 3 --target 0.5 %)x"},
    Example{
        "spot",
        R"x(swathbook spot --products 'card.name=Demoherb 4 SL; rate=2 % v/v' --sprayed 21 gal --area 0.35 ac --fills 4 gal)x"},
    Example{
        "spray-window",
        R"x(swathbook spray-window --now 2031-05-14T11:20-05:00 --readings 'taken=2031-05-14T11:16-05:00; wind=7 mph; gust=10 mph; wind_from=SW; cues=none_seen' --limits 'name=Demoherb 4 SL; max_wind=10 mph; min_wind=3 mph')x"},
    Example{
        "stems",
        R"x(swathbook stems --dose 0.5 mL per cut --products '{"card":{"name":"Demoherb 4 SL","form":"liquid","ingredients":[{"name":"fictionate acid","acid_strength":"240 g a.e./L"}]},"ceiling":"0.109 lb a.e./ac","applied_this_year":"0 lb a.e./ac"}')x"},
    Example{
        "substitute",
        R"x(swathbook substitute --rate 2 qt/ac --planned '{"name":"Demoherb 3 SL","ingredients":[{"name":"fictionate acid","acid_strength":"3 lb a.e./gal"}]}' --in-hand '{"name":"Demoherb 4 SL","ingredients":[{"name":"fictionate acid","acid_strength":"4 lb a.e./gal"}]}')x"},
    Example{
        "tip-check",
        R"x(swathbook tip-check --flows 0.405 0.410 0.398 0.440 0.452 gal/min --rated-flow 0.400 gal/min)x"},
    Example{
        "water",
        R"x(swathbook water --calcium 100 ppm --magnesium 40 ppm --sodium 30 ppm --potassium 5 ppm --iron 1 ppm --tanks 25 gal)x"},
    Example{
        "wear",
        R"x(swathbook wear --new-flow 0.400 gal/min --points 'date=2031-04-01; acres_since_new=0 ac; flow=0.401 gal/min' 'date=2031-05-01; acres_since_new=300 ac; flow=0.412 gal/min' 'date=2031-05-31; acres_since_new=600 ac; flow=0.424 gal/min')x"},
    Example{"notebook", R"x(swathbook notebook new season.gpkg --author "Ada Quill")x"},
    Example{
        "notebook",
        R"x(swathbook notebook add sprayer name="Boom rig" tank_volume="47 gal" --notebook season.gpkg)x"},
    Example{
        "notebook",
        R"x(swathbook calibrate --refill 4 gal --area 0.1 ac --keep "Boom rig" --notebook season.gpkg)x"},
    Example{"notebook",
            R"x(swathbook notebook show "Boom rig" --kind calibration --notebook season.gpkg)x"},
    Example{"notebook", R"x(swathbook notebook backup season-copy.gpkg --notebook season.gpkg)x"},
    Example{"packet",
            R"x(swathbook packet data/demo --output packet.pdf --language es --paper a4)x"},
    Example{"worksheet", R"x(swathbook worksheet --output worksheet.pdf)x"},
    Example{"serve", R"x(swathbook serve --notebook season.gpkg)x"},
    Example{"serve", R"x(swathbook serve --notebook season.gpkg --port 0)x"},
    Example{"compute", R"x(echo '{"width": "26 ft"}' | swathbook compute course)x"},
    Example{"operations", R"x(swathbook operations)x"},
    Example{"operations", R"x(swathbook operations --schema calibrate)x"},
    Example{"help", R"x(swathbook help calibrate)x"},
    Example{"completion", R"x(swathbook completion bash)x"},
    Example{"man", R"x(swathbook man > swathbook.1)x"},
};

}  // namespace

std::string examples_of(std::string_view command) {
    std::string lines;
    for (const Example& example : examples) {
        if (example.command == command) {
            lines += std::string(example.line) + "\n";
        }
    }
    return lines;
}

}  // namespace swathbook::cli
