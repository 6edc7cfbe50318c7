import { slipsBetween } from '../nearest.ts';
import { rewritings } from './habits.ts';
import { type Wording, WordingError } from './wording-error.ts';

/** Stands before what is not what was written, but shows how it could be said. */
const EXAMPLE_WORDS = 'for example: ';

const NONSENSE = '?';

/** A proposal may need mending itself; so many times. */
const MOST_STEPS = 3;

/**
 * What a text says; where its wording refuses it, the proposal is one that the wording accepts.
 *
 * @throws WordingError
 */
export function said<T>(text: string, wording: Wording<T>): T {
  try {
    return wording(text);
  } catch (error) {
    // What is wrong in another file is told as it stands there.
    if (!(error instanceof WordingError) || /^from\s/i.test(text)) throw error;
    throw mended(text, wording, error);
  }
}

/**
 * Sees to what is proposed for a text that its wording refuses: what says the same in other words comes first;
 * what the wording refuses again is mended on; what does not say the same is called an example.
 *
 * @returns the error with a proposal that the wording accepts wherever one is found
 */
function mended(text: string, wording: Wording<unknown>, error: WordingError): WordingError {
  const proposed = (write: string): WordingError => new WordingError(error.message, error.expected, write);
  const candidates = rewritings(text);
  const same = candidates.find((candidate) => refusalOf(wording, candidate) === null);
  if (same !== undefined) return proposed(same);
  for (const candidate of candidates) {
    const write = followed(wording, refusalOf(wording, candidate)?.write ?? '');
    if (write !== null && saysTheSame(candidate, write)) return proposed(write);
  }
  // Where all of it is beyond mending, what the wording proposes to nonsense is its plain example.
  const write =
    followed(wording, error.write) ?? followed(wording, NONSENSE) ?? followed(wording, '') ?? error.write;
  return proposed(saysTheSame(text, write) ? write : `${EXAMPLE_WORDS}${write}`);
}

/** The proposal, or what becomes of it when it is mended until the wording accepts it; null: that never happens. */
function followed(wording: Wording<unknown>, proposal: string): string | null {
  let write = proposal;
  for (let step = 0; step <= MOST_STEPS; step++) {
    const refusal = refusalOf(wording, write);
    if (refusal === null) return write;
    write = refusal.write;
  }
  return null;
}

function refusalOf(wording: Wording<unknown>, text: string): WordingError | null {
  try {
    wording(text);
    return null;
  } catch (error) {
    if (error instanceof WordingError) return error;
    throw error;
  }
}

/** Whether a proposal keeps all numbers of a text or, where there are none, most of its letters. */
function saysTheSame(text: string, proposal: string): boolean {
  const kept = numbersOf(proposal);
  const numbers = numbersOf(text);
  if (numbers.length === 0) {
    const most = Math.max(2, Math.floor(text.length / 2));
    return kept.length === 0 && slipsBetween(text.toLowerCase(), proposal.toLowerCase()) <= most;
  }
  return numbers.every((number) => {
    const at = kept.indexOf(number);
    if (at >= 0) kept.splice(at, 1);
    return at >= 0;
  });
}

/** Groups of digits, so that dates and decimals in another order or with another sign are the same. */
function numbersOf(text: string): number[] {
  return (text.match(/\d+/g) ?? []).map(Number);
}
