// Types of the calculator's loader, its requests and replies, and the sheet.
// They need no library of types beside the language's own (ES2022).
// Written by `go run ./cmd/types`: change cmd/types/head.d.ts or the schemas.

/** A running calculator. */
export interface Calculator {
  /** Version of the contract between module and host. */
  readonly version: number;
  /** Asks and answers at once. Never throws for bad input: the reply carries problems. */
  call<R extends Request>(request: R): ReplyTo<R>;
  /** Resolves when calls can be answered: at once, except after a trap, when a new instance is on its way. */
  ready(): Promise<void>;
}

/** What WebAssembly.compile gives, of which nothing is known here. */
export interface CompiledModule {
  readonly [Symbol.toStringTag]?: string;
}

/** What a calculator is started from: the module's bytes, or the module as it was compiled before. */
export type ModuleSource = ArrayBuffer | ArrayBufferView | CompiledModule;

/**
 * Starts the calculator.
 * Rejects when the module cannot be compiled or speaks another contract.
 */
export function start(source: ModuleSource): Promise<Calculator>;

/** The reply to a request R. */
export type ReplyTo<R extends Request> = Refusal | Replies[R['ask']];

/** A JSON object that came out, such as a boat file. Where one goes in, any object will do. */
export type Json = { [name: string]: unknown };

/** JSON Schema (draft 2020-12) with our annotations, as far as a form has them; annotations.schema.json says more of each. */
export interface Schema {
  $schema?: string;
  $id?: string;
  $ref?: string;
  $defs?: { [name: string]: Schema };
  title?: string;
  description?: string;
  type?: string | string[];
  properties?: { [name: string]: Schema };
  required?: string[];
  additionalProperties?: boolean | Schema;
  items?: Schema;
  minimum?: number;
  maximum?: number;
  minLength?: number;
  maxLength?: number;
  pattern?: string;
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
  /** The inputs that its columns fill, by column, where their names are others. */
  fills?: { [column: string]: string };
  /** Row of usual values that fills this input. */
  usual?: string;
  /** Pick whose row with the figures known fills this input. */
  likeRow?: string;
  /** JSON pointer into the boat file. */
  boat?: string;
  /** "calculation/result" of an earlier sheet. */
  after?: string;
  readBy?: string;
  level?: Level;
  /** Of a member of the boat file: title of the group in which the inputs stand that it gives. */
  group?: string;
  /** Of a member of the boat file that no part of the line holds: its card; false where it has none. */
  card?: 'boat' | false;
  /** What a page gives into the hand for it. */
  instrument?: 'drips' | 'nuts' | 'joints' | 'speeds' | 'passes' | 'days' | 'errands';
  /** Of a list: the calculation behind each row. */
  opens?: string[];
  agreesWith?: string[];
  /** Of a result: inputs given by hand that it must come near to, each with the share of it that they may differ by. */
  nearTo?: Record<string, number>;
  ofReading?: true;
  /** The few inputs that matter most, in the order in which they are asked. */
  asks?: string[];
  /** Inputs that must be known from some origin. */
  needs?: string[];
  /** The formula of a result as the handbook prints it, or what is done in words and what that rests on. */
  formula?: string;
  method?: string;
  rests?: string[];
  /** Document, edition and clause, and how good it is. */
  source?: string;
  basis?: string;
  /** Where two dated states stand side by side: false for a result that is left out, else the result that is its size. */
  compare?: false | string;
  /** An input that limits, cautions and advice go by and the arithmetic does not. */
  judgedOnly?: true;
  /** A reading that cannot be made again. */
  once?: true;
  /** The result and the input that it is the quotient of. */
  quotientOf?: string[];
  /** Of an input that takes no 0: what one that was read would mean. */
  ifNone?: string;
  /** A result that is a probability over the trials. */
  chance?: true;
  /** A result that is a probability, found by the calculation itself. */
  probability?: true;
  /** Inputs of which each by itself leads to this result. */
  ways?: string[];
  /** A reading that is this part of the difference of two readings with its gauge. */
  difference?: number;
  /** A count of events: the inputs in how much, and for how much. */
  counted?: string;
  /** In SI, how far a result is followed: from there on it is that or more. */
  followedTo?: number;
  /** A figure that a person sets, which trials hold. */
  setting?: true;
  /** Why the boat file has no place for it. */
  unkept?: "table" | "tool" | "undone" | "sheet";
  /** How far off a figure may be that comes without accuracy and gauge: a row of the table of bare figures, or half of its last digit. */
  bare?: string;
  /** The owner can see or count it, though it is no reading of a gauge. */
  seen?: true;
  /** Inputs or results that this one cannot be less than. */
  notUnder?: string[];
  /** In SI, from where on a result stands for what does not come. */
  never?: number;
}

/** The schema of a calculation. */
export interface CalculationSchema extends Schema {
  /** The calculations whose sheets one opens after this one. */
  onward?: string[];
  $defs: { input: Schema; result: Schema; [name: string]: Schema };
}

/** What can be calculated, and with which units. */
export interface ContentsRequest {
  /** What is asked for. */
  ask: 'contents';
}

/** The form of a calculation: its schema, what can be chosen, what the boat gives already, what to beware of. */
export interface BlankRequest {
  /** What is asked for. */
  ask: 'blank';
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation: string;
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date?: Day;
}

/** One calculation. */
export interface RunRequest {
  /** What is asked for. */
  ask: 'run';
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation: string;
  /** What is typed, by the calculation's schema; absent or null where nothing is. */
  input?: object | null;
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date?: Day;
}

/** The form of the boat file, and a boat as it was read. */
export interface BoatRequest {
  /** What is asked for. */
  ask: 'boat';
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** Everything that the boat allows to be calculated. */
export interface SurveyRequest {
  /** What is asked for. */
  ask: 'survey';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** The survey as one HTML text to print. */
export interface JobsheetRequest {
  /** What is asked for. */
  ask: 'jobsheet';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** Every joint set with a wrench, as a list and as one HTML text to print. */
export interface TorqueCardRequest {
  /** What is asked for. */
  ask: 'torque-card';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** Two dated states of the boat side by side. */
export interface CompareRequest {
  /** What is asked for. */
  ask: 'compare';
  /** The last day that counts for the first state, year-month-day. */
  before: Day;
  /** The last day that counts for the second state, year-month-day. */
  after: Day;
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** The dates of a work plan for the person's own calendar. */
export interface CalendarRequest {
  /** What is asked for. */
  ask: 'calendar';
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation?: string;
  /** What is typed, by the calculation's schema; absent or null where nothing is. */
  input?: object | null;
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date?: Day;
}

/** One table of a sheet for a spreadsheet. */
export interface CsvRequest {
  /** What is asked for. */
  ask: 'csv';
  /** Name of a table: of the sheet, where absent or empty is its first one, or of the rules. */
  table?: string;
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation: string;
  /** What is typed, by the calculation's schema; absent or null where nothing is. */
  input?: object | null;
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date?: Day;
}

/** The boat at one look: the line drawn, what is known of each part, what is due. */
export interface LineRequest {
  /** What is asked for. */
  ask: 'line';
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date: Day;
  units?: Units;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** How every part of the line stands, as the survey has it. */
export interface PartsRequest {
  /** What is asked for. */
  ask: 'parts';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** One part of the line, by its own calculations. */
export interface PartRequest {
  /** What is asked for. */
  ask: 'part';
  /** Id of a part of the line, of the table line-parts. */
  part: string;
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date: Day;
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** What is found by what a person typed, best first. */
export interface FindRequest {
  /** What is asked for. */
  ask: 'find';
  /** What a person typed, or the text of a rule file. */
  text: string;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** The dated readings of the boat for a spreadsheet, and what can be followed and logged. */
export interface ReadingsRequest {
  /** What is asked for. */
  ask: 'readings';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date?: Day;
  units?: Units;
}

/** The boat with the readings of a table added. */
export interface AddReadingsRequest {
  /** What is asked for. */
  ask: 'add-readings';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** Readings to add, as a table (RFC 4180). */
  csv: string;
}

/** The boat with the samples of a Signal K text added to its readings. */
export interface AddSignalKRequest {
  /** What is asked for. */
  ask: 'add-signal-k';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** Signal K as text: a whole document, a delta, a list of these, or one a line. */
  signalK: string;
  /** Which engine of several the boat file is about, by its name in the Signal K paths; absent where there is one. */
  engine?: string;
  /** Of how long a time one entry is made, 1 min to 24 h; absent gives 1 h. */
  every?: string;
}

/** The boat with one reading put into its log. */
export interface LogRequest {
  /** What is asked for. */
  ask: 'log';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** The reading to log. */
  reading: Logged;
}

/** The boat with what was typed for a calculation written into it, each at its place; readings stand under the day. */
export interface KeepRequest {
  /** What is asked for. */
  ask: 'keep';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation: string;
  /** What is typed, by the calculation's schema; absent or null where nothing is. */
  input?: object | null;
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date: Day;
}

/** The work that there is, by the part that it is on, and how much of each is ticked off on the boat. */
export interface ProceduresRequest {
  /** What is asked for. */
  ask: 'procedures';
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation?: string;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** Work to go by, step by step, filled with what is known of the boat. */
export interface ProcedureRequest {
  /** What is asked for. */
  ask: 'procedure';
  /** Ids of the pieces of work, one or more done together. */
  remedies: string[];
  /** Ids of steps to show as ticked off besides those of the boat file. */
  done?: string[];
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date?: Day;
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Trials of the Monte Carlo propagation, 100 to 65536, or 32768 where a whole boat is worked out; absent or 0 gives 1024. */
  trials?: number;
  /** No trials are run: the sheet has no ranges, and verdicts go by the estimates. */
  noRanges?: boolean;
  /** Of the trials; absent or 0 gives 1. */
  seed?: number;
  /** Sheets without worked lines and drawings, for a host that shows neither. */
  brief?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** The boat with what happened at one step of the work: ticked off, noted, read. Readings stand under the day. */
export interface TickRequest {
  /** What is asked for. */
  ask: 'tick';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** Ids of the pieces of work, one or more done together. */
  remedies: string[];
  /** Id of a step of the work. */
  step: string;
  /** True ticks the step off, false takes the tick back; absent leaves it. */
  ticked?: boolean;
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date: Day;
  /** Of the day, such as 14:05. */
  time?: string;
  /** What was noticed at the step; absent leaves what was noted. */
  note?: string;
  /** What was written down at the step, each by the title that the step gives it; without a value it is taken away. */
  record?: Noted[];
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** The boat with work ended: its ticks are cleared, and an event says what was done. */
export interface CloseWorkRequest {
  /** What is asked for. */
  ask: 'close-work';
  /** A boat file, by boat.schema.json. */
  boat: object;
  /** Ids of the pieces of work, one or more done together. */
  remedies: string[];
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date: Day;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** What a person typed, read as a quantity. */
export interface QuantityRequest {
  /** What is asked for. */
  ask: 'quantity';
  /** The kind of quantity that `text` is read as. */
  quantity: string;
  /** What a person typed, or the text of a rule file. */
  text: string;
  /** The unit of a bare number in `text`. */
  unit?: string;
}

/** A quantity in another unit. The kind of quantity may be left out where the units tell it; a difference of temperatures has to be named. */
export interface ConvertRequest {
  /** What is asked for. */
  ask: 'convert';
  /** The kind of quantity that `text` is read as. */
  quantity?: string;
  /** What a person typed, or the text of a rule file. */
  text: string;
  /** The unit of a bare number in `text`. */
  unit?: string;
  /** The unit to convert into. */
  to: string;
}

/** Which picks go with what is typed and what the boat gives: the nuts of a thread. */
export interface FitsRequest {
  /** What is asked for. */
  ask: 'fits';
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation: string;
  /** What is typed, by the calculation's schema; absent or null where nothing is. */
  input?: object | null;
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  units?: Units;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
  /** The day on which the input was typed, under which it is kept, or today, year-month-day. */
  date?: Day;
}

/** The input of a calculation as a JSON Schema by itself, for a program that draws forms. */
export interface FormRequest {
  /** What is asked for. */
  ask: 'form';
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation: string;
  /** A boat file, by boat.schema.json. */
  boat?: object;
  /** What of the boat file cannot be used is left out and told among the warnings, by its place; otherwise the request is refused for it. */
  leaveOut?: boolean;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** The schemas of all inputs, of boat and rule files: their names, or one of them. */
export interface SchemasRequest {
  /** What is asked for. */
  ask: 'schemas';
  /** Name of a schema, such as boat; absent gives the names. */
  document?: string;
}

/** The rules in force, overlays among them: limits of a calculation or of all, tables, the rows of one. With a text also what check-overlay says of it, as older hosts ask. */
export interface RulesRequest {
  /** What is asked for. */
  ask: 'rules';
  /** Id of a calculation; a calendar is of work-plan where none is named, procedures are all. */
  calculation?: string;
  /** Name of a table: of the sheet, where absent or empty is its first one, or of the rules. */
  table?: string;
  /** What a person typed, or the text of a rule file. */
  text?: string;
  /** The name of that file, for its problems. */
  file?: string;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** What is wrong with a rule file, and what it would replace and add over the overlays. */
export interface CheckOverlayRequest {
  /** What is asked for. */
  ask: 'check-overlay';
  /** What a person typed, or the text of a rule file. */
  text: string;
  /** The name of that file, for its problems. */
  file?: string;
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** Published values, each beside what the standard rules and the code compute now. */
export interface ChecksRequest {
  /** What is asked for. */
  ask: 'checks';
  /** Published values to compute anew, rows as in testdata/published: at most 200, of which at most 30 are spread, conformity or count, that take many draws. */
  checks: Published[];
}

/** Reads beforehand what the first requests would wait for. */
export interface WarmRequest {
  /** What is asked for. */
  ask: 'warm';
  /** Rule files to apply over the standard rules, such as a maker's, one after the other. */
  overlays?: object[];
}

/** What a host sends in. Members that an ask does not use are refused, so that a slip in a name is not lost: the list under allOf says which it takes and which it must have. Since format 1. */
export type Request = ContentsRequest | BlankRequest | RunRequest | BoatRequest | SurveyRequest | JobsheetRequest | TorqueCardRequest | CompareRequest | CalendarRequest | CsvRequest | LineRequest | PartsRequest | PartRequest | FindRequest | ReadingsRequest | AddReadingsRequest | AddSignalKRequest | LogRequest | KeepRequest | ProceduresRequest | ProcedureRequest | TickRequest | CloseWorkRequest | QuantityRequest | ConvertRequest | FitsRequest | FormRequest | SchemasRequest | RulesRequest | CheckOverlayRequest | ChecksRequest | WarmRequest;

/** One published value, or several of one source. */
export interface Published {
  id?: string;
  calculation?: string;
  /** How it is computed where not by a sheet: rule, limit, spread, conformity, count, student, theil-sen, water-density, water-specific-heat, fresh-water, transmissibility. */
  check?: string;
  /** Of the rules. */
  table?: string;
  /** Row of that table. */
  pick?: string;
  /** Result that a limit is on. */
  on?: string;
  model?: string;
  /** What decides which row or limit applies. */
  at?: object;
  input?: object;
  /** Quantities, numbers in SI, or words, by name of result, column or side. */
  expect: object;
  /** How far off it may be, by its own size. */
  tolerance?: number;
  /** What it rests on: a table or a worked example in print, another method, worked by hand, or from memory. */
  by?: 'table' | 'example' | 'method' | 'hand' | 'memory';
  /** The same as a quantity or a number in SI. */
  absolute?: number | string;
  source: string;
  note?: string;
}

/** Something written down at a step. */
export interface Noted {
  /** As the step has it. */
  title: string;
  /** As it was written; a list for a reading that is one; absent or null takes it away. */
  value?: string | number | boolean | object[] | null;
}

/** One reading for the boat's log. */
export interface Logged {
  /** By its name: dripRate, own/oilPressure, mountHeights/front port, gland/followerDepth. */
  reading: string;
  /** With its unit. */
  value: string;
  date: Day;
  /** Hour:minute. */
  time?: string;
  /** Who read it, or which laboratory. */
  source?: string;
  /** What it was read with; absent for the usual one. */
  gauge?: string;
  /** All was well. */
  baseline?: boolean;
  /** What else was noticed. */
  note?: string;
}

/** A day, year-month-day (ISO 8601). */
export type Day = string;

/** What every reply to a request that could be answered has. */
export interface Answered {
  /** The request was answered. */
  ok: true;
}

/** The reply to a request that could not be answered. */
export interface Refusal {
  /** The request was not answered. */
  ok: false;
  /** What is wrong with the request. */
  problems: Problem[];
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
}

/** The reply to a request for contents. */
export interface ContentsReply extends Answered {
  /** Version of marinecalc and its standard rules. */
  version: string;
  /** How many trials are run where nothing else is asked for. */
  trials: number;
  /** What can be calculated, from engine to propeller. */
  calculations: Entry[];
  /** The calculations as a person looks for them, each in one group. */
  groups: Group[];
  /** The words of verdicts, most urgent first. */
  words: WordEntry[];
  /** For every kind of quantity the units that can be typed, the SI unit first. */
  units: { [name: string]: string[] };
}

/** The reply to a request for blank. */
export interface BlankReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The schema of the calculation. */
  schema: CalculationSchema;
  /** What can be picked: for each table of rows, and for each input that names a gauge, as "gauges/input". */
  choices?: Choices;
  /** Titles of the groups in which inputs stand, by the member of the boat file that gives them. */
  places: { [name: string]: string };
  /** What the boat gives already, by the names of the inputs; absent where no boat was sent. */
  given?: { [name: string]: Given };
  /** What can hurt in the work that the calculation belongs to; absent where nothing does. */
  cautions?: Caution[];
  /** The questions of fault finding, to be answered in the input's answers; absent in every other form. */
  questions?: Question[];
}

/** The reply to a request for run. */
export interface RunReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The sheet of the calculation. */
  sheet: Sheet;
}

/** The reply to a request for boat. */
export interface BoatReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The schema of the boat file. */
  schema: Schema;
  /** What can be picked: for each table of rows, and for each input that names a gauge, as "gauges/input". */
  choices: Choices;
  /** The boat file, with its members in the owner's order, by boat.schema.json. */
  boat?: Json;
  /** Every day with a reading of the boat, oldest first; absent where there is none. */
  days?: string[];
}

/** The reply to a request for survey. */
export interface SurveyReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The survey of the boat. */
  survey: Survey;
}

/** The reply to a request for torque-card. */
export interface TorqueCardReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** Every joint that is set with a wrench. */
  torqueCard: TorqueCard;
  /** A whole HTML text. */
  page: string;
}

/** The reply to a request for jobsheet. */
export interface JobsheetReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** A whole HTML text. */
  page: string;
}

/** The reply to a request for compare. */
export interface CompareReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** Both states side by side. */
  comparison: Comparison;
}

/** The reply to a request for calendar. */
export interface CalendarReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** Dates as iCalendar text (RFC 5545). */
  calendar: string;
}

/** The reply to a request for csv. */
export interface CsvReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** A table as text (RFC 4180). */
  csv: string;
}

/** The reply to a request for line. */
export interface LineReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The boat at one look. */
  line: LineView;
}

/** The reply to a request for parts. */
export interface PartsReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** How every part of the line stands. */
  parts: PartsState;
}

/** The reply to a request for part. */
export interface PartReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** One part of the line. */
  part: PartView;
}

/** The reply to a request for find. */
export interface FindReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** What was found, best first; absent where nothing was. */
  hits?: Hit[];
}

/** The reply to a request for readings. */
export interface ReadingsReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** A table as text (RFC 4180). */
  csv: string;
  /** What can be followed of the boat, first what she has readings of, then what can be logged besides. */
  series: Series[];
  /** What was read of the boat, each series with a small chart; absent where nothing was. */
  charts?: ReadingChart[];
  /** The names of the readings taken every day under way. */
  daily: string[];
}

/** The reply to a request for log. */
export interface LogReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The boat file, with its members in the owner's order, by boat.schema.json. */
  boat: Json;
}

/** The reply to a request for add-readings. */
export interface AddReadingsReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The boat file, with its members in the owner's order, by boat.schema.json. */
  boat: Json;
}

/** The reply to a request for add-signal-k. */
export interface AddSignalKReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The boat file, with its members in the owner's order, by boat.schema.json. */
  boat: Json;
  /** What became of the samples. */
  signalK: SignalK;
}

/** The reply to a request for keep. */
export interface KeepReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The boat file, with its members in the owner's order, by boat.schema.json. */
  boat: Json;
  /** The inputs that are kept with the boat now; absent where there are none. */
  kept?: KeptInput[];
  /** The inputs for which the boat file has no place, by name; absent where there are none. */
  left?: string[];
}

/** The reply to a request for procedures. */
export interface ProceduresReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The work that there is, by the part that it is on. */
  procedures: PartWork[];
}

/** The reply to a request for procedure. */
export interface ProcedureReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The work to go by, step by step. */
  procedure: Procedure;
}

/** The reply to a request for tick. */
export interface TickReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The boat file, with its members in the owner's order, by boat.schema.json. */
  boat: Json;
}

/** The reply to a request for close-work. */
export interface CloseWorkReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** The boat file, with its members in the owner's order, by boat.schema.json. */
  boat: Json;
}

/** The reply to a request for quantity. */
export interface QuantityReply extends Answered {
  /** The quantity with its unit. */
  text: string;
  /** The quantity in SI. */
  si: number;
}

/** The reply to a request for convert. */
export interface ConvertReply extends Answered {
  /** A quantity in another unit. */
  converted: Converted;
}

/** The reply to a request for form. */
export interface FormReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** A JSON Schema (draft 7) that refers to nothing else. */
  form: Json;
}

/** The reply to a request for fits. */
export interface FitsReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** Which picks go with what is known, by the names of the inputs whose picks ask for other inputs. */
  fits: { [name: string]: Fit };
}

/** The reply to a request for schemas. */
export interface SchemasReply extends Answered {
  /** Names of schemas. */
  documents?: string[];
  /** A JSON Schema (draft 2020-12). */
  document?: Json;
}

/** The reply to a request for rules. */
export interface RulesReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** Rules by which sheets are made. */
  inForce: RulesInForce;
  /** What a rule file would do. */
  rules?: RulesReport;
}

/** The reply to a request for check-overlay. */
export interface CheckOverlayReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** What a rule file would do. */
  rules: RulesReport;
}

/** The reply to a request for checks. */
export interface ChecksReply extends Answered {
  /** Published values beside what is computed now, by calculation. */
  checks: CheckChapter[];
}

/** The reply to a request for warm. */
export interface WarmReply extends Answered {
  /** What the boat file holds that is kept and not used, and what of the overlays is probably not meant; absent where there is nothing. */
  warnings?: Problem[];
  /** Version of marinecalc and its standard rules. */
  version: string;
}

/** A quantity in another unit. */
export interface Converted {
  /** Its kind. */
  quantity: string;
  /** To four figures, with unit and accuracy. */
  text: string;
  /** To all figures. */
  value: number;
  /** Of the value. */
  unit: string;
  /** Half width of what stood behind ±, in that unit; absent where nothing did. */
  accuracy?: number;
  /** The value in SI. */
  si: number;
}

/** The published values of one calculation, of one table of the rules, or of what all share. */
export interface CheckChapter {
  /** Of a calculation, tables/ and a table's name, or shared/ and what. */
  id: string;
  /** What it is called. */
  title: string;
  /** In the order of the request. */
  checks: PublishedCheck[];
  /** How many are not met. */
  off: number;
  /** How many sources there are. */
  sources: number;
  /** The largest share of what a value may be off by. */
  farthest: number;
}

/** One published value, or several of one source. */
export interface PublishedCheck {
  /** Of the row. */
  id: string;
  /** Where it is published. */
  source: string;
  /** How the source is read. */
  note?: string;
  /** Each figure. */
  values?: PublishedValue[];
  /** Why it cannot be computed; absent where it can. */
  problem?: string;
}

/** A published figure beside the computed one. */
export interface PublishedValue {
  /** Of the result, column, or limit. */
  name: string;
  /** What that is called. */
  title: string;
  /** As published. */
  published: string;
  /** To six figures, in the same unit. */
  computed: string;
  /** Of the computed from the published; absent for words. */
  difference?: string;
  /** How far off it may be; absent for words. */
  allowed?: string;
  /** The difference by what is allowed. */
  share: number;
  /** It is met. */
  holds: boolean;
}

/** Rules by which sheets are made. */
export interface RulesInForce {
  /** Of the calculation, or of all. */
  limits?: LimitInForce[];
  /** All tables, without their rows. */
  tables?: RuleTable[];
  /** The one that was named. */
  table?: RuleTable;
  /** Rule files over the standard rules, in order; absent where there is none. */
  files?: Overlay[];
}

/** What a result or a reading is held against. */
export interface LimitInForce {
  /** Its id. */
  id: string;
  /** Id of the calculation. */
  calculation: string;
  /** The result or input. */
  on: string;
  /** As people read it. */
  title: string;
  /** What it asks for, as it is written. */
  text: string;
  /** On which side the bound is. */
  side: 'at most' | 'at least';
  /** The bound in SI; absent where it is another result or input. */
  si?: number;
  /** That result or input. */
  of?: string;
  /** Kind of quantity; absent for a plain number. */
  quantity?: string;
  /** Inputs and results that say whether it applies; absent where it always does. */
  goesBy?: string[];
  /** It compares, and nothing is over it. */
  guide?: boolean;
  /** Kind of authority behind it. */
  basis: string;
  /** Where it comes from. */
  source: string;
  /** What it means to be beyond it. */
  why?: string;
  /** How to take the reading. */
  how?: string;
}

/** One kind of thing that people pick from. */
export interface RuleTable {
  /** Its name. */
  name: string;
  /** As people read it. */
  title: string;
  /** What it holds. */
  about?: string;
  /** Other words may be written too. */
  open?: boolean;
  /** How many rows. */
  count: number;
  /** Kind of quantity of each column, or text, number, accuracy. */
  columns?: { [name: string]: string };
  /** Only of a table that was named. */
  rows?: RuleRow[];
}

/** One row of a table. */
export interface RuleRow {
  /** Its id. */
  id: string;
  /** What is written to choose it. */
  pick?: string;
  /** As people read it. */
  name: string;
  /** Inputs and results that say whether it applies; absent where it always does. */
  goesBy?: string[];
  /** By column. */
  values?: { [name: string]: RuleValue };
  /** Nobody confirmed it: low and high are a bracket. */
  guess?: boolean;
  /** Kind of authority behind it. */
  basis: string;
  /** Where it comes from. */
  source: string;
  /** What else is to know. */
  note?: string;
}

/** Words, or a number in SI with its range where it has one. */
export interface RuleValue {
  /** Words. */
  text?: string;
  /** The number. */
  si?: number;
  /** Its least. */
  low?: number;
  /** Its most. */
  high?: number;
}

/** Every joint of a boat that is set with a wrench, on one sheet. */
export interface TorqueCard {
  /** The boat's name. */
  boat: string;
  /** Of the boat's newest reading. */
  day?: string;
  /** From the coupling aft, then the supports. */
  joints: TorqueJoint[];
}

/** One joint of the card; one with makers' torques for several threads stands once for each. */
export interface TorqueJoint {
  /** Its code. */
  joint: string;
  /** The same as people read it. */
  title: string;
  /** Its thread. */
  thread?: string;
  /** What is on the thread. */
  lubrication?: string;
  /** What to set; absent where it is not known, or not settled. */
  torque?: string;
  /** What to print in place of a torque that is not to be set as it stands. */
  unsettled?: string;
  /** What it gives, or between what it lies. */
  range?: string;
  /** The maker's document, or how it was found. */
  source?: string;
  /** In which order. */
  order: string;
  /** When once more. */
  again: string;
  /** What to look at. */
  look: string;
  /** The figure that is wanted. */
  wanted?: string;
  /** It is the maker's figure. */
  maker: boolean;
}

/** What a rule file would do, and what is wrong with it. */
export interface RulesReport {
  /** Its name, where one was given. */
  file?: string;
  /** What it calls itself. */
  title?: string;
  /** With any of them it is not applied. */
  problems?: Problem[];
  /** It is applied, and this is probably not what was meant. */
  warnings?: Problem[];
  /** Its rows that take the place of rows in force. */
  replaces?: RulesChange[];
  /** Its other rows. */
  adds?: RulesChange[];
}

/** One row of a rule file. */
export interface RulesChange {
  /** The member of the file that it stands in, such as limits. */
  kind: string;
  /** Id of the row. */
  id: string;
  /** Of the file, counted from 1. */
  line: number;
  /** Of the row. */
  title?: string;
  /** Of a limit: what it asks for. */
  now?: string;
  /** Of a limit that is replaced: what it asked for. */
  was?: string;
  /** Title of the limit that is replaced. */
  wasTitle?: string;
  /** Where that came from. */
  wasSource?: string;
}

/** One line of the contents: what can be calculated. */
export interface Entry {
  /** Id of the calculation. */
  id: string;
  /** Title of the calculation. */
  title: string;
  /** The question that it answers. */
  answers: string;
  /** Ids of the calculations whose sheets one opens after it, as the work goes; absent where none follows. */
  onward?: string[];
}

/** Calculations that belong together for whoever looks for one. */
export interface Group {
  /** Name of the group. */
  title: string;
  /** What it is about. */
  about: string;
  /** Ids of its calculations. */
  calculations: string[];
}

/** A word of verdicts, for programs and for people. */
export interface WordEntry {
  /** For programs. */
  word: Word;
  /** As people read it. */
  reads: string;
}

/** Lists of what can be picked, by name. */
export type Choices = { [name: string]: Choice[] };

/** One thing that can be picked. */
export interface Choice {
  /** What is written in the input. */
  pick: string;
  /** As people read it. */
  name: string;
}

/** Which picks of a table go with what is known. */
export interface Fit {
  /** Those that go with it, in the order of the table. */
  picks: string[];
  /** What the others do not go with; absent where all do. */
  with?: string;
}

/** What the boat gives for an input that nobody typed. */
export interface Given {
  /** The value as people read it, with its unit. */
  text: string;
  origin: Origin;
  /** Of the reading, year-month-day. */
  date?: string;
  /** Of a maker's figure, or the title of an earlier sheet. */
  source?: string;
  /** Of a list: as it stands in the boat file. */
  value?: Json[];
}

/** What became of the samples of a Signal K text. */
export interface SignalK {
  /** Version of the table of paths. */
  paths: string;
  /** That were made of the samples. */
  entries: number;
  /** To the boat; the others it had already. */
  added: number;
  /** Samples by the paths that are readings of the boat. */
  taken: Samples[];
  /** Samples by the paths that are none, the most frequent first, 50 at the most. */
  unknown: Samples[];
  /** Unknown paths besides; absent where there is none. */
  more?: number;
  /** Other vessels, or deltas of these. */
  others: number;
  /** Numbers without a time. */
  timeless: number;
  /** Values beyond what the boat file takes, by reading; absent where there is none. */
  left?: { [name: string]: number };
}

/** How many samples a path had. */
export interface Samples {
  /** Below the vessel. */
  path: string;
  /** How many. */
  samples: number;
  /** What they are in the boat file; absent for none. */
  reading?: string;
}

/** A reading of the boat that can be logged and followed. */
export interface Series {
  /** The name by which it is followed. */
  reading: string;
  /** The same as people read it. */
  title: string;
  /** The kind of quantity. */
  kind: string;
  /** In which it is shown, metric and US; empty for a plain number. */
  units: string[];
  /** How many there are. */
  readings: number;
  /** The newest one. */
  newest?: string;
  /** Its day, year-month-day. */
  date?: string;
  /** Its time, hour:minute. */
  time?: string;
  /** Who read it. */
  source?: string;
  /** What it was read with. */
  gauge?: string;
  /** One of them was read while all was well. */
  baseline?: boolean;
  /** It can be logged by itself; others are read as part of a list. */
  loggable: boolean;
  /** It says how another was read, such as how far the shaft stood turned, and is none to look at by itself; absent of others. */
  aside?: boolean;
}

/** An input that is kept with the boat. */
export interface KeptInput {
  /** Its name. */
  input: string;
  /** Its name as people read it. */
  title: string;
}

/** A way in which a question can be looked at. */
export interface WayOfLooking {
  /** What an answer names it by. */
  id: string;
  /** As people read it. */
  title: string;
}

/** One question of fault finding, to be answered with yes, no or don't know. */
export interface Question {
  /** What an answer names it by. */
  id: string;
  /** The question. */
  title: string;
  /** How to answer it. */
  help: string;
  /** A symptom is noticed, a check is made. */
  kind: 'symptom' | 'check';
  /** A pick of the table evidence-groups. */
  group: string;
  /** The group as people read it. */
  groupTitle: string;
  /** How long the check takes. */
  minutes: number;
  /** 1 in reach, 2 something must come off, 3 hard to reach. */
  access: 1 | 2 | 3;
  /** Where the boat must be. */
  place: 'afloat' | 'ashore' | 'either';
  /** What can hurt while it is answered. */
  hazards: Caution[];
  /** How it can be looked at, for the member by of an answer. */
  ways: WayOfLooking[];
}

/** The reply to each ask that could be answered. */
export interface Replies {
  'contents': ContentsReply;
  'blank': BlankReply;
  'run': RunReply;
  'boat': BoatReply;
  'survey': SurveyReply;
  'jobsheet': JobsheetReply;
  'torque-card': TorqueCardReply;
  'compare': CompareReply;
  'calendar': CalendarReply;
  'csv': CsvReply;
  'line': LineReply;
  'parts': PartsReply;
  'part': PartReply;
  'find': FindReply;
  'readings': ReadingsReply;
  'add-readings': AddReadingsReply;
  'add-signal-k': AddSignalKReply;
  'log': LogReply;
  'keep': KeepReply;
  'procedures': ProceduresReply;
  'procedure': ProcedureReply;
  'tick': TickReply;
  'close-work': CloseWorkReply;
  'quantity': QuantityReply;
  'convert': ConvertReply;
  'fits': FitsReply;
  'form': FormReply;
  'schemas': SchemasReply;
  'rules': RulesReply;
  'check-overlay': CheckOverlayReply;
  'checks': ChecksReply;
  'warm': WarmReply;
}

/** The document that every calculation returns and every host shows. Texts are for people; programs read the numbers, which are in coherent SI units, and the words of closed lists. Since format 1. */
export interface Sheet {
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  title: string;
  /** The question that the calculation answers. */
  answers: string;
  /** What went in, from whatever origin. */
  inputs: SheetInput[];
  /** What came out. */
  results: Result[];
  /** Results that are lists; absent where there are none. */
  tables?: Table[];
  /** The worked lines; empty on a brief sheet. */
  work: Work[];
  /** How results and readings stand to their limits. */
  verdicts: Verdict[];
  /** What was given twice and does not agree, or in vain; absent where nothing was. */
  conflicts?: Conflict[];
  /** What can hurt in the work that the sheet belongs to. */
  cautions: Caution[];
  /** Pictures; none on a brief sheet. */
  drawings: Drawing[];
  /** What to do next. */
  next: Next[];
  /** Ids of the work that the sheet chooses or weighs, as the ask `procedures` lists it; absent where it names none. */
  procedures?: string[];
  /** What else there is to know of these numbers; absent where there is nothing. */
  notes?: string[];
  /** The documents behind the sheet, each once. */
  sources: string[];
  /** How many trials the ranges come from; 0 where there are no ranges. */
  trials: number;
  /** What made the sheet. */
  made: Made;
}

export type Kind = 'length' | 'area' | 'volume' | 'angle' | 'direction' | 'mass' | 'force' | 'torque' | 'energy' | 'power' | 'pressure' | 'stress' | 'stiffness' | 'angular-stiffness' | 'time' | 'frequency' | 'rotation-speed' | 'velocity' | 'inertia' | 'volume-flow' | 'drip-rate' | 'temperature' | 'temperature-difference' | 'specific-heat' | 'conductance' | 'conductivity' | 'heat-transfer' | 'ratio' | 'density' | 'dynamic-viscosity' | 'kinematic-viscosity' | 'money';

/** What every sheet of a calculation calls an input or a result. */
export interface Term {
  /** Its name in the calculation's schema. */
  name: string;
  /** Its name as people read it. */
  title: string;
  /** What it means; of results only, since the form says it of inputs. */
  help?: string;
  /** The letter that the formulas use. */
  symbol?: string;
  /** The kind of quantity; absent for words. */
  kind?: Kind;
  level: Level;
}

/** Where a number lies with 95 % probability (JCGM 101). All of it is absent where there is no range, as without trials. */
export interface Spread {
  /** Low end of the 95 % interval, in SI. */
  low?: number;
  /** High end of the 95 % interval, in SI. */
  high?: number;
  /** The interval in words; absent where both ends print as the value does. */
  interval?: string;
  /** The inputs with the largest parts in the spread, largest first. */
  shares?: Share[];
}

/** One thing that went in. */
export interface SheetInput extends Term {
  /** The value as people read it, with its unit. */
  text: string;
  /** The pick or the word itself, where `text` is its name. */
  word?: string;
  /** The value in SI; absent for words. */
  si?: number;
  /** How far it may be off, in words. */
  range?: string;
  origin: Origin;
  /** Where exactly it comes from. */
  source?: string;
  /** What kind of authority stands behind a figure of the rules. */
  authority?: string;
  /** Nobody confirmed it: it stands for its bracket. */
  unverified?: boolean;
  /** Of a torque that is not to be set as it stands: what to print in its place. */
  unsettled?: string;
}

/** One thing that came out. */
export interface Result extends Term, Spread {
  /** The value as people read it, with its unit. */
  text: string;
  /** The code of the word, where `text` is what people read for it. */
  word?: string;
  /** The numbers in their order, where `text` is an order of what is numbered. */
  sequence?: number[];
  /** The value in SI; absent for words. */
  si?: number;
  /** What the maker says of it, where the maker says it too. */
  maker?: Maker;
  /** Of a torque that is not to be set as it stands: what to print in its place. */
  unsettled?: string;
}

/** A result that is a list, such as what to do at each mount. Every row has one cell for each column. */
export interface Table {
  /** Its name in the calculation's schema. */
  name: string;
  /** Its name as people read it. */
  title: string;
  /** What it means. */
  help?: string;
  level: Level;
  /** The heads of the columns. */
  columns: Column[];
  /** The entries of the list. */
  rows: Row[];
}

/** The head of one column of a table. */
export interface Column {
  /** Its name in the calculation's schema. */
  name: string;
  /** Its name as people read it. */
  title: string;
  /** What it means. */
  help?: string;
  /** The kind of quantity; absent for words. */
  kind?: Kind;
  level: Level;
}

/** One row of a table. */
export interface Row {
  /** One cell for each column. */
  cells: Cell[];
}

/** One place of a table: words, or a number with its spread. */
export interface Cell extends Spread {
  /** As people read it; empty where nothing can be said. */
  text: string;
  /** The code of the word, where `text` is what people read for it. */
  word?: string;
  /** The value in SI; absent for words. */
  si?: number;
}

/** One input's part of a result's spread. */
export interface Share {
  /** Name of the input. */
  input: string;
  /** The input as people read it. */
  title: string;
  /** Its part, 1 being the whole. */
  share: number;
}

/** What the maker says where the handbook gives a result too. */
export interface Maker {
  /** The maker's figure as people read it. */
  text: string;
  /** The maker's figure in SI. */
  si: number;
  /** Where the maker says it. */
  source: string;
}

/** One worked line: by which formula or method a result is found, the formula with the numbers put in, and the answer. */
export interface Work {
  /** The result that it gives, by title. */
  result: string;
  /** The formula as the handbook prints it. */
  formula?: string;
  /** What is done, in words, where no closed formula is printed. */
  method?: string;
  /** The formula with the numbers put in. */
  filled?: string;
  /** What it comes to. */
  answer: string;
  /** Document and clause or equation. */
  source?: string;
  /** How good the source is, as in the rule data. */
  basis?: string;
}

/** How a result or a reading stands to a limit. The numbers `si` and `boundSI` and the `side` are there for programs, such as a panel that draws a red zone. */
export interface Verdict {
  /** Id of the limit. */
  limit: string;
  /** The limit as people read it. */
  title: string;
  /** Name of the input or result that is judged. */
  on: string;
  word: Word;
  /** The word as people read it. */
  reads: string;
  /** That the true value meets the limit (JCGM 106). */
  probability?: number;
  /** What is judged, in words; absent where it is not measured. */
  value?: string;
  /** The limit's figure, in words. */
  bound: string;
  /** What is judged, as a number in `unit`. */
  si?: number;
  /** The limit's figure, as a number in `unit`; absent where it is not known. */
  boundSI?: number;
  side: Side;
  /** The kind of quantity of both numbers; absent for words. */
  kind?: Kind;
  /** The SI unit of both numbers; absent where they are plain numbers. */
  unit?: string;
  /** The whole verdict in one sentence. */
  sentence: string;
  /** What kind of authority stands behind the limit. */
  authority: string;
  /** Which document it is. */
  source: string;
  /** What would settle a doubt, or how to take the reading. */
  settle?: string;
  settleBy?: SettleBy;
  /** Common practice or memory: it compares, and nothing is over it. */
  guide?: boolean;
  /** The unverified figures, or what nobody told, that leave it untold, by title. */
  awaits?: string[];
  turns?: Turn;
  replaced?: Replaced;
  /** There is nothing to judge, by how things are, and no reading to take; the word is “not measured” then. */
  moot?: boolean;
  /** The brackets of unverified figures over the whole of which it holds. */
  over?: string;
  /** How things are where there is no value to judge, or too little is told, and what to do about it. */
  state?: string;
  /** Past this limit the shaft must not run under power: where the word is “beyond”, keep it still. */
  stops?: boolean;
  /** Of one that keeps the shaft still: value, range, limit and word alone. */
  says?: string;
  /** The value meets its limit, and counts only once another is met: no reading of this one settles it. */
  hangs?: boolean;
}

/** Something given twice that does not agree, or given in vain. */
export interface Conflict {
  code: ConflictCode;
  /** Name of the input or result, or id of the limit. */
  on: string;
  /** The same as people read it. */
  title: string;
  /** A sentence for people. */
  text: string;
  /** The values that do not agree, the newest first. */
  values?: ConflictValue[];
  /** The first part of the text, of one that withholds verdicts. */
  doubt?: string;
  /** The rest of it: what to do. */
  remedy?: string;
}

/** two-ways: two ways to one quantity disagree by more than their accuracies explain, and no verdict rests on it. typed-over: the boat file has another figure than the one typed, which is used. two-figures: two figures of one thing contradict each other. figure-idle: a maker's figure for a limit that does not apply. */
export type ConflictCode = 'two-ways' | 'typed-over' | 'two-figures' | 'figure-idle';

/** One of the values that do not agree. */
export interface ConflictValue {
  /** Name of the input by which it came. */
  input?: string;
  /** What gives it, as people read it. */
  title: string;
  /** The value in words. */
  text: string;
  /** The value in SI; 0 for words. */
  si: number;
  origin?: Origin;
  /** Of the reading, or the day of what was typed, year-month-day. */
  date?: string;
}

/** The reading that would settle a doubt. */
export interface SettleBy {
  /** Name of the input. */
  input: string;
  /** The input as people read it. */
  title: string;
  /** Read with this; absent where more readings do. */
  gauge?: string;
  /** As the mean of so many; absent where a gauge does. */
  readings?: number;
}

/** The limit whose place that of the verdict takes, since the boat file has a maker's figure or an overlay a row of that id. */
export interface Replaced {
  /** What it asked for, with its side. */
  bound: string;
  /** The same in SI; absent where it is a figure that is not known. */
  boundSI?: number;
  /** What kind of authority stands behind it. */
  authority: string;
  /** Which document it is. */
  source: string;
}

/** The value of an unverified figure at which a verdict turns: `word` holds while the figure is at most, or at least, that. */
export interface Turn {
  /** Calculation and input. */
  figure: string;
  /** The figure as people read it. */
  title: string;
  word: Word;
  side: Side;
  /** The value in the SI unit of the figure. */
  si: number;
  /** The value in words. */
  text: string;
  /** The bracket in which the figure lies. */
  usual: string;
  /** The value lies outside that bracket: more or less than is usual. */
  past?: boolean;
  /** The text is an end of that bracket, at which the word does not hold yet: more, or less, than that. */
  strict?: boolean;
}

/** What can hurt. It is shown with every sheet that has it. */
export interface Caution {
  signal: Signal;
  /** What can hurt and how to keep from it. */
  text: string;
  /** Its first statement: what can hurt. */
  short: string;
  /** Who says so. */
  source: string;
  /** How good the source is, as in the rule data. */
  basis: string;
}

/** A picture, with words for those who cannot see it. */
export interface Drawing {
  /** Its name on the sheet. */
  name: string;
  /** What it shows. */
  title: string;
  /** What can be seen in it, in words. */
  description: string;
  /** The picture as SVG text. */
  svg: string;
}

/** One thing to do next. */
export interface Next {
  /** What to do. */
  text: string;
  /** Who says so. */
  source: string;
  /** To follow it the shaft turns under power. */
  runs?: boolean;
  /** By what it says the shaft must not run until one of these causes of the fault finding is cured: their ids. */
  stops?: string[];
}

/** What made a sheet or a survey, so that a record of it can be made again: the same version, rule files, units, trials and seed give the same bytes. */
export interface Made {
  /** Of marinecalc and its standard rules. */
  version: string;
  /** Rule files applied over the standard rules, the first one first; absent where there were none. */
  overlays?: Overlay[];
  units: Units;
  /** The trials asked for; 0 where no ranges were. */
  trials: number;
  /** Where no number of trials was asked for a survey: so many were run of a sheet where these met all its limits by far, and the others of the rest. Absent elsewhere. */
  few?: number;
  /** Of the trials; absent where none were run. */
  seed?: number;
  /** Name of the boat; absent where there is none. */
  boat?: string;
  /** Of the boat's newest reading, year-month-day; absent where there is none. */
  day?: string;
}

/** A rule file applied over the standard rules. */
export interface Overlay {
  /** As the file calls itself. */
  title: string;
  /** Of the file's text: FNV-1a of 64 bits, in hexadecimal digits. */
  fingerprint: string;
}

/** How a result or a reading stands to a limit, most urgent first. beyond: meets it with a probability of 2.5 % or less. cannot tell: the range is too wide to say, or the verdict is not the same over the bracket of an unverified figure. near the limit: as within, but little is left. within: meets it with 97.5 % or more. Those of a guide, which is no limit, are outside, about and inside the guide. not measured: there is no reading to judge. */
export type Word = 'beyond' | 'outside the guide' | 'cannot tell' | 'near the limit' | 'about the guide' | 'within' | 'inside the guide' | 'not measured';

/** The side on which the limit lies. */
export type Side = 'at most' | 'at least';

/** A signal word of ANSI Z535.6, gravest first. */
export type Signal = 'DANGER' | 'WARNING' | 'CAUTION' | 'NOTICE';

/** Whether it stands in the open or is folded away. */
export type Level = 'main' | 'detail';

/** Where an input came from, in the order in which they win. */
export type Origin = 'typed' | "maker's figure" | 'boat' | 'earlier result' | 'handbook row' | 'usual value' | 'default';

/** In which units quantities are printed. */
export type Units = 'metric' | 'us' | 'both';

/** Everything that a boat file allows to be calculated, in one pass: what was found at fault first, what to measure next, every verdict, what is not measured yet, and what can hurt in the work ahead. Since format 1. */
export interface Survey {
  /** Name of the boat. */
  boat: string;
  /** The whole boat in a dozen lines at most. */
  summary: Line[];
  /** What is wrong: what was seen or measured first, then what is over a limit by calculation. */
  found: Found[];
  /** What is said in their place where nothing was found and nothing contradicts; absent elsewhere. */
  nothing?: string;
  /** Figures that do not agree, each once. */
  disagree: Disagreement[];
  choice?: WorkChoice;
  /** What to do next: what is measured, then what is looked up, then what is chosen; of each that first which settles most verdicts. */
  measure: Measure[];
  /** Every verdict drawn, most urgent first. */
  findings: Finding[];
  /** Every part of the line, engine to propeller, by the worst that is known of it. */
  parts: PartState[];
  /** Why the shaft must not run; absent where it may. */
  still?: string;
  /** How one finding leads to another, in words. */
  chains: string[];
  /** Of the sheets with findings to act on, gravest first, each once. */
  cautions: Caution[];
  /** Limits without a reading, and how to take it. */
  open: Finding[];
  /** Figures to type, that which tells most first. */
  awaited: Awaited[];
  /** Every sheet that the boat allows. */
  sheets: Sheet[];
  /** The calculations that lack inputs. */
  missing: Missing[];
  /** The calculations that the boat file's figures do not allow. */
  faults: Fault[];
  /** What made the survey. */
  made: Made;
  /** What of the boat file is kept and not used; absent where there is nothing. */
  warnings?: Problem[];
}

/** One line of the summary, short enough for a narrow screen; what is wrong has two. */
export interface Line {
  /** What it is of. */
  code: 'still' | 'found' | 'seen' | 'measured' | 'computed' | 'disagree' | 'faults' | 'outside' | 'joints-first' | 'joints' | 'choice' | 'look' | 'measure' | 'ashore' | 'afloat' | 'close' | 'guides' | 'untold' | 'ok';
  /** The same as people read it. */
  head: string;
  /** What there is, as far as it fits. */
  text: string;
  /** How many there are. */
  count: number;
}

/** How a part of the line stands: by what was found at fault or seen on it, else by the worst of its verdicts. */
export interface PartState {
  /** Id, of the table line-parts. */
  part: string;
  /** The part as people read it. */
  title: string;
  /** The word; not measured where no verdict was drawn. */
  word: Word;
  /** The same as people read it. */
  reads: string;
  /** The same in a word or two. */
  short: string;
  /** What says so; absent where nothing does. */
  sentence?: string;
  /** Id of the calculation that says it; absent where none does. */
  calculation?: string;
  /** Title of the calculation. */
  sheet?: string;
  /** How many verdicts were drawn. */
  verdicts: number;
}

/** Something that is wrong with the boat. */
export interface Found {
  /** How it was found: why the shaft must not run, a cause by its settling look, a look without a cause, wear that was measured, over a limit by a reading, over a limit by calculation. */
  kind: 'still' | 'cause' | 'look' | 'wear' | 'measured' | 'computed';
  /** What it is. */
  title: string;
  /** By what it was found, and what it means. */
  text: string;
  /** Id of the calculation that tells more. */
  calculation: string;
  /** Title of the calculation. */
  sheet: string;
  /** Id of the limit it is over; absent where it is none. */
  limit?: string;
  /** Id of the cause that was found, or of the look that showed it; absent where it is neither. */
  row?: string;
}

/** Something that does not agree, on the sheet that says so; figures of the boat file that contradict each other have no sheet. */
export interface Disagreement {
  /** Id of the calculation; absent of the boat file. */
  calculation?: string;
  /** Title of the calculation; absent of the boat file. */
  sheet?: string;
  /** What does not agree. */
  conflict: Conflict;
}

/** What was decided and what is planned, named once; absent where neither is known. */
export interface WorkChoice {
  /** The way that was decided. */
  decided?: string;
  /** The work of the plan. */
  planned?: string;
  /** When the plan is done. */
  finish?: string;
  /** All of it in one sentence. */
  text: string;
}

/** One thing to measure, to look up or to type, with every verdict that it settles. */
export interface Measure {
  /** What it is. */
  title: string;
  /** What to do, and what that settles. */
  text: string;
  /** The end of that text: what it settles. */
  gain: string;
  /** How to get it. */
  how?: string;
  /** What it is read with. */
  gauge?: string;
  /** What the owner can do for it: read it with a gauge, look it up on a plate or in a book, or choose it. */
  do: 'measure' | 'look-up' | 'choose';
  /** Where it can be measured, when that is not where she lies; absent otherwise. */
  place?: 'ashore' | 'afloat';
  /** Where it is typed: calculation/input. */
  input: string;
  /** The verdicts that it settles by itself. */
  settles: Settled[];
  /** Those that it settles together with others. */
  helps: Settled[];
  /** The others, by title. */
  with: string[];
}

/** A verdict that waits. */
export interface Settled {
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  sheet: string;
  /** Id of the limit. */
  limit: string;
  /** The limit as people read it. */
  title: string;
}

/** A verdict and the calculation it belongs to. */
export interface Finding {
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  sheet: string;
  /** What its limit says. */
  verdict: Verdict;
  /** Name of the reading that is judged though no sheet takes it. */
  reading?: string;
}

/** A figure that no source confirms, so that verdicts wait until somebody types it. */
export interface Awaited {
  /** The figure as people read it. */
  title: string;
  /** How many verdicts wait for it, with or without others. */
  verdicts: number;
  /** Ids of the calculations that ask for it. */
  sheets: string[];
}

/** A calculation that lacks inputs, and how to get them. */
export interface Missing {
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  title: string;
  /** The inputs that nobody gave. */
  needs: Need[];
}

/** One input that nobody gave. */
export interface Need {
  /** Name of the input. */
  input: string;
  /** The input as people read it. */
  title: string;
  /** How to get it. */
  how: string;
  /** What it is usually read with. */
  gauge?: string;
}

/** A calculation that the boat file's figures do not allow. */
export interface Fault {
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  title: string;
  /** What is wrong with them. */
  problems: Problem[];
}

/** Two dated states of one boat side by side, and what moved between them by more than the gauges explain. Days are year-month-day. Since format 1. */
export interface Comparison {
  /** Name of the boat. */
  boat: string;
  /** The last day that counts for the first state. */
  before: string;
  /** The last day that counts for the second state. */
  after: string;
  /** Every day with a reading, oldest first. */
  dates: string[];
  /** What moved by more than the gauges explain, largest first. */
  moved: Moved[];
  /** What moved no more than they do. */
  still: Moved[];
  /** The verdicts that are another word in the second state. */
  turned: Turned[];
  /** What is found in the second state and was not in the first. */
  came: Found[];
  /** What was found in the first state and is not in the second. */
  gone: Found[];
  /** What of the boat file is kept and not used; absent where there is nothing. */
  warnings?: Problem[];
}

/** One result in both states. */
export interface Moved {
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  sheet: string;
  /** Name of the result. */
  result: string;
  /** The result as people read it. */
  title: string;
  /** In the first state, in words. */
  before: string;
  /** In the second state, in words. */
  after: string;
  /** Which way it went; round of a direction. */
  change: 'up' | 'down' | 'round';
  /** The change over what the gauges can explain at 95 %; 0 where they explain nothing. */
  times: number;
  /** All of it in one sentence. */
  sentence: string;
}

/** A verdict that is another word in the second state. */
export interface Turned {
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  sheet: string;
  /** The limit as people read it. */
  title: string;
  /** The word in the first state. */
  before: Word;
  /** The same as people read it. */
  beforeReads: string;
  /** The word in the second state. */
  after: Word;
  /** The same as people read it. */
  afterReads: string;
  /** What is judged, in the second state, in words. */
  value: string;
  /** The limit's figure in the second state, in words. */
  bound: string;
}

/** The boat at one look: the line drawn, with what is known of each part and how old its newest reading is, and what is due. Since format 1. */
export interface LineView {
  /** Name of the boat; absent where there is none. */
  boat?: string;
  /** The line from the side. Each part is a group whose id is part- and its own; leaders to four columns end above for the odd ones and below for the even ones. */
  drawing: Drawing;
  /** What the boat is, in one line; empty where nothing is known. */
  caption: string;
  /** Engine to propeller. */
  parts: LinePart[];
  /** The most pressing care, three at most. */
  due: DueCare[];
  /** How much more there is. */
  moreDue: number;
}

/** A part of the line and what is known of it. */
export interface LinePart {
  /** Id, of the table line-parts. */
  id: string;
  /** The part as people read it. */
  title: string;
  /** What it is. */
  about: string;
  /** How much of what its calculations ask of the boat is known. */
  known: number;
  /** How much they ask. */
  asked: number;
  /** What they ask, in the order in which it is read off. */
  asks: BoatAsk[];
  /** Its places of the boat file. */
  holds: string[];
  /** What causes of faults call it, or what belongs to it. */
  names: string[];
  /** The day; absent where it never was. */
  read?: string;
  /** How long ago in words, or never. */
  age: string;
  /** The same as people say it: today, 3 weeks ago, never. */
  ago: string;
  /** The same for a small place. */
  brief: string;
  /** How old, for a mark: the last two weeks, the last half year, older, never. */
  fresh: 'now' | 'season' | 'old' | 'never';
}

/** Care that is due, or that was never taken. */
export interface DueCare {
  /** What it is. */
  what: string;
  /** How pressing, as people read it. */
  state: string;
  /** The day by which; absent where there is none. */
  by?: string;
  /** Id of the part; empty where it is of none. */
  part: string;
  /** When it was done last. */
  last: string;
  /** How it is done; absent where nothing is said. */
  how?: string;
}

/** One part of the line: how it stands, what was read of it, what can be calculated and done. */
export interface PartView {
  /** Id, of the table line-parts. */
  id: string;
  /** The part as people read it. */
  title: string;
  /** What it is. */
  about: string;
  /** How much of what its calculations ask of the boat is known. */
  known: number;
  /** How much they ask. */
  asked: number;
  /** What they ask, in the order in which it is read off. */
  asks: BoatAsk[];
  /** Its places of the boat file. */
  holds: string[];
  /** What causes of faults call it, or what belongs to it. */
  names: string[];
  /** The day; absent where it never was. */
  read?: string;
  /** How long ago in words, or never. */
  age: string;
  /** The same as people say it: today, 3 weeks ago, never. */
  ago: string;
  /** The same for a small place. */
  brief: string;
  /** How old, for a mark: the last two weeks, the last half year, older, never. */
  fresh: 'now' | 'season' | 'old' | 'never';
  /** How it stands. */
  state: PartState;
  /** What was found on it. */
  found: Found[];
  /** Every verdict drawn, most urgent first. */
  findings: Finding[];
  /** Limits without a reading. */
  open: Finding[];
  /** What was read of it. */
  readings: ReadingChart[];
  /** Its calculations and what they say. */
  sheets: SheetLine[];
  /** Work on it. */
  work: ListedWork[];
  /** What is due on it. */
  care: DueCare[];
}

/** Something that a calculation must know and that the boat file holds. */
export interface BoatAsk {
  /** Where in the boat file. */
  pointer: string;
  /** What it is. */
  title: string;
  /** Whether it stands there. */
  known: boolean;
  /** Titles of the calculations that ask for it. */
  for: string[];
}

/** One series of readings at a look. */
export interface ReadingChart {
  /** The name by which it is followed. */
  reading: string;
  /** The same as people read it. */
  title: string;
  /** The newest one. */
  value: string;
  /** How many there are. */
  readings: number;
  /** The day; absent where it never was. */
  read?: string;
  /** How long ago in words, or never. */
  age: string;
  /** The same as people say it: today, 3 weeks ago, never. */
  ago: string;
  /** The same for a small place. */
  brief: string;
  /** How old, for a mark: the last two weeks, the last half year, older, never. */
  fresh: 'now' | 'season' | 'old' | 'never';
  /** A small chart as SVG; absent with fewer than two readings. */
  chart?: string;
}

/** A calculation and what it says of the boat. */
export interface SheetLine {
  /** Id of the calculation. */
  calculation: string;
  /** Its title. */
  title: string;
  /** Its first result, or what it lacks. */
  says: string;
  /** Its worst verdict; absent where it has no sheet. */
  word?: Word;
  /** The same as people read it; absent where it has no sheet. */
  reads?: string;
  /** It has no sheet; absent where it has one. */
  lacks?: boolean;
}

/** How every part stands, with what was found. */
export interface PartsState {
  /** Engine to propeller. */
  parts: PartState[];
  /** Why the shaft must not run; absent where it may. */
  still?: string;
}

/** Something found by what a person typed. */
export interface Hit {
  /** What it leads to: a sign of trouble, a check of the fault finding, a calculation, a row of a table to pick there, a part of the line, work step by step, a view of the host. */
  kind: 'sign' | 'look' | 'calculation' | 'row' | 'part' | 'work' | 'view';
  /** Of the question, calculation, part or work; of a row its pick. */
  id: string;
  /** What it is. */
  title: string;
  /** More of it; absent where nothing is said. */
  text?: string;
  /** Of a row: the calculation that takes it. */
  calculation?: string;
  /** Of a row: the input that takes it. */
  input?: string;
  /** Of a row: the rows that go with it, such as the thread of a nut or the grade that was typed beside it; absent where there is none. */
  with?: RowPicked[];
}

/** A row of a table picked for an input. */
export interface RowPicked {
  /** The input that takes it. */
  input: string;
  /** Its pick. */
  id: string;
  /** What it is, where words that were typed mean it; absent where it goes with the row alone. */
  title?: string;
}

/** One piece of work, or several done together, step by step, filled with what is known of the boat. Since format 1. */
export interface Procedure {
  /** Name of the boat; empty where there is none. */
  boat: string;
  /** What is done. */
  title: string;
  /** The pieces of work. */
  remedies: WorkPiece[];
  /** What they cure. */
  cures: WorkCause[];
  /** The steps by the parts of the job, in order. */
  phases: WorkPhase[];
  /** How many steps there are. */
  steps: number;
  /** How many of them are ticked off. */
  ticked: number;
  /** Of work, of one person, when it goes smoothly. */
  hours: number;
  /** Times that the boat goes ashore or afloat between the steps. */
  moves: number;
  /** The newest tick; absent where there is none. */
  lastTick?: StepTick;
  /** Steps that must not be done on this boat now, and why: the shaft is kept still. */
  leftOut: string[];
  /** Of all steps, each once. */
  tools: string[];
  /** What figures of the steps still need. */
  missing: StepMissing[];
  /** What is missing, by what settles it: to measure or look up before the work is begun. */
  prepare: StepPrepare[];
  /** Pictures of the steps, each calculation once. */
  drawings: StepDrawing[];
  /** What of the boat file is kept and not used; absent where there is nothing. */
  warnings?: Problem[];
  /** What made it. */
  made: Made;
}

/** What one gauge, or a look, settles. */
export interface StepPrepare {
  /** The gauge; empty for marks, papers and the eye. */
  by: string;
  /** Titles of what is missing. */
  what: string[];
  /** Numbers of the steps that need it. */
  steps: number[];
}

/** One piece of work. */
export interface WorkPiece {
  /** Id of the remedy. */
  id: string;
  /** What is done. */
  title: string;
  /** What to know of it. */
  text?: string;
  /** What sort of work it is. */
  kind: 'repair' | 'replace' | 'adjust';
}

/** What the work cures. */
export interface WorkCause {
  /** Id of the cause. */
  id: string;
  /** The cause as people read it. */
  title: string;
}

/** The steps of one part of the job. */
export interface WorkPhase {
  /** Which part. */
  phase: 'as-found' | 'open' | 'work' | 'close' | 'first-start' | 'trial' | 'afterwards';
  /** The part as people read it. */
  title: string;
  /** In the order of the work. */
  steps: WorkStep[];
}

/** One step, with what this boat asks for. */
export interface WorkStep {
  /** Id of the step. */
  id: string;
  /** Counted from 1 through all phases. */
  number: number;
  /** What is done. */
  title: string;
  /** How it is done. */
  text: string;
  /** What else to know. */
  note?: string;
  /** Titles of the work that needs it. */
  for: string[];
  /** Numbers of the steps that come before it. */
  after: number[];
  /** What has to be done with the boat before it. */
  move?: string;
  /** Where the boat lies for it, in words. */
  place: string;
  /** Of one person, when it goes smoothly. */
  hours: number;
  /** When it does not. */
  longHours: number;
  /** Days that must pass after it. */
  waitDays: number;
  /** Why it must not be done yet, even in its turn: the work leaves standing what keeps the shaft still. Absent where it may. */
  hold?: string;
  /** What must be so before it: what kept the shaft still and this work cures is put right and read again. Absent where nothing did. */
  once?: string;
  /** What can hurt at this step, gravest first. */
  cautions: Caution[];
  /** Why there are none, where there are none. */
  safe?: string;
  /** What it is done with. */
  tools: string[];
  /** What it takes, in this boat's quantities and sizes. */
  parts: StepPart[];
  /** What the boat's sheets say for it. */
  figures: StepFigure[];
  /** Of the coupling bolts, where they are tightened. */
  tightening?: Tightening;
  /** Id of the calculation whose picture, among the drawings, stands beside it. */
  drawing?: string;
  /** What is read or seen and written down. */
  records: StepRecord[];
  /** Other work that is cheap while this lies open. */
  bares: WorkPiece[];
  /** Of a step after the trial: when. */
  due?: StepDue;
  /** Of a step that is ticked off. */
  tick?: StepTick;
  /** What was noted at it. */
  tickNote?: string;
}

/** Something that a step takes. */
export interface StepPart {
  /** Id of the part. */
  id: string;
  /** The part as people read it. */
  title: string;
  /** How much, or what must be known first. */
  amount: string;
  /** Which one, as far as the boat's sheets tell. */
  size?: string;
  /** What else to know. */
  note?: string;
}

/** A result or an input of the boat's sheets, or what it takes to know it. */
export interface StepFigure {
  /** calculation/name. */
  of: string;
  /** The figure as people read it. */
  title: string;
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  sheet: string;
  /** The value with its unit; empty where it is not known, or where it is a table. */
  text: string;
  /** The 95 % range; absent where there is none. */
  interval?: string;
  /** The most urgent verdict on it; absent where nothing judges it. */
  word?: Word;
  /** That word as people read it. */
  reads?: string;
  /** The verdict in words. */
  sentence?: string;
  /** What the maker says. */
  maker?: Maker;
  /** Titles of the unverified figures behind it. */
  restsOn?: string[];
  /** The figure where it is a list. */
  table?: Table;
  /** What must be known first. */
  needs?: Need[];
  /** Why it is not known. */
  why?: string;
}

/** What figures of the steps need. */
export interface StepMissing {
  /** Name of the input. */
  input: string;
  /** The input as people read it. */
  title: string;
  /** How to get it. */
  how: string;
  /** What it is usually read with. */
  gauge?: string;
  /** Id of the calculation that asks for it. */
  calculation: string;
  /** Title of that calculation. */
  sheet: string;
  /** Numbers of the steps that need it. */
  steps: number[];
}

/** How a circle of bolts is tightened. */
export interface Tightening {
  /** The bolts, numbered round the circle, in order; empty where their number is not known. */
  order: number[];
  /** The torque of each pass; empty where it is not known. */
  passes: string[];
  /** All of it in words. */
  text: string;
}

/** Something to read or to look at, and to write down. */
export interface StepRecord {
  /** What. */
  title: string;
  /** Name of the boat's reading that it is; absent where it is none. */
  reading?: string;
  /** That reading as people read it. */
  name?: string;
  /** How it is taken. */
  how?: string;
  /** In which it is shown. */
  unit?: string;
  /** Its newest value. */
  last?: string;
  /** Day of that value, year-month-day. */
  date?: string;
  /** What it is held against. */
  limits: HeldLimit[];
  /** What was written down at this step. */
  noted?: string;
  /** Day of that, year-month-day. */
  notedOn?: string;
}

/** A limit that a reading is held against. */
export interface HeldLimit {
  /** The limit as people read it. */
  title: string;
  /** The bound in words. */
  bound: string;
  /** It compares, and nothing is over it. */
  guide?: boolean;
  /** Id of the calculation that holds it; empty where the boat file sets it. */
  calculation: string;
  /** Title of that calculation. */
  sheet: string;
}

/** When a step after the trial is due: whichever comes first. */
export interface StepDue {
  /** Engine hours after the trial. */
  hours?: number;
  /** Days after the trial. */
  days?: number;
  /** The day, once the trial is ticked off. */
  by?: string;
  /** What the hour meter shows then. */
  meter?: string;
  /** All of it in words. */
  text: string;
}

/** Pictures that steps refer to by their calculation. */
export interface StepDrawing {
  /** Id of the calculation. */
  calculation: string;
  /** Title of the calculation. */
  sheet: string;
  /** None where it cannot be worked out yet. */
  pictures: Drawing[];
  /** What it still needs then, by title. */
  needs?: string[];
}

/** When a step was ticked off. */
export interface StepTick {
  /** Year-month-day. */
  date: string;
  /** Of the day. */
  time?: string;
}

/** The work that there is on one part of the drivetrain. */
export interface PartWork {
  /** The part as people read it. */
  part: string;
  /** Each piece of work once. */
  work: ListedWork[];
}

/** One piece of work that can be gone through. */
export interface ListedWork {
  /** Id of the remedy. */
  id: string;
  /** What is done. */
  title: string;
  /** What to know of it. */
  text?: string;
  /** What sort of work it is. */
  kind: 'repair' | 'replace' | 'adjust';
  /** What it cures, by title. */
  cures: string[];
  /** How many steps it has. */
  steps: number;
  /** Of one person. */
  hours: number;
  /** Steps ticked off on the boat. */
  ticked: number;
}

/** One thing wrong with what was given: where it stands, what is wrong with it, what is allowed, and how to mend it. Since format 1. */
export interface Problem {
  /** JSON pointer (RFC 6901) to it: into the input of a calculation, "/boat…" into the boat file, "/csv/line/column" into a table, else into the request; empty where it belongs to no one place. */
  where: string;
  /** What is wrong, in words. */
  what: string;
  /** What would be taken, in words. */
  allowed?: string;
  /** The SI unit in which a bare number is read here, which "allowed" leaves out. */
  bare?: string;
  /** How to mend it, in words. */
  hint?: string;
  /** What sort of problem it is, for programs; absent means wrong. */
  kind?: ProblemKind;
  /** The name of the input that it is about, where `where` does not point to it. */
  input?: string;
  /** The name of the file that it is in, where one was given. */
  file?: string;
  /** Its line in that file or text, counted from 1; absent where none is known. */
  line?: number;
  /** The name of the input whose choice would give what is missing. */
  choose?: string;
}

/** wrong: given, and cannot be used. missing: not given. unknown: names a calculation, list or file that there is not. too-large: beyond the size or count that is read. cancelled: stopped from outside before it was done. failed: a mistake of the calculator, whatever was given. */
export type ProblemKind = 'wrong' | 'missing' | 'unknown' | 'too-large' | 'cancelled' | 'failed';
