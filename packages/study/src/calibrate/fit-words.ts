import { type CalibrationAnswer, formatNumber, joinWords } from '@buildweek/results';
import { withDigits } from './written-number.ts';

/** Off by more than this, either way, a row is worth a look. */
const ODD_RATIO = 1.5;
/** Less than this explained, the estimates are little better than the mean of all builds. */
const POORLY_EXPLAINED = 0.5;
/** A standard error of more than this share of a value leaves little to rely on. */
const BADLY_KNOWN = 0.25;
/** With fewer degrees of freedom the spread is hardly known. */
const FEW_DEGREES = 6;

type Said = Omit<
  CalibrationAnswer,
  'format' | 'version' | 'program' | 'verdict' | 'warnings' | 'notToldApart' | 'lines'
>;

/** How good a fit is, in a few sentences. */
export function fitVerdict({
  builds,
  errors,
  errorsNow,
  explained,
  spread,
  degreesOfFreedom,
}: Said): string[] {
  const many = `${builds.length} builds`;
  const sentences = [
    `Over ${many} the fitted estimate is off by ${percent(errors.median)} in the middle and ${percent(errors.largest)} at most; ` +
      `with what the scenario has now it is ${percent(errorsNow.median)} and ${percent(errorsNow.largest)}.`,
  ];
  if (explained === null)
    sentences.push('All builds took the same time, so that there is nothing to explain.');
  else if (explained < 0) {
    sentences.push('The fit says less of the differences between builds than their mean would.');
  } else {
    sentences.push(
      `It explains ${formatNumber(100 * explained, explained > 0.99 ? 1 : 0)} % of the differences between builds.`,
    );
  }
  sentences.push(
    spread.value === 0
      ? 'Every build is met exactly, so that no spread can be told.'
      : `A build takes about ${percent(spread.value)} more or less than estimated (${percent(spread.low)} to ${spread.high === null ? 'over 1000 %' : percent(spread.high)}, ` +
          `with ${percent(spread.level)} confidence): this is the uncertainty that the simulation draws from.`,
  );
  if (degreesOfFreedom < FEW_DEGREES && spread.value > 0) {
    sentences.push('From so few builds the spread is hardly known: measure ten or more.');
  }
  return sentences;
}

/** What somebody should look at before taking the fit over. */
export function fitWarnings({ machines, builds, parameters, explained, spread }: Said): string[] {
  const warnings: string[] = [];
  const cramped = builds.filter(({ fits }) => !fits);
  if (cramped.length > 0) {
    warnings.push(
      `${namesOf(cramped)} would not fit "${machines}" by the reckoning of this program. ${cramped.length === 1 ? 'It was' : 'They were'} used all the same; ` +
        'look at the pieces, and at the platform, spacing and packing of the machine.',
    );
  }
  for (const { name, line, measuredHours, estimatedHours } of builds) {
    const ratio = measuredHours / estimatedHours;
    if (ratio <= ODD_RATIO && ratio >= 1 / ODD_RATIO) continue;
    warnings.push(
      `Build ${name} (line ${line}) took ${withDigits(ratio, 2)} times what is estimated. Look whether its rows are right; ` +
        'leave it out only when you know what went wrong.',
    );
  }
  for (const { label, unit, value, usual, isUsual, origin } of parameters) {
    if (origin === 'zero') {
      warnings.push(`The builds would put the ${label} below zero: it is taken as 0.`);
    } else if (!isUsual && origin !== 'start value') {
      warnings.push(
        `The ${label}, ${withDigits(value, 3)} ${unit}, is outside of what is usual, ${usual.low} to ${usual.high} ${unit}.`,
      );
    }
  }
  const vague = parameters.filter(
    ({ value, standardError }) => standardError !== null && standardError > BADLY_KNOWN * value,
  );
  if (vague.length > 0) {
    warnings.push(
      `The ${joinWords(vague.map(({ label }) => label))} ${vague.length === 1 ? 'is' : 'are'} badly known, by the standard error: builds like these are estimated as said above, others perhaps not.`,
    );
  }
  if (explained !== null && explained < POORLY_EXPLAINED) {
    warnings.push(
      'The builds differ for reasons that this model does not know, or they are all much alike. Measure builds that differ more in height and in volume, before you rely on this.',
    );
  }
  if (spread.value > 1) {
    warnings.push('The spread is more than a scenario takes; the line below says 100 %.');
  }
  return warnings;
}

function namesOf(builds: readonly { readonly name: string }[]): string {
  const most = 5;
  const names = builds.slice(0, most).map(({ name }) => name);
  const rest = builds.length - names.length;
  return `${builds.length === 1 ? 'Build' : 'Builds'} ${joinWords(rest > 0 ? [...names, `${rest} others`] : names)}`;
}

function percent(share: number): string {
  return `${formatNumber(100 * share, share < 0.0995 && share > 0 ? 1 : 0)} %`;
}
