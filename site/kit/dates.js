// Dates as ISO 8601 writes them, on the calendar of this device.

const two = (/** @type {number} */ n) => String(n).padStart(2, '0');

export function today() {
  const now = new Date();
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** The time of the day, hours and minutes. */
export function timeOfDay() {
  const now = new Date();
  return `${two(now.getHours())}:${two(now.getMinutes())}`;
}
