import type { BuildTimeModel } from '@buildweek/model';
import { type CalibrationAnswer, joinWords } from '@buildweek/results';
import type { BuildTimeFit } from '@buildweek/timing';
import { parameterWords } from './parameter-words.ts';

/** What the builds could not tell apart, with what to measure so that others can. */
export function notToldApart(fit: BuildTimeFit): CalibrationAnswer['notToldApart'] {
  return groupsOf(fit).map((parameters) => {
    const named = joinWords(parameters.map((name) => parameterWords(name).label));
    const isShort = fit.builds <= fit.parameters.length;
    const why = isShort
      ? `${fit.builds} builds are too few to tell ${named} apart`
      : `These builds do not tell ${named} apart: a change of one looks like a change of the other`;
    const kept = `the ratio that the scenario has was kept, and all of it fitted with one factor`;
    return { parameters, text: `${why}; ${kept}. ${adviceFor(parameters, fit.model.kind)}` };
  });
}

/** Pairs that share a parameter belong together. */
function groupsOf({ parameters, notToldApart: pairs }: BuildTimeFit): string[][] {
  const groups: string[][] = [];
  for (const { name } of parameters) {
    if (groups.some((group) => group.includes(name))) continue;
    const others = pairs.flatMap(([first, second]) =>
      first === name ? [second] : second === name ? [first] : [],
    );
    if (others.length > 0) groups.push([name, ...others]);
  }
  return groups;
}

function adviceFor(parameters: readonly string[], kind: BuildTimeModel['kind']): string {
  switch (kind) {
    case 'extrusion':
      return 'Measure a build of low, bulky parts and one of high, slender ones.';
    case 'mask':
      return 'Measure a build of a few millimetres and one as high as you have.';
    case 'laser vat':
    case 'powder bed':
      return 'Measure a low build with much part in it and a high one with little.';
    case 'volume and height':
      if (!parameters.includes('hoursPerBuild')) {
        return 'Measure a low build with much part in it and a high one with little.';
      }
      return parameters.includes('hoursPerCentimetre')
        ? 'Measure a very low build and a high one, each with little and with much part in it.'
        : 'Measure a nearly empty build and a full one of the same height.';
  }
}
