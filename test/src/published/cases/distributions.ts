import { deviationOfLeadTimeOf, leadTimePercentileOf, meanLeadTimeOf, onTimeOf } from '../measures.ts';
import type { PublishedCase, PublishedValue } from '../published-case.ts';

/** Laws of times, seen as times in the lab of parts that only rest there. Equilibrium holds from the start. */

function resting(
  name: string,
  simulate: string,
  laws: Readonly<Record<string, string>>,
  more: readonly string[],
): string {
  const names = Object.keys(laws);
  const lines = (line: (law: string, index: number) => string): string => names.map(line).join('\n');
  return `
buildweek: 1
name: ${name}
simulate: { ${simulate}, seed: ${name} }
routes:
${lines((law) => `  ${law}: [rest: { wait: "${laws[law]}" }]`)}
parts:
${lines((law) => `  ${law}: { route: ${law} }`)}
demand:
${lines((law, index) => `  ${law}: { jobs: 8 per hour, when: any time${more[index] ?? ''} }`)}
`;
}

const mean = (part: string, truth: number): PublishedValue => ({
  what: `mean, ${part}`,
  truth,
  kind: 'mean',
  estimate: meanLeadTimeOf(part),
});

const deviation = (part: string, variance: number): PublishedValue => ({
  what: `deviation, ${part}`,
  truth: Math.sqrt(variance),
  kind: 'deviation',
  estimate: deviationOfLeadTimeOf(part),
});

const point95 = (part: string, truth: number): PublishedValue => ({
  what: `95 % point, ${part}`,
  truth,
  kind: 'percentile',
  estimate: leadTimePercentileOf(part, 0.95),
});

/** Laws by their moments: mean and squared coefficient of variation, or the shape that follows from them. */
const LAWS = {
  lognormal: 'lognormal mean 3 h, variation 0.7071067812',
  gamma: 'gamma mean 3 h, variation 0.5',
  weibull: 'weibull shape 2.101349095, scale 112.906339 h',
  triangular: 'triangular 2 to 7 h, usually 3',
  pert: '2 to 7 h, usually 3',
  uniform: 'uniform 2 to 7 h',
  hyperexponential:
    'hyperexponential 88.72983346 % mean 0.56350832689629 h, 11.27016654 % mean 4.4364916731037 h',
} as const;

export const MOMENTS: PublishedCase = {
  title: 'S18: moments and points of the laws of times',
  source: 'Elementary (recomputed)',
  scenario: resting('S18', 'weeks: 1, ignored weeks: 0, replications: 60', LAWS, []),
  values: [
    mean('lognormal', 3),
    deviation('lognormal', 0.5 * 9),
    point95('lognormal', 6.981467013),
    mean('gamma', 3),
    deviation('gamma', 0.25 * 9),
    point95('gamma', 5.815242396),
    mean('weibull', 100),
    deviation('weibull', 0.25 * 10_000),
    mean('triangular', 4),
    deviation('triangular', 1.166666667),
    point95('triangular', 6),
    mean('pert', 3.5),
    deviation('pert', 0.75),
    mean('uniform', 4.5),
    deviation('uniform', 2.083333333),
    mean('hyperexponential', 1),
    deviation('hyperexponential', 4),
  ],
};

/** What inversion gives for a uniform number of 0.3 is what three of ten times do not exceed. */
const POINTS = [
  ['exponential', 'exponential mean 2 h', 0.7133498879],
  ['weibull', 'weibull shape 1.5, scale 10 h', 5.029387149],
  ['triangular', 'triangular 2 to 7 h, usually 3', 3.258342613],
  ['lognormal', 'lognormal mean 3 h, variation 0.7071067812', 1.754110198],
] as const;

export const INVERSION: PublishedCase = {
  title: 'R12: the 30 % points of inversion are promises that three of ten keep',
  source: 'Inverse transform (closed form)',
  scenario: resting(
    'R12',
    'weeks: 1, ignored weeks: 0, replications: 60',
    Object.fromEntries(POINTS.map(([part, law]) => [part, law])),
    POINTS.map(([, , point]) => `, promise: ${point} h`),
  ),
  values: POINTS.map(([part]) => ({
    what: `within the 30 % point, ${part}`,
    truth: 0.3,
    kind: 'share',
    estimate: onTimeOf(part),
  })),
};
