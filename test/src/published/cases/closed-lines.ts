import { finishedPerHour, meanLeadTime } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** So many jobs are always in the lab: mean value analysis. 5 ignored weeks are 840 h, a few hundred cycles long. */

function closedLine(
  title: string,
  hours: readonly number[],
  jobs: number,
  rate: number,
  cycle: number,
): PublishedCase {
  const stations = hours.map((_, index) => `  station ${index + 1}: {}`).join('\n');
  const stages = hours
    .map(
      (mean, index) =>
        `    - stage ${index + 1}: { on: station ${index + 1}, takes: exponential mean ${mean} h }`,
    )
    .join('\n');
  return {
    title: `Q34: ${title}`,
    source: 'M. Reiser and S. S. Lavenberg 1980: mean value analysis (recomputed)',
    scenario: `
buildweek: 1
name: closed line
simulate: { weeks: 45, ignored weeks: 5, replications: 60, seed: "Q34 ${title}" }
stations:
${stations}
routes:
  line:
${stages}
parts:
  part: { route: line }
demand:
  part: { kept in the lab: ${jobs} jobs }
`,
    values: [
      { what: 'parts per hour', truth: rate, kind: 'mean', estimate: finishedPerHour },
      { what: 'lead time, hours', truth: cycle, kind: 'mean', estimate: meanLeadTime },
    ],
  };
}

export const CLOSED_LINES: readonly PublishedCase[] = [
  closedLine('four jobs in a balanced line', [2, 2, 2, 2], 4, 0.2857142857, 14),
  closedLine('ten jobs in a balanced line', [2, 2, 2, 2], 10, 0.3846153846, 26),
  closedLine('six jobs in a line with a bottleneck', [1, 3, 2], 6, 0.319338843, 18.78881988),
];
