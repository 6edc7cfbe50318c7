import type { Distribution, HyperexponentialBranch } from '@buildweek/model';
import { gammaFunction, inverseNormal } from '@buildweek/numbers';
import type { Amount, Phrase } from './phrase.ts';
import { toBase } from './units.ts';

/** Words that start a distribution, with an example each; a plain number or range needs none. */
const EXAMPLES = {
  uniform: 'uniform 10 to 45 min',
  triangular: 'triangular 10 to 45 min, usually 20',
  normal: 'normal mean 20 min, deviation 5 min',
  lognormal: 'lognormal mean 3 h, variation 0.7',
  exponential: 'exponential mean 2 h',
  erlang: 'erlang 3, mean 2 h',
  gamma: 'gamma shape 2, mean 3 h',
  weibull: 'weibull shape 1.5, mean 200 h',
  hyperexponential: 'hyperexponential 10 % mean 5.5 h, 90 % mean 30 min',
  measured: 'measured 10, 12, 30 min',
} as const;
type Name = keyof typeof EXAMPLES;
const NAMES = Object.keys(EXAMPLES) as Name[];

/**
 * Reads a distribution of times: `20 min` is constant, `10 to 45 min, usually 20` is PERT with these as
 * minimum, maximum and mode, everything else says its name. One unit at the end holds for the numbers before.
 *
 * @returns the distribution in hours
 * @throws WordingError
 */
export function readDistribution(phrase: Phrase): Distribution {
  if (phrase.startsWithNumber || phrase.next === '-') return constantOrPert(phrase);
  const name = phrase.next.toLowerCase();
  const known = NAMES.find((candidate) => candidate === name);
  if (known === undefined) throw phrase.unknownWord(NAMES);
  phrase.take(known);
  phrase.example = EXAMPLES[known];
  return READERS[known](phrase);
}

const READERS: Readonly<Record<Name, (phrase: Phrase) => Distribution>> = {
  uniform(phrase) {
    const { low, high } = range(phrase);
    return low === high ? { kind: 'constant', value: low } : { kind: 'uniform', low, high };
  },
  triangular(phrase) {
    const { low, high, mode } = range(phrase, true);
    return low === high ? { kind: 'constant', value: low } : { kind: 'triangular', low, mode, high };
  },
  normal(phrase) {
    phrase.need('mean');
    const mean = phrase.amount('time');
    phrase.need('deviation');
    const deviation = phrase.amount('time');
    const [meanHours = 0, standardDeviation = 0] = hoursOf(phrase, [mean, deviation]);
    return standardDeviation === 0
      ? { kind: 'constant', value: meanHours }
      : { kind: 'normal', mean: meanHours, standardDeviation };
  },
  lognormal(phrase) {
    if (phrase.startsWithNumber) return lognormalByPercentiles(phrase);
    const { mean, variation } = meanAnd(phrase, 'variation');
    // log of the variance ratio; Law, Simulation Modeling and Analysis, section 6.2.2 (from memory)
    const logVariance = Math.log1p(variation * variation);
    return {
      kind: 'lognormal',
      logMean: Math.log(mean) - logVariance / 2,
      logStandardDeviation: Math.sqrt(logVariance),
    };
  },
  exponential(phrase) {
    return { kind: 'exponential', mean: positiveMean(phrase) };
  },
  erlang(phrase) {
    const shape = phrase.number();
    if (!Number.isInteger(shape) || shape < 1) {
      throw phrase.error(`An Erlang distribution has a whole number of phases, not ${shape}.`);
    }
    return { kind: 'gamma', shape, scale: positiveMean(phrase) / shape };
  },
  gamma(phrase) {
    if (phrase.take('shape')) {
      const shape = positive(phrase, phrase.number(), 'shape');
      return { kind: 'gamma', shape, scale: scaleOrMean(phrase, shape) };
    }
    const { mean, variation } = meanAnd(phrase, 'variation');
    return { kind: 'gamma', shape: 1 / (variation * variation), scale: mean * variation * variation };
  },
  weibull(phrase) {
    phrase.need('shape');
    const shape = positive(phrase, phrase.number(), 'shape');
    return { kind: 'weibull', shape, scale: scaleOrMean(phrase, gammaFunction(1 + 1 / shape)) };
  },
  hyperexponential(phrase) {
    const branches: HyperexponentialBranch[] = [];
    while (!phrase.atEnd) {
      const probability = percent(phrase);
      branches.push({ probability, mean: positiveMean(phrase) });
    }
    const total = branches.reduce((sum, branch) => sum + branch.probability, 0);
    if (Math.abs(total - 1) > 1e-9) {
      throw phrase.error(`The shares add up to ${Number((total * 100).toPrecision(6))} %, not to 100 %.`);
    }
    return { kind: 'hyperexponential', branches };
  },
  measured(phrase) {
    const bracket = phrase.take('[');
    const amounts: Amount[] = [];
    while (phrase.startsWithNumber) amounts.push(phrase.amount('time'));
    if (bracket) phrase.need(']');
    if (amounts.length === 0) throw phrase.error('There are no measured values.');
    const unit = phrase.atEnd ? undefined : phrase.unitOnly('time');
    const values = hoursOf(
      phrase,
      unit === undefined ? amounts : amounts.map((amount) => ({ ...amount, unit })),
    );
    return values.length === 1 ? { kind: 'constant', value: values[0] ?? 0 } : { kind: 'measured', values };
  },
};

function constantOrPert(phrase: Phrase): Distribution {
  const first = phrase.amount('time');
  if (!phrase.take('to')) {
    const [value = 0] = hoursOf(phrase, [first]);
    return { kind: 'constant', value };
  }
  const second = phrase.amount('time');
  if (!phrase.take('usually')) {
    const { low, high } = checkedRange(phrase, first, second, null);
    const unit = second.unit ?? first.unit;
    const middle = Number((((low + high) / 2) * ((unit?.over ?? 1) / (unit?.times ?? 1))).toPrecision(2));
    throw phrase.error(
      'Two numbers leave open what is usual.',
      phrase.atEnd ? `${phrase.text}, usually ${middle}` : phrase.example,
    );
  }
  const { low, high, mode } = checkedRange(phrase, first, second, phrase.amount('time'));
  return low === high ? { kind: 'constant', value: low } : { kind: 'pert', low, mode, high };
}

function range(phrase: Phrase, withMode = false): { low: number; high: number; mode: number } {
  const first = phrase.amount('time');
  phrase.need('to');
  const second = phrase.amount('time');
  if (withMode) phrase.need('usually');
  return checkedRange(phrase, first, second, withMode ? phrase.amount('time') : null);
}

function checkedRange(
  phrase: Phrase,
  first: Amount,
  second: Amount,
  usual: Amount | null,
): { low: number; high: number; mode: number } {
  const [low = 0, high = 0, mode = low] = hoursOf(
    phrase,
    usual === null ? [first, second] : [first, second, usual],
  );
  if (low > high) {
    const swapped = phrase.text.replace(`${first.text} to ${second.text}`, `${second.text} to ${first.text}`);
    throw phrase.error(`The low end (${first.text}) is above the high end (${second.text}).`, swapped);
  }
  if (usual !== null && (mode < low || mode > high)) {
    const nearer = mode < low ? first.text : second.text;
    throw phrase.error(
      `The usual value (${usual.text}) lies outside ${first.text} to ${second.text}.`,
      phrase.text.replace(/(usually\s+).*$/i, `$1${nearer}`),
    );
  }
  return { low, high, mode };
}

/** `lognormal 50 % 2 h, 95 % 6 h`: both percentiles are met exactly. */
function lognormalByPercentiles(phrase: Phrase): Distribution {
  const firstShare = percent(phrase);
  const firstAmount = phrase.amount('time');
  const secondShare = percent(phrase);
  const secondAmount = phrase.amount('time');
  const [first = 0, second = 0] = hoursOf(phrase, [firstAmount, secondAmount]);
  if (!(firstShare > 0 && firstShare < secondShare && secondShare < 1)) {
    throw phrase.error('The two shares have to rise and to lie between 0 and 100 %.');
  }
  if (!(first > 0 && first < second)) throw phrase.error('The two times have to rise and to be above zero.');
  const logStandardDeviation =
    (Math.log(second) - Math.log(first)) / (inverseNormal(secondShare) - inverseNormal(firstShare));
  return {
    kind: 'lognormal',
    logMean: Math.log(first) - inverseNormal(firstShare) * logStandardDeviation,
    logStandardDeviation,
  };
}

function percent(phrase: Phrase): number {
  const amount = phrase.amount('share');
  if (amount.unit === null) throw phrase.error(`"${amount.text}" is a share and needs a %.`);
  return toBase(amount.number, amount.unit);
}

function meanAnd(phrase: Phrase, word: string): { mean: number; variation: number } {
  const mean = positiveMean(phrase);
  phrase.need(word);
  return { mean, variation: positive(phrase, phrase.number(), word) };
}

function positiveMean(phrase: Phrase): number {
  phrase.need('mean');
  const [mean = 0] = hoursOf(phrase, [phrase.amount('time')]);
  return positive(phrase, mean, 'mean');
}

function scaleOrMean(phrase: Phrase, meanOfScaleOne: number): number {
  if (!phrase.take('scale')) return positiveMean(phrase) / meanOfScaleOne;
  const [scale = 0] = hoursOf(phrase, [phrase.amount('time')]);
  return positive(phrase, scale, 'scale');
}

function positive(phrase: Phrase, value: number, what: string): number {
  if (value > 0) return value;
  throw phrase.error(`The ${what} has to be above zero.`);
}

/**
 * Times in hours. A number without a unit takes that of the next one that has a unit, or else of the last.
 *
 * @throws WordingError when there is no unit at all
 */
function hoursOf(phrase: Phrase, amounts: readonly Amount[]): number[] {
  const lastUnit = amounts.findLast((amount) => amount.unit !== null)?.unit;
  if (lastUnit === null || lastUnit === undefined) {
    throw phrase.error(`"${phrase.text}" has no unit.`, `${phrase.text} min`);
  }
  return amounts.map((amount, index) => {
    const unit = amounts.slice(index).find((candidate) => candidate.unit !== null)?.unit ?? lastUnit;
    return toBase(amount.number, unit);
  });
}
