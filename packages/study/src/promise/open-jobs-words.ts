import {
  dayText,
  momentText,
  type OpenJob,
  type PlannedStart,
  type PromiseDay,
  timeOfDayText,
} from '@buildweek/results';
import { SAFE_SHARE } from './late-reasons.ts';

/** Most jobs and machines that sentences name; tables have all. */
const MOST_NAMED = 3;

/** How the jobs in the lab stand, in a few sentences. */
export function openJobsVerdict(openJobs: readonly OpenJob[], day: PromiseDay | null): string[] {
  return [jobsSentence(openJobs), ...(day === null ? [] : daySentences(day))];
}

function jobsSentence(openJobs: readonly OpenJob[]): string {
  const promised = openJobs.filter(({ onTime }) => onTime !== null);
  const share = ({ onTime }: OpenJob): number => (onTime?.kind === 'estimate' ? onTime.value : 1);
  const risky = promised.filter((job) => share(job) < SAFE_SHARE).sort((a, b) => share(a) - share(b));
  if (promised.length === 0) return 'None of the jobs in the lab has a promise.';
  if (risky.length === 0) {
    const all =
      promised.length === 1
        ? 'The one job with a promise keeps it'
        : `All ${promised.length} jobs with a promise keep it`;
    return `${all} in at least nine of ten plays.`;
  }
  const named = risky
    .slice(0, MOST_NAMED)
    .map((job) => `${job.job} (${job.quantity} × ${job.part}, ${Math.round(100 * share(job))} %)`);
  const more = risky.length > named.length ? ` and ${risky.length - named.length} more` : '';
  return `${risky.length} of ${promised.length} jobs with a promise keep it in fewer than nine of ten plays: ${named.join(', ')}${more}.`;
}

function daySentences({ starts, closes, opens, overnight }: PromiseDay): string[] {
  const first = starts[0];
  const todo =
    first === undefined
      ? `No build is to be started before the lab opens on ${dayText(opens.at)} at ${timeOfDayText(opens.at)}.`
      : `Until the lab opens again (it closes on ${dayText(closes.at)} at ${timeOfDayText(closes.at)}): ${starts.length === 1 ? 'one build to start,' : `${starts.length} builds to start, first`} ${startWords(first)}.`;
  const done = overnight.filter(({ state }) => state === 'stands done');
  const empty = overnight.filter(({ state }) => state === 'is empty' || state === 'is down');
  const named = done
    .slice(0, MOST_NAMED)
    .map(({ machine, since }) => `${machine}${since === null ? '' : ` from ${momentText(since.at)}`}`);
  const more = done.length > named.length ? ` and ${done.length - named.length} more` : '';
  const parts = [
    ...(done.length === 0
      ? []
      : [
          `${done.length} of ${overnight.length} machines ${done.length === 1 ? 'stands' : 'stand'} with a finished build (${named.join(', ')}${more})`,
        ]),
    ...(empty.length === 0 ? [] : [`${empty.length} ${empty.length === 1 ? 'holds' : 'hold'} nothing`]),
  ];
  const rest =
    parts.length === 0
      ? 'Every machine still runs when the lab opens again.'
      : `When it opens on ${dayText(opens.at)} at ${timeOfDayText(opens.at)}, ${parts.join(' and ')}, in most plays.`;
  return [todo, rest];
}

/** `resin 2 with job 12 and job 15, by 11:30, by technicians 1; so in 91 % of the plays`. */
function startWords({ machine, jobs, startBy, by, share }: PlannedStart): string {
  const names = jobs.map(({ job }) => job).join(', ');
  const who = by.length === 0 ? '' : `, by ${by.join(' and ')}`;
  return `${machine} with ${names}, started by ${momentText(startBy.at)}${who}; so in ${Math.round(100 * share)} % of the plays`;
}
