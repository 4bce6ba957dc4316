// One run of all calculations for all that is read out of it: how the parts
// stand is part of the survey, so whichever of the two is asked first, the
// other is there for the same boat.

/** @typedef {import('../../wasm/marinecalc.js').SurveyReply} SurveyReply */

/**
 * A calculator that keeps its newest survey.
 * @param {{ call(request: any): any }} calculator
 * @returns {(request: any) => any}
 */
export function oneRun(calculator) {
  /** @type {{ of: string, reply: SurveyReply } | undefined} */
  let kept;
  return (request) => {
    if (request.ask !== 'parts' && request.ask !== 'survey') return calculator.call(request);
    const whole = { ...request, ask: 'survey' };
    const of = JSON.stringify(whole);
    if (kept?.of !== of) {
      const reply = calculator.call(whole);
      if (!reply.ok) return reply;
      kept = { of, reply };
    }
    const { survey, ...rest } = kept.reply;
    if (request.ask === 'survey') return kept.reply;
    return { ...rest, parts: { parts: survey.parts, ...(survey.still && { still: survey.still }) } };
  };
}
