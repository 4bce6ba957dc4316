// A boat file with a wrong member stops no sheet: it is left out and told. Where
// the boat itself comes back, nothing may be lost, and it goes as it is.

const GIVES_BOAT = ['boat', 'log', 'keep', 'tick', 'close-work', 'add-readings', 'add-signal-k'];

/**
 * @template {{ ask: string, boat?: unknown }} R
 * @param {R} request
 * @returns {R}
 */
export const lenient = (request) => (request.boat !== undefined && !GIVES_BOAT.includes(request.ask) ? { ...request, leaveOut: true } : request);
