import type { Duration } from '@buildweek/model';
import { listed } from '../nearest.ts';
import type { Reading } from '../reading.ts';
import type { ScenarioPartTimes } from '../scenario.ts';
import type { SourcePath } from '../source/source-node.ts';
import type { Finish } from '../words/finish.ts';
import { type StageTime, timeOfPart } from '../words/stage-time.ts';
import type { KnownShape } from './build-shape.ts';

/** What a part type brings to the stages of its route. */
export interface StagePart {
  readonly name: string;
  readonly path: SourcePath;
  readonly finish: Finish;
  readonly shape: KnownShape | null;
  /** Whether it says a shape, rightly or wrongly. */
  readonly saysShape: boolean;
  /** Times of its own. */
  readonly times: readonly ScenarioPartTimes[];
}

/**
 * The time that a part takes at a stage; what is not known of its size is reported.
 *
 * @param part null when a route is looked at by itself: then the size adds nothing
 */
export function partTime(
  time: Pick<StageTime, 'duration' | 'bySize'>,
  stage: string,
  part: StagePart | null,
  reading: Reading,
): Duration {
  if (part === null || time.bySize.length === 0) return time.duration;
  const { shape, path } = part;
  const measures = time.bySize.map(({ measure }) => measure);
  if (shape === null) {
    if (part.saysShape) return time.duration;
    reading.report(path, 'key', {
      message: `"${stage}" takes its time by the ${listed(measures)} of a part, and of "${part.name}" no size is known.`,
      expected: `a mesh, or ${[...new Set(['size', 'volume', ...measures])].join(', ')}, instead of a typed print time`,
      write: `mesh: parts/part.stl, or times: { ${stage}: 5 min per part }`,
    });
    return time.duration;
  }
  for (const measure of measures) {
    if (!shape.unsaid.has(measure)) continue;
    reading.report(path, 'key', {
      message: `"${part.name}" does not say its ${measure}, by which "${stage}" takes its time.`,
      expected: `${measure}: an area`,
      write: `${measure}: ${measure === 'surface' ? '60 cm2' : '120 mm2'}`,
    });
  }
  const { surface, supportContactArea, volume } = shape.shape;
  const sizes = { surface, 'support contact': supportContactArea, volume };
  return timeOfPart(time, (measure) => sizes[measure]);
}
