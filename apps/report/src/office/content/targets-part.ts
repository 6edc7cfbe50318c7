import { confidenceNote, targetConfidence, targetFound, VERDICT_MARKS } from '@buildweek/charts';
import type { Results } from '@buildweek/results';
import type { Block, Grid } from './block.ts';
import { Cells } from './cells.ts';

/** What the scenario asks of the lab, and what was found. */
function targetsGrid({ targets, run }: Results): Grid[] {
  return new Cells().grid(
    'What the scenario asks of the lab, and what was found, with its interval',
    [{ title: 'Target' }, { title: 'Found' }, { title: 'Verdict' }],
    targets.map((target) => [
      `${target.wording}\n${target.meaning}`,
      targetFound(target, run.weeks),
      `${VERDICT_MARKS[target.verdict]} ${target.verdict}\n${targetConfidence(target)}`,
    ]),
  );
}

/** The same in the few words that a slide has room for. */
export function shortTargetsGrid({ targets, run }: Results): Grid[] {
  return new Cells().grid(
    'Found: the long run with its interval, or the share of periods. Confidence is one-sided',
    [{ title: 'Target' }, { title: 'Found' }, { title: 'Verdict' }, { title: 'Confidence' }],
    targets.map((target) => [
      target.wording,
      targetFound(target, run.weeks),
      `${VERDICT_MARKS[target.verdict]} ${target.verdict}`,
      targetConfidence(target),
    ]),
  );
}

/** The targets and what their confidences mean. */
export function targetBlocks(results: Results): Block[] {
  if (results.targets.length === 0) return [];
  return [...targetsGrid(results), { kind: 'note', text: confidenceNote(results.targets) }];
}
