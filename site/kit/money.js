// Amounts of money as people type them: a code in small letters or before the
// number, a currency by its name, marks between thousands. Signs, and all that
// is not certain, are left to the calculator.

const NAMES = /** @type {{ [name: string]: string }} */ ({ euro: 'EUR', euros: 'EUR', 'us dollar': 'USD', 'us dollars': 'USD', 'pound sterling': 'GBP', 'pounds sterling': 'GBP' });

/** Codes of ISO 4217, as the browser has them. */
const codes = new Set(Intl.supportedValuesOf?.('currency') ?? ['EUR', 'USD', 'GBP']);

/** Those that people write in small letters; others may be words: all, try, top. */
const SMALL = new Set(['EUR', 'USD', 'GBP', 'AUD', 'NZD', 'CAD', 'CHF', 'SEK', 'NOK', 'DKK', 'JPY', 'PLN', 'CZK', 'ZAR', 'SGD', 'HKD']);

const UNCLEAR = '?';

/** @param {string} word */
function codeOf(word) {
  const up = word.toUpperCase();
  return codes.has(word) || SMALL.has(up) ? up : NAMES[word.toLowerCase()];
}

/**
 * Without marks between thousands. Three digits behind a comma are no cents,
 * where the currency has no thousandths.
 * @param {string} amount
 * @param {string} code
 */
function plain(amount, code) {
  return digitsOf(code) < 3 && /^\d{1,3}([,'’\s])\d{3}(\1\d{3})*(\.\d\d?)?$/.test(amount) ? amount.replace(/[,'’\s]/g, '') : amount;
}

/**
 * What an amount may be that has three digits behind one point: cents or
 * thousands. Empty where it is certain: with nought before the point, or in a
 * currency with thousandths.
 * @param {string} text
 * @returns {string[]} as they would be typed
 */
export function eitherAmount(text) {
  const [, before = '', whole = '', point = '', after = ''] = /^([^\d]*)([1-9]\d{0,2})\.(\d{3})(?![\d.,])\s*([^\d?]*?)[\s?]*$/.exec(text.trim()) ?? [];
  const word = (before || after).trim();
  const code = codeOf(word);
  if (whole === '' || (!code && !/^[€£$]$/.test(word)) || (code && digitsOf(code) > 2)) return [];
  const unit = code ?? word;
  return [`${whole}${point} ${unit}`, `${Number(`${whole}.${point}`).toFixed(2)} ${unit}`];
}

/** Digits behind the point. @param {string} code */
const digitsOf = (code) => new Intl.NumberFormat('en', { style: 'currency', currency: code }).resolvedOptions().maximumFractionDigits ?? 3;

/**
 * The amount with its code behind; as it is where that is not certain.
 * @param {string} text
 * @param {string} usual code that a bare number is read in; empty for none
 */
export function readMoney(text, usual = '') {
  const read = certain(text, usual);
  return eitherAmount(read).length > 0 ? `${read.replace(/[\s?]+$/, '')} ?` : read; // which the calculator refuses
}

/**
 * @param {string} text
 * @param {string} usual
 */
function certain(text, usual) {
  const [, before = '', amount = '', after = '', accuracy = ''] = /^([^\d±]*?)\s*(\d[\d.,'’\s]*?)\s*([^\d±%]*?)\s*(±.*)?$/.exec(text.trim()) ?? [];
  if (amount === '' || (before !== '' && after !== '')) return text;
  const word = before || after;
  const rest = accuracy && ` ${accuracy.replace(/[^\d\s%±.,]+$/, (w) => codeOf(w) ?? w)}`;
  if (/^[^\s]*[€£$]$/.test(word)) return `${before}${plain(amount, 'USD')}${after && ` ${after}`}${rest}`;
  const code = word === '' ? usual : codeOf(word);
  return code ? `${plain(amount, code)} ${code}${rest}` : text;
}

/**
 * The one currency of all amounts in a value; empty where there are none or
 * several, or one that is not written plainly.
 * @param {unknown} value
 * @param {...string} skip pointers that are left out
 */
export function currencyIn(value, ...skip) {
  const [first = '', ...others] = new Set(codesIn(value, skip, ''));
  return others.length === 0 && first !== UNCLEAR ? first : '';
}

/**
 * @param {unknown} value
 * @param {string[]} skip
 * @param {string} pointer of the value
 * @returns {string[]}
 */
function codesIn(value, skip, pointer) {
  if (skip.includes(pointer)) return [];
  if (typeof value === 'object' && value !== null) return Object.entries(value).flatMap(([name, inner]) => codesIn(inner, skip, `${pointer}/${name}`));
  const text = String(value);
  const [, code = ''] = /^[\d.]+ ([A-Z]{3})( ±.*)?$/.exec(text) ?? [];
  if (codes.has(code)) return [code];
  return /[€£$¥]/.test(text) || text.match(/\b[A-Z]{3}\b/g)?.some((word) => codes.has(word)) ? [UNCLEAR] : [];
}
