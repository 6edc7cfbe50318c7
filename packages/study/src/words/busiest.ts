import type { GroupUse } from '../reduce/group-use-sums.ts';
import { shareWords } from './figures.ts';

/** From about this use on queues grow steeply, and a resource is called the bottleneck: common practice, no source. */
const BOTTLENECK_SHARE = 0.8;

/** What a lab makes of its resources. */
export interface Outcome {
  /** Whether nearly all promises are kept: then nothing is too short, however busy it is. */
  readonly keepsPromises: boolean;
  readonly keepsUp: boolean;
}

/** What is at work nearly always; else what is held nearly always, though it only waits for people; else the busiest. */
export function busiestWords(uses: readonly GroupUse[], { keepsPromises, keepsUp }: Outcome): string | null {
  const most = (share: (use: GroupUse) => number): GroupUse | undefined =>
    [...uses].sort((one, other) => share(other) - share(one))[0];
  const busiest = most((use) => use.atWork.value);
  const held = most((use) => use.held.value);
  if (busiest === undefined || held === undefined) return null;
  const called = keepsPromises ? 'the busiest is' : 'the bottleneck is';
  const atWork = `at work ${shareWords(busiest.atWork)} ${busiest.kind === 'people' ? 'of the hours on duty' : 'of the time'}`;
  if (busiest.atWork.value >= BOTTLENECK_SHARE) return `${called} “${busiest.name}”, ${atWork}`;
  if (held.held.value >= BOTTLENECK_SHARE && held.waitingForPeople !== null) {
    return `${called} “${held.name}”, taken up ${shareWords(held.held)} of the time, of all hours ${shareWords(held.waitingForPeople)} waiting for people to start or empty it`;
  }
  return keepsUp
    ? `nothing is worked to its limit, and the busiest, “${busiest.name}”, is ${atWork}`
    : `the busiest is “${busiest.name}”, ${atWork}`;
}
