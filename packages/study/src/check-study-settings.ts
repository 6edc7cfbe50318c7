import type { StudySettings } from '@buildweek/model';

/** @throws RangeError with a sentence for the user when settings cannot be played */
export function checkStudySettings(settings: StudySettings): void {
  const whole = (name: string, value: number, fewest: number): void => {
    if (!(Number.isInteger(value) && value >= fewest)) {
      throw new RangeError(`The ${name} must be a whole number of at least ${fewest}, not ${value}.`);
    }
  };
  whole('number of measured weeks', settings.weeks, 1);
  whole('number of weeks to finish', settings.capWeeks, 0);
  if (settings.ignoredWeeks !== 'auto') whole('number of ignored weeks', settings.ignoredWeeks, 0);
  // No interval rests on fewer, so a shorter run could say nothing.
  const { replications, precision } = settings;
  if (precision === null) whole('number of replications', replications ?? Number.NaN, 20);
  else {
    whole('limit of replications', settings.replicationLimit, 20);
    if (!(precision.relativeHalfWidth > 0)) {
      throw new RangeError(`The precision must be above 0, not ${precision.relativeHalfWidth}.`);
    }
  }
  if (!(settings.level > 0 && settings.level < 1)) {
    throw new RangeError(`The confidence level must lie between 0 and 1, not ${settings.level}.`);
  }
}
