// Made from the descriptions of the operations; do not edit.
export interface CallOptions { units?: "us" | "metric"; working?: boolean; language?: "en" | "es" }
export interface Finding { code: string; severity: "note" | "advice" | "warning" | "stop"; text: string; source?: string }
export interface Step { text: string; expression: string; result: string; source?: string }
export interface Remarks { findings: Array<Finding>; working?: Array<Step> }

export interface AdjustAnswer {
  /** Rate now, with water. */
  rate_now?: Quantity;
  /** Rate of water that stands for it. */
  target_as_water?: Quantity;
  /** Target over rate now. */
  factor?: number;
  /** By speed alone. */
  by_speed?: BySpeed;
  /** By pressure alone. */
  by_pressure?: ByPressure;
  /** By other tips, at the present speed. */
  by_tip?: ByTip;
  /** Slowest speed a rate controller can hold the target. */
  controller_slowest?: Quantity;
  /** Fastest speed a rate controller can hold the target. */
  controller_fastest?: Quantity;
  /** What the other speeds do. */
  at_speeds?: Array<AtSpeed>;
  /** Mean rate over equal distances at those speeds. */
  rate_equal_distance?: Quantity;
  /** Mean rate over equal times at those speeds. */
  rate_equal_time?: Quantity;
  /** Speed that stands for equal distances. */
  speed_equal_distance?: Quantity;
}

/** "20 gal/ac" going in; value, unit and 95 % interval coming out. */
export type Quantity = string | { value: number; unit: string; low?: number; high?: number };

export interface BySpeed {
  /** Speed that gives the target. */
  speed?: Quantity;
  /** Times the present speed. */
  factor?: number;
  /** Against the speeds entered. */
  window?: InWindow;
}

export type InWindow =
  | "not_entered" /* An end of the window was not entered. */
  | "within" /* Inside the window. */
  | "below" /* Under its low end. */
  | "above" /* Over its high end. */;

export interface ByPressure {
  /** Pressure that gives the target. */
  pressure?: Quantity;
  /** Times the present pressure. */
  factor?: number;
  /** Against the pressures entered. */
  window?: InWindow;
  /** Droplet class now. */
  class_now?: DropletClass;
  /** Droplet class then. */
  class_then?: DropletClass;
  /** Whether the label's words allow it. */
  class_allowed?: boolean;
}

export type DropletClass =
  | "XF" /* Extremely fine. */
  | "VF" /* Very fine. */
  | "F" /* Fine. */
  | "M" /* Medium. */
  | "C" /* Coarse. */
  | "VC" /* Very coarse. */
  | "XC" /* Extremely coarse. */
  | "UC" /* Ultra coarse. */;

export interface ByTip {
  /** Flow through one tip that gives the target. */
  flow?: Quantity;
  /** Sizes rated in gal/min at 40 psi. */
  us_sizes?: Array<SizeAtPressure>;
  /** Sizes rated in L/min at 3 bar. */
  iso_sizes?: Array<SizeAtPressure>;
}

export interface SizeAtPressure {
  /** Size of the colour code. */
  size?: string;
  /** Its colour: flow, not droplets. */
  colour?: string;
  /** Pressure at which it gives the flow. */
  pressure?: Quantity;
  /** Against the pressures entered. */
  window?: InWindow;
}

export interface AtSpeed {
  /** The speed. */
  speed?: Quantity;
  /** Rate with the present pressure and tips. */
  rate?: Quantity;
  /** Pressure a rate controller needs for the target. */
  controller_pressure?: Quantity;
  /** That pressure against the pressures entered. */
  window?: InWindow;
  /** Droplet class at that pressure. */
  droplet_class?: DropletClass;
}

export interface AdjustRequest {
  /** Rate wanted on the ground. */
  target: Quantity;
  /** Rate now, as calibrated with water. */
  rate?: Quantity;
  /** Flow of one tip now, in place of the rate. */
  tip_flow?: Quantity;
  /** Ground speed now. */
  speed?: Quantity;
  /** Pressure now, at the tips. */
  pressure?: Quantity;
  /** Distance between tips. */
  spacing?: Quantity;
  /** Ground width served, in place of spacing. */
  width?: Quantity;
  /** How many tips serve that width; left out: one. */
  tips?: number;
  /** Size of the tips, in place of a measured flow. */
  size?: string;
  /** What the size number stands for. */
  convention?: SizeConvention;
  /** Maker's flow, in place of a size. */
  rated_flow?: Quantity;
  /** Pressure of the maker's flow. */
  rated_pressure?: Quantity;
  /** How flow follows pressure; 0.5 for plain tips. */
  exponent?: number;
  /** Droplet class of the tip by pressure, as printed. */
  classes?: Array<ClassBand>;
  /** Droplet class wanted, in the label's words: coarse or coarser. */
  droplets?: string;
  /** Lowest pressure tip and sprayer allow. */
  pressure_low?: Quantity;
  /** Highest pressure tip and sprayer allow. */
  pressure_high?: Quantity;
  /** Slowest speed the ground allows. */
  speed_low?: Quantity;
  /** Fastest speed the ground allows. */
  speed_high?: Quantity;
  /** Least carrier the label allows. */
  carrier_min?: Quantity;
  /** Density of the mix, where it is not like water. */
  carrier_density?: Quantity;
  /** Other speeds to tell rate and pressure at. */
  speeds?: Array<Quantity>;
}

export type SizeConvention =
  | "us_40_psi" /* 04 is 0.40 US gal/min at 40 psi. */
  | "iso_3_bar" /* 04 is 1.6 L/min at 3 bar, the ISO nominal. */;

export interface ClassBand {
  /** Lowest pressure of this class. */
  from: Quantity;
  /** Highest pressure of this class. */
  to: Quantity;
  /** The class the maker prints. */
  class: DropletClass;
}

export interface AreaAnswer {
  /** Ground inside the rings and outside the holes; international acres. */
  area?: Quantity;
  /** The same, hectares for acres. */
  area_in_other_units?: Quantity;
  /** Length of all rings. */
  perimeter?: Quantity;
  /** Longest line between two corners. */
  longest_edge?: Quantity;
  /** Number of holes. */
  holes?: number;
  /** Number of positions, closing ones not counted. */
  corners?: number;
  /** Each polygon for itself. */
  parts?: Array<AreaPart>;
  /** Least box that holds everything. */
  box?: BoundingBox;
  /** Where the uncertainty comes from. */
  error_terms?: Array<AreaErrorTerm>;
  /** Standard deviation of the area, all terms. */
  deviation?: Quantity;
  /** Mix to carry beyond the middle to reach the upper end. */
  carry_more?: Quantity;
}

export interface AreaPart {
  /** Name of the feature; empty when it has none. */
  name?: string;
  /** Inside the outer ring and outside the holes. */
  area?: Quantity;
  /** Ground in the holes, taken out. */
  holes_area?: Quantity;
  /** Number of holes. */
  holes?: number;
  /** Length of all its rings. */
  perimeter?: Quantity;
  /** Number of positions, closing ones not counted. */
  corners?: number;
}

export interface BoundingBox {
  /** Least longitude, degrees. */
  west?: number;
  /** Least latitude, degrees. */
  south?: number;
  /** Greatest longitude, degrees. */
  east?: number;
  /** Greatest latitude, degrees. */
  north?: number;
}

export interface AreaErrorTerm {
  /** corners or edge_offset. */
  term?: string;
  /** What it comes from. */
  text?: string;
  /** Standard deviation of the area. */
  deviation?: Quantity;
  /** The same as a share of the area. */
  relative?: Quantity;
}

export interface AreaRequest {
  /** The ground as GeoJSON polygons, longitude first, WGS84. */
  geometry: GeoJson;
  /** A place known to be near, to catch swapped axes and wrong maps. */
  expected_near?: Position;
  /** How far off each corner may be, each for itself (receiver noise). */
  position_error?: Quantity;
  /** In which way the position error is stated. */
  position_error_means?: PositionErrorMeaning;
  /** How far the whole boundary may lie too far out or in. */
  edge_offset?: Quantity;
}

/** GeoJSON (RFC 7946) with polygons; longitude first, WGS84. */
export interface GeoJson { type: "Polygon" | "MultiPolygon" | "GeometryCollection" | "Feature" | "FeatureCollection"; [member: string]: unknown }

export interface Position {
  /** Degrees, east positive. */
  longitude: number;
  /** Degrees, north positive. */
  latitude: number;
}

export type PositionErrorMeaning =
  | "per_axis" /* Standard deviation east and north each. */
  | "radial_rms" /* Root mean square of the distance (RMSE). */
  | "radial_mean" /* Mean distance. */
  | "radial_50" /* Half of the fixes are nearer (CEP). */
  | "radial_95" /* 95 % of the fixes are nearer. */;

export interface BalanceAnswer {
  /** Ground in the plan. */
  planned_area?: Quantity;
  /** Ground left out. */
  excluded_area?: Quantity;
  /** Ground wetted, overlap taken off. */
  covered_area?: Quantity;
  /** Ground paid for. */
  payable_area?: Quantity;
  /** Length times width of all passes; overlap is in it. */
  swept_area?: Quantity;
  /** Length of all passes. */
  sprayed_length?: Quantity;
  /** Time of all passes. */
  spray_time?: Quantity;
  /** Length over time. */
  mean_speed?: Quantity;
  /** Which ground the rates count. */
  ground?: BalanceGround;
  /** How much that is. */
  ground_area?: Quantity;
  /** The mix. */
  mix?: MixBalance;
  /** Product by product. */
  products?: Array<ProductBalance>;
  /** Pass by pass. */
  passes?: Array<PassBalance>;
}

export type BalanceGround =
  | "covered" /* Wetted ground, overlap taken off. */
  | "swept" /* Length times width of the passes, overlap in it. */
  | "planned" /* Planned less exclusions. */
  | "none" /* No ground is known. */;

export interface MixBalance {
  /** Wanted mix on the ground of the plan. */
  expected?: Quantity;
  /** Made, less what is left. */
  by_loads?: Quantity;
  /** Flow times time. */
  by_passes?: Quantity;
  /** By the loads where entered. */
  used?: Quantity;
  /** On the ground. */
  applied?: Quantity;
  /** Against the wanted mix, with its 95 % interval. */
  difference?: Quantity;
}

export interface ProductBalance {
  /** Which product. */
  name?: string;
  /** Wanted rate on the ground of the plan. */
  expected?: Quantity;
  /** The same by weight. */
  expected_weight?: Quantity;
  /** Put on the ground. */
  used?: Quantity;
  /** The same by weight. */
  used_weight?: Quantity;
  /** In the mix left. */
  in_leftover?: Quantity;
  /** The same by weight. */
  in_leftover_weight?: Quantity;
  /** Rate really applied. */
  applied?: Quantity;
  /** The same by weight. */
  applied_weight?: Quantity;
  /** Against the wanted rate, with its 95 % interval. */
  difference?: Quantity;
  /** Used against expected. */
  amount_difference?: Quantity;
  /** Out of stock. */
  stock_used?: Quantity;
  /** The same by weight. */
  stock_used_weight?: Quantity;
  /** Out of stock against what went into the loads. */
  stock_difference?: Quantity;
  /** The same in words. */
  text?: string;
}

export interface PassBalance {
  /** Which pass. */
  name?: string;
  /** Length sprayed. */
  length?: Quantity;
  /** Length times width. */
  swept_area?: Quantity;
  /** Time with the spray on. */
  spray_time?: Quantity;
  /** Length over time. */
  speed?: Quantity;
  /** Flow times time. */
  mix?: Quantity;
  /** Mix over area. */
  output?: Quantity;
  /** What the fixes add up to. */
  track?: PassTrack;
}

export interface PassTrack {
  /** Fixes. */
  fixes?: number;
  /** Length with the spray on. */
  sprayed_length?: Quantity;
  /** Time with the spray on. */
  sprayed_time?: Quantity;
  /** Length driven with the spray off. */
  other_length?: Quantity;
  /** Stretches without fixes, or jumps. */
  gaps?: number;
  /** Time in them. */
  gap_time?: Quantity;
  /** Of those that the spray was on before. */
  gap_time_on?: Quantity;
  /** The longest of them. */
  longest_gaps?: Array<TrackGap>;
  /** Worst accuracy the receiver gave. */
  worst_accuracy?: Quantity;
}

export interface TrackGap {
  /** Time of the last fix before it. */
  from_s?: number;
  /** Time of the first fix after it. */
  to_s?: number;
  /** Straight line between them; not counted. */
  straight?: Quantity;
  /** The spray was on before it. */
  was_on?: boolean;
  /** Faster than any sprayer, not a lack of fixes. */
  is_jump?: boolean;
}

export interface BalanceRequest {
  /** Ground in the plan or contract. */
  planned_area?: Quantity;
  /** Ground of it that was not to be sprayed. */
  exclusions?: Array<BalanceExclusion>;
  /** Ground wetted, overlap taken off. */
  covered_area?: Quantity;
  /** Ground paid for. */
  payable_area?: Quantity;
  /** Wanted mix per area. */
  mix_per_area?: Quantity;
  /** Width of the passes. */
  width?: Quantity;
  /** Flow of all tips. */
  flow?: Quantity;
  /** Runs of the sprayer, typed or recorded. */
  passes?: Array<BalancePass>;
  /** Tankfuls as they were made. */
  loads?: Array<BalanceLoad>;
  /** Mix left in the tank. */
  leftover?: Quantity;
  /** Products, their rates and stock. */
  products?: Array<BalanceProduct>;
  /** Half the 95 % interval of the ground. */
  area_plus_minus?: Quantity;
  /** Half the 95 % interval of the amounts. */
  amount_plus_minus?: Quantity;
  /** Difference that needs explaining; 5 % unless said. */
  explain_over?: Quantity;
  /** Time without a fix that is a gap; 10 s unless said. */
  gap_after?: Quantity;
}

export interface BalanceExclusion {
  /** What is left out. */
  name?: string;
  /** How much ground. */
  area: Quantity;
}

export interface BalancePass {
  /** Name or number of the pass. */
  name?: string;
  /** Length sprayed. */
  length?: Quantity;
  /** Width; that of the job unless said. */
  width?: Quantity;
  /** Area sprayed, instead of length and width. */
  area?: Quantity;
  /** Time with the spray on. */
  spray_time?: Quantity;
  /** Flow; that of the job unless said. */
  flow?: Quantity;
  /** Fixes of a receiver, instead of length and time. */
  track?: Array<TrackFix>;
}

export interface TrackFix {
  /** Time of the fix, on any clock that only runs forward. */
  t_seconds: number;
  /** Latitude in degrees, north positive. */
  lat: number;
  /** Longitude in degrees, east positive. */
  lon: number;
  /** Whether the spray is on from here to the next fix. */
  on: boolean;
  /** Accuracy in metres, as the receiver gives it. */
  accuracy_m?: number;
}

export interface BalanceLoad {
  /** Everything in the load; carrier and liquids unless said. */
  mix?: Quantity;
  /** Water or oil run in. */
  carrier?: Quantity;
  /** What went in. */
  products?: Array<BalanceLoadProduct>;
}

export interface BalanceLoadProduct {
  /** Name of the product. */
  name: string;
  /** What was poured in. */
  amount?: Quantity;
  /** What was weighed in. */
  weight?: Quantity;
}

export interface BalanceProduct {
  /** Name of the product. */
  name: string;
  /** Wanted rate of product. */
  rate?: LabelRate;
  /** What was put on the ground. */
  used?: Quantity;
  /** The same by weight. */
  used_weight?: Quantity;
  /** In stock before, with what was brought in. */
  stock_before?: Quantity;
  /** In stock after. */
  stock_after?: Quantity;
  /** The same by weight. */
  stock_before_weight?: Quantity;
  /** The same by weight. */
  stock_after_weight?: Quantity;
}

/** "2 qt/ac" going in; value, unit and basis coming out. */
export type LabelRate = string | { value: number; unit: string; basis?: string };

export interface CalibrateAnswer {
  /** Way of calibrating */
  method?: CalibrationMethod;
  /** Spray mix per area of the width entered, with its 95 % interval */
  output?: Quantity;
  /** Per acre of ground under the bands */
  band_output?: Quantity;
  /** Per acre of the whole field */
  field_output?: Quantity;
  /** Flow of all tips that serve the width */
  flow?: Quantity;
  /** Mean flow of one tip */
  flow_per_tip?: Quantity;
  /** Ground speed */
  speed?: Quantity;
  /** Effective width used */
  width?: Quantity;
  /** Area of course, plot or field */
  course_area?: Quantity;
  /** Mean of the timed passes */
  mean_course_time?: Quantity;
  /** Ground that one tank covers */
  tank_area?: Quantity;
  /** Ground covered while spraying */
  area_per_time?: Quantity;
  /** Half the 95 % interval, as a share */
  plus_minus?: Quantity;
  /** Terms of the uncertainty, largest first */
  error_budget?: Array<BudgetLine>;
  /** The term to improve first */
  largest_term?: ErrorSource;
  /** What repeats can do */
  repeats?: RepeatAdvice;
  /** Which short rule belongs to this course */
  shortcut?: CourseShortcut;
  /** Water against the liquid of the job */
  density?: DensityAnswer;
  /** The believed figure against the measured one */
  believed?: BelievedAnswer;
  /** The assumed settings against the measured ones */
  assumed?: BelievedAnswer;
  /** What other speeds do at the same flow */
  speed_swings?: SpeedSwings;
  /** The hand answer against the exact one */
  hand?: HandCheck;
}

export type CalibrationMethod =
  | "course_and_catch" /* measured course, then a catch as long */
  | "flow_and_speed" /* flow and speed, each measured for itself */
  | "refill" /* known area sprayed, refill measured */
  | "timed_plot" /* measured plot timed, then a catch as long */;

export interface BudgetLine {
  /** Where the uncertainty comes from */
  source?: ErrorSource;
  /** The same in words */
  text?: string;
  /** Half the 95 % interval from this alone */
  plus_minus?: Quantity;
  /** Share of the variance */
  share?: Quantity;
  /** Whether measuring again shrinks it */
  repeats_help?: boolean;
}

export type ErrorSource =
  | "course_time" /* timing the course */
  | "catch_amount" /* the amount caught */
  | "catch_time" /* timing the catch */
  | "vessel" /* the measuring jug or meter */
  | "tips_not_caught" /* the tips not caught */
  | "course_length" /* the length of the course */
  | "width" /* the width served */
  | "area" /* the measured area */
  | "speed" /* an entered speed */
  | "flow" /* an entered flow */
  | "refill_mark" /* the refill mark */;

export interface RepeatAdvice {
  /** Whether repeats alone bring it to +-5 % */
  reachable?: boolean;
  /** Further timed passes */
  more_course_times?: number;
  /** Further catches */
  more_catches?: number;
  /** Half the interval then */
  plus_minus?: Quantity;
  /** The same in words */
  text?: string;
}

export interface CourseShortcut {
  /** Standard course that this one is; empty when none */
  course?: string;
  /** Short rule that holds here; empty when none does */
  rule?: string;
  /** What the rule reads too much here */
  error?: Quantity;
  /** Divide US fluid ounces caught by this for gal/ac */
  fluid_ounces_divisor?: number;
  /** The same in words */
  text?: string;
}

export interface DensityAnswer {
  /** Against water at 8.34 lb/gal */
  specific_gravity?: number;
  /** Square root of the specific gravity */
  factor?: number;
  /** Output with water in the tank */
  water_output?: Quantity;
  /** Output with the liquid of the job */
  solution_output?: Quantity;
  /** Output that water must show for the liquid of the job to give the output */
  water_setting?: Quantity;
}

export interface BelievedAnswer {
  /** Output that was believed */
  output?: Quantity;
  /** Believed over measured */
  ratio?: number;
  /** Product delivered more or less than meant */
  delivered?: Quantity;
  /** Shortcut that gives this figure; empty if none */
  shortcut?: string;
  /** The same in words */
  text?: string;
}

export interface SpeedSwings {
  /** Output on each stretch, the flow unchanged */
  stretches?: Array<SpeedOutput>;
  /** Mean over the distance */
  mean_output?: Quantity;
  /** Distance over time */
  harmonic_speed?: Quantity;
  /** The wrong figure that the plain mean speed would give */
  at_mean_speed?: Quantity;
  /** Most dosed stretch, over the mean */
  highest_over_mean?: Quantity;
  /** Least dosed stretch, over the mean */
  lowest_over_mean?: Quantity;
}

export interface SpeedOutput {
  /** Speed of the stretch */
  speed?: Quantity;
  /** Share of the distance */
  share?: Quantity;
  /** Output there */
  output?: Quantity;
}

export interface HandCheck {
  /** Hand answer against the exact one */
  difference?: Quantity;
  /** What each rounded figure did */
  roundings?: Array<HandStep>;
  /** What the rounded figures leave unexplained */
  unexplained?: Quantity;
  /** Agreement, rounding or a slip */
  verdict?: HandVerdict;
  /** The same in words */
  text?: string;
}

export interface HandStep {
  /** Which figure */
  text?: string;
  /** What rounding it did to the answer */
  moved?: Quantity;
}

export type HandVerdict =
  | "agrees" /* the same to the last digit given */
  | "rounding" /* figures rounded on the way explain it */
  | "slip" /* does not follow from the person's own figures */;

export interface CalibrateRequest {
  /** Sort of sprayer */
  sprayer?: SprayerKind;
  /** Way of calibrating; told from the entries if left out */
  method?: CalibrationMethod;
  /** Effective width served by the tips that were caught */
  width?: Quantity;
  /** Width out to the last drops */
  wetted_width?: Quantity;
  /** Number of tips that serve the width */
  tips?: number;
  /** Distance between the tips of a boom */
  spacing?: Quantity;
  /** Width of one band */
  band_width?: Quantity;
  /** Distance between rows */
  row_spacing?: Quantity;
  /** Distance between the stakes */
  course_length?: Quantity;
  /** Times of repeated passes */
  course_times?: Array<Quantity>;
  /** Ground speed, when read from a meter */
  speed?: Quantity;
  /** What was caught, one entry for each catch */
  catches?: Array<Catch>;
  /** Whether a catch, or the flow, is of one tip or of all */
  catch_covers?: CatchCovers;
  /** Flow of all tips that serve the width */
  flow?: Quantity;
  /** Water that brought the tank back to its mark */
  refill?: Quantity;
  /** Plot or field, when measured as an area */
  area?: Quantity;
  /** Usable volume of the tank */
  tank_volume?: Quantity;
  /** Density of the liquid of the job */
  carrier_density?: Quantity;
  /** What ran while calibrating */
  caught?: CarrierCaught;
  /** Figure believed so far */
  believed_output?: Quantity;
  /** Width and speed a recipe assumed */
  assumed?: AssumedSettings;
  /** Other speeds on parts of the distance */
  speed_swings?: Array<SpeedShare>;
  /** A hand answer to check */
  hand?: HandWork;
  /** Stopwatch slip; 0.25 s when not entered */
  timing_slip?: Quantity;
  /** How far off a taped length may be; 0.3 % */
  length_tolerance?: Quantity;
  /** How far off the width may be; boom 0.5 %, band 2 %, without boom 4 % */
  width_tolerance?: Quantity;
  /** How far off the jug or meter may be; 1 % */
  volume_tolerance?: Quantity;
  /** How far off an entered speed may be; 2 % */
  speed_tolerance?: Quantity;
  /** How closely the fill mark can be met; 0.5 % of the tank */
  mark_tolerance?: Quantity;
}

export type SprayerKind =
  | "boom" /* several tips at an even spacing */
  | "boomless" /* one cluster of tips with a wide swath */
  | "backpack" /* one person, one wand */
  | "handgun" /* hose and gun */
  | "band" /* bands over rows, or directed under plants */;

export interface Catch {
  /** Volume caught */
  amount?: Quantity;
  /** Weight caught, jug taken off, when it was weighed */
  weight?: Quantity;
  /** How long it was caught; the course time when not entered */
  time?: Quantity;
  /** Number or place of the tip, when a single one was caught */
  tip?: string;
}

export type CatchCovers =
  | "one_tip" /* each catch is of a single tip */
  | "all_tips" /* each catch is of all tips of the width */;

export type CarrierCaught =
  | "water" /* clean water */
  | "solution" /* the liquid of the job */;

export interface AssumedSettings {
  /** Width that was assumed */
  width?: Quantity;
  /** Speed that was assumed */
  speed?: Quantity;
}

export interface SpeedShare {
  /** Ground speed on this stretch */
  speed: Quantity;
  /** Parts of the distance driven at it; 1 when not entered */
  parts?: number;
}

export interface HandWork {
  /** The answer worked out by hand */
  output: Quantity;
  /** Speed as rounded on the way */
  speed?: Quantity;
  /** Flow as rounded on the way */
  flow?: Quantity;
  /** Width as rounded on the way */
  width?: Quantity;
  /** Area as rounded on the way */
  area?: Quantity;
}

export interface ChooseTipAnswer {
  /** Flow of mix through one tip. */
  flow_needed?: Quantity;
  /** The same as water, which tables are made with. */
  water_flow?: Quantity;
  /** The class asked for, as understood. */
  droplets_wanted?: string;
  /** Rate at the slowest speed without a rate controller. */
  rate_at_slowest?: Quantity;
  /** Rate at the fastest speed without a rate controller. */
  rate_at_fastest?: Quantity;
  /** Tips, best first; refused ones last. */
  choices?: Array<TipChoice>;
}

export interface TipChoice {
  /** Which tip. */
  name?: string;
  /** Its size, where it has one. */
  size?: string;
  /** Colour of the size: flow, not droplets. */
  colour?: string;
  /** The same in Spanish. */
  colour_spanish?: string;
  /** How it fits. */
  fit?: TipFit;
  /** Pressure that gives the rate at the usual speed. */
  pressure?: Quantity;
  /** Slowest speed a rate controller can hold. */
  slowest?: Quantity;
  /** Fastest speed a rate controller can hold. */
  fastest?: Quantity;
  /** Its class at that pressure. */
  droplet_class?: DropletClass;
  /** Tip strainer, mesh. */
  strainer_mesh?: number;
  /** What speaks for it. */
  reasons_for?: Array<string>;
  /** What speaks against it. */
  reasons_against?: Array<string>;
}

export type TipFit =
  | "fits" /* Meets everything entered. */
  | "partly" /* At the usual speed, but not over all speeds entered. */
  | "unproven" /* The table does not say enough to tell. */
  | "refused" /* Outside its pressures, or the wrong class. */;

export interface ChooseTipRequest {
  /** Mix wanted on the ground. */
  rate: Quantity;
  /** Usual ground speed. */
  speed: Quantity;
  /** Slowest speed on the job. */
  speed_low?: Quantity;
  /** Fastest speed on the job. */
  speed_high?: Quantity;
  /** The sprayer changes pressure with speed to hold the rate. */
  rate_controller?: boolean;
  /** Distance between tips. */
  spacing?: Quantity;
  /** Ground width served, in place of spacing. */
  width?: Quantity;
  /** How many tips serve that width; left out: one. */
  tips?: number;
  /** Lowest pressure the sprayer holds. */
  pressure_low?: Quantity;
  /** Highest pressure the sprayer holds. */
  pressure_high?: Quantity;
  /** Droplet class wanted, in the label's words: coarse or coarser. */
  droplets?: string;
  /** Least carrier the label allows. */
  carrier_min?: Quantity;
  /** Density of the mix, where it is not like water. */
  carrier_density?: Quantity;
  /** Tips to choose from; left out: sizes of the colour code. */
  table?: Array<TableTip>;
  /** What size numbers stand for. */
  convention?: SizeConvention;
}

export interface TableTip {
  /** What you call it. */
  name?: string;
  /** Size: 04, or 110-04 with the spray angle. */
  size?: string;
  /** What the size number stands for. */
  convention?: SizeConvention;
  /** Maker's flow, in place of a size. */
  rated_flow?: Quantity;
  /** Pressure of the maker's flow. */
  rated_pressure?: Quantity;
  /** How flow follows pressure; 0.5 for plain tips. */
  exponent?: number;
  /** Lowest pressure its maker allows. */
  pressure_low?: Quantity;
  /** Highest pressure its maker allows. */
  pressure_high?: Quantity;
  /** Its droplet class by pressure, as printed. */
  classes?: Array<ClassBand>;
  /** Strainer its maker asks for. */
  strainer_mesh?: number;
}

export interface CourseAnswer {
  /** Standard courses for the width */
  rows?: Array<CourseRow>;
  /** Part of the course to lay out */
  recommended?: string;
  /** Shortest course whose timing error is within the limit */
  shortest_length?: Quantity;
  /** The course of the part asked for */
  chosen?: CourseRow;
  /** The course of the length already laid out */
  laid?: CourseRow;
}

export interface CourseRow {
  /** Part of an acre, or the area */
  part?: string;
  /** Short rule that holds on this course; empty when none does */
  rule?: string;
  /** Ground the catch stands for */
  area?: Quantity;
  /** Exact course length */
  length?: Quantity;
  /** Length to stake out: whole feet or tenths of a metre */
  practical_length?: Quantity;
  /** What the short rule reads too much on the practical length */
  practical_error?: Quantity;
  /** Length as tables in print give it (340 ft2 over the width) */
  printed_length?: Quantity;
  /** Time to cover the course at the speed */
  time?: Quantity;
  /** Stopwatch slip as a share of that time */
  timing_error?: Quantity;
  /** Output that one fl oz caught means */
  one_fluid_ounce?: Quantity;
  /** Output that one pint caught means */
  one_pint?: Quantity;
  /** Output that one gallon caught means */
  one_gallon?: Quantity;
  /** Output that one millilitre caught means */
  one_millilitre?: Quantity;
  /** Output that one litre caught means */
  one_litre?: Quantity;
  /** Divide US fluid ounces caught by this to get gal/ac */
  fluid_ounces_divisor?: number;
  /** The shortest standard course that can be timed well enough */
  recommended?: boolean;
}

export interface CourseRequest {
  /** Ground width served by the tips whose spray is caught */
  width: Quantity;
  /** Ground speed, to tell how long each course takes */
  speed?: Quantity;
  /** One course wanted, by its area */
  part?: Quantity;
  /** A course length already laid out */
  laid_length?: Quantity;
  /** Slip of the stopwatch and its user; 0.25 s when not entered */
  timing_slip?: Quantity;
  /** Largest timing error accepted; 2 % when not entered */
  timing_limit?: Quantity;
}

export interface CrewAnswer {
  /** All the mix over all the ground. */
  crew_rate?: Quantity;
  /** The plain average, to compare. */
  arithmetic_mean?: Quantity;
  /** Highest output above the lowest. */
  spread?: Quantity;
  /** Label maximum over minimum that one recipe needs. */
  ratio_needed?: number;
  /** Label maximum over minimum. */
  ratio_of_label?: number;
  /** Whether one recipe can keep everyone within the label; left out while a limit is not entered. */
  one_recipe_is_lawful?: boolean;
  /** Output the recipe was mixed for. */
  recipe_tested?: Quantity;
  /** Everyone, under the recipe tested. */
  people?: Array<CrewMember>;
  /** Fewest recipes that keep everyone within the label. */
  recipes?: Array<RecipeGroup>;
}

export interface CrewMember {
  /** Who. */
  name?: string;
  /** Their output. */
  output?: Quantity;
  /** Above or below the crew rate. */
  from_crew?: Quantity;
  /** Product they really put on an area. */
  delivered?: LabelRate;
  /** Against the label's least product. */
  product_low?: CrewLimit;
  /** Against the label's most product. */
  product_high?: CrewLimit;
  /** Against the label's least carrier. */
  carrier_low?: CrewLimit;
  /** Against the label's most carrier. */
  carrier_high?: CrewLimit;
  /** Product in one of their tanks. */
  product_per_tank?: ProductAmount;
  /** Ground one tank covers. */
  area_per_tank?: Quantity;
}

export type CrewLimit =
  | "not_entered" /* The limit was not entered; nothing can be said. */
  | "within" /* Within the limit. */
  | "at_limit" /* Exactly at the limit. */
  | "under" /* Below the least. */
  | "over" /* Above the most. */;

export interface ProductAmount {
  /** Liquid product. */
  volume?: Quantity;
  /** Dry product. */
  mass?: Quantity;
  /** Active ingredient. */
  ingredient?: Quantity;
  /** Acid equivalent. */
  acid?: Quantity;
}

export interface RecipeGroup {
  /** Who can share this recipe. */
  people?: Array<string>;
  /** Output to mix it for. */
  mixed_for?: Quantity;
  /** Mixed for less, someone goes over the label. */
  mixed_for_low?: Quantity;
  /** Mixed for more, someone goes under the label. */
  mixed_for_high?: Quantity;
}

export interface CrewRequest {
  /** Everyone who sprays, with their output. */
  people: Array<CrewPerson>;
  /** How the work is shared. */
  sharing?: CrewSharing;
  /** Product wanted on an area. */
  product_rate?: LabelRate;
  /** Least the label allows, as typed from it. */
  product_min?: LabelRate;
  /** Most the label allows, as typed from it. */
  product_max?: LabelRate;
  /** Least carrier the label allows. */
  carrier_min?: Quantity;
  /** Most carrier the label allows. */
  carrier_max?: Quantity;
  /** Output the one recipe is mixed for; left out: the crew rate. */
  mixed_for?: Quantity;
  /** Tank of each, to measure product into. */
  tank?: Quantity;
}

export interface CrewPerson {
  /** Who. */
  name?: string;
  /** Their calibrated output at their own pace. */
  output: Quantity;
  /** Their flow, where flows differ. */
  flow?: Quantity;
  /** Their tank; left out: the tank of all. */
  tank?: Quantity;
}

export type CrewSharing =
  | "equal_flow" /* One shared tank, all with the same flow, same time. */
  | "own_flow" /* One shared tank, same time, each with a measured flow. */
  | "equal_area" /* Each treats the same area. */
  | "own_tanks" /* Each mixes for themselves. */;

export interface LearnersAnswer {
  /** Learners. */
  count?: number;
  /** Mean of the class, with its 95 % interval. */
  mean?: Quantity;
  /** Of one learner. */
  standard_deviation?: Quantity;
  /** Deviation over mean. */
  variation?: Quantity;
  /** Lowest output. */
  lowest?: Quantity;
  /** Whose. */
  lowest_by?: string;
  /** Highest output. */
  highest?: Quantity;
  /** Whose. */
  highest_by?: string;
  /** Highest over lowest, less one. */
  spread?: Quantity;
  /** Where the spread comes from. */
  spread_shares?: Array<SpreadShare>;
  /** One by one. */
  learners?: Array<LearnerResult>;
}

export interface SpreadShare {
  /** What the class measured differently. */
  source?: SpreadSource;
  /** Its deviation over the class, of its mean. */
  deviation?: Quantity;
  /** Share of the variance of the outputs. */
  share?: Quantity;
}

export type SpreadSource =
  | "speed" /* Walking or driving speed. */
  | "flow" /* What was caught, per time. */
  | "width" /* The width served. */
  | "refill" /* Water to refill. */
  | "area" /* The measured plot. */;

export interface LearnerResult {
  /** Who. */
  name?: string;
  /** What the figures give, with its 95 % interval. */
  output?: Quantity;
  /** Speed. */
  speed?: Quantity;
  /** Flow. */
  flow?: Quantity;
  /** Width. */
  width?: Quantity;
  /** Against the mean of the class. */
  from_mean?: Quantity;
  /** Where 95 of 100 like the others begin. */
  others_low?: Quantity;
  /** Where they end. */
  others_high?: Quantity;
  /** Whether this one lies outside the others. */
  outside?: boolean;
  /** The hand answer judged. */
  hand?: LearnerHand;
  /** Warnings about these figures. */
  remarks?: Array<string>;
}

export interface LearnerHand {
  /** The learner's own answer. */
  answer?: Quantity;
  /** Against what the learner's figures give. */
  difference?: Quantity;
  /** Agreement, rounding, shortcut or slip. */
  verdict?: LearnerHandVerdict;
  /** Code of the shortcut; empty when none. */
  shortcut?: string;
  /** The same in words. */
  text?: string;
}

export type LearnerHandVerdict =
  | "agrees" /* To the last digit given. */
  | "rounding" /* A figure on the way was rounded too early. */
  | "shortcut" /* A shortcut that does not hold here. */
  | "slip" /* Nothing known gives it. */;

export interface LearnersRequest {
  /** What each one measured. */
  learners: Array<Learner>;
  /** Sort of sprayer; backpack unless said. */
  sprayer?: SprayerKind;
  /** Width of everybody who says no other. */
  width?: Quantity;
  /** Course of everybody. */
  course_length?: Quantity;
  /** Catch time of everybody. */
  catch_time?: Quantity;
  /** Plot of everybody. */
  area?: Quantity;
  /** Number of tips that serve the width. */
  tips?: number;
  /** Whether a catch is of one tip or of all. */
  catch_covers?: CatchCovers;
}

export interface Learner {
  /** Name or number. */
  name: string;
  /** Width served; that of the class unless said. */
  width?: Quantity;
  /** Course; that of the class unless said. */
  course_length?: Quantity;
  /** Times for the course. */
  times?: Array<Quantity>;
  /** What was caught, each. */
  catches?: Array<Quantity>;
  /** How long; the course time unless said. */
  catch_time?: Quantity;
  /** Flow, when read from a meter. */
  flow?: Quantity;
  /** Speed, when read from a meter. */
  speed?: Quantity;
  /** Water back to the mark. */
  refill?: Quantity;
  /** Plot sprayed. */
  area?: Quantity;
  /** The learner's own answer. */
  hand_answer?: Quantity;
}

export interface LeftoverAnswer {
  /** Ground that would take it all at the job's rate. */
  absorbing_area?: Quantity;
  /** Product in the leftover mix. */
  products?: Array<LeftoverProduct>;
  /** The ways, best first. */
  options?: Array<LeftoverOption>;
}

export interface LeftoverProduct {
  /** The product. */
  name?: string;
  /** Of it in the mix that goes this way. */
  amount?: ProductAmount;
  /** What it adds on the ground. */
  adds?: LabelRate;
  /** Into the next load beside the leftover. */
  still_to_add?: ProductAmount;
  /** Label limits, with what the ground had before. */
  limits?: Array<LimitCheck>;
}

export interface LimitCheck {
  /** Which limit of the card. */
  limit?: string;
  /** How the delivered figure stands to it. */
  status?: LimitStatus;
  /** What would be delivered. */
  delivered?: string;
  /** The limit as typed. */
  allowed?: string;
  /** Delivered divided by the limit; 1 is exactly at it. */
  share?: number;
  /** Place on the label. */
  where?: string;
  /** What is missing. */
  why?: string;
}

export type LimitStatus =
  | "within" /* Respects the limit. */
  | "above" /* More than the label allows. */
  | "below" /* Less than the label asks for. */
  | "not_entered" /* Not typed from the label; not the same as none. */
  | "cannot_tell" /* A figure to compare with is missing. */;

export interface LeftoverOption {
  /** 1 is best. */
  rank?: number;
  /** What is done with it. */
  way?: LeftoverWay;
  /** How it stands to what was entered. */
  lawful?: Lawful;
  /** Which ground or job. */
  ground?: string;
  /** Leftover mix that can go this way. */
  mix?: Quantity;
  /** Ground it goes on. */
  area?: Quantity;
  /** Water to add first. */
  water?: Quantity;
  /** Product by product. */
  products?: Array<LeftoverProduct>;
  /** What to do, and what stands against it. */
  text?: string;
}

export type LeftoverWay =
  | "spray_untreated" /* At the job's rate on unsprayed ground. */
  | "spray_again_thin" /* Thinned, over ground just sprayed. */
  | "into_next_load" /* Part of the next load. */
  | "keep" /* Kept for the same use. */
  | "hand_in" /* As pesticide waste. */;

export type Lawful =
  | "by_what_was_entered" /* Nothing entered forbids it. */
  | "cannot_tell" /* A limit or an answer is missing. */
  | "no" /* Something entered forbids it. */;

export interface LeftoverRequest {
  /** Mix left in the tank. */
  left: Quantity;
  /** The mix as it was made. */
  products: Array<TankProduct>;
  /** Mix on an area, in this job. */
  mix_per_area: Quantity;
  /** Weight of the mix, for percent by weight; water unless said. */
  mix_density?: Quantity;
  /** Ground that could take it. */
  ground?: Array<LeftoverGround>;
  /** The next job of the same products. */
  next_job?: NextJob;
  /** Do the labels let the mix be kept? */
  labels_allow_keeping?: Answered;
}

export interface TankProduct {
  /** The product card. */
  card: ProductCard;
  /** The rate on the label's own basis. */
  rate: LabelRate;
  /** Which ground a rate per area counts; needed with bands. */
  counts?: Counts;
  /** What a weight or share in the rate counts; product unless said. */
  measures?: RateCounts;
  /** Which ingredient, when the product holds several. */
  ingredient?: string;
  /** What a percentage or "/100 gal" is counted in; the finished mix unless said. */
  share_of?: MixShare;
  /** Size of its container, to count rinse water as carrier. */
  jug?: Quantity;
  /** Put on this ground earlier this year; "0 fl oz/ac" when nothing was. */
  applied_this_year?: LabelRate;
  /** How often, earlier this year; 0 when never. */
  applications_this_year?: number;
}

export interface ProductCard {
  /** Name on the label. */
  name: string;
  /** Registration number: company-product[-distributor]. */
  registration?: string;
  /** Who else registered it, when the number is not of the EPA form. */
  registered_with?: string;
  /** Poured or weighed; liquid unless said. */
  form?: Form;
  /** What it is when it meets water; decides its place in the mixing order. */
  formulation?: Formulation;
  /** Active ingredients with their strengths. */
  ingredients?: Array<Ingredient>;
  /** Weight of a volume of the product as sold. */
  density?: Quantity;
  /** What the label allows, as typed from it. */
  limits?: LabelLimits;
}

export type Form =
  | "liquid" /* Poured: measured by volume. */
  | "dry" /* Weighed. */;

export type Formulation =
  | "water_conditioner" /* Ammonium sulphate and the like. */
  | "compatibility_agent" /* Keeps partners from gelling. */
  | "defoamer" /* Keeps foam down. */
  | "soluble_packet" /* Water-soluble bag. */
  | "soluble_granule" /* Dry, dissolves (SP, SG). */
  | "dispersible_granule" /* Dry flowable (DF, WG, WDG). */
  | "wettable_powder" /* Wettable powder (WP). */
  | "suspension" /* Liquid flowable, suspension concentrate (F, SC). */
  | "capsule_suspension" /* Microencapsulated (ME, CS). */
  | "emulsifiable_concentrate" /* EC: turns water milky. */
  | "soluble_liquid" /* True solution (SL). */
  | "surfactant" /* Non-ionic and other wetting agents. */
  | "oil" /* Crop oil, methylated seed oil. */
  | "drift_agent" /* Drift reducer, deposition aid. */
  | "dye" /* Marker dye. */
  | "other" /* Not said: placed by hand. */;

export interface Ingredient {
  /** The ingredient; for a salt or ester, the acid it comes from. */
  name: string;
  /** Liquid: active ingredient (a.i.) by volume, as on the label. */
  strength?: Quantity;
  /** Liquid: acid equivalent (a.e.) by volume, as on the label. */
  acid_strength?: Quantity;
  /** Active ingredient (a.i.) in the product by weight. */
  part?: Quantity;
  /** Acid equivalent (a.e.) in the product by weight. */
  acid_part?: Quantity;
}

export interface LabelLimits {
  /** Least in one application. */
  min_single_rate?: RateLimit;
  /** Most in one application. */
  max_single_rate?: RateLimit;
  /** Most on one piece of ground in a year. */
  max_yearly_rate?: RateLimit;
  /** Most applications in a year. */
  max_applications?: CountLimit;
  /** Least time between applications. */
  min_interval?: DurationLimit;
  /** Least mix per area. */
  min_carrier?: CarrierLimit;
  /** Most mix per area. */
  max_carrier?: CarrierLimit;
  /** Least share of product in the mix. */
  min_percent?: PercentLimit;
  /** Largest share of product in the mix. */
  max_percent?: PercentLimit;
  /** When people may enter without the label's protection. */
  reentry?: ReentryLimit;
  /** Until livestock other than dairy may graze. */
  grazing?: DurationLimit;
  /** Until lactating dairy animals may graze. */
  dairy_grazing?: DurationLimit;
  /** Until hay or forage may be cut. */
  haying?: DurationLimit;
  /** Off treated forage before slaughter. */
  slaughter?: DurationLimit;
  /** Last application to harvest. */
  harvest?: DurationLimit;
  /** Until seed or plants may go in. */
  replanting?: DurationLimit;
  /** Dry time after spraying. */
  rainfast?: DurationLimit;
  /** Finest droplets allowed: "coarse or coarser" is coarse. */
  finest_droplets?: DropletLimit;
  /** Coarsest droplets allowed. */
  coarsest_droplets?: DropletLimit;
  /** Least wind. */
  min_wind?: SpeedLimit;
  /** Most wind. */
  max_wind?: SpeedLimit;
  /** Highest air temperature. */
  max_temperature?: TemperatureLimit;
  /** Highest boom above the target. */
  max_boom_height?: LengthLimit;
  /** What the label asks people to wear. */
  protective_equipment?: TextLimit;
  /** Anything else that binds, in the label's words. */
  other?: Array<TextLimit>;
}

export interface RateLimit {
  /** The rate, on the basis the label uses. */
  value: LabelRate;
  /** Place on the label: page, section. */
  where?: string;
}

export interface CountLimit {
  /** How many. */
  value: number;
  /** Place on the label: page, section. */
  where?: string;
}

export interface DurationLimit {
  /** The time; "0 days" when the label says there is no wait. */
  value: Quantity;
  /** Place on the label: page, section. */
  where?: string;
}

export interface CarrierLimit {
  /** Mix per area. */
  value: Quantity;
  /** Place on the label: page, section. */
  where?: string;
}

export interface PercentLimit {
  /** Product in the mix by volume. */
  value: Quantity;
  /** Place on the label: page, section. */
  where?: string;
}

export interface ReentryLimit {
  /** Time after the end of spraying. */
  after?: Quantity;
  /** The label says: until the spray has dried. */
  until_dry?: boolean;
  /** Place on the label: page, section. */
  where?: string;
}

export interface DropletLimit {
  /** The class. */
  value: DropletLimitClass;
  /** Place on the label: page, section. */
  where?: string;
}

export type DropletLimitClass =
  | "extremely_fine" /* Finest class of ANSI/ASABE S572. */
  | "very_fine" /* Very fine. */
  | "fine" /* Fine. */
  | "medium" /* Medium. */
  | "coarse" /* Coarse. */
  | "very_coarse" /* Very coarse. */
  | "extremely_coarse" /* Extremely coarse. */
  | "ultra_coarse" /* Coarsest class of ANSI/ASABE S572. */;

export interface SpeedLimit {
  /** The wind speed. */
  value: Quantity;
  /** Place on the label: page, section. */
  where?: string;
}

export interface TemperatureLimit {
  /** The air temperature. */
  value: Quantity;
  /** Place on the label: page, section. */
  where?: string;
}

export interface LengthLimit {
  /** The length. */
  value: Quantity;
  /** Place on the label: page, section. */
  where?: string;
}

export interface TextLimit {
  /** The label's words. */
  text: string;
  /** Place on the label: page, section. */
  where?: string;
}

export type Counts =
  | "treated" /* The ground under the bands. */
  | "field" /* The whole field. */;

export type RateCounts =
  | "product" /* Product as sold. */
  | "ingredient" /* Active ingredient (a.i.). */
  | "acid" /* Acid equivalent (a.e.). */;

export type MixShare =
  | "finished_mix" /* Everything in the tank. */
  | "carrier" /* The water (or oil) alone. */;

export interface LeftoverGround {
  /** What you call it. */
  name: string;
  /** Ground that could be wetted. */
  net_area: Quantity;
  /** Is it a site on the label of every product? */
  on_label?: Answered;
  /** It was just sprayed at the job's rate. */
  sprayed_in_this_job?: boolean;
  /** Product by product; what is left out is not entered, not zero. */
  applied_this_year?: Array<AlreadyApplied>;
}

export type Answered =
  | "not_said" /* Not answered; not the same as no. */
  | "yes" /* Yes, read on the label. */
  | "no" /* No. */;

export interface AlreadyApplied {
  /** Name of a product of this mix. */
  product: string;
  /** Per area, this year, this job included. */
  rate: LabelRate;
  /** How often, this year, this job included. */
  applications?: number;
}

export interface NextJob {
  /** What you call it. */
  name: string;
  /** Its products and rates. */
  products: Array<TankProduct>;
  /** Its mix on an area. */
  mix_per_area: Quantity;
  /** How much mix its first load is. */
  next_load: Quantity;
}

export interface LoadsAnswer {
  /** Ground wetted. */
  treated_area?: Quantity;
  /** Whole field, when bands are sprayed. */
  field_area?: Quantity;
  /** Mix on the ground really wetted. */
  mix_per_treated_area?: Quantity;
  /** Mix that reaches the ground. */
  sprayed_mix?: Quantity;
  /** Mix to make up in all. */
  total_mix?: Quantity;
  /** Mix left in the sprayer at the end. */
  dead_volume?: Quantity;
  /** How many loads. */
  load_count?: number;
  /** Load by load. */
  loads?: Array<Load>;
  /** Product by product over the whole job. */
  products?: Array<ProductTotal>;
  /** How to measure with your own marks. */
  measuring?: Array<MeasureAdvice>;
  /** What goes in when. */
  order?: Array<OrderStep>;
  /** The strictest of the labels, limit by limit. */
  strictest?: StrictestLimits;
  /** What to mind at the mixing site. */
  cautions?: Array<string>;
}

export interface Load {
  /** First load is 1. */
  number?: number;
  /** Mix to make up. */
  fill?: Quantity;
  /** Mix of this fill that reaches the ground. */
  sprayed?: Quantity;
  /** Treated ground it covers. */
  area?: Quantity;
  /** Product by product. */
  products?: Array<LoadAmount>;
  /** From emptied jugs; counts as carrier. */
  rinse_water?: Quantity;
  /** To run in beside products and rinse water. */
  carrier?: Quantity;
}

export interface LoadAmount {
  /** The product. */
  name?: string;
  /** How much. */
  amount?: ProductAmount;
  /** Jugs emptied within this load. */
  jugs_emptied?: number;
}

export interface ProductTotal {
  /** The product. */
  name?: string;
  /** The loads added up. */
  total?: ProductAmount;
  /** Product on treated ground. */
  per_area?: LabelRate;
  /** Product in the finished mix. */
  per_mix?: LabelRate;
  /** Ingredient by ingredient. */
  ingredients?: Array<IngredientTotal>;
  /** Label limits beside what is delivered. */
  limits?: Array<LimitCheck>;
  /** Limits nobody typed from this label; not the same as no limit. */
  not_entered?: Array<string>;
}

export interface IngredientTotal {
  /** The ingredient. */
  name?: string;
  /** Active ingredient in the job. */
  ingredient?: Quantity;
  /** Acid equivalent in the job. */
  acid?: Quantity;
  /** Active ingredient on treated ground. */
  ingredient_per_area?: Quantity;
  /** Acid equivalent on treated ground. */
  acid_per_area?: Quantity;
}

export interface MeasureAdvice {
  /** The product. */
  product?: string;
  /** Holds from this load ... */
  first_load?: number;
  /** ... to this one. */
  last_load?: number;
  /** The exact amount. */
  exact?: string;
  /** The best way with your measures. */
  best?: MarkChoice;
  /** Nearest marks below and above, tool by tool. */
  choices?: Array<MarkChoice>;
  /** The best way is close enough. */
  fits?: boolean;
  /** Marks this fine would always fit. */
  finest_volume?: Quantity;
  /** A scale this fine would always fit. */
  finest_mass?: Quantity;
}

export interface MarkChoice {
  /** Which of your measures. */
  tool?: string;
  /** How often filled to its top mark. */
  full_measures?: number;
  /** Then once to this mark. */
  mark?: Quantity;
  /** Then once to this weight. */
  weight_mark?: Quantity;
  /** What that comes to. */
  volume?: Quantity;
  /** What that comes to. */
  mass?: Quantity;
  /** Measured minus exact, of exact. */
  error?: Quantity;
  /** The batch of mix this measure suits exactly. */
  batch?: Quantity;
  /** It would pass a label limit. */
  is_over_label?: boolean;
  /** How to measure it. */
  text?: string;
}

export interface OrderStep {
  /** First step is 1. */
  number?: number;
  /** What to do. */
  text?: string;
  /** What goes in now. */
  products?: Array<string>;
  /** Fill of this load, least. */
  fill_low?: Quantity;
  /** Fill of this load, most. */
  fill_high?: Quantity;
  /** Publication of this order. */
  source?: string;
}

export interface StrictestLimits {
  /** Least mix per area. */
  min_carrier?: StrictestCarrier;
  /** Most mix per area. */
  max_carrier?: StrictestCarrier;
  /** When people may enter. */
  reentry?: StrictestReentry;
  /** Until livestock other than dairy may graze. */
  grazing?: StrictestWait;
  /** Until dairy animals may graze. */
  dairy_grazing?: StrictestWait;
  /** Until hay or forage may be cut. */
  haying?: StrictestWait;
  /** Off treated forage before slaughter. */
  slaughter?: StrictestWait;
  /** Last application to harvest. */
  harvest?: StrictestWait;
  /** Until seed or plants may go in. */
  replanting?: StrictestWait;
  /** Dry time after spraying. */
  rainfast?: StrictestWait;
  /** Finest droplets allowed. */
  finest_droplets?: StrictestDroplets;
  /** Coarsest droplets allowed. */
  coarsest_droplets?: StrictestDroplets;
  /** Least wind. */
  min_wind?: StrictestSpeed;
  /** Most wind. */
  max_wind?: StrictestSpeed;
  /** Highest air temperature. */
  max_temperature?: StrictestTemperature;
  /** Highest boom. */
  max_boom_height?: StrictestLength;
}

export interface StrictestCarrier {
  /** The strictest value; absent when nobody entered one. */
  value?: Quantity;
  /** The value as it was typed from the label. */
  text?: string;
  /** Whose label binds. */
  product?: string;
  /** Place on that label. */
  where?: string;
  /** Products for which this was not entered; that is not the same as no limit. */
  not_entered_by?: Array<string>;
}

export interface StrictestReentry {
  /** The longest time any label asks for. */
  after?: Quantity;
  /** That time as it was typed from the label. */
  text?: string;
  /** Some label asks for dry spray. */
  until_dry?: boolean;
  /** Whose label binds. */
  product?: string;
  /** Place on that label. */
  where?: string;
  /** Products for which this was not entered. */
  not_entered_by?: Array<string>;
}

export interface StrictestWait {
  /** The strictest value; absent when nobody entered one. */
  value?: Quantity;
  /** The value as it was typed from the label. */
  text?: string;
  /** Whose label binds. */
  product?: string;
  /** Place on that label. */
  where?: string;
  /** Products for which this was not entered; that is not the same as no limit. */
  not_entered_by?: Array<string>;
}

export interface StrictestDroplets {
  /** The strictest value; absent when nobody entered one. */
  value?: DropletLimitClass;
  /** The value as it was typed from the label. */
  text?: string;
  /** Whose label binds. */
  product?: string;
  /** Place on that label. */
  where?: string;
  /** Products for which this was not entered; that is not the same as no limit. */
  not_entered_by?: Array<string>;
}

export interface StrictestSpeed {
  /** The strictest value; absent when nobody entered one. */
  value?: Quantity;
  /** The value as it was typed from the label. */
  text?: string;
  /** Whose label binds. */
  product?: string;
  /** Place on that label. */
  where?: string;
  /** Products for which this was not entered; that is not the same as no limit. */
  not_entered_by?: Array<string>;
}

export interface StrictestTemperature {
  /** The strictest value; absent when nobody entered one. */
  value?: Quantity;
  /** The value as it was typed from the label. */
  text?: string;
  /** Whose label binds. */
  product?: string;
  /** Place on that label. */
  where?: string;
  /** Products for which this was not entered; that is not the same as no limit. */
  not_entered_by?: Array<string>;
}

export interface StrictestLength {
  /** The strictest value; absent when nobody entered one. */
  value?: Quantity;
  /** The value as it was typed from the label. */
  text?: string;
  /** Whose label binds. */
  product?: string;
  /** Place on that label. */
  where?: string;
  /** Products for which this was not entered; that is not the same as no limit. */
  not_entered_by?: Array<string>;
}

export interface LoadsRequest {
  /** Ground really wetted; with bands, under the bands. */
  net_area?: Quantity;
  /** Ground in the plan; with bands, the whole field. */
  planned_area?: Quantity;
  /** When only bands are sprayed. */
  bands?: Bands;
  /** Mix on an area, from the calibration. */
  mix_per_area?: Quantity;
  /** Which ground it counts; needed with bands. */
  mix_counts?: Counts;
  /** Make this much mix instead of starting from an area. */
  mix_volume?: Quantity;
  /** What can be sprayed out of one fill. */
  tank_usable?: Quantity;
  /** Mix that stays in sump and hoses. */
  dead_volume?: Quantity;
  /** How to divide the job; equal loads unless said. */
  split?: Split;
  /** What goes in, each on its label's basis. */
  products: Array<TankProduct>;
  /** Weight of the mix, for percent by weight; water unless said. */
  mix_density?: Quantity;
  /** How often each emptied jug is rinsed; 3 unless said. */
  rinse_times?: number;
  /** How full the jug is for rinsing; a quarter under 5 gal, a fifth from 5 gal on, unless said. */
  rinse_fill?: Quantity;
  /** Your own measures and their marks. */
  tools?: Array<MeasuringTool>;
  /** How closely to measure; 5 % unless said. */
  measure_within?: Quantity;
  /** Published mixing order; label_order goes before it. */
  order?: OrderConvention;
  /** Product names in the order their labels give. */
  label_order?: Array<string>;
}

export interface Bands {
  /** Width of one band. */
  band_width: Quantity;
  /** From row to row. */
  row_spacing: Quantity;
}

export type Split =
  | "equal" /* Every load the same. */
  | "full_then_rest" /* Full tanks, then the rest. */;

export interface MeasuringTool {
  /** What you call it. */
  name: string;
  /** The one product its marks are true for. */
  only_for?: string;
  /** Its marks, one by one. */
  marks?: Array<Quantity>;
  /** Distance between even marks. */
  step?: Quantity;
  /** Its top mark, when the marks are even. */
  holds?: Quantity;
  /** Marks in weight, one by one. */
  weight_marks?: Array<Quantity>;
  /** Finest division of a scale. */
  weight_step?: Quantity;
  /** The most the scale weighs at once. */
  weight_holds?: Quantity;
}

export type OrderConvention =
  | "as_label" /* As the labels say (label_order). */
  | "dry_suspension_solution_emulsion" /* A-W-A-M-L-E-S; start half to three quarters full. */
  | "dry_liquid_emulsion_capsule" /* Start a third full; microcapsules after emulsifiable concentrates. */
  | "dry_suspension_emulsion_solution" /* A-P-P-L-E-S; true solutions last. */
  | "packet_dry_conditioner_liquid" /* Packets and dry products before the water conditioner. */;

export interface PracticeAnswer {
  /** The sheet, with its key. */
  problems?: Array<PracticeProblem>;
  /** The answers judged. */
  checks?: Array<PracticeCheck>;
  /** How many of them are right. */
  right?: number;
}

export interface PracticeProblem {
  /** Number on the sheet. */
  number?: number;
  /** What it practises. */
  topic?: PracticeTopic;
  /** The problem. */
  text?: string;
  /** What is asked. */
  asks?: string;
  /** The figures of the text. */
  givens?: Array<PracticeGiven>;
  /** The key. */
  answer?: PracticeKey;
  /** Difference to each side that is still right. */
  accept_within?: number;
  /** How the operation works it out. */
  working?: Array<PracticeStep>;
  /** The likeliest wrong way. */
  common_mistake?: CommonMistake;
}

export type PracticeTopic =
  | "course" /* Length of a course. */
  | "calibration" /* Output by course and catch. */
  | "refill" /* Output by refilling. */
  | "crew" /* One tank, several paces. */
  | "loads" /* Product in each of equal loads. */
  | "percent_solution" /* A percent mix per area. */
  | "stems" /* Cuts under a ceiling. */
  | "rinse" /* What rinsing leaves. */
  | "substitute" /* Another concentrate. */;

export interface PracticeGiven {
  /** What is given. */
  name?: string;
  /** The figure with its unit. */
  value?: string;
}

export interface PracticeKey {
  /** The answer. */
  value?: number;
  /** Its unit. */
  unit?: string;
}

export interface PracticeStep {
  /** What is worked out. */
  text?: string;
  /** The relation with its numbers. */
  expression?: string;
  /** What comes out. */
  result?: string;
  /** Publication, when there is one. */
  source?: string;
}

export interface CommonMistake {
  /** What was done wrongly. */
  text?: string;
  /** What that gives, in the unit of the answer. */
  wrong_answer?: number;
}

export interface PracticeCheck {
  /** Number of the problem. */
  number?: number;
  /** What was typed. */
  given?: string;
  /** How it is judged. */
  verdict?: PracticeVerdict;
  /** Against the key. */
  difference?: Quantity;
  /** Why. */
  text?: string;
}

export type PracticeVerdict =
  | "right" /* Within what is accepted. */
  | "rounding" /* A figure rounded too early, or the answer itself. */
  | "mistake" /* What a known mistake gives. */
  | "wrong" /* Does not follow from the figures. */
  | "not_read" /* No number in a fitting unit. */;

export interface PracticeRequest {
  /** The same number gives the same sheet; 1 unless said. */
  seed?: number;
  /** Topics in turn; all unless said. */
  topics?: Array<PracticeTopic>;
  /** Problems on the sheet, 1 to 40; 8 unless said. */
  count?: number;
  /** Round figures, or as read in the field. */
  difficulty?: PracticeDifficulty;
  /** Language of the texts. */
  language?: PracticeLanguage;
  /** Answers to check. */
  given_answers?: Array<GivenAnswer>;
}

export type PracticeDifficulty =
  | "plain" /* Round figures. */
  | "field" /* Figures as a stopwatch and a jug give them. */;

export type PracticeLanguage =
  | "en" /* English. */
  | "es" /* Spanish. */;

export interface GivenAnswer {
  /** Number of the problem. */
  number: number;
  /** The answer as typed. */
  text: string;
}

export interface RecordCheckAnswer {
  /** One judgement per authority, in the order asked. */
  checks?: Array<AuthorityCheck>;
  /** Whether no required field is absent. */
  nothing_missing?: boolean;
  /** The earliest of the deadlines. */
  first_deadline?: string;
  /** The latest of the retention days. */
  keep_until?: string;
}

export interface AuthorityCheck {
  /** Whose rule it is. */
  authority?: string;
  /** Where the rule stands. */
  citation?: string;
  /** Whether the rule counts here. */
  standing?: Standing;
  /** Why it stands so; empty when it plainly counts. */
  why?: string;
  /** Required fields the record does not hold. */
  missing?: Array<RecordField>;
  /** Absent fields wanted only in the case their note states. */
  to_decide?: Array<RecordField>;
  /** Absent fields that are recommended. */
  advised?: Array<RecordField>;
  /** Wanted fields the record holds. */
  present?: Array<RecordField>;
  /** Last day (and time) to complete the record. */
  deadline?: string;
  /** How the record stands against it. */
  timeliness?: Timeliness;
  /** Day until which the record must be kept. */
  keep_until?: string;
  /** What rests on memory or on a description by others. */
  to_verify?: Array<string>;
  /** What else is known about the rule. */
  note?: string;
}

export type Standing =
  | "in_force" /* The rule counts. */
  | "unsettled" /* It depends on something not said; judged as if it counts. */
  | "does_not_apply" /* The rule is about another kind of application. */
  | "not_yet" /* The rule starts after the application. */
  | "rescinded" /* The rule has ended and asks for nothing. */;

export interface RecordField {
  /** Name of the field for programs. */
  key?: string;
  /** Label in English. */
  label?: string;
  /** Label in Spanish. */
  label_es?: string;
  /** In what form, or in what case, it is wanted. */
  note?: string;
  /** Publication that says so. */
  source?: string;
}

export type Timeliness =
  | "on_time" /* Completed by the deadline. */
  | "late" /* Completed after the deadline. */
  | "open" /* Not completed; the deadline has not passed. */
  | "overdue" /* Not completed; the deadline has passed. */
  | "no_deadline" /* No deadline is known for this authority. */;

export interface RecordCheckRequest {
  /** Whose rules to judge by, as named in the rule tables: "40 CFR 171.303", "Texas", "good practice". */
  authorities: Array<string>;
  /** Day of the application, year-month-day. */
  date: string;
  /** Day the application ended, when it was another. */
  end_date?: string;
  /** Local time the application ended, "16:30". */
  end_time?: string;
  /** Keys of the fields the record holds. */
  fields?: Array<string>;
  /** Whether a restricted-use product was applied. */
  restricted_use?: boolean;
  /** Whether the Worker Protection Standard covers the place. */
  worker_protection?: boolean;
  /** Whether the site grows an agricultural commodity. */
  commodity?: boolean;
  /** Day the record was completed. */
  completed?: string;
  /** Local time the record was completed, "17:15". */
  completed_time?: string;
  /** Day of asking; rules count or not on this day. */
  as_of: string;
}

export interface ReentryAnswer {
  /** Place by place. */
  places?: Array<ReentryPlaceAnswer>;
}

export interface ReentryPlaceAnswer {
  /** The place. */
  name?: string;
  /** End of the last load. */
  ended?: string;
  /** Act by act. */
  acts?: Array<ReentryAct>;
  /** Some label asks for dry spray besides. */
  until_dry?: boolean;
  /** The last of all, when all are known; else empty. */
  everything_from?: string;
}

export interface ReentryAct {
  /** What waits. */
  act?: Act;
  /** Whether it is known. */
  status?: ReentryStatus;
  /** When it may begin; empty when not known. */
  from?: string;
  /** Last moment to take animals off before the slaughter planned. */
  animals_off_by?: string;
  /** When not known: the least that the labels read ask for. */
  not_before?: string;
  /** Longest wait entered. */
  wait?: Quantity;
  /** And not before the spray has dried. */
  until_dry?: boolean;
  /** Whose label binds. */
  product?: string;
  /** Place on that label. */
  where?: string;
  /** Products for which it was not entered. */
  not_entered_by?: Array<string>;
  /** The same in words. */
  text?: string;
}

export type Act =
  | "enter" /* People without the label's protective equipment. */
  | "graze" /* Livestock other than dairy. */
  | "graze_dairy" /* Lactating dairy animals. */
  | "cut_hay" /* Cutting hay or forage. */
  | "harvest" /* Harvest of the crop. */
  | "replant" /* Seed or plants going in. */
  | "be_rained_on" /* Rain without washing the spray off. */
  | "slaughter" /* Animals off treated forage before slaughter. */;

export type ReentryStatus =
  | "known" /* Every label was read for it. */
  | "not_known" /* At least one label was not read for it; not zero. */;

export interface ReentryRequest {
  /** Product cards with the waits of their labels. */
  products: Array<ProductCard>;
  /** Where and until when was sprayed. */
  places: Array<ReentryPlace>;
  /** When animals are to be slaughtered, with the zone. */
  slaughter_planned?: string;
}

export interface ReentryPlace {
  /** Paddock, stand or other ground. */
  name: string;
  /** End of the last load there, with the zone: 2031-05-04T14:20-05:00. */
  ended: string;
  /** Products used there, by name; all unless said. */
  products?: Array<string>;
}

export interface RinseAnswer {
  /** Strength left, of the old mix. */
  residue?: Quantity;
  /** Left by the same water at once. */
  one_big_rinse?: Quantity;
  /** One big rinse over the rinses asked for. */
  times_better?: number;
  /** After each rinse. */
  steps?: Array<RinseStep>;
  /** Rinses that reach the target. */
  rinses_needed?: number;
  /** Water of them all. */
  water_needed?: Quantity;
  /** Strength they leave. */
  residue_reached?: Quantity;
  /** Least water that reaches the target, by the number of rinses. */
  least_water?: Array<LeastWater>;
  /** Rinse water of the jugs. */
  jug?: JugRinseAnswer;
}

export interface RinseStep {
  /** Rinses so far. */
  rinses?: number;
  /** Water used so far. */
  water?: Quantity;
  /** Strength left, of the old mix. */
  residue?: Quantity;
}

export interface LeastWater {
  /** Equal rinses. */
  rinses?: number;
  /** Water of each. */
  each?: Quantity;
  /** Water of all. */
  total?: Quantity;
}

export interface JugRinseAnswer {
  /** Water in one jug for one rinse. */
  each_rinse?: Quantity;
  /** All of it; counts as carrier in the load. */
  water?: Quantity;
  /** Share of the jug filled. */
  fill?: number;
  /** Of the product that clung to the jug, still there. */
  left?: Quantity;
}

export interface RinseRequest {
  /** Liquid that stays in pump, hoses, filters and sump when the sprayer has run empty. */
  trapped?: Quantity;
  /** Clean water of one rinse. */
  rinse_volume?: Quantity;
  /** How many rinses. */
  rinses?: number;
  /** Strength that may be left in what stays, of the old mix. */
  target?: Quantity;
  /** Size of the tank, for the one-tenth rule of thumb. */
  tank?: Quantity;
  /** Jugs rinsed into the tank. */
  jug?: JugRinse;
}

export interface JugRinse {
  /** What the jug held. */
  size: Quantity;
  /** How many; 1 unless said. */
  jugs?: number;
  /** How full it is for each rinse; a quarter under 5 gal and a fifth from there unless said. */
  fill?: Quantity;
  /** Rinses of each jug; 3 unless said. */
  rinses?: number;
  /** Product that clings to it after draining. */
  left_in_jug?: Quantity;
}

export interface SpotAnswer {
  /** Measured on the job or the test plot. */
  mix_per_area?: Quantity;
  /** Product by product. */
  products?: Array<SpotProduct>;
  /** Fill by fill. */
  fills?: Array<SpotFill>;
  /** Mix that wets one plant. */
  per_plant?: Quantity;
  /** Mix for all plants. */
  mix_for_plants?: Quantity;
}

export interface SpotProduct {
  /** Name on the label. */
  name?: string;
  /** Share of the finished mix. */
  of_mix?: Quantity;
  /** The same mix, counted of the water. */
  of_carrier?: Quantity;
  /** Liquid product in a volume of mix. */
  volume_per_mix?: Quantity;
  /** Dry product in a volume of mix. */
  mass_per_mix?: Quantity;
  /** The hidden rate. */
  volume_per_area?: Quantity;
  /** The hidden rate of a dry product. */
  mass_per_area?: Quantity;
  /** Acid equivalent on the ground. */
  acid_per_area?: Quantity;
  /** Active ingredient on the ground. */
  ingredient_per_area?: Quantity;
  /** The hidden rate in handy units. */
  per_area_text?: string;
  /** Product in what was sprayed. */
  used_text?: string;
  /** Strongest mix that no entered limit forbids at this mix per area. */
  strongest?: Quantity;
  /** The same in handy units. */
  strongest_text?: string;
  /** The limit that binds it. */
  strongest_by?: string;
  /** Most mix per area at the strength asked for. */
  most_mix_per_area?: Quantity;
  /** Mix of that strength that may still go on. */
  mix_left?: Quantity;
  /** Every limit of the card. */
  checks?: Array<LimitCheck>;
}

export interface SpotFill {
  /** Finished mix. */
  fill?: Quantity;
  /** Water or oil in it. */
  carrier?: Quantity;
  /** Product by product. */
  products?: Array<SpotMeasure>;
  /** Ground it covers at the measured mix per area. */
  covers?: Quantity;
}

export interface SpotMeasure {
  /** Name on the label. */
  name?: string;
  /** To measure out. */
  amount?: ProductAmount;
}

export interface SpotRequest {
  /** Products with their rates, on any basis. */
  products: Array<TankProduct>;
  /** Mix put on the area, measured. */
  sprayed?: Quantity;
  /** Ground really wetted. */
  area?: Quantity;
  /** Mix per area measured on a test plot; never assumed. */
  mix_per_area?: Quantity;
  /** Tanks, backpacks or jugs to work amounts out for. */
  fills?: Array<Quantity>;
  /** Of the finished mix, for percent by weight. */
  mix_density?: Quantity;
  /** How many plants are sprayed to wet. */
  plants?: number;
  /** Mix that wets one plant. */
  per_plant?: Quantity;
  /** Of the gun, where that was caught instead. */
  flow?: Quantity;
  /** To wet one plant. */
  time_per_plant?: Quantity;
}

export interface SprayWindowAnswer {
  /** Go by the limits entered, stop, or not known. */
  verdict?: WindowVerdict;
  /** Why. */
  text?: string;
  /** Readings that still count. */
  readings_used?: number;
  /** Age of the last reading. */
  last_reading_age?: Quantity;
  /** When to read again. */
  readings_good_until?: string;
  /** Mean of the readings that count. */
  mean_wind?: Quantity;
  /** Lowest of them. */
  lowest_wind?: Quantity;
  /** Highest of them. */
  highest_wind?: Quantity;
  /** Greatest gust. */
  greatest_gust?: Quantity;
  /** Mean direction on the circle. */
  mean_wind_from?: Quantity;
  /** Its point of the compass. */
  mean_wind_from_word?: string;
  /** 1 when all directions agree, 0 when they cancel. */
  resultant_length?: number;
  /** Circular standard deviation. */
  direction_deviation?: Quantity;
  /** Row by row. */
  checks?: Array<WindowRow>;
  /** What nobody typed, or not for all. */
  not_entered?: Array<string>;
  /** Rain expected less the rainfast time. */
  latest_stop?: string;
  /** Until then. */
  time_left?: Quantity;
}

export type WindowVerdict =
  | "go" /* Go by the limits entered. */
  | "stop" /* Stop. */
  | "not_known" /* Something that decides it is not known. */;

export interface WindowRow {
  /** What is judged. */
  what?: WindowCheck;
  /** Go, stop, not known or not entered. */
  verdict?: CheckVerdict;
  /** The worst of the readings that count. */
  reading?: string;
  /** The strictest limit entered. */
  limit?: string;
  /** Who sets it. */
  whose?: string;
  /** What is left; below zero when beyond. */
  margin?: string;
  /** Limits it was not entered for. */
  not_entered_by?: Array<string>;
  /** The same in words. */
  text?: string;
}

export type WindowCheck =
  | "reading_age" /* Whether a reading still counts. */
  | "inversion" /* Warm air above cool, seen or measured. */
  | "calm" /* Wind under 3 mph. */
  | "max_wind" /* Highest wind. */
  | "min_wind" /* Lowest wind. */
  | "max_gust" /* Highest gust. */
  | "max_temperature" /* Highest temperature. */
  | "min_temperature" /* Lowest temperature. */
  | "min_humidity" /* Lowest humidity. */
  | "keep_away" /* Places the wind must not blow at. */
  | "wind_from_allowed" /* Where the wind must come from. */
  | "rain" /* Time to dry before rain. */;

export type CheckVerdict =
  | "go" /* Within the strictest limit entered. */
  | "stop" /* Beyond it. */
  | "not_known" /* Nothing read to judge it by. */
  | "not_entered" /* No such limit was typed; not the same as none. */;

export interface SprayWindowRequest {
  /** The weather as read where the spraying is. */
  readings: Array<WeatherReading>;
  /** Limits as typed, one entry for each label or rule. */
  limits?: Array<WeatherLimits>;
  /** The time of asking, with the zone. */
  now: string;
  /** How long a reading counts; 30 min unless said. */
  reading_good_for?: Quantity;
  /** When rain is forecast, with the zone. */
  rain_expected?: string;
  /** Longest dry time the job asks before rain. */
  rainfast?: Quantity;
}

export interface WeatherReading {
  /** When, with the zone: 2031-05-04T14:20-05:00. */
  taken: string;
  /** Wind speed; 0 mph is calm. */
  wind: Quantity;
  /** Highest gust of the same minutes. */
  gust?: Quantity;
  /** Where it comes from: degrees, or a point of the compass. */
  wind_from?: string;
  /** Air temperature. */
  temperature?: Quantity;
  /** Relative humidity. */
  humidity?: Quantity;
  /** Height above ground it was read at. */
  at_height?: Quantity;
  /** Signs of an inversion seen, or none_seen. */
  cues?: Array<InversionCue>;
  /** Temperature at two heights. */
  measured_inversion?: MeasuredInversion;
}

export type InversionCue =
  | "none_seen" /* Somebody looked and saw none of them. */
  | "still_air" /* No wind to feel, or from all sides in turn. */
  | "smoke_or_dust_hangs" /* In a layer, not rising. */
  | "fog_or_dew" /* Fog, mist, dew or frost. */
  | "clear_calm_dusk_to_dawn" /* Clear sky and little wind between evening and morning. */
  | "clouds_dying_out" /* Fair-weather clouds vanish. */
  | "cold_air_pools" /* Colder in the hollow than on the slope. */;

export interface MeasuredInversion {
  /** Height of the low thermometer. */
  low_height: Quantity;
  /** What it reads. */
  low_temperature: Quantity;
  /** Height of the high thermometer. */
  high_height: Quantity;
  /** What it reads. */
  high_temperature: Quantity;
}

export interface WeatherLimits {
  /** Whose limits: product, contract, state rule. */
  name: string;
  /** Highest wind. */
  max_wind?: Quantity;
  /** Lowest wind. */
  min_wind?: Quantity;
  /** Highest gust. */
  max_gust?: Quantity;
  /** Highest air temperature. */
  max_temperature?: Quantity;
  /** Lowest air temperature. */
  min_temperature?: Quantity;
  /** Lowest relative humidity. */
  min_humidity?: Quantity;
  /** Places the wind must not blow at, by bearing. */
  keep_away?: Array<WindSector>;
  /** Where the wind must come from. */
  wind_from_allowed?: Array<WindSector>;
  /** Dry time the label asks before rain. */
  rainfast?: Quantity;
}

export interface WindSector {
  /** The place: school, creek. */
  name?: string;
  /** Degrees, or a point of the compass. */
  bearing: string;
  /** Angle to each side; 45 degrees unless said. */
  half_angle?: Quantity;
}

export interface StemsAnswer {
  /** One cut, product by product. */
  doses?: Array<StemDose>;
  /** Every ceiling as a number of cuts. */
  ceilings?: Array<StemCeiling>;
  /** The strictest ceiling, whole cuts. */
  cuts_per_acre?: number;
  /** The strictest ceiling, whole cuts. */
  cuts_per_hectare?: number;
  /** Allowed on the whole ground. */
  cuts_on_area?: number;
  /** For the stems counted. */
  cuts_planned?: number;
  /** Left on the whole ground; below 0 when over the ceiling. */
  cuts_remaining?: number;
  /** Of the strictest ceiling, on the whole ground. */
  share_used?: Quantity;
  /** Left on the ground walked so far. */
  cuts_remaining_here?: number;
  /** Cuts made on the ground walked so far. */
  density?: Quantity;
  /** Ground the cuts left cover at that density. */
  area_left_to_cover?: Quantity;
  /** In the bottle, for all cuts planned. */
  liquid?: Quantity;
  /** Oil or water in it. */
  carrier?: Quantity;
}

export interface StemDose {
  /** Name on the label. */
  product?: string;
  /** Product as sold in one cut. */
  volume?: Quantity;
  /** Acid equivalent in one cut. */
  acid?: Quantity;
  /** Active ingredient in one cut. */
  ingredient?: Quantity;
  /** Product for all cuts planned. */
  stock?: Quantity;
  /** The same in handy units. */
  stock_text?: string;
}

export interface StemCeiling {
  /** Whose ceiling. */
  product?: string;
  /** ceiling, max_single_rate or max_yearly_rate. */
  limit?: string;
  /** As typed from the label. */
  allowed?: string;
  /** Place on the label. */
  where?: string;
  /** Left of a yearly one after earlier use. */
  left?: string;
  /** Exact; may not be reached in part of a cut. */
  cuts?: Quantity;
  /** Whole cuts, rounded down. */
  per_acre?: number;
  /** Whole cuts, rounded down. */
  per_hectare?: number;
  /** The strictest of all. */
  governs?: boolean;
}

export interface StemsRequest {
  /** What is in the bottle. */
  products: Array<StemProduct>;
  /** Liquid for each cut, or for each stem. */
  dose: Quantity;
  /** Cuts for an inch of diameter (dbh). */
  cuts_per_inch?: number;
  /** Cuts for a stem; 1 unless said. */
  cuts_per_stem?: number;
  /** Stems counted by diameter. */
  stems_by_size?: Array<StemClass>;
  /** Stems, where they were not sorted by size. */
  stems?: number;
  /** Ground of the whole job. */
  area?: Quantity;
  /** Ground walked so far. */
  area_done?: Quantity;
  /** Cuts so far: the live count. */
  cuts_made?: number;
}

export interface StemProduct {
  /** The product card. */
  card: ProductCard;
  /** Of the liquid in the bottle; undiluted unless said. */
  share?: Quantity;
  /** Most on an area, as the label writes it. */
  ceiling?: LabelRate;
  /** What a weight in the ceiling counts; product unless said. */
  measures?: RateCounts;
  /** Which ingredient, when it holds several. */
  ingredient?: string;
  /** Put on this ground earlier this year; "0 lb a.e./ac" when nothing was. */
  applied_this_year?: LabelRate;
}

export interface StemClass {
  /** At breast height (dbh). */
  diameter: Quantity;
  /** How many of that size. */
  stems: number;
}

export interface SubstituteAnswer {
  /** The ingredient that was matched. */
  ingredient?: string;
  /** What both were compared in. */
  matched?: DoseSubstance;
  /** The dose as acid equivalent. */
  acid_per_area?: Quantity;
  /** The dose as active ingredient. */
  ingredient_per_area?: Quantity;
  /** Rate of the product in hand. */
  rate?: LabelRate;
  /** The same in handy units. */
  text?: string;
  /** Product in hand for one of the planned. */
  amount_ratio?: Quantity;
  /** Limits of the new label beside what is delivered. */
  limits?: Array<LimitCheck>;
  /** Limits nobody typed from the new label; not the same as no limit. */
  not_entered?: Array<string>;
}

export type DoseSubstance =
  | "acid" /* Acid equivalent (a.e.). */
  | "ingredient" /* Active ingredient (a.i.). */;

export interface SubstituteRequest {
  /** The product the plan was made with. */
  planned: ProductCard;
  /** Its rate in the plan. */
  rate: LabelRate;
  /** What a weight or share in the rate counts; product unless said. */
  measures?: RateCounts;
  /** The product to be used. */
  in_hand: ProductCard;
  /** The one to match, when a product holds several. */
  ingredient?: string;
  /** Mix on an area, to compare every limit. */
  mix_per_area?: Quantity;
  /** Weight of the mix, for percent by weight; water unless said. */
  mix_density?: Quantity;
  /** Of the product in hand on this ground; "0 fl oz/ac" when none. */
  applied_this_year?: LabelRate;
  /** Of the product in hand on this ground; 0 when none. */
  applications_this_year?: number;
}

export interface TipCheckAnswer {
  /** Every tip, in order. */
  tips?: Array<TipResult>;
  /** Mean flow of the set. */
  mean?: Quantity;
  /** Coefficient of variation, with n - 1. */
  variation?: Quantity;
  /** The same with n. */
  variation_population?: Quantity;
  /** Maker's flow at the measured pressure. */
  rated?: Quantity;
  /** Mean above or below the rating. */
  mean_from_rating?: Quantity;
  /** The limits that judged, as figures. */
  limits?: TipLimitFigures;
  /** The limit that judged. */
  limit_text?: string;
  /** Where it is printed. */
  limit_source?: string;
  /** Tips to replace. */
  replace?: Array<number>;
  /** Tips to clean and catch again. */
  clean?: Array<number>;
  /** Replace the whole set. */
  replace_all?: boolean;
  /** Mean flow once those are put right. */
  mean_after?: Quantity;
  /** That mean against the rating. */
  after_from_rating?: Quantity;
  /** Rate with the tips as they are. */
  rate_now?: Quantity;
  /** Rate once those are put right. */
  rate_after?: Quantity;
  /** Rate if every tip gave its rating. */
  rate_as_rated?: Quantity;
  /** Where a rate controller would hold the pressure, as a part of the right one. */
  controller_pressure?: Quantity;
  /** Wear since the earlier check, and what is left. */
  wear?: WearForecast;
  /** What other published limits would say. */
  other_limits?: Array<OtherRuleOutcome>;
}

export interface TipResult {
  /** Number along the boom, from 1. */
  tip?: number;
  /** What it was caught at. */
  flow?: Quantity;
  /** Above or below the rating. */
  from_rating?: Quantity;
  /** Above or below the mean. */
  from_mean?: Quantity;
  /** How it stands. */
  verdict?: TipVerdict;
  /** What to do, in a word. */
  action?: TipAction;
  /** The last digit read decides the verdict. */
  reading_decides?: boolean;
  /** What to do. */
  what_to_do?: string;
  /** The other size it reads like. */
  reads_like?: string;
}

export type TipVerdict =
  | "ok" /* Within the limits. */
  | "at_limit" /* Exactly at a limit, so not over it. */
  | "high_worn" /* Over the high limit: worn or damaged. */
  | "low_clogged" /* Under the low limit: clogged, or a smaller size. */
  | "other_size" /* Out of limits, and reads like another size. */;

export type TipAction =
  | "keep" /* Keep it. */
  | "watch" /* Watch it at the next check. */
  | "replace" /* Replace it. */
  | "clean" /* Clean it and catch again. */;

export interface TipLimitFigures {
  /** Most a tip may be above the rating. */
  above_rating?: Quantity;
  /** Most a tip may be below the rating. */
  below_rating?: Quantity;
  /** Most a tip may be above the mean. */
  above_mean?: Quantity;
  /** Most a tip may be below the mean. */
  below_mean?: Quantity;
}

export interface WearForecast {
  /** Rise of the mean since, as a part of the rating. */
  gained?: Quantity;
  /** Ground until the mean reaches the limit. */
  area_left?: Quantity;
  /** Hours until the mean reaches the limit. */
  time_left?: Quantity;
}

export interface OtherRuleOutcome {
  /** The other limit. */
  limit?: TipLimitRule;
  /** The limit in words. */
  text?: string;
  /** Where it is printed. */
  source?: string;
  /** Tips it would condemn. */
  out?: Array<number>;
  /** Tips exactly at it. */
  at_limit?: Array<number>;
}

export type TipLimitRule =
  | "worn_10_low_5" /* Replace over the maker's rating by 10 %; clean under it by 5 %. */
  | "rating_10" /* Within 10 % of the maker's rating. */
  | "rating_5" /* Within 5 % of the maker's rating. */
  | "rating_10_and_mean_5" /* Within 10 % of the rating and within 5 % of the mean. */
  | "mean_5" /* Within 5 % of the mean. */
  | "mean_5_clean_low" /* Within 5 % of the mean; high ones replaced, low ones cleaned. */
  | "mean_10" /* Within 10 % of the mean. */
  | "french_inspection" /* 15 % of the rating, 10 % under 1 L/min; over a third bad replaces all. */
  | "european_in_use" /* From memory, not read: never a verdict. */
  | "own" /* Limits of your own. */;

export interface TipCheckRequest {
  /** Flow of each tip along the boom. */
  flows?: Array<Quantity>;
  /** What each tip put out, all caught for catch_time. */
  volumes?: Array<Quantity>;
  /** How long each tip was caught. */
  catch_time?: Quantity;
  /** The same one by one, where they were not caught alike. */
  catches?: Array<TipCatch>;
  /** Size on the tips: 04, or 110-04 with the spray angle. */
  size?: string;
  /** What the size number stands for. */
  convention?: SizeConvention;
  /** Maker's flow, in place of a size. */
  rated_flow?: Quantity;
  /** Pressure of the maker's flow. */
  rated_pressure?: Quantity;
  /** How flow follows pressure; 0.5 for all plain tips. */
  exponent?: number;
  /** Pressure at the tips while catching. */
  pressure?: Quantity;
  /** Which published limit judges the tips. */
  limit?: TipLimitRule;
  /** Limits of your own, in place of a published one. */
  own_limits?: TipLimitFigures;
  /** Replace tips exactly at the limit as well. */
  replace_at_limit?: boolean;
  /** Ground speed, to tell the rate. */
  speed?: Quantity;
  /** Distance between tips, to tell the rate. */
  spacing?: Quantity;
  /** Ground width the tips caught serve together, in place of spacing. */
  width?: Quantity;
  /** An earlier check of the same tips. */
  earlier?: EarlierTipCheck;
}

export interface TipCatch {
  /** Flow of the tip, if read as a flow. */
  flow?: Quantity;
  /** What the tip put out. */
  volume?: Quantity;
  /** How long it was caught; left out: catch_time. */
  time?: Quantity;
}

export interface EarlierTipCheck {
  /** Flows of the same tips, in the same order. */
  flows: Array<Quantity>;
  /** Pressure then; left out: as now. */
  pressure?: Quantity;
  /** Ground sprayed since. */
  area_since?: Quantity;
  /** Hours sprayed since. */
  time_since?: Quantity;
}

export interface WaterAnswer {
  /** AMS the minerals entered ask for. */
  ams?: Quantity;
  /** All five minerals were entered. */
  complete?: boolean;
  /** Mineral by mineral. */
  ions?: Array<IonShare>;
  /** Minerals not entered; not zero. */
  not_entered?: Array<string>;
  /** Calcium and magnesium as CaCO3. */
  hardness?: Quantity;
  /** The same in grains per US gallon. */
  hardness_grains?: number;
  /** AMS for that hardness, were it all magnesium. */
  hardness_asks_least?: Quantity;
  /** AMS for that hardness, were it all calcium. */
  hardness_asks_most?: Quantity;
  /** Fill by fill. */
  tanks?: Array<TankAms>;
}

export interface IonShare {
  /** The mineral. */
  ion?: string;
  /** As entered. */
  amount?: Quantity;
  /** AMS it asks for. */
  ams?: Quantity;
}

export interface TankAms {
  /** The fill. */
  tank?: Quantity;
  /** AMS the minerals ask for. */
  by_minerals?: Quantity;
  /** The same in handy units. */
  by_minerals_text?: string;
  /** The label's least. */
  label_least?: Quantity;
  /** The same in handy units. */
  label_least_text?: string;
  /** The label's most. */
  label_most?: Quantity;
  /** The same in handy units. */
  label_most_text?: string;
  /** Liquid AMS for the larger of minerals and label least. */
  liquid?: Quantity;
}

export interface WaterRequest {
  /** K in the water. */
  potassium?: Quantity;
  /** Na in the water. */
  sodium?: Quantity;
  /** Ca in the water. */
  calcium?: Quantity;
  /** Mg in the water. */
  magnesium?: Quantity;
  /** Fe in the water. */
  iron?: Quantity;
  /** Lumped hardness, where the minerals are not known. */
  hardness?: number;
  /** How the hardness is counted; needed with it. */
  hardness_scale?: HardnessScale;
  /** Least ammonium sulphate (AMS) the label asks for. */
  label_least?: Quantity;
  /** Most AMS the label allows. */
  label_most?: Quantity;
  /** Fills to work amounts out for. */
  tanks?: Array<Quantity>;
  /** AMS in a volume of liquid AMS. */
  liquid_strength?: Quantity;
}

export type HardnessScale =
  | "ppm_calcium_carbonate" /* mg/L as CaCO3. */
  | "grains_per_gallon" /* Grains of CaCO3 in a US gallon. */
  | "german_degrees" /* 10 mg CaO in a litre. */;

export interface WearAnswer {
  /** What can be said of the trend. */
  verdict?: WearVerdict;
  /** The same in words. */
  text?: string;
  /** Flow that wear is counted from. */
  new_flow?: Quantity;
  /** Most over new. */
  limit?: Quantity;
  /** Where the limit is from. */
  limit_source?: string;
  /** What the trend runs over. */
  axis?: WearAxis;
  /** Measurements. */
  points?: number;
  /** As last measured. */
  over_new_now?: Quantity;
  /** The line at the last point. */
  trend_now?: Quantity;
  /** Whether the last is beyond the limit. */
  over_limit_now?: boolean;
  /** Rise for each step, with its 95 % interval. */
  slope?: Quantity;
  /** The step: 100 ac, 1000 gal, month. */
  slope_per?: string;
  /** Share of the scatter the line explains (R2). */
  explained?: number;
  /** Ground at which the limit is crossed. */
  limit_at_area?: Quantity;
  /** Liquid at which the limit is crossed. */
  limit_at_volume?: Quantity;
  /** Day the limit is crossed. */
  limit_on?: string;
  /** Early end of its interval. */
  limit_on_early?: string;
  /** Late end of its interval. */
  limit_on_late?: string;
  /** Point by point. */
  rows?: Array<WearRow>;
}

export type WearVerdict =
  | "not_enough_points" /* Fewer than three to draw a line by. */
  | "no_trend" /* A trend cannot be told from none. */
  | "wearing" /* The flow rises. */
  | "falling" /* The flow falls: clogged, or not measured alike. */;

export type WearAxis =
  | "area" /* Over ground sprayed. */
  | "volume" /* Over liquid passed. */
  | "time" /* Over months. */;

export interface WearRow {
  /** Day. */
  date?: string;
  /** Ground, liquid or months. */
  at?: string;
  /** Flow at the reference pressure. */
  flow?: Quantity;
  /** Over new. */
  over_new?: Quantity;
  /** The line there. */
  trend?: Quantity;
}

export interface WearRequest {
  /** Measurements of the same tips. */
  points: Array<WearPoint>;
  /** Flow measured when they were new. */
  new_flow?: Quantity;
  /** The maker's flow, when that is not known. */
  rated_flow?: Quantity;
  /** Pressure of the new or rated flow. */
  reference_pressure?: Quantity;
  /** Most over new; the trade's 10 % unless said. */
  limit?: Quantity;
}

export interface WearPoint {
  /** Day of the measurement: 2031-05-14. */
  date?: string;
  /** Ground sprayed since new. */
  acres_since_new?: Quantity;
  /** Liquid passed since new. */
  volume_since_new?: Quantity;
  /** Flow of the same tips each time. */
  flow: Quantity;
  /** Pressure, when it was not that of the new flow. */
  pressure?: Quantity;
}

export interface Operations {
  /** Reaches a wanted rate by speed, pressure or tip, with the window of each and what it does to the droplets. */
  "adjust": { request: AdjustRequest & CallOptions; answer: AdjustAnswer & Remarks };
  /** Area of mapped ground on the ellipsoid, with the error its boundary leaves. */
  "area": { request: AreaRequest & CallOptions; answer: AreaAnswer & Remarks };
  /** Closes a job: ground swept, mix and product used against the plan, and what to explain. */
  "balance": { request: BalanceRequest & CallOptions; answer: BalanceAnswer & Remarks };
  /** What a sprayer and its operator really put on the ground, with the interval, the largest error and any shortcut that does not hold. */
  "calibrate": { request: CalibrateRequest & CallOptions; answer: CalibrateAnswer & Remarks };
  /** Ranks the tips of a table for a wanted rate, speed and droplet class, with reasons. */
  "choose-tip": { request: ChooseTipRequest & CallOptions; answer: ChooseTipAnswer & Remarks };
  /** How long a calibration course must be for a width, whether it can be timed, and what a catch on it means. */
  "course": { request: CourseRequest & CallOptions; answer: CourseAnswer & Remarks };
  /** Joins several people's outputs into one crew rate and says who breaks which limit with one recipe. */
  "crew": { request: CrewRequest & CallOptions; answer: CrewAnswer & Remarks };
  /** A class side by side: each output, the spread, where it comes from, and why hand answers differ. */
  "learners": { request: LearnersRequest & CallOptions; answer: LearnersAnswer & Remarks };
  /** Lawful ways to use mix left in the tank, best first. */
  "leftover": { request: LeftoverRequest & CallOptions; answer: LeftoverAnswer & Remarks };
  /** Tankfuls for a job: mix, water and each product, measured to your own marks. */
  "loads": { request: LoadsRequest & CallOptions; answer: LoadsAnswer & Remarks };
  /** Word problems with a worked key for a class, and a check of its answers. */
  "practice": { request: PracticeRequest & CallOptions; answer: PracticeAnswer & Remarks };
  /** What a record still lacks for each authority, its deadline, and how long to keep it. */
  "record-check": { request: RecordCheckRequest & CallOptions; answer: RecordCheckAnswer & Remarks };
  /** When people, stock, hay crews and seed may go back, place by place. */
  "reentry": { request: ReentryRequest & CallOptions; answer: ReentryAnswer & Remarks };
  /** What rinsing leaves in a sprayer, and the rinses or water a target takes. */
  "rinse": { request: RinseRequest & CallOptions; answer: RinseAnswer & Remarks };
  /** What a percent solution puts on an area, and the strongest a cap allows. */
  "spot": { request: SpotRequest & CallOptions; answer: SpotAnswer & Remarks };
  /** Go or stop by the readings just taken and the strictest of the limits you typed. */
  "spray-window": { request: SprayWindowRequest & CallOptions; answer: SprayWindowAnswer & Remarks };
  /** Cuts and stems against a ceiling per area, dose of each and stock for all. */
  "stems": { request: StemsRequest & CallOptions; answer: StemsAnswer & Remarks };
  /** The rate of another concentrate that gives the same dose. */
  "substitute": { request: SubstituteRequest & CallOptions; answer: SubstituteAnswer & Remarks };
  /** Finds worn, clogged and mixed tips from what each was caught at, and what they do to the rate. */
  "tip-check": { request: TipCheckRequest & CallOptions; answer: TipCheckAnswer & Remarks };
  /** Ammonium sulphate for hard water, by its minerals, beside the label's range. */
  "water": { request: WaterRequest & CallOptions; answer: WaterAnswer & Remarks };
  /** How a set of tips wears, and when the trend crosses the limit. */
  "wear": { request: WearRequest & CallOptions; answer: WearAnswer & Remarks };
}
