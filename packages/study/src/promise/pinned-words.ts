import { type Estimate, momentText, type PinnedAnswer, writtenText } from '@buildweek/results';

const JOBS = { size: 1, leastDecimals: 2, isMoney: false, one: '', many: '' };
const HOURS = { size: 1, leastDecimals: 1, isMoney: false, one: '', many: '' };

/** What follows from builds that were decided on, in a few sentences. */
export function pinnedVerdict({ builds, effects, jobsLate }: PinnedAnswer): string[] {
  const told = builds.map(
    ({ machine, jobs, from, share }) =>
      `${machine} with ${jobs.join(', ')} from ${momentText(from.at)} on (started so, whole, in ${Math.round(100 * share)} % of the plays before the lab opens again)`,
  );
  const later = effects.flatMap(({ job, part, quantity, hoursLater }) =>
    hoursLater.kind === 'estimate' && (hoursLater.low > 0 || hoursLater.high < 0)
      ? [{ name: `${job} (${quantity} × ${part})`, hours: hoursLater }]
      : [],
  );
  const by = (a: { hours: Estimate }, b: { hours: Estimate }): number => b.hours.value - a.hours.value;
  const [slowest] = [...later].sort(by);
  const fastest = [...later].sort(by).at(-1);
  const sentences = [`Decided: ${told.join('; ')}.`];
  if (later.length === 0)
    return [
      ...sentences,
      'Against the rules deciding alone no job ends at another time, as far as can be told.',
    ];
  const parts = [
    ...(jobsLate?.kind !== 'estimate'
      ? []
      : jobsLate.low > 0 || jobsLate.high < 0
        ? [`${writtenText(jobsLate, JOBS)} more jobs are late, in the mean`]
        : ['no more and no fewer jobs are late, as far as can be told']),
    ...(slowest !== undefined && slowest.hours.value > 0
      ? [`${slowest.name} ends ${writtenText(slowest.hours, HOURS)} h later`]
      : []),
    ...(fastest !== undefined && fastest.hours.value < 0
      ? [`${fastest.name} ends ${writtenText(turned(fastest.hours), HOURS)} h earlier`]
      : []),
  ];
  return [...sentences, `Against the rules deciding alone: ${parts.join('; ')}.`];
}

function turned({ value, low, high, ...rest }: Estimate): Estimate {
  return { ...rest, value: -value, low: -high, high: -low };
}
