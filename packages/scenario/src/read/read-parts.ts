import type { Fields } from '../fields.ts';
import type { ScenarioPart, ScenarioPartTimes } from '../scenario.ts';
import { fitsPerBuild, spaceOfBuild } from '../words/capacity.ts';
import { anyText, choice } from '../words/choice.ts';
import { plainDuration } from '../words/duration.ts';
import { FINISHES, USUAL_FINISH } from '../words/finish.ts';
import { printTime } from '../words/print-time.ts';
import { stageTime } from '../words/stage-time.ts';
import { readPartShape } from './read-part-shape.ts';
import { STATION_BASES } from './read-stations.ts';

export function readParts(fields: Fields): ScenarioPart[] {
  return fields.names('parts').map((name): ScenarioPart => {
    const part = fields.group('parts').group(name);
    return {
      name,
      route: part.need('route', anyText, '', 'the name of its route', 'route: …'),
      material: part.readOr('material', anyText, 'standard'),
      settings: part.readOr('settings', anyText, 'standard'),
      space: readSpace(part),
      print: part.read('print', printTime) ?? null,
      shape: readPartShape(part),
      finish: part.read('finish', choice(...FINISHES)) ?? USUAL_FINISH,
      times: part.names('times').map((stage) => readTimes(part.group('times'), stage)),
    };
  });
}

function readSpace(part: Fields): ScenarioPart['space'] {
  if (part.has('fits')) {
    part.refuse('space', '"fits" says the same.', 'one of the two');
    const fits = part.read('fits', fitsPerBuild);
    return fits === undefined ? null : { fits };
  }
  const share = part.read('space', spaceOfBuild);
  return share === undefined ? null : { share };
}

function readTimes(times: Fields, stage: string): ScenarioPartTimes {
  const wording = stageTime(STATION_BASES);
  if (times.node(stage)?.kind !== 'map') {
    return { stage, takes: times.read(stage, wording) ?? null, load: null, unload: null };
  }
  const group = times.group(stage);
  return {
    stage,
    takes: group.read('takes', wording) ?? null,
    load: group.read('load', plainDuration) ?? null,
    unload: group.read('unload', plainDuration) ?? null,
  };
}
