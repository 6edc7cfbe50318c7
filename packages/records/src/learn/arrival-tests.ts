import type { LearnedAnswer } from '@buildweek/results';
import type { ArrivalFacts } from './arrival-facts.ts';

const SIGNIFICANT = 0.05;

/** What tests say of how requests come in, in sentences. */
export function arrivalTests({
  dispersion,
  weekVariation,
  withinDays,
  trend,
}: ArrivalFacts): LearnedAnswer['tests'] {
  const tests: LearnedAnswer['tests'] = [];
  if (dispersion !== null) {
    tests.push({
      name: 'whole weeks: dispersion of counts',
      pValue: dispersion.pValue,
      finding:
        weekVariation > 0
          ? `Counts of weeks vary ${short(dispersion.index)} times as much as by chance: a factor of whole weeks, which varies by ${Math.round(100 * weekVariation)} %, is taken into the scenario.`
          : 'Counts of weeks vary no more than by chance.',
    });
  }
  if (withinDays !== null) {
    const { pValue, arrivals, unitMinutes } = withinDays;
    const rounded = unitMinutes > 1 ? `, written down to ${unitMinutes} min and spread over them again` : '';
    tests.push({
      name: 'within parts of a day: distances between jobs',
      pValue,
      finding:
        pValue < SIGNIFICANT
          ? `The ${arrivals} jobs${rounded} lie more unevenly within the parts of a day than chance allows: in clusters, as orders of several parts do, or at a rate that changes with the hour. The scenario takes each as coming by itself.`
          : `The ${arrivals} jobs${rounded} come as if each came by itself.`,
    });
  }
  if (trend !== null) {
    const direction = trend.score > 0 ? 'more' : 'less';
    tests.push({
      name: 'trend: Laplace',
      pValue: trend.pValue,
      finding: trend.isClear
        ? `Jobs become ${direction} frequent over the log; the scenario goes on from where it has come to.`
        : 'There is no clear trend over the log.',
    });
  }
  return tests;
}

/** Two digits that mean something. */
function short(value: number): string {
  return String(Number(value.toPrecision(2)));
}
