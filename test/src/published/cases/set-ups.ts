import { deviationOfLeadTime, meanLeadTime } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

const WEEKS = 40;
const JOBS_PER_DAY = 3;
const JOBS_PER_SET_UP = 10;

/** One job every eight hours, ten of one material and then ten of the other. @returns dates of one of the materials */
function dates(material: number): string {
  const jobs = Array.from({ length: WEEKS * 7 * JOBS_PER_DAY }, (_, job) => job);
  return jobs
    .filter((job) => Math.floor(job / JOBS_PER_SET_UP) % 2 === material)
    .map((job) => {
      const day = new Date(Date.UTC(2025, 0, 6 + Math.floor(job / JOBS_PER_DAY))).toISOString().slice(0, 10);
      return `${day} ${String((job % JOBS_PER_DAY) * 8).padStart(2, '0')}:00`;
    })
    .join(', ');
}

/** Jobs are so far apart that none waits for another: the time in the lab is the effective time of the process. */
export const SET_UPS: PublishedCase = {
  title: 'F03: effective time with a set-up every ten jobs',
  source:
    'W. J. Hopp and M. L. Spearman, Factory Physics, chapter 8.4.3 (from memory: 0.31; closed form, recomputed)',
  scenario: `
buildweek: 1
name: a set-up every ten jobs
starts: 2025-01-06
simulate: { weeks: ${WEEKS}, ignored weeks: 0, replications: 60, seed: F03 }
machines:
  printer:
    loaded: white
    material change: { takes: "gamma mean 2 h, variation 0.25", attended: no }
routes:
  process: [build: { on: printer }]
parts:
  black: { route: process, material: black, fits: 1 per build, print: "gamma mean 1 h, variation 0.25 per build" }
  white: { route: process, material: white, fits: 1 per build, print: "gamma mean 1 h, variation 0.25 per build" }
demand:
  black: { dates: [${dates(0)}] }
  white: { dates: [${dates(1)}] }
`,
  values: [
    { what: 'effective time, hours', truth: 1.2, kind: 'mean', estimate: meanLeadTime },
    { what: 'deviation of it', truth: Math.sqrt(0.4475), kind: 'deviation', estimate: deviationOfLeadTime },
  ],
};
