import { formatProblem, readScenario } from '@buildweek/scenario';

/** The log begins on this Monday, and has so many weeks; the last of them are judged. */
export const STARTS = '2026-03-02';
export const WEEKS = 30;
export const JUDGED_WEEKS = 26;

/**
 * A small lab with hand work as its bottleneck: one technician with 40 h a week, of which the 12 jobs ask for about 26 h
 * (3.25 pieces of 40 min on average), a load of two thirds.
 *
 * @param factor of the time that supports take to be removed
 */
function scenarioOf(factor: number): string {
  const minutes = (typical: number): string => String(typical * factor);
  return `
buildweek: 1
name: small lab with one pair of hands
starts: ${STARTS}
simulate: { weeks: ${WEEKS}, ignored weeks: 0, seed: log, replications: 20 }
hours:
  day: { mon-fri: 08:00-12:00 12:30-16:30 }
people:
  technician: { skills: [run machines, hand work] }
machines:
  printer: { class: small MEX, count: 3, start: at once }
routes:
  printed part:
    - print: { on: printer }
    - remove supports:
        by: hand work
        takes: ${minutes(20)} to ${minutes(80)} min per part, usually ${minutes(35)}
        may pause: yes
parts:
  bracket: { route: printed part, fits: 6 per build, print: 30 min per build plus 60 min per part }
  lever: { route: printed part, fits: 6 per build, print: 30 min per build plus 45 min per part }
demand:
  bracket: { jobs: 7 per week, pieces: 1 to 6, promise: 3 working days }
  lever: { jobs: 5 per week, pieces: 1 to 5, promise: 3 working days }
`;
}

function readingOf(factor: number) {
  const text = scenarioOf(factor);
  const reading = readScenario(text, 'small lab');
  if (reading.kind === 'problems') throw new Error(reading.problems.map(formatProblem).join('\n'));
  return { text, lab: reading.lab };
}

/** The lab as modelled. */
export const MODELLED = readingOf(1);
/** The same lab, whose removal of supports takes three tenths longer than modelled. */
export const SLOWER = readingOf(1.3);
