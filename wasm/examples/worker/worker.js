// The calculator in a worker, so that the page stays free while it works.
// Messages in: {id, request}. Messages out: {id, reply}, or {id, failed}.

import { load } from '../../load.js';

const calculator = load();
addEventListener('message', async ({ data: { id, request } }) => {
  try {
    postMessage({ id, reply: (await calculator).call(request) });
  } catch (failed) {
    postMessage({ id, failed: String(failed) });
  }
});
