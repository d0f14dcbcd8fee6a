#include "core/job/detail/practice_topics.hpp"

#include <array>
#include <cmath>

#include <fmt/format.h>

#include "core/calibration/calibrate.hpp"
#include "core/calibration/course.hpp"
#include "core/calibration/crew.hpp"
#include "core/mix/loads.hpp"
#include "core/mix/rinse.hpp"
#include "core/mix/spot.hpp"
#include "core/mix/stems.hpp"
#include "core/mix/substitute.hpp"
#include "core/quantity/parse.hpp"
#include "core/quantity/print.hpp"
#include "core/quantity/units.hpp"

namespace swathbook::job::detail {
namespace {

using Words = PracticeWords;

/// Makes one problem: texts in one language, figures in one system of units.
class Maker {
public:
    Maker(Draws& draws, const PracticeStyle& style)
        : us_(style.units == UnitSystem::us),
          field_(style.difficulty == PracticeDifficulty::field),
          inner_(style.units, true),
          draws_(draws),
          style_(style) {}

    [[nodiscard]] bool us() const { return us_; }
    [[nodiscard]] Notes& inner() { return inner_; }
    [[nodiscard]] PracticeDraft& draft() { return draft_; }

    /// A figure in `parts` of one, stepping coarsely for plain problems and by one for the field.
    [[nodiscard]] double drawn(int low, int high, int plain_step, int parts = 1) {
        return draws_.among(low, high, field_ ? 1 : plain_step) / static_cast<double>(parts);
    }
    [[nodiscard]] int whole(int low, int high, int step = 1) {
        return draws_.among(low, high, step);
    }

    /// How finely a stopwatch is read: whole seconds, or tenths.
    [[nodiscard]] double parts() const { return field_ ? 10.0 : 1.0; }

    template <class... Texts>
    [[nodiscard]] std::string say(Words words, const Texts&... texts) const {
        return say_in(style_.language, words, texts...);
    }

    /// "26 ft", put on the list of what is given.
    std::string given(Words name, double number, const char* unit) {
        std::string text = fmt::format("{} {}", show_number(number, 6), unit);
        draft_.problem.givens.push_back({say(name), text});
        return text;
    }

    void key(double si, Kind kind, const char* unit, Words asks) {
        draft_.kind = kind;
        bare_key(number_in(si, kind, unit), unit, asks);
        constexpr double accepted = 0.005;
        draft_.problem.accept_within = accepted * draft_.problem.answer.value;
    }
    void bare_key(double number, const char* unit, Words asks) {
        draft_.problem.answer = {number, unit};
        draft_.problem.asks = say(asks);
        for (const Step& step : inner_.steps()) {
            if (step.text.starts_with("Uncertainty")) {
                continue;  // the error budget is no part of the problem
            }
            draft_.problem.working.push_back(
                {step.text, step.expression, step.result, step.source});
        }
    }
    /// A wrong way, with what it gives in the unit of the key; left out where it gives the key.
    void mistake(Words words, double wrong) {
        const double exact = draft_.problem.answer.value;
        const double apart = std::max(0.012 * exact, draft_.problem.accept_within);
        const bool counts = !draft_.kind.has_value();
        if (std::fabs(wrong - exact) > (counts ? 0.5 : apart)) {
            draft_.mistakes.push_back({say(words), wrong});
        }
    }
    void middle(Words name, double value, const char* unit, int power) {
        draft_.middles.push_back({say(name), value, unit, power});
    }

private:
    bool us_;
    bool field_;
    Notes inner_;
    Draws& draws_;
    const PracticeStyle& style_;
    PracticeDraft draft_{};
};

/// What a text of ours means; it is always readable.
template <Kind K>
Reading<K> read(const std::string& text) {
    return parse<K>(text).value_or(Reading<K>{});
}
LabelRate read_rate(const std::string& text) {
    return parse_label_rate(text).value_or(LabelRate{});
}

constexpr Words width_name{"Effective width", "Ancho efectivo"};
constexpr Words output_asks{"Spray mix per area", "Mezcla por superficie"};

Result<void> course_problem(Maker& make) {
    const bool us = make.us();
    const double wide = us ? make.drawn(18, 60, 2) : make.drawn(50, 200, 10, 100);
    const std::string width = make.given(width_name, wide, us ? "in" : "m");
    const std::string part = us ? "1/128 ac" : "10 m2";
    make.draft().problem.givens.push_back(
        {make.say({"Area of the course", "Superficie del recorrido"}), part});
    calibration::CourseRequest request;
    request.width = read<Kind::length>(width);
    request.part = read<Kind::area>(part);
    SWATHBOOK_TRY(answer, calibration::course(request, make.inner()));
    make.draft().problem.text = make.say(
        us ? Words{"One tip serves a width of {0}. How many feet long must the calibration course "
                   "be, so that each fluid ounce caught on it is one gallon per acre ({1})?",
                   "Una boquilla cubre un ancho de {0}. ¿De cuántos pies debe ser el recorrido de "
                   "calibración para que cada onza líquida recogida sea un galón por acre ({1})?"}
           : Words{"One tip serves a width of {0}. How many metres long must the calibration "
                   "course be, so that each millilitre caught on it is one litre per hectare "
                   "({1})?",
                   "Una boquilla cubre un ancho de {0}. ¿De cuántos metros debe ser el recorrido "
                   "de calibración para que cada mililitro recogido sea un litro por hectárea "
                   "({1})?"},
        width, part);
    make.key(answer.chosen->length.si(), Kind::length, us ? "ft" : "m",
             {"Length of the course", "Longitud del recorrido"});
    const double length = make.draft().problem.answer.value;
    if (us) {
        make.mistake({"The width was left in inches where it must be in feet.",
                      "El ancho quedó en pulgadas y debe estar en pies."},
                     length / 12.0);
        make.mistake({"The course of 1/8 acre was taken: there pints, not ounces, are gal/ac.",
                      "Se tomó el recorrido de 1/8 de acre: allí las pintas, no las onzas, son "
                      "gal/ac."},
                     length * 16.0);
        make.middle({"the width", "el ancho"}, wide / 12.0, "ft", -1);
    } else {
        make.mistake({"A course of 100 m2 was taken: there ten millilitres are one L/ha.",
                      "Se tomó un recorrido de 100 m2: allí diez mililitros son un L/ha."},
                     length * 10.0);
    }
    return {};
}

void calibration_mistakes(Maker& make, double caught, double seconds_long) {
    const double output = make.draft().problem.answer.value;
    if (make.us()) {
        make.mistake({"The ounces caught were read as gallons per acre; that holds on 1/128 acre "
                      "only.",
                      "Las onzas recogidas se leyeron como galones por acre; eso vale solo en "
                      "1/128 de acre."},
                     caught);
        make.mistake({"The ounces were divided by ten; that holds on 10/128 acre only.",
                      "Las onzas se dividieron por diez; eso vale solo en 10/128 de acre."},
                     caught / 10.0);
        make.mistake(
            {"The pints caught were read as gallons per acre; that holds on 1/8 acre only.",
             "Las pintas recogidas se leyeron como galones por acre; eso vale solo en 1/8 "
             "de acre."},
            caught / 16.0);
    } else {
        make.mistake({"The millilitres caught were read as litres per hectare; that holds on 10 m2 "
                      "only.",
                      "Los mililitros recogidos se leyeron como litros por hectárea; eso vale solo "
                      "en 10 m2."},
                     caught);
        make.mistake({"The millilitres were divided by ten; that holds on 100 m2 only.",
                      "Los mililitros se dividieron por diez; eso vale solo en 100 m2."},
                     caught / 10.0);
    }
    make.mistake({"The catch was taken for one of a full minute.",
                  "Lo recogido se tomó por un minuto entero."},
                 output * 60.0 / seconds_long);
}

Result<void> calibration_problem(Maker& make) {
    const bool us = make.us();
    const double wide = us ? make.drawn(18, 36, 2) : make.drawn(60, 120, 10, 10);
    const double long_course = us ? make.drawn(100, 300, 20) : make.drawn(30, 90, 10);
    const double pace = make.whole(20, 50) / 10.0 * (us ? 88.0 / 60.0 : 1.0 / 2.25);
    const double parts = make.parts();
    const double time = std::floor(long_course / pace * parts + 0.5) / parts;
    const double wanted = us ? make.whole(8, 30) : make.whole(80, 300, 10);
    const double area = wide * long_course;
    const double caught = us ? std::floor(wanted * area / square_feet_per_acre * 128.0 + 0.5)
                             : std::floor(wanted * area / 10.0 + 0.5);
    const std::string width = make.given(width_name, wide, us ? "ft" : "m");
    const std::string length = make.given({"Length of the course", "Longitud del recorrido"},
                                          long_course, us ? "ft" : "m");
    const std::string seconds_text =
        make.given({"Time for the course", "Tiempo del recorrido"}, time, "s");
    const std::string amount = make.given(
        {"Caught from all tips in that time", "Recogido de todas las boquillas en ese tiempo"},
        caught, us ? "fl oz" : "mL");
    calibration::CalibrateRequest request;
    request.sprayer = calibration::SprayerKind::boomless;
    request.method = calibration::CalibrationMethod::course_and_catch;
    request.width = read<Kind::length>(width);
    request.course_length = read<Kind::length>(length);
    request.course_times = {read<Kind::duration>(seconds_text)};
    request.catch_covers = calibration::CatchCovers::all_tips;
    calibration::Catch jug;
    jug.amount = read<Kind::volume>(amount);
    request.catches = {jug};
    SWATHBOOK_TRY(answer, calibration::calibrate(request, make.inner()));
    make.draft().problem.text = make.say(
        {"A boomless sprayer has an effective swath of {0}. It takes {2} to drive a course of {1}. "
         "Standing still at the same pressure, all its tips are caught for {2}: {3} together. What "
         "does it put out, in {4}?",
         "Un pulverizador sin botalón tiene un ancho efectivo de {0}. Tarda {2} en un recorrido de "
         "{1}. Detenido y a la misma presión se recoge de todas sus boquillas durante {2}: {3} en "
         "total. ¿Cuánto aplica, en {4}?"},
        width, length, seconds_text, amount, us ? "gal/ac" : "L/ha");
    make.key(answer.output.value.si(), Kind::mix_per_area, us ? "gal/ac" : "L/ha", output_asks);
    calibration_mistakes(make, caught, time);
    make.middle({"the area of the course", "la superficie del recorrido"},
                us ? area / square_feet_per_acre : area / 10000.0, us ? "ac" : "ha", -1);
    make.middle({"the catch", "lo recogido"}, us ? caught / 128.0 : caught / 1000.0,
                us ? "gal" : "L", 1);
    return {};
}

Result<void> refill_problem(Maker& make) {
    const bool us = make.us();
    const double plot = us ? make.drawn(15, 60, 5, 100) : make.drawn(5, 30, 5, 100);
    const double wanted = us ? make.whole(8, 30) : make.whole(80, 250, 10);
    const double put_back = std::floor(plot * wanted * 10.0 + 0.5) / 10.0;
    const std::string area =
        make.given({"Plot sprayed", "Parcela pulverizada"}, plot, us ? "ac" : "ha");
    const std::string refill = make.given(
        {"Water to refill to the mark", "Agua para volver a la marca"}, put_back, us ? "gal" : "L");
    calibration::CalibrateRequest request;
    request.method = calibration::CalibrationMethod::refill;
    request.area = read<Kind::area>(area);
    request.refill = read<Kind::volume>(refill);
    SWATHBOOK_TRY(answer, calibration::calibrate(request, make.inner()));
    make.draft().problem.text = make.say(
        {"A sprayer filled to a mark with clean water sprays a measured plot of {0}. It takes {1} "
         "to fill it to the same mark again. What did it put out, in {2}?",
         "Un pulverizador lleno hasta una marca con agua limpia pulveriza una parcela medida de "
         "{0}. Hacen falta {1} para volver a la misma marca. ¿Cuánto aplicó, en {2}?"},
        area, refill, us ? "gal/ac" : "L/ha");
    make.key(answer.output.value.si(), Kind::mix_per_area, us ? "gal/ac" : "L/ha", output_asks);
    make.mistake({"The refill was multiplied by the area; it must be divided by it.",
                  "Lo rellenado se multiplicó por la superficie; hay que dividirlo por ella."},
                 put_back * plot);
    make.mistake({"The refill was multiplied by ten; that holds on a tenth of an acre or hectare "
                  "only.",
                  "Lo rellenado se multiplicó por diez; eso vale solo en un décimo de acre o de "
                  "hectárea."},
                 put_back * 10.0);
    return {};
}

Result<void> crew_problem(Maker& make) {
    const bool us = make.us();
    const int scale = us ? 1 : 10;
    const char* unit = us ? "gal/ac" : "L/ha";
    std::array<double, 3> outputs{};
    outputs[0] = make.whole(14, 24) * scale;
    outputs[1] = outputs[0] + make.whole(5, 10) * scale;
    outputs[2] = outputs[1] + make.whole(6, 16) * scale;
    calibration::CrewRequest request;
    request.sharing = calibration::CrewSharing::equal_flow;
    std::array<std::string, 3> texts;
    for (std::size_t i = 0; i < outputs.size(); ++i) {
        const std::string who = fmt::format("{} {}", make.say({"Person", "Persona"}), i + 1);
        texts[i] = fmt::format("{} {}", show_number(outputs[i]), unit);
        make.draft().problem.givens.push_back({who, texts[i]});
        calibration::CrewPerson person;
        person.name = who;
        person.output = read<Kind::mix_per_area>(texts[i]);
        request.people.push_back(person);
    }
    SWATHBOOK_TRY(answer, calibration::crew(request, make.inner()));
    make.draft().problem.text = make.say(
        {"Three people spray from one shared tank, each with the same flow for the same time. "
         "Walking their own pace they put out {0}, {1} and {2}. For which rate, in {3}, must the "
         "shared tank be mixed?",
         "Tres personas pulverizan de un mismo tanque, con igual caudal y durante el mismo tiempo. "
         "A su propio paso aplican {0}, {1} y {2}. ¿Para qué dosis de mezcla, en {3}, hay que "
         "preparar el tanque común?"},
        texts[0], texts[1], texts[2], unit);
    make.key(answer.crew_rate.si(), Kind::mix_per_area, unit,
             {"Rate of the crew", "Aplicación del grupo"});
    make.mistake({"The plain mean was taken; whoever walks slowly covers less ground, so the mean "
                  "is n over the sum of the inverses.",
                  "Se tomó el promedio simple; quien camina despacio cubre menos terreno, así que "
                  "el promedio es n entre la suma de los inversos."},
                 (outputs[0] + outputs[1] + outputs[2]) / 3.0);
    make.mistake({"The median was taken.", "Se tomó la mediana."}, outputs[1]);
    return {};
}

Result<void> loads_problem(Maker& make) {
    const bool us = make.us();
    const char* product_unit = us ? "fl oz" : "L";
    const double ground = us ? make.drawn(40, 120, 5, 10) : make.drawn(20, 60, 5, 10);
    const double mix = us ? make.whole(10, 25) : make.whole(100, 250, 10);
    const double tank = us ? make.whole(20, 35, 5) : make.whole(100, 180, 20);
    const double dose = us ? make.whole(16, 64, 4) : make.whole(10, 40, 5) / 10.0;
    const std::string area = make.given({"Ground to spray", "Terreno"}, ground, us ? "ac" : "ha");
    const std::string output = make.given({"Output of the sprayer", "Aplicación del pulverizador"},
                                          mix, us ? "gal/ac" : "L/ha");
    const std::string usable =
        make.given({"Usable tank", "Tanque utilizable"}, tank, us ? "gal" : "L");
    const std::string rate =
        make.given({"Rate of the product", "Dosis del producto"}, dose, us ? "fl oz/ac" : "L/ha");
    mix::LoadsRequest request;
    request.net_area = read<Kind::net_area>(area);
    request.mix_per_area = read<Kind::mix_per_area>(output);
    request.tank_usable = read<Kind::volume>(usable);
    mix::TankProduct product;
    product.card.name = make.say({"product", "producto"});
    product.rate = read_rate(rate);
    request.products = {product};
    SWATHBOOK_TRY(answer, mix::loads(request, make.inner()));
    make.draft().problem.text = make.say(
        {"{0} are to be sprayed at {1} from a tank of {2} usable, in equal loads, as few as "
         "possible. The label in hand gives {3} of a liquid product. How many {4} of product go "
         "into each load?",
         "Hay que pulverizar {0} a {1} con un tanque utilizable de {2}, en cargas iguales, las "
         "menos posibles. La etiqueta en mano da {3} de un producto líquido. ¿Cuántos {4} de "
         "producto lleva cada carga?"},
        area, output, usable, rate, product_unit);
    make.key(answer.loads.front().products.front().amount.volume.value_or(Volume{}).si(),
             Kind::volume, product_unit, {"Product in each load", "Producto en cada carga"});
    make.mistake({"Product for a full tank was put in each load, though equal loads are not full.",
                  "Se puso producto para un tanque lleno en cada carga, aunque las cargas iguales "
                  "no lo llenan."},
                 dose * tank / mix);
    make.mistake(
        {"The product of the whole job was taken.", "Se tomó el producto de todo el trabajo."},
        dose * ground);
    make.middle({"the acres of one load", "la superficie de una carga"}, ground / answer.load_count,
                us ? "ac" : "ha", 1);
    return {};
}

Result<void> percent_problem(Maker& make) {
    const bool us = make.us();
    const char* unit = us ? "qt/ac" : "L/ha";
    const double volume = us ? make.whole(10, 30) : make.whole(40, 120, 5);
    const double percent = make.whole(2, 6) / 2.0;
    const double ground = us ? make.drawn(20, 60, 5, 100) : make.drawn(10, 40, 5, 100);
    const std::string sprayed =
        make.given({"Mix sprayed", "Mezcla pulverizada"}, volume, us ? "gal" : "L");
    const std::string share =
        make.given({"Product in the mix", "Producto en la mezcla"}, percent, "% v/v");
    const std::string area =
        make.given({"Ground wetted", "Terreno mojado"}, ground, us ? "ac" : "ha");
    mix::SpotRequest request;
    mix::TankProduct product;
    product.card.name = make.say({"product", "producto"});
    product.rate = read_rate(share);
    request.products = {product};
    request.sprayed = read<Kind::volume>(sprayed);
    request.area = read<Kind::net_area>(area);
    SWATHBOOK_TRY(answer, mix::spot(request, make.inner()));
    make.draft().problem.text = make.say(
        {"{0} of a mix with {1} of a product were put on {2} of wetted ground. How much of the "
         "product is that per area, in {3}?",
         "Se aplicaron {0} de una mezcla con {1} de un producto sobre {2} de terreno mojado. "
         "¿Cuánto producto es por superficie, en {3}?"},
        sprayed, share, area, unit);
    const auto per_area = answer.products.front().volume_per_area.value_or(ProductVolumePerArea{});
    make.key(per_area.si(), Kind::product_volume_per_area, unit,
             {"Product per area", "Producto por superficie"});
    const double exact = make.draft().problem.answer.value;
    make.mistake({"The area was left out: that is the product of the whole job.",
                  "Se olvidó la superficie: eso es el producto de todo el trabajo."},
                 exact * ground);
    make.mistake(
        {"The percent was not divided by a hundred.", "El porcentaje no se dividió por cien."},
        exact * 100.0);
    if (us) {
        make.mistake({"Gallons were not turned into quarts (four to one).",
                      "Los galones no se pasaron a cuartos (cuatro por galón)."},
                     exact / 4.0);
    }
    make.middle({"the mix per area", "la mezcla por superficie"}, volume / ground,
                us ? "gal/ac" : "L/ha", 1);
    return {};
}

Result<void> stems_problem(Maker& make) {
    const bool us = make.us();
    const double drop = make.whole(5, 20) / 10.0;
    const double strength = make.whole(180, 480, 20);
    const double most = make.whole(10, 50) / 100.0;
    const std::string dose = make.given({"Liquid in one cut", "Líquido en cada corte"}, drop, "mL");
    const std::string strong =
        make.given({"Strength, undiluted", "Concentración, sin diluir"}, strength, "g a.e./L");
    const std::string ceiling = make.given({"Most per area", "Máximo por superficie"}, most,
                                           us ? "lb a.e./ac" : "kg a.e./ha");
    mix::StemsRequest request;
    request.dose = read<Kind::volume_each>(dose + " per cut");
    mix::StemProduct product;
    product.card.name = make.say({"product", "producto"});
    mix::Ingredient acid;
    acid.name = "acid";
    acid.acid_strength = read<Kind::acid_strength>(strong);
    product.card.ingredients = {acid};
    product.ceiling = read_rate(ceiling);
    product.applied_this_year = read_rate(us ? "0 lb a.e./ac" : "0 kg a.e./ha");
    request.products = {product};
    SWATHBOOK_TRY(answer, mix::stems(request, make.inner()));
    const int cuts = (us ? answer.cuts_per_acre : answer.cuts_per_hectare).value_or(0);
    make.draft().problem.text = make.say(
        {"Each cut in a stem gets {0} of an undiluted product of {1}. The label in hand allows at "
         "most {2} and nothing was applied before this year. How many whole cuts are allowed on "
         "one {3}?",
         "Cada corte en un tallo recibe {0} de un producto sin diluir de {1}. La etiqueta en mano "
         "permite como máximo {2} y este año no se aplicó nada antes. ¿Cuántos cortes enteros se "
         "permiten por {3}?"},
        dose, strong, ceiling, make.say(us ? Words{"acre", "acre"} : Words{"hectare", "hectárea"}));
    make.bare_key(cuts, us ? "cuts/ac" : "cuts/ha", {"Whole cuts", "Cortes enteros"});
    make.mistake({"It was rounded up: the last cut goes over the most that is allowed.",
                  "Se redondeó hacia arriba: el último corte pasa del máximo permitido."},
                 cuts + 1);
    const double grams_in_cut = drop / 1000.0 * strength;
    if (us) {
        make.mistake({"A pound was taken for a kilogram (it is 453.6 g).",
                      "Se tomó la libra por un kilogramo (son 453.6 g)."},
                     std::floor(most * 1000.0 / grams_in_cut));
    }
    make.mistake(
        {"Millilitres were not turned into litres.", "Los mililitros no se pasaron a litros."},
        cuts / 1000.0);
    make.middle({"the dose of a cut", "la dosis de un corte"}, grams_in_cut, "g", -1);
    if (us) {
        make.middle({"the ceiling", "el máximo"}, most * 453.59237, "g", 1);
    }
    return {};
}

Result<void> rinse_problem(Maker& make) {
    const bool us = make.us();
    const double stays = us ? make.drawn(10, 40, 5, 10) : make.drawn(40, 150, 10, 10);
    const double water = us ? make.whole(3, 10) : make.whole(10, 40, 5);
    const int times = make.whole(2, 4);
    const std::string trapped =
        make.given({"Trapped in the sprayer", "Retenido en el equipo"}, stays, us ? "gal" : "L");
    const std::string each =
        make.given({"Water of one rinse", "Agua de cada enjuague"}, water, us ? "gal" : "L");
    const std::string count = fmt::format("{}", times);
    make.draft().problem.givens.push_back({make.say({"Rinses", "Enjuagues"}), count});
    mix::RinseRequest request;
    request.trapped = read<Kind::volume>(trapped);
    request.rinse_volume = read<Kind::volume>(each);
    request.rinses = times;
    SWATHBOOK_TRY(answer, mix::rinse(request, make.inner()));
    make.draft().problem.text = make.say(
        {"{0} of the old mix stay trapped in a sprayer that is sprayed empty. It is rinsed {2} "
         "times, each time with {1} of clean water and sprayed empty again. How strong is what "
         "stays, in percent of the old mix?",
         "En un pulverizador vaciado quedan retenidos {0} de la mezcla anterior. Se enjuaga {2} "
         "veces, cada vez con {1} de agua limpia, y se vuelve a vaciar. ¿Qué concentración tiene "
         "lo que queda, en por ciento de la mezcla anterior?"},
        trapped, each, count);
    make.key(answer.residue.value_or(Fraction{}).si(), Kind::fraction, "%",
             {"Left of the old strength", "Resto de la concentración anterior"});
    make.mistake({"All the water was taken as one big rinse.",
                  "Toda el agua se tomó como un solo enjuague."},
                 100.0 * stays / (stays + times * water));
    make.mistake({"Only one of the rinses was counted.", "Se contó un solo enjuague."},
                 100.0 * stays / (stays + water));
    double over_water = 100.0;
    for (int i = 0; i < times; ++i) {
        over_water *= stays / water;
    }
    make.mistake({"What is trapped was divided by the water alone, not by both together.",
                  "Lo retenido se dividió solo por el agua, no por ambos juntos."},
                 over_water);
    make.middle({"the share left by one rinse", "lo que deja un enjuague"},
                100.0 * stays / (stays + water), "%", times);
    return {};
}

Result<void> substitute_problem(Maker& make) {
    const bool us = make.us();
    const char* unit = us ? "fl oz/ac" : "L/ha";
    const double old_strength = us ? make.whole(4, 7) / 2.0 : make.whole(240, 360, 30);
    const double new_strength =
        us ? old_strength + make.whole(1, 4) / 2.0 : old_strength + make.whole(60, 240, 30);
    const double dose = us ? make.whole(2, 6) / 2.0 : make.whole(10, 40, 5) / 10.0;
    const char* strength_unit = us ? "lb a.e./gal" : "g a.e./L";
    const std::string rate =
        make.given({"Planned rate", "Dosis prevista"}, dose, us ? "qt/ac" : "L/ha");
    const std::string planned = make.given({"Strength planned with", "Concentración prevista"},
                                           old_strength, strength_unit);
    const std::string in_hand =
        make.given({"Strength in hand", "Concentración disponible"}, new_strength, strength_unit);
    const auto card = [&](const std::string& strength) {
        mix::ProductCard made;
        made.name = make.say({"product", "producto"}) + " " + strength;
        mix::Ingredient acid;
        acid.name = "acid";
        acid.acid_strength = read<Kind::acid_strength>(strength);
        made.ingredients = {acid};
        return made;
    };
    mix::SubstituteRequest request;
    request.planned = card(planned);
    request.in_hand = card(in_hand);
    request.rate = read_rate(rate);
    SWATHBOOK_TRY(answer, mix::substitute(request, make.inner()));
    make.draft().problem.text = make.say(
        {"A plan asks for {0} of a product of {1}. The store has the same acid at {2}. How much of "
         "that gives the same dose, in {3}? (Then check its own label.)",
         "Un plan pide {0} de un producto de {1}. En el depósito hay el mismo ácido a {2}. "
         "¿Cuánto de ese da la misma dosis, en {3}? (Luego revise su propia etiqueta.)"},
        rate, planned, in_hand, unit);
    make.key(answer.rate.si, kind_of(answer.rate.basis), unit,
             {"Rate of the product in hand", "Dosis del producto disponible"});
    const double same = us ? dose * 32.0 : dose;
    make.mistake({"The strengths were put the wrong way round: the stronger product needs less.",
                  "Las concentraciones se pusieron al revés: el producto más fuerte necesita "
                  "menos."},
                 same * new_strength / old_strength);
    make.mistake({"The planned rate was kept: that overdoses the stronger product.",
                  "Se mantuvo la dosis prevista: con el producto más fuerte es demasiado."},
                 same);
    make.middle({"the dose", "la dosis"},
                us ? dose / 4.0 * old_strength : dose * old_strength / 1000.0,
                us ? "lb a.e./ac" : "kg a.e./ha", 1);
    return {};
}

Result<void> fill(PracticeTopic topic, Maker& make) {
    switch (topic) {
        case PracticeTopic::course: return course_problem(make);
        case PracticeTopic::calibration: return calibration_problem(make);
        case PracticeTopic::refill: return refill_problem(make);
        case PracticeTopic::crew: return crew_problem(make);
        case PracticeTopic::loads: return loads_problem(make);
        case PracticeTopic::percent_solution: return percent_problem(make);
        case PracticeTopic::stems: return stems_problem(make);
        case PracticeTopic::rinse: return rinse_problem(make);
        case PracticeTopic::substitute: return substitute_problem(make);
    }
    return fail(ErrorCode::invalid_input, "topics", "There is no such topic.");
}

}  // namespace

Result<PracticeDraft> make_problem(PracticeTopic topic, Draws& draws, const PracticeStyle& style) {
    Maker make(draws, style);
    SWATHBOOK_CHECK(fill(topic, make));
    PracticeDraft draft = std::move(make.draft());
    draft.problem.topic = topic;
    if (!draft.mistakes.empty()) {
        draft.problem.common_mistake = draft.mistakes.front();
    }
    return draft;
}

}  // namespace swathbook::job::detail
