/** Types of the calculator's loader, its requests and replies, and the sheet. */

/** A running calculator. */
export interface Calculator {
  /** Version of the contract between module and host. */
  readonly version: number;
  /** Asks and answers at once. Never throws for bad input: the reply carries problems. */
  call<R extends Request>(request: R): ReplyTo<R>;
  /** Resolves when calls can be answered: at once, except after a trap, when a new instance is on its way. */
  ready(): Promise<void>;
}

/**
 * Starts the calculator from the module's bytes, or from a compiled module.
 * Rejects when the module cannot be compiled or speaks another contract.
 */
export function start(source: BufferSource | WebAssembly.Module): Promise<Calculator>;

/** How quantities are printed. */
export type Units = 'metric' | 'us' | 'both';

/** Any JSON object: a boat file, an overlay of maker's figures, the typed input. */
export type Json = { [name: string]: unknown };

/** What every request that prints quantities may carry. */
interface Printing {
  units?: Units;
  /** Trials of the Monte Carlo propagation; 0 or absent gives 4096. */
  trials?: number;
  /** No trials are run: no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  overlays?: Json[];
}

export interface ContentsRequest {
  ask: 'contents';
}
export interface BlankRequest {
  ask: 'blank';
  calculation: string;
  /** With a boat, the reply says what it gives for each input. */
  boat?: Json;
  units?: Units;
  overlays?: Json[];
}
export interface RunRequest extends Printing {
  ask: 'run';
  calculation: string;
  input: Json;
  boat?: Json;
}
export interface BoatRequest {
  ask: 'boat';
  /** Absent to ask for the schema alone. */
  boat?: Json;
}
export interface SurveyRequest extends Printing {
  ask: 'survey';
  boat: Json;
}
/** Asks for the survey as one HTML text to print. */
export interface JobSheetRequest extends Printing {
  ask: 'jobsheet';
  boat: Json;
}
/** Holds two dated states of the boat side by side; days are year-month-day. */
export interface CompareRequest extends Printing {
  ask: 'compare';
  boat: Json;
  before: string;
  after: string;
}
/** The dates of a work plan as iCalendar (RFC 5545). */
export interface CalendarRequest extends Omit<RunRequest, 'ask'> {
  ask: 'calendar';
}
/** One table of a sheet as CSV (RFC 4180). */
export interface CSVRequest extends Omit<RunRequest, 'ask'> {
  ask: 'csv';
  table: string;
}
/** The dated readings of a boat as CSV. */
export interface ReadingsRequest {
  ask: 'readings';
  boat: Json;
}
/** Adds readings from CSV; the reply has the boat with them. */
export interface AddReadingsRequest {
  ask: 'add-readings';
  boat: Json;
  csv: string;
}
/** Writes what was typed for a calculation into the boat; the date is year-month-day, of the readings. */
export interface KeepRequest {
  ask: 'keep';
  boat: Json;
  calculation: string;
  input: Json;
  date: string;
}
/** Reads what a person typed as a quantity of a kind. */
export interface QuantityRequest {
  ask: 'quantity';
  quantity: string;
  text: string;
  /** In which a bare number is meant. */
  unit?: string;
}
export type Request =
  | KeepRequest
  | QuantityRequest
  | ReadingsRequest
  | AddReadingsRequest
  | CompareRequest
  | CalendarRequest
  | CSVRequest
  | JobSheetRequest | ContentsRequest | BlankRequest | RunRequest | BoatRequest | SurveyRequest;

/** One thing wrong with a request. */
export interface Problem {
  /** JSON pointer into the input; those of the boat start with /boat; empty when it belongs to no one place. */
  where: string;
  what: string;
  allowed?: string;
  hint?: string;
  /** What sort of problem it is; left out where something given is wrong. */
  kind?: "missing" | "wrong" | "unknown" | "too-large" | "cancelled";
  /** The input that it is about, where `where` does not point to it. */
  input?: string;
  /** The input whose choice would give what is missing. */
  choose?: string;
  /** The SI unit in which a bare number is read here, which `allowed` leaves out. */
  bare?: string;
}

/** The reply to a request that could not be answered. */
export interface Refusal {
  ok: false;
  problems: Problem[];
}

export interface Contents {
  ok: true;
  calculations: { id: string; title: string; answers: string }[];
  /** The calculations as a person looks for them; each stands in one group. */
  groups: { title: string; about: string; calculations: string[] }[];
  /** The words of verdicts, most urgent first, and what people read for each. */
  words: { word: Word; reads: string }[];
  version: string;
  trials: number;
  /** For every kind of quantity, the units that can be typed. */
  units?: { [kind: string]: string[] };
}
export interface Blank {
  ok: true;
  schema: CalculationSchema;
  choices?: Choices;
  /** Gravest first. */
  cautions?: Caution[];
  /** What the boat gives for the inputs, by name. */
  given?: { [input: string]: Given };
  /** Of fault finding: answered in the input's answers. */
  questions?: Question[];
}

/** What the boat, its maker's figures or an earlier result give for an input. */
export interface Given {
  text: string;
  origin: Origin;
  /** Of the reading. */
  date?: string;
  source?: string;
  /** Of a list: as it stands in the file. */
  value?: unknown[];
}

/** One question of fault finding, answered with yes, no or unknown. */
export interface Question {
  id: string;
  title: string;
  help: string;
  kind: string;
  groupTitle: string;
  minutes: number;
  place: string;
  hazards?: Caution[];
}
export interface Compared {
  ok: true;
  comparison: Comparison;
}
export interface CalendarMade {
  ok: true;
  calendar: string;
}
export interface CSVMade {
  ok: true;
  csv: string;
}
/** Two dated states side by side. */
export interface Comparison {
  boat: string;
  moved: Moved[];
  still: Moved[];
  turned: { sheet: string; title: string; before: Word; after: Word; beforeReads: string; afterReads: string; value: string; bound: string }[];
}
/** One result in both states. */
export interface Moved {
  calculation: string;
  sheet: string;
  title: string;
  /** The change over what the gauges explain; 0 where they explain nothing. */
  times: number;
  sentence: string;
}
export interface Run {
  ok: true;
  sheet: Sheet;
}
export interface BoatRead {
  ok: true;
  /** As read; absent when none was sent. */
  boat?: Json;
  /** Every day with a reading, oldest first. */
  days?: string[];
  schema: Schema;
  choices?: Choices;
}
/** The boat with what was typed; a reply without `kept` kept nothing. */
export interface Kept {
  ok: true;
  boat: Json;
  kept?: { input: string; title: string }[];
  /** The inputs for which the boat has no place. */
  left?: string[];
}
export interface QuantityRead {
  ok: true;
  /** As typed; a bare number has its unit behind it. */
  text: string;
  si: number;
}
export interface JobSheet {
  ok: true;
  /** A whole HTML text. */
  page: string;
}
export interface SurveyDone {
  ok: true;
  survey: Survey;
}

/** The reply to a request R. */
export type ReplyTo<R extends Request> =
  | Refusal
  | (R extends ContentsRequest
      ? Contents
      : R extends BlankRequest
        ? Blank
        : R extends RunRequest
          ? Run
          : R extends BoatRequest
            ? BoatRead
            : R extends JobSheetRequest
              ? JobSheet
              : R extends CompareRequest
                ? Compared
                : R extends CalendarRequest
                  ? CalendarMade
                  : R extends CSVRequest | ReadingsRequest
                    ? CSVMade
                    : R extends AddReadingsRequest
                      ? { ok: true; boat: Json }
                      : R extends KeepRequest
                        ? Kept
                        : R extends QuantityRequest
                          ? QuantityRead
                          : SurveyDone);

/** What can be picked: for each table of rows, and for each input that names a gauge, as "gauges/input". */
export type Choices = { [table: string]: { pick: string; name: string }[] };

/** All that a boat file allows to be worked out, what is urgent first, and what the rest lacks. */
export interface Survey {
  boat: string;
  /** Every verdict drawn, most urgent first. */
  findings: Finding[];
  /** How one finding leads to another. */
  chains: string[] | null;
  /** Of the sheets with findings to act on, gravest first, each once. */
  cautions: Caution[];
  /** Limits without a reading, and how to take it. */
  open: Finding[];
  /** Figures that no source confirms, that which tells most first. */
  awaited: Awaited[];
  sheets: Sheet[];
  missing: Missing[];
  faults: Fault[];
}

/** A verdict and the sheet it stands on. */
export interface Finding {
  calculation: string;
  /** The calculation's title. */
  sheet: string;
  verdict: Verdict;
}

/** A figure that verdicts wait for until somebody types it. */
export interface Awaited {
  title: string;
  /** How many wait for it, with or without others. */
  verdicts: number;
  /** The calculations that ask for it. */
  sheets: string[];
}

/** A calculation the boat does not allow yet, and the readings it waits for. */
export interface Missing {
  calculation: string;
  title: string;
  needs: { input: string; title: string; how?: string; gauge?: string }[] | null;
}

/** A calculation that the boat file's figures do not allow. */
export interface Fault {
  calculation: string;
  title: string;
  problems: Problem[];
}

/** The parts of JSON Schema (draft 2020-12) and of our annotations that a form needs. */
export interface Schema {
  $ref?: string;
  $defs?: { [name: string]: Schema };
  title?: string;
  description?: string;
  type?: string | string[];
  properties?: { [name: string]: Schema };
  required?: string[];
  additionalProperties?: boolean | Schema;
  items?: Schema;
  minItems?: number;
  maxItems?: number;
  enum?: unknown[];
  enumTitles?: string[];
  default?: unknown;
  examples?: unknown[];
  format?: string;
  /** Name of the quantity's kind, such as "length". */
  quantity?: string;
  /** Preferred units, metric and US. */
  units?: string[];
  symbol?: string;
  /** Table whose row is picked here. */
  rows?: string;
  /** Row of usual values that fills this input. */
  usual?: string;
  /** JSON pointer into the boat file. */
  boat?: string;
  /** "calculation/result" of an earlier sheet. */
  after?: string;
  readBy?: string;
  level?: 'main' | 'detail';
  /** Inputs that must be known from some origin. */
  needs?: string[];
}
export interface CalculationSchema extends Schema {
  $defs: { input: Schema; result: Schema; [name: string]: Schema };
}

/** The document every host shows. */
export interface Sheet {
  calculation: string;
  title: string;
  answers: string;
  inputs: SheetInput[] | null;
  results: Result[] | null;
  /** Results that are lists. */
  tables?: Table[] | null;
  work: WorkedLine[] | null;
  verdicts: Verdict[] | null;
  cautions: Caution[] | null;
  drawings: Drawing[] | null;
  next: Advice[] | null;
  notes: string[] | null;
  sources: string[] | null;
  trials: number;
}

/** Where the value of an input came from. */
export type Origin =
  | 'typed'
  | "maker's figure"
  | 'boat'
  | 'earlier result'
  | 'handbook row'
  | 'usual value'
  | 'default';

export interface SheetInput {
  name: string;
  title: string;
  symbol?: string;
  kind?: string;
  level?: 'main' | 'detail';
  text: string;
  /** In the coherent SI unit; absent for words. */
  si?: number;
  origin: Origin;
  source?: string;
  range?: string;
}

export interface Result {
  name: string;
  title: string;
  help?: string;
  symbol?: string;
  kind?: string;
  si?: number;
  text: string;
  /** Ends of the 95 % interval in the coherent SI unit. */
  low?: number;
  high?: number;
  interval?: string;
  level?: 'main' | 'detail';
  shares?: { input: string; title: string; share: number }[] | null;
  maker?: { text: string; si?: number; source: string } | null;
}

/** A result that is a list: one row an entry, the first cell its name. */
export interface Table {
  name: string;
  title: string;
  help?: string;
  level?: 'main' | 'detail';
  columns: { name: string; title: string; help?: string; kind?: string; level?: 'main' | 'detail' }[];
  rows: { cells: { text: string; si?: number; low?: number; high?: number; interval?: string }[] }[];
}

export interface WorkedLine {
  result: string;
  formula?: string;
  filled?: string;
  /** In words, where there is no closed formula. */
  method?: string;
  answer: string;
  source?: string;
  basis?: string;
}

/** How a result stands to a limit. */
export type Word = 'within' | 'near the limit' | 'beyond' | 'cannot tell' | 'not measured';

export interface Verdict {
  limit: string;
  title: string;
  on: string;
  word: Word;
  /** What people read for the word. */
  reads: string;
  probability?: number;
  value?: string;
  bound?: string;
  /** The value in the unit below. */
  si?: number;
  boundSI?: number;
  side?: 'at most' | 'at least';
  kind?: string;
  unit?: string;
  sentence: string;
  authority?: string;
  source?: string;
  settle?: string;
  /** The figures without which no verdict is drawn, by title. */
  awaits?: string[];
}

/** A hazard; the signal words are those of ANSI Z535.6. */
export interface Caution {
  signal: 'DANGER' | 'WARNING' | 'CAUTION' | 'NOTICE';
  text: string;
  source?: string;
}

export interface Drawing {
  name: string;
  title: string;
  description: string;
  svg: string;
}

export interface Advice {
  text: string;
  source?: string;
}
