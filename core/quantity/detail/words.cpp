#include "core/quantity/detail/words.hpp"

#include <algorithm>
#include <array>

namespace swathbook::detail {
namespace {

using A = Atom;
using R = Role;

constexpr Spelling unit(std::string_view text, Atom atom, unsigned flags = no_flag) {
    return Spelling{text, R::atom, atom, static_cast<std::uint16_t>(flags)};
}
constexpr Spelling modifier(std::string_view text, unsigned flags) {
    return Spelling{text, R::modifier, A::each, static_cast<std::uint16_t>(flags)};
}
constexpr Spelling word(std::string_view text, Role role) {
    return Spelling{text, role};
}
constexpr Spelling ambiguous(std::string_view text, std::string_view choices) {
    return Spelling{text, R::ambiguous, A::each, no_flag, choices};
}

/// Spanish words stand beside the English ones; accents are folded away before look-up.
constexpr auto spellings = std::to_array<Spelling>({
    // Lengths
    unit("m", A::metre),
    unit("meter", A::metre),
    unit("meters", A::metre),
    unit("metre", A::metre),
    unit("metres", A::metre),
    unit("metro", A::metre),
    unit("metros", A::metre),
    unit("cm", A::centimetre),
    unit("centimeter", A::centimetre),
    unit("centimeters", A::centimetre),
    unit("centimetre", A::centimetre),
    unit("centimetres", A::centimetre),
    unit("centimetro", A::centimetre),
    unit("centimetros", A::centimetre),
    unit("mm", A::millimetre),
    unit("millimeter", A::millimetre),
    unit("millimeters", A::millimetre),
    unit("millimetre", A::millimetre),
    unit("millimetres", A::millimetre),
    unit("milimetro", A::millimetre),
    unit("milimetros", A::millimetre),
    unit("km", A::kilometre),
    unit("kilometer", A::kilometre),
    unit("kilometers", A::kilometre),
    unit("kilometre", A::kilometre),
    unit("kilometres", A::kilometre),
    unit("kilometro", A::kilometre),
    unit("kilometros", A::kilometre),
    unit("um", A::micrometre),
    unit("micron", A::micrometre),
    unit("microns", A::micrometre),
    unit("micrometer", A::micrometre),
    unit("micrometers", A::micrometre),
    unit("micrometre", A::micrometre),
    unit("micrometres", A::micrometre),
    unit("micras", A::micrometre),
    unit("in", A::inch),
    unit("ins", A::inch),
    unit("inch", A::inch),
    unit("inches", A::inch),
    unit("pulgada", A::inch),
    unit("pulgadas", A::inch),
    unit("ft", A::foot),
    unit("feet", A::foot),
    unit("foot", A::foot),
    unit("pie", A::foot),
    unit("pies", A::foot),
    unit("yd", A::yard),
    unit("yds", A::yard),
    unit("yard", A::yard),
    unit("yards", A::yard),
    unit("yarda", A::yard),
    unit("yardas", A::yard),
    unit("mi", A::mile),
    unit("mile", A::mile),
    unit("miles", A::mile),
    unit("milla", A::mile),
    unit("millas", A::mile),
    unit("rod", A::rod),
    unit("rods", A::rod),
    unit("chain", A::chain),
    unit("chains", A::chain),
    // Areas
    unit("a", A::acre),
    unit("ac", A::acre),
    unit("acs", A::acre),
    unit("acre", A::acre),
    unit("acres", A::acre),
    unit("ha", A::hectare),
    unit("has", A::hectare),
    unit("hectare", A::hectare),
    unit("hectares", A::hectare),
    unit("hectarea", A::hectare),
    unit("hectareas", A::hectare),
    unit("sqft", A::foot, square),
    unit("sqm", A::metre, square),
    unit("sqyd", A::yard, square),
    unit("sqin", A::inch, square),
    unit("sqmi", A::mile, square),
    // Volumes
    unit("l", A::litre),
    unit("lt", A::litre),
    unit("lts", A::litre),
    unit("ltr", A::litre),
    unit("ltrs", A::litre),
    unit("liter", A::litre),
    unit("liters", A::litre),
    unit("litre", A::litre),
    unit("litres", A::litre),
    unit("litro", A::litre),
    unit("litros", A::litre),
    unit("ml", A::millilitre),
    unit("mls", A::millilitre),
    unit("milliliter", A::millilitre),
    unit("milliliters", A::millilitre),
    unit("millilitre", A::millilitre),
    unit("millilitres", A::millilitre),
    unit("mililitro", A::millilitre),
    unit("mililitros", A::millilitre),
    unit("cc", A::millilitre),
    unit("ccs", A::millilitre),
    unit("cl", A::centilitre),
    unit("centiliter", A::centilitre),
    unit("centiliters", A::centilitre),
    unit("centilitre", A::centilitre),
    unit("centilitres", A::centilitre),
    unit("dl", A::decilitre),
    unit("deciliter", A::decilitre),
    unit("deciliters", A::decilitre),
    unit("decilitre", A::decilitre),
    unit("decilitres", A::decilitre),
    unit("hl", A::hectolitre),
    unit("hectoliter", A::hectolitre),
    unit("hectoliters", A::hectolitre),
    unit("hectolitre", A::hectolitre),
    unit("hectolitres", A::hectolitre),
    unit("gal", A::gallon),
    unit("gals", A::gallon),
    unit("gallon", A::gallon),
    unit("gallons", A::gallon),
    unit("galon", A::gallon),
    unit("galones", A::gallon),
    unit("qt", A::quart),
    unit("qts", A::quart),
    unit("quart", A::quart),
    unit("quarts", A::quart),
    unit("pt", A::pint),
    unit("pts", A::pint),
    unit("pint", A::pint),
    unit("pints", A::pint),
    unit("pinta", A::pint),
    unit("pintas", A::pint),
    unit("floz", A::fluid_ounce),
    unit("flozs", A::fluid_ounce),
    unit("ozfl", A::fluid_ounce),
    unit("cup", A::cup),
    unit("cups", A::cup),
    unit("taza", A::cup),
    unit("tazas", A::cup),
    unit("tbsp", A::tablespoon),
    unit("tbsps", A::tablespoon),
    unit("tbs", A::tablespoon),
    unit("tbl", A::tablespoon),
    unit("tablespoon", A::tablespoon),
    unit("tablespoons", A::tablespoon),
    unit("tablespoonful", A::tablespoon),
    unit("tablespoonfuls", A::tablespoon),
    unit("cucharada", A::tablespoon),
    unit("cucharadas", A::tablespoon),
    unit("tsp", A::teaspoon),
    unit("tsps", A::teaspoon),
    unit("teaspoon", A::teaspoon),
    unit("teaspoons", A::teaspoon),
    unit("teaspoonful", A::teaspoon),
    unit("teaspoonfuls", A::teaspoon),
    unit("cucharadita", A::teaspoon),
    unit("cucharaditas", A::teaspoon),
    // Masses
    unit("oz", A::ounce),
    unit("ozs", A::ounce),
    unit("ounce", A::ounce),
    unit("ounces", A::ounce),
    unit("onza", A::ounce),
    unit("onzas", A::ounce),
    unit("ozwt", A::ounce, weight),
    unit("wtoz", A::ounce, weight),
    unit("ozav", A::ounce, weight),
    unit("lb", A::pound),
    unit("lbs", A::pound),
    unit("lbm", A::pound),
    unit("pound", A::pound),
    unit("pounds", A::pound),
    unit("libra", A::pound),
    unit("libras", A::pound),
    unit("lbai", A::pound, ingredient),
    unit("lbsai", A::pound, ingredient),
    unit("lbae", A::pound, acid),
    unit("lbsae", A::pound, acid),
    unit("g", A::gram),
    unit("gm", A::gram),
    unit("gms", A::gram),
    unit("gram", A::gram),
    unit("grams", A::gram),
    unit("gramme", A::gram),
    unit("grammes", A::gram),
    unit("gramo", A::gram),
    unit("gramos", A::gram),
    unit("gai", A::gram, ingredient),
    unit("gae", A::gram, acid),
    unit("kg", A::kilogram),
    unit("kgs", A::kilogram),
    unit("kilo", A::kilogram),
    unit("kilos", A::kilogram),
    unit("kilogram", A::kilogram),
    unit("kilograms", A::kilogram),
    unit("kilogramo", A::kilogram),
    unit("kilogramos", A::kilogram),
    unit("kgai", A::kilogram, ingredient),
    unit("kgae", A::kilogram, acid),
    unit("mg", A::milligram),
    unit("milligram", A::milligram),
    unit("milligrams", A::milligram),
    unit("miligramo", A::milligram),
    unit("miligramos", A::milligram),
    unit("ug", A::microgram),
    unit("mcg", A::microgram),
    unit("microgram", A::microgram),
    unit("micrograms", A::microgram),
    unit("tonne", A::tonne),
    unit("tonnes", A::tonne),
    unit("tonelada", A::tonne, ton),
    unit("toneladas", A::tonne, ton),
    unit("ton", A::short_ton, ton),
    unit("tons", A::short_ton, ton),
    unit("grain", A::grain),
    unit("grains", A::grain),
    // Times
    unit("s", A::second),
    unit("sec", A::second),
    unit("secs", A::second),
    unit("second", A::second),
    unit("seconds", A::second),
    unit("seg", A::second),
    unit("segundo", A::second),
    unit("segundos", A::second),
    unit("min", A::minute),
    unit("mins", A::minute),
    unit("minute", A::minute),
    unit("minutes", A::minute),
    unit("minuto", A::minute),
    unit("minutos", A::minute),
    unit("h", A::hour),
    unit("hr", A::hour),
    unit("hrs", A::hour),
    unit("hour", A::hour),
    unit("hours", A::hour),
    unit("hora", A::hour),
    unit("horas", A::hour),
    unit("d", A::day),
    unit("day", A::day),
    unit("days", A::day),
    unit("dia", A::day),
    unit("dias", A::day),
    unit("wk", A::week),
    unit("wks", A::week),
    unit("week", A::week),
    unit("weeks", A::week),
    unit("semana", A::week),
    unit("semanas", A::week),
    // Speeds and flows
    unit("mph", A::mile_per_hour),
    unit("kph", A::kilometre_per_hour),
    unit("kmh", A::kilometre_per_hour),
    unit("kmph", A::kilometre_per_hour),
    unit("kn", A::knot),
    unit("kt", A::knot),
    unit("kts", A::knot),
    unit("knot", A::knot),
    unit("knots", A::knot),
    unit("nudo", A::knot),
    unit("nudos", A::knot),
    unit("fps", A::foot_per_second),
    unit("fpm", A::foot_per_minute),
    unit("gpm", A::gallon_per_minute),
    unit("gph", A::gallon_per_hour),
    unit("lpm", A::litre_per_minute),
    unit("gpa", A::gallon_per_acre),
    // Pressures
    unit("psi", A::psi),
    unit("bar", A::bar),
    unit("bars", A::bar),
    unit("bares", A::bar),
    unit("mbar", A::millibar),
    unit("mb", A::millibar),
    unit("millibar", A::millibar),
    unit("millibars", A::millibar),
    unit("pa", A::pascal),
    unit("pascal", A::pascal),
    unit("pascals", A::pascal),
    unit("hpa", A::hectopascal),
    unit("kpa", A::kilopascal),
    unit("kilopascal", A::kilopascal),
    unit("kilopascals", A::kilopascal),
    unit("mpa", A::megapascal),
    unit("megapascal", A::megapascal),
    unit("megapascals", A::megapascal),
    // Angles and temperatures
    unit("deg", A::degree),
    unit("degs", A::degree),
    unit("degree", A::degree),
    unit("degrees", A::degree),
    unit("grado", A::degree),
    unit("grados", A::degree),
    unit("rad", A::radian),
    unit("radian", A::radian),
    unit("radians", A::radian),
    unit("k", A::kelvin),
    unit("kelvin", A::kelvin),
    unit("kelvins", A::kelvin),
    unit("c", A::celsius),
    unit("degc", A::celsius),
    unit("celsius", A::celsius),
    unit("centigrade", A::celsius),
    unit("f", A::fahrenheit),
    unit("degf", A::fahrenheit),
    unit("fahrenheit", A::fahrenheit),
    // Ratios and counts
    unit("percent", A::percent),
    unit("pct", A::percent),
    unit("porciento", A::percent),
    unit("ppm", A::ppm),
    unit("gpg", A::grain_per_gallon),
    unit("each", A::each),
    unit("ea", A::each),
    unit("cada", A::each),
    unit("cut", A::each),
    unit("cuts", A::each),
    unit("corte", A::each),
    unit("cortes", A::each),
    unit("stem", A::each),
    unit("stems", A::each),
    unit("tallo", A::each),
    unit("tallos", A::each),
    unit("plant", A::each),
    unit("plants", A::each),
    unit("planta", A::each),
    unit("plantas", A::each),
    unit("tree", A::each),
    unit("trees", A::each),
    unit("arbol", A::each),
    unit("arboles", A::each),
    unit("stump", A::each),
    unit("stumps", A::each),
    unit("hack", A::each),
    unit("hacks", A::each),
    unit("injection", A::each),
    unit("injections", A::each),
    unit("shrub", A::each),
    unit("shrubs", A::each),
    // Modifiers
    modifier("fl", fluid),
    modifier("fluid", fluid),
    modifier("liq", fluid),
    modifier("liquid", fluid),
    modifier("liquida", fluid),
    modifier("liquidas", fluid),
    modifier("liquido", fluid),
    modifier("fluida", fluid),
    modifier("fluidas", fluid),
    modifier("wt", weight),
    modifier("weight", weight),
    modifier("av", weight),
    modifier("avdp", weight),
    modifier("avoir", weight),
    modifier("avoirdupois", weight),
    modifier("dry", weight),
    modifier("peso", weight),
    modifier("us", us),
    modifier("usa", us),
    modifier("american", us),
    modifier("imp", imperial),
    modifier("imperial", imperial),
    modifier("imperiales", imperial),
    modifier("uk", imperial),
    modifier("british", imperial),
    modifier("sq", square),
    modifier("square", square),
    modifier("cuadrado", square),
    modifier("cuadrados", square),
    modifier("cuadrada", square),
    modifier("cuadradas", square),
    modifier("cu", cubic),
    modifier("cubic", cubic),
    modifier("cubico", cubic),
    modifier("cubicos", cubic),
    modifier("cubica", cubic),
    modifier("cubicas", cubic),
    modifier("delta", delta),
    modifier("ai", ingredient),
    modifier("ia", ingredient),
    modifier("active", ingredient),
    modifier("activo", ingredient),
    modifier("ae", acid),
    modifier("acid", acid),
    modifier("acido", acid),
    modifier("equivalent", substance_noun),
    modifier("equiv", substance_noun),
    modifier("equivalente", substance_noun),
    modifier("ingredient", substance_noun),
    modifier("ingredients", substance_noun),
    modifier("equivalents", substance_noun),
    modifier("ingrediente", substance_noun),
    modifier("product", product),
    modifier("prod", product),
    modifier("producto", product),
    modifier("formulation", product),
    modifier("concentrate", product),
    modifier("short", short_size),
    modifier("long", long_size),
    modifier("metric", metric),
    modifier("metrica", metric),
    modifier("metricas", metric),
    // Words between units
    word("per", R::per),
    word("por", R::per),
    word("and", R::join),
    word("plus", R::join),
    word("y", R::join),
    word("mas", R::join),
    word("of", R::of),
    word("de", R::of),
    word("by", R::by),
    word("v", R::volume),
    word("vol", R::volume),
    word("volume", R::volume),
    word("volumen", R::volume),
    word("ciento", R::hundred),
    word("cent", R::hundred),
    word("water", R::stuff),
    word("agua", R::stuff),
    word("spray", R::stuff),
    word("mix", R::stuff),
    word("mixture", R::stuff),
    word("mezcla", R::stuff),
    word("solution", R::stuff),
    word("solucion", R::stuff),
    word("carrier", R::stuff),
    word("caldo", R::stuff),
    word("finished", R::stuff),
    word("total", R::stuff),
    word("tank", R::stuff),
    word("uno", R::stuff),
    word("una", R::stuff),
    word("to", R::range),
    word("through", R::range),
    word("or", R::range),
    // Two meanings
    ambiguous("t", "\"tsp\" (teaspoon), \"tbsp\" (tablespoon) or \"tonne\" (1000 kg)"),
    ambiguous("gr", "\"g\" (gram) or \"grain\" (64.8 mg)"),
    ambiguous("no", "\"each\" (a count) or the unit itself"),
    ambiguous("are", "\"ac\" (acre) or \"100 m2\" (an are)"),
    ambiguous("ares", "\"ac\" (acres) or the ground in m2 (an are is 100 m2)"),
    ambiguous("cuarto", "\"qt\" (quart, 946 mL) or a fraction such as \"1/4 gal\""),
    ambiguous("cuartos", "\"qt\" (quart, 946 mL) or a fraction such as \"1/4 gal\""),
});

constexpr WordKey key_of(std::string_view text) {
    WordKey key;
    for (const char letter : text) {
        key.add(static_cast<unsigned char>(letter));
    }
    return key;
}

constexpr std::size_t slot_count = 2048;  // load below a fifth: a miss costs one look
constexpr std::size_t hash(const WordKey& key) {
    std::uint64_t mixed = (key.low ^ (key.high * 0x9E3779B97F4A7C15ULL)) * 0xD6E8FEB86659FD93ULL;
    mixed ^= mixed >> 32U;
    return static_cast<std::size_t>((mixed * 0xD6E8FEB86659FD93ULL) >> 53U);
}
static_assert((std::uint64_t{1} << (64U - 53U)) == slot_count);

struct Slots {
    std::array<std::uint16_t, slot_count> row{};  ///< 1 + index of a spelling; 0 when empty
    bool sound = true;  ///< every spelling is one word of at most 16 bytes, once
};

constexpr std::array<WordKey, spellings.size()> make_keys() {
    std::array<WordKey, spellings.size()> keys{};
    for (std::size_t i = 0; i < spellings.size(); ++i) {
        keys[i] = key_of(spellings[i].text);
    }
    return keys;
}
constexpr std::array<WordKey, spellings.size()> keys = make_keys();

constexpr Slots make_slots() {
    Slots slots;
    for (std::size_t i = 0; i < spellings.size(); ++i) {
        std::size_t slot = hash(keys[i]);
        while (slots.row[slot] != 0) {
            slots.sound = slots.sound && keys[slots.row[slot] - std::size_t{1}] != keys[i];
            slot = (slot + 1) % slot_count;
        }
        slots.sound = slots.sound && keys[i].length > 0 && keys[i].length <= 16;
        slots.row[slot] = static_cast<std::uint16_t>(i + 1);
    }
    return slots;
}
constexpr Slots slots = make_slots();
static_assert(slots.sound, "a spelling is one word of at most 16 bytes, once");

constexpr std::size_t longest_compared = 24;

/// Letters to insert, drop, change or swap with a neighbour to turn one word into the other.
std::size_t edits_between(std::string_view a, std::string_view b) {
    std::array<std::array<std::size_t, longest_compared + 1>, longest_compared + 1> cost{};
    for (std::size_t i = 0; i <= a.size(); ++i) {
        for (std::size_t j = 0; j <= b.size(); ++j) {
            if (i == 0 || j == 0) {
                cost[i][j] = i + j;
                continue;
            }
            const std::size_t change = cost[i - 1][j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            cost[i][j] = std::min({change, cost[i - 1][j] + 1, cost[i][j - 1] + 1});
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1]) {
                cost[i][j] = std::min(cost[i][j], cost[i - 2][j - 2] + 1);
            }
        }
    }
    return cost[a.size()][b.size()];
}

}  // namespace

const Spelling* find_word(const WordKey& key) {
    std::size_t slot = hash(key);
    while (slots.row[slot] != 0) {
        const std::size_t index = slots.row[slot] - std::size_t{1};
        if (keys[index] == key) {
            return &spellings[index];
        }
        slot = (slot + 1) % slot_count;
    }
    return nullptr;
}

std::span<const Spelling> all_spellings() {
    return spellings;
}

std::string_view nearest_spelling(std::string_view folded) {
    if (folded.size() > longest_compared) {
        return {};
    }
    std::string_view best;
    // One change in a short word, two from eight letters: otherwise "barrels" is near "bares".
    constexpr std::size_t long_word = 8;
    std::size_t fewest = folded.size() < 2 ? 1 : (folded.size() < long_word ? 2 : 3);
    for (const Spelling& spelling : spellings) {
        if (spelling.role != Role::atom && spelling.role != Role::modifier) {
            continue;
        }
        const std::size_t edits = edits_between(folded, spelling.text);
        if (edits < fewest) {
            fewest = edits;
            best = spelling.text;
        }
    }
    return best;
}

}  // namespace swathbook::detail
