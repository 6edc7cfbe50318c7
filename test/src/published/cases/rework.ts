import { deviationOfLeadTime, jobsInLab, meanLeadTime } from '../measures.ts';
import type { PublishedCase } from '../published-case.ts';

/** Parts that are found bad go through again. */

/** 10 ignored weeks are 1680 h, above twenty times the relaxation time. */
export const FEEDBACK: PublishedCase = {
  title: 'Q29: one server, three of ten go through again (M/M/1 with feedback)',
  source: 'Takács 1963; Jackson (closed form, recomputed)',
  scenario: `
buildweek: 1
name: three of ten again
simulate: { weeks: 100, ignored weeks: 10, replications: 100, seed: Q29 }
stations:
  server: {}
routes:
  visit:
    - serve: { on: server, takes: exponential mean 1 h per job, rejects: 30 % back to serve }
parts:
  customer: { route: visit }
demand:
  customer: { jobs: 0.5 per hour, when: any time }
`,
  values: [
    { what: 'L', truth: 2.5, kind: 'mean', estimate: jobsInLab },
    { what: 'mean lead time, hours', truth: 5, kind: 'mean', estimate: meanLeadTime },
  ],
};

/** One job follows the other, so that the time in the lab is the effective time of the process. */
export const REWORK: PublishedCase = {
  title: 'F04: effective time with rework until good',
  source:
    'W. J. Hopp and M. L. Spearman, Factory Physics, chapter 12 (from memory); random-sum identity (closed form, recomputed)',
  scenario: `
buildweek: 1
name: rework until good
simulate: { weeks: 10, ignored weeks: 1, replications: 60, seed: F04 }
stations:
  station: {}
routes:
  process:
    - make: { on: station, takes: "gamma mean 1 h, variation 0.5 per job", rejects: 20 % back to make }
parts:
  part: { route: process }
demand:
  part: { kept in the lab: 1 job }
`,
  values: [
    { what: 'effective time, hours', truth: 1.25, kind: 'mean', estimate: meanLeadTime },
    { what: 'deviation of it', truth: Math.sqrt(0.625), kind: 'deviation', estimate: deviationOfLeadTime },
  ],
};
