import type { GrowthAnswer, GrowthMonth, GrowthStep } from '@buildweek/results';
import { capital, percentOf, shareWords } from '../words/figures.ts';
import { dateWords, monthLabel, monthWords } from './plan-dates.ts';

type Found = Pick<GrowthAnswer, 'targets' | 'months' | 'horizon' | 'neededIn' | 'steps' | 'purchases'>;

/**
 * The answer in sentences: until when the lab is large enough, what restores it, and by when to order that.
 *
 * @param level one-sided confidence of the verdicts
 */
export function growthSentences(found: Found, startDate: string, level: number): string[] {
  const { months, neededIn } = found;
  const last = months.at(-1);
  if (last === undefined) return [];
  if (neededIn === null) return [lastingSentence(found, last)];
  return [
    missedSentence(found, neededIn, level),
    alsoSentence(found, neededIn),
    stepSentence(found, startDate),
    othersSentence(found, startDate),
    nextSentence(found, startDate),
  ].filter((sentence) => sentence !== '');
}

function lastingSentence({ targets, months }: Found, last: GrowthMonth): string {
  const undecided = months.find(({ targets: found }) => found.some(({ verdict }) => verdict !== 'met'));
  const until = `${monthWords(last.label)}, at ${percent(last.demand)} of today's demand`;
  if (undecided === undefined) {
    return `If nothing is bought, ${targets.length === 1 ? 'the target is' : 'all targets are'} still met in ${until}.`;
  }
  return `If nothing is bought, no target is clearly missed up to ${until}; from ${monthWords(undecided.label)} on it is not decided at this precision: play more replications.`;
}

function missedSentence({ targets, months }: Found, neededIn: number, level: number): string {
  const sure = `with ${percentOf(level)} % confidence`;
  const month = months[neededIn] as GrowthMonth;
  const position = month.targets.findIndex(({ verdict }) => verdict === 'missed');
  const target = targets[position];
  const share = month.targets[position]?.share;
  const reached =
    share?.kind === 'estimate'
      ? `: ${shareWords(share)} instead of ${target?.atMost ? 'at most ' : ''}${percent(target?.asked ?? 0)}`
      : '';
  const lastMet = target?.lastMet ?? null;
  const held =
    lastMet === null
      ? neededIn === 0
        ? ''
        : ` In no month before is it met ${sure}.`
      : ` It is met ${sure} up to ${monthWords(months[lastMet]?.label ?? '')}.`;
  const when =
    neededIn === 0
      ? 'today already, before any growth'
      : `from ${monthWords(month.label)} on, at ${percent(month.demand)} of today's demand`;
  return `If nothing is bought, “${target?.wording ?? ''}” is missed ${when}${reached}.${held}`;
}

/** The other targets that are missed sooner or later. */
function alsoSentence({ targets, months }: Found, neededIn: number): string {
  const first = months[neededIn]?.targets.findIndex(({ verdict }) => verdict === 'missed');
  const others = targets.filter(({ firstMissed }, index) => index !== first && firstMissed !== null);
  if (others.length === 0) return '';
  const words = others.map(({ wording, firstMissed }) => {
    const from = firstMissed === 0 ? 'the start' : monthWords(months[firstMissed ?? 0]?.label ?? '');
    return `“${wording}” is missed from ${from} on`;
  });
  return `${words.join('; ')}.`;
}

function stepSentence({ steps, horizon, neededIn }: Found, startDate: string): string {
  const [best] = steps;
  if (best === undefined) return '';
  if (best.restores === 'no') {
    return 'One more machine, station or person does not restore all targets, whichever it is: more than one is needed, or another way of working.';
  }
  const certain =
    best.restores === 'yes'
      ? 'restores all targets'
      : 'may restore all targets (not decided at this precision)';
  const until = best.holdsUntil ?? neededIn ?? 0;
  const month = (position: number): string => monthWords(monthLabel(startDate, position));
  const end =
    until >= horizon ? `to the end of what was looked at, ${month(horizon)}` : `until ${month(until)}`;
  const open = best.restores === 'yes' ? firstUndecided(best, until) : undefined;
  const doubt =
    open === undefined
      ? ''
      : `, though from ${monthWords(open.label)} on that is not decided at this precision`;
  const order = best.isLate
    ? `It takes ${best.leadWeeks} weeks from the order and was due to be ordered by ${dateWords(best.orderBy)}: order at once.`
    : `To hold this, order by ${dateWords(best.orderBy)}: it takes ${best.leadWeeks} weeks from the order.`;
  return `${capital(best.name)} ${certain} ${end}${doubt}. ${order}${budgetWords(best)}`;
}

/** The first month up to one in which not all targets are met for sure. */
function firstUndecided({ months }: Pick<GrowthStep, 'months'>, until: number): GrowthMonth | undefined {
  return months.find(
    ({ month, targets }) => month <= until && targets.some(({ verdict }) => verdict !== 'met'),
  );
}

function budgetWords({ overBudget }: Pick<GrowthStep, 'overBudget'>): string {
  return overBudget.length === 0 ? '' : ` It breaks ${overBudget.map((one) => `“${one}”`).join(' and ')}.`;
}

/** What to buy when that is not enough any more. */
function nextSentence({ purchases, horizon }: Found, startDate: string): string {
  const [first, ...next] = purchases;
  if (first === undefined) return '';
  const month = (position: number): string => monthWords(monthLabel(startDate, position));
  const words = next.map((purchase) => {
    const order = purchase.isLate ? 'order it at once' : `order it by ${dateWords(purchase.orderBy)}`;
    return `From ${month(purchase.month)} on it takes ${purchase.name}: ${order}.${budgetWords(purchase)}`;
  });
  const last = purchases.at(-1) ?? first;
  const end = last?.holdsUntil ?? horizon;
  const holds =
    last === undefined || firstUndecided(last, end) === undefined
      ? 'all targets hold'
      : 'no target is clearly missed up';
  const rest =
    end >= horizon
      ? next.length === 0
        ? ''
        : ` With that ${holds} to ${month(horizon)}.`
      : ` Nothing was found that holds all targets beyond ${month(end)}.`;
  return `${words.join(' ')}${rest}`.trim();
}

/** What else restores the targets for certain, and until when. */
function othersSentence({ steps, horizon }: Found, startDate: string): string {
  const others = steps.slice(1).filter(({ restores }) => restores === 'yes');
  if (others.length === 0) return '';
  const words = others.map(({ name, holdsUntil }: GrowthStep) => {
    const until = holdsUntil ?? horizon;
    const end = until >= horizon ? 'to the end' : `until ${monthWords(monthLabel(startDate, until))}`;
    return `${name} (${end})`;
  });
  return `So ${others.length === 1 ? 'does' : 'do'} ${words.join(', ')}.`;
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(3))} %`;
}
