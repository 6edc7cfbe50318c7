import { gammaQuantile } from '@buildweek/numbers';
import type { Stream } from './streams.ts';

/**
 * Factors on the rate of arrivals, one for each week: gamma with mean 1 and a stated coefficient of variation, so that
 * counts of weeks are negative binomial. Drawn by inversion from one stream, in the order of the weeks.
 * Source: W. Whitt and X. Zhang, "A data-driven model of an emergency department", Operations Research for Health Care 12
 * (2017), 1–15 (random level of a period, from memory); the mixture is that of M. Greenwood and G. U. Yule, Journal of the
 * Royal Statistical Society 83 (1920), 255–279.
 */
export class WeekFactors {
  private readonly draws: number[] = [];
  private readonly stream: Stream;

  /** @param stream is shared by all who have factors of the same weeks */
  constructor(stream: Stream) {
    this.stream = stream;
  }

  /** @param week from 0; @param variation coefficient of variation, above 0 */
  of(week: number, variation: number): number {
    while (this.draws.length <= week) this.draws.push(this.stream());
    const shape = 1 / variation ** 2;
    return gammaQuantile(this.draws[week], shape) / shape;
  }
}
