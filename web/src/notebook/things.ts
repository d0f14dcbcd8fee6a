// What the bodies of entries hold, kind by kind. Amounts are kept as they were typed ("26 ft"), answers
// beside the request they were made from and the version of the core that made them.
import type { OperationName } from "@/core/core";
import type { Bands, Counts, MeasuringTool, Operations, OrderConvention, ProductCard as CardOfLabel, Split, SprayerKind, TankProduct } from "@/core/operations.gen";

// Operations that the core will answer soon; their bodies are kept as they come.
type Asked<K extends string> = K extends keyof Operations ? Operations[K]["request"] : Record<string, unknown>;
type Answered<K extends string> = K extends keyof Operations ? Operations[K]["answer"] : Record<string, unknown>;

/** One operation as it was asked and answered on a day: never computed again silently. */
export interface Kept<K extends OperationName = OperationName> {
  name: string;
  operation: K;
  request: Operations[K]["request"];
  answer: Operations[K]["answer"];
  model: string;
  /** Civil date, 2031-05-14. */
  on?: string;
}

export interface Sprayer {
  name: string;
  sort: SprayerKind;
  width?: string;
  wetted_width?: string;
  spacing?: string;
  band_width?: string;
  row_spacing?: string;
  tips?: number;
  /** As the tip is marked, its size of the colour code, and its rated flow at a pressure. */
  tip_words?: string;
  tip_size?: string;
  tip_rated_flow?: string;
  tip_rated_pressure?: string;
  /** Civil date on which these tips were put in. */
  tips_since?: string;
  pressure?: string;
  tank?: string;
  trapped?: string;
  /** Days after which the list asks for a new calibration; 0: never. */
  calibrate_after_days?: number;
  notes?: string;
  retired?: boolean;
}

export interface Calibration extends Kept<"calibrate"> {
  sprayer: string;
  operator?: string;
  pressure?: string;
  /** Acres the tips had done by then, for the wear trend. */
  acres_on_tips?: string;
}

export interface TipSet extends Kept<"tip-check"> {
  sprayer: string;
  acres_on_tips?: string;
}

/** The word of the kind is "operator". */
export interface Operator {
  name: string;
  licence?: string;
  licence_until?: string;
  supervised_by?: string;
  phone?: string;
}

export interface Landowner {
  name: string;
  address?: string;
  phone?: string;
}

export interface Position {
  lon: number;
  lat: number;
}

export interface Stand extends Partial<Kept<"area">> {
  name: string;
  landowner?: string;
  place?: string;
  /** GeoJSON Polygon or MultiPolygon, longitude and latitude on WGS 84. */
  boundary?: { type: "Polygon" | "MultiPolygon"; coordinates: unknown };
  /** Where the area comes from. */
  how: "file" | "walked" | "typed";
  /** Acres or hectares as typed, when there is no boundary. */
  typed_area?: string;
  /** Half the 95 % spread of one boundary position, as typed. */
  position_error?: string;
  notes?: string;
}

/** The word of the kind is "product_card": the label in hand, typed once. */
export interface Card {
  name: string;
  card: CardOfLabel;
  label_date?: string;
  notes?: string;
}

export type JobState = "planned" | "under_way" | "done" | "called_off";
export type WorkKind = "broadcast" | "spot" | "stems";

/** A product of a job: a card of the notebook and what the job does with it. */
export interface JobProduct extends Omit<TankProduct, "card"> {
  card_id: string;
  /** Name on the card when it was chosen, should the card not be on this phone. */
  name?: string;
}

export interface Job {
  name: string;
  work: WorkKind;
  state: JobState;
  stand?: string;
  sprayer?: string;
  operators?: string[];
  customer?: string;
  target?: string;
  site?: string;
  planned_for?: string;
  /** The newest loads, spot or stems answer, with all it was made from. */
  plan?: Kept<"loads"> | Kept<"spot"> | Kept<"stems">;
  products?: JobProduct[];
  net_area?: string;
  mix_per_area?: string;
  calibration?: string;
  tank_usable?: string;
  /** What stays in sump and hoses, how the mix is divided, and the measures at hand with their marks. */
  dead_volume?: string;
  split?: Split;
  /** When only bands over the rows are sprayed; which ground the mix on an area counts then. */
  bands?: Bands;
  mix_counts?: Counts;
  order?: OrderConvention;
  measures?: MeasuringTool[];
  /** Several people with one recipe, as it was last worked out. */
  crew?: Kept<"crew">;
  /** Further limits to go or stop by: contract, state, own. */
  limits?: Asked<"spray-window">["limits"];
  notes?: string;
}

export interface Load {
  job: string;
  number: number;
  /** Everything in the tank. */
  mix?: string;
  carrier?: string;
  amounts?: Array<{ product: string; amount: string }>;
  checked?: string[];
  mixed_at?: string;
  begun_at?: string;
  ended_at?: string;
  left_over?: string;
  notes?: string;
}

export interface Pass {
  job: string;
  load?: string;
  operator?: string;
  begun_at: string;
  ended_at?: string;
  width?: string;
  /** The fixes, as a blob of JSON lines; the line of the track for maps. */
  fixes?: { blob: string };
  track?: { type: "MultiLineString"; coordinates: number[][][] };
  swept?: Answered<"balance">;
  /** Seconds from the beginning: stretches with no positions, never joined. */
  gaps?: Array<{ from_seconds: number; to_seconds: number; why: string }>;
  /** Counted without positions: this many runs of this length. */
  by_hand?: { count: number; length: string };
  /** Stem work: counted cuts. */
  cuts?: number;
}

export interface Reading {
  name: string;
  operation: "spray-window";
  request: Asked<"spray-window">;
  answer: Answered<"spray-window">;
  model: string;
  job?: string;
  taken: string;
  verdict?: string;
}

/** An application record: open until it is closed, then only amended. */
export interface ApplicationRecord {
  name: string;
  job?: string;
  date?: string;
  authorities?: string[];
  /** Values by the field names of the authorities' rule tables. */
  values?: Record<string, string>;
  /** Where each value is from ("job/ID"); absent: typed in the record. */
  value_from?: Record<string, string>;
  end_date?: string;
  worker_protection?: "yes" | "no";
  commodity?: "yes" | "no";
  completed?: string;
  completed_time?: string;
  check?: Kept<"record-check">;
  closed?: boolean;
}

export interface Attachment {
  name: string;
  blob: string;
  type: string;
  of: string;
  of_kind: Kind;
  taken?: string;
  notes?: string;
}

export interface Bodies {
  sprayer: Sprayer;
  tip_set: TipSet;
  operator: Operator;
  calibration: Calibration;
  landowner: Landowner;
  stand: Stand;
  setback: { name: string };
  product_card: Card;
  job: Job;
  load: Load;
  pass: Pass;
  reading: Reading;
  record: ApplicationRecord;
  amendment: { date: string; reason: string } & Record<string, unknown>;
  attachment: Attachment;
}
export type Kind = keyof Bodies;

export interface Amendment {
  at: string;
  author: string;
  body: { date: string; reason: string } & Record<string, unknown>;
}

/** A thing as it stands now. */
export interface Thing<K extends Kind = Kind> {
  id: string;
  fields: Bodies[K];
  changed: string;
  created: string;
  author: string;
  closed?: { at: string; by: string };
  amendments?: Amendment[];
}
