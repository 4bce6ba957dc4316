// Dates as ISO 8601 writes them, on the calendar of this device.

export function today() {
  const now = new Date();
  const two = (/** @type {number} */ n) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
