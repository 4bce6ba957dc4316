// What is worked out by several requests, each made from the reply before: here,
// at once, or aside, without holding the page up.

/**
 * @template Q, A, T
 * @param {Generator<Q, T, A>} work yields requests and is given their replies
 * @param {(request: Q) => A} ask
 * @returns {T}
 */
export function here(work, ask) {
  let at = work.next();
  while (!at.done) at = work.next(ask(at.value));
  return at.value;
}

/**
 * @template Q, A, T
 * @param {Generator<Q, T, A>} work
 * @param {(request: Q) => Promise<A>} ask
 * @returns {Promise<T>}
 */
export async function aside(work, ask) {
  let at = work.next();
  while (!at.done) at = work.next(await ask(at.value));
  return at.value;
}

/**
 * The replies to what a piece of work asks, to be given to the same requests, a
 * copy each time.
 * @param {Generator<any, void, any>} work
 * @param {(request: any) => Promise<any>} ask
 * @returns {Promise<(request: any) => any>}
 */
export async function had(work, ask) {
  /** @type {{ asked: any, reply: any }[]} */
  const replies = [];
  await aside(work, async (asked) => {
    const reply = await ask(asked);
    if (reply.ok) replies.push({ asked, reply }); // a refusal may be the worker's own
    return reply;
  });
  // Of a boat with thousands of readings only what may be the same is written out.
  return (request) => structuredClone(replies.find(({ asked }) => asked.ask === request.ask && JSON.stringify(asked) === JSON.stringify(request))?.reply);
}

/**
 * What is promised, where it comes, and in time; undefined where not.
 * @template T
 * @param {Promise<T> | undefined} promised
 * @param {number} ms
 * @returns {Promise<T | undefined>}
 */
export function within(promised, ms) {
  return Promise.race([Promise.resolve(promised).catch(() => undefined), new Promise((done) => setTimeout(done, ms))]);
}
