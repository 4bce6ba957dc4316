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
