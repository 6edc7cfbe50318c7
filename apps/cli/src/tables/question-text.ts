import { formatEstimate, formatLevel, keptTogether } from '@buildweek/charts';
import type { EstimateOrRefused, PlanRun, Results, WrittenUnit } from '@buildweek/results';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import type { Footnotes } from './footnotes.ts';

/** What the answers to questions about one scenario end with. */
export interface QuestionEnd {
  readonly run: PlanRun;
  readonly byHand: readonly string[];
  readonly assumptions?: readonly string[];
  readonly cautions: Results['cautions'];
  readonly warnings: readonly string[];
}

/** An estimate in a table whose heading says the unit. */
export function estimateText(
  estimate: EstimateOrRefused,
  unit: Omit<WrittenUnit, 'one' | 'many'>,
  footnotes: Footnotes,
): string {
  return estimate.kind === 'estimate'
    ? formatEstimate(estimate, { ...unit, one: '', many: '' })
    : footnotes.mark(estimate.reason);
}

/** A table with the reasons for what is not given below it. */
export function withNotes(table: string, footnotes: Footnotes): string {
  const notes = footnotes.text();
  return notes === '' ? table : `${table}\n${notes}`;
}

/** The answer in words, then sections, then what has to be known beside them. */
export function questionText(
  verdict: readonly string[],
  sections: readonly string[],
  more: string,
  { run, byHand, assumptions = [], cautions, warnings }: QuestionEnd,
  style: Style,
): string {
  const { replications, weeks, ignoredWeeks, seed, level } = run;
  const basis = `${replications} replications of ${weeks} weeks after ${ignoredWeeks.weeks} that are left out, everything on the same random numbers, seed “${seed}”. Values stand with their ${formatLevel(level)} intervals. ${more}`;
  const topics = cautions.map(({ topic }) => topic).filter((topic) => topic !== 'What this is not');
  const all = [
    verdict.map((sentence) => paragraph(harmless(keptTogether(sentence)), '')).join('\n\n'),
    ...sections,
    listSection('The same by hand', byHand, style),
    listSection('Taken for granted', assumptions, style),
    paragraph(basis, ''),
    listSection('Warnings', warnings, style),
    topics.length === 0
      ? ''
      : paragraph(
          `Cautions: ${topics.join('; ')}. Go by the safety data sheets, the rules of the site, and the people licensed to judge them; this is no safety assessment.`,
          '',
        ),
  ];
  return `${all.filter((text) => text !== '').join('\n\n')}\n`;
}
