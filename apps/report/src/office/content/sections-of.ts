import { type Chart, caseNote, doubtsChartsOf, planChartsOf } from '@buildweek/charts';
import {
  type DecisionAnswer,
  differenceSentences,
  periodName,
  type ReportDocument,
  type Results,
} from '@buildweek/results';
import { isDecision, officeCharts, shownResults } from '../document.ts';
import type { Block, Section } from './block.ts';
import { keyNumbersGrid, leadTimeGrid } from './lead-time-part.ts';
import { caseGrid, committedGrid, costGrid } from './money-part.ts';
import { differenceWords, optionsGrid } from './options-part.ts';
import {
  assumptionsGrid,
  handGrid,
  handLeadTimeGrid,
  isStated,
  lawsGrid,
  originFacts,
} from './origin-part.ts';
import { machinesGrid, peopleGrid, stagesGrid, stationsGrid, stepGrids } from './resources-part.ts';
import { targetBlocks } from './targets-part.ts';
import {
  buildsGrid,
  equipmentTroubleGrid,
  partTroubleGrid,
  powderGrid,
  queuesGrid,
  sentOutGrid,
} from './trouble-part.ts';

const lede = (text: string): Block => ({ kind: 'lede', text });
const note = (text: string): Block => ({ kind: 'note', text });
const list = (items: readonly string[]): Block[] => (items.length === 0 ? [] : [{ kind: 'list', items }]);

type ChartBlocks = (...ids: readonly string[]) => Block[];

/**
 * Everything that is told of a document, in the order in which it is read. Sections for which the document has
 * nothing are left out.
 */
export function sectionsOf(document: ReportDocument): Section[] {
  const byId = new Map(officeCharts(document).map((chart) => [chart.id, chart]));
  const charts: ChartBlocks = (...ids) =>
    ids.flatMap((id): Block[] => {
      const chart = byId.get(id);
      return chart === undefined ? [] : [{ kind: 'chart', chart }];
    });
  const results = shownResults(document);
  const warnings = document.warnings;
  const sections: Section[] = [
    ...(isDecision(document) ? decisionSections(document) : []),
    { title: 'Before this plan is followed', blocks: cautionBlocks(document) },
    {
      title: keyTitle(document),
      blocks: [
        ...(isDecision(document) ? [lede(shownWords(document))] : []),
        ...targetBlocks(results),
        ...keyNumbersGrid(results),
      ],
    },
    { title: 'Read the numbers with this in mind', blocks: list(warnings) },
    ...flowSections(results, charts),
    ...resourceSections(results, charts),
    moneySection(results, charts),
    ...originSections(results, charts),
  ];
  return sections.filter(({ blocks }) => blocks.length > 0);
}

function keyTitle(document: ReportDocument): string {
  if (isDecision(document)) return 'The lab that is shown from here on';
  return document.targets.length === 0 ? 'Key numbers' : 'Targets and key numbers';
}

function shownWords({ recommended }: DecisionAnswer): string {
  return recommended === null
    ? 'All that follows is the lab as it is, which is what is recommended.'
    : 'All that follows is the lab that is recommended, not today’s.';
}

/** The options, how the plan was found, and what is in doubt of it; the chart of the options stands on the first page. */
function decisionSections(decision: DecisionAnswer): Section[] {
  const { search, doubts } = decision;
  const drawn = (charts: readonly Chart[]): Block[] => charts.map((chart) => ({ kind: 'chart', chart }));
  return [
    {
      title: 'The options side by side',
      blocks: [...optionsGrid(decision), ...list(differenceWords(decision))],
    },
    {
      title: 'How the plan was found',
      blocks:
        search === null
          ? []
          : [
              ...list([...search.headline, search.promise, search.handSentence]),
              ...drawn(planChartsOf(search)),
            ],
    },
    {
      title: 'What could go wrong',
      blocks: doubts === null ? [] : [...list(doubts.verdict), ...drawn(doubtsChartsOf(doubts))],
    },
  ];
}

function cautionBlocks({ cautions }: ReportDocument): Block[] {
  if (cautions.length === 0) return [];
  return [{ kind: 'facts', facts: cautions.map(({ topic, text }) => [topic, text] as const) }];
}

function flowSections(results: Results, charts: ChartBlocks): Section[] {
  return [
    {
      title: 'How long jobs take',
      blocks: results.jobs.every((one) => one.jobs === 0)
        ? []
        : [
            lede(
              'Lead time runs by the clock from the complete file to the last good part: nights, weekends and breaks count. Jobs that were not finished at the end of the plan count as later than everything.',
            ),
            ...charts('lead-times'),
            ...leadTimeGrid(results),
          ],
    },
    {
      title: 'Where the hours go',
      blocks:
        results.hours.length === 0
          ? []
          : [
              lede(
                'Every hour of a job is either work that goes on or a wait with one cause: the first thing that was missing. Together they make the lead time.',
              ),
              ...charts('print-share', 'hours-by-part', 'hours-by-step'),
              ...stepGrids(results),
            ],
    },
    {
      title: 'Queues',
      blocks: [...charts('queues-by-hour', 'queues-by-week'), ...queuesGrid(results)],
    },
    { title: 'Week by week', blocks: charts('finished-per-week', 'jobs-in-lab') },
  ];
}

function resourceSections(results: Results, charts: ChartBlocks): Section[] {
  return [
    {
      title: 'People',
      blocks: [...charts('people-hours', 'people-by-hour'), ...peopleGrid(results), ...stagesGrid(results)],
    },
    { title: 'Machines', blocks: [...charts('machine-states'), ...machinesGrid(results)] },
    {
      title: 'Builds',
      blocks: [...charts('build-fill'), ...buildsGrid(results), ...powderGrid(results)],
    },
    { title: 'Stations', blocks: [...charts('station-states'), ...stationsGrid(results)] },
    { title: 'What goes wrong', blocks: [...equipmentTroubleGrid(results), ...partTroubleGrid(results)] },
    { title: 'Sent out', blocks: sentOutGrid(results) },
  ];
}

function moneySection({ money, run }: Results, charts: ChartBlocks): Section {
  if (money === null) return { title: 'Money', blocks: [] };
  return {
    title: 'Money',
    blocks: [
      lede(
        `All amounts are in ${money.currency}. A purchase is spread over its life with interest; people are paid for every hour of their roster, holidays and absence included.`,
      ),
      ...charts('cost-split'),
      ...costGrid(money),
      ...committedGrid(money),
      ...caseGrid(money),
      note(caseNote(money.case, run.weeks === 1 ? '1 week' : `${run.weeks} weeks`)),
      { kind: 'heading', text: 'What the amounts leave out' },
      ...list(money.notContained),
    ],
  };
}

function originSections(results: Results, charts: ChartBlocks): Section[] {
  const stated = results.assumptions.filter(isStated);
  const defaults = results.assumptions.filter((one) => !isStated(one));
  return [
    {
      title: 'The same by hand',
      blocks:
        results.handCalculation.length === 0
          ? []
          : [
              lede(
                'What a page of arithmetic says about the same lab: hours asked for over hours available, and lead times from formulas of waiting. It knows nothing of nights, shifts and rules; where it and the simulation differ much, ask why.',
              ),
              ...charts('load-by-hand'),
              ...handGrid(results),
              ...list(differenceSentences(results.handLeadTimes)),
              ...handLeadTimeGrid(results),
            ],
    },
    {
      title: 'Assumptions',
      blocks: [
        lede(
          `Stated in the scenario or measured from its meshes: ${stated.length}. Taken from machine classes or defaults of the program: ${defaults.length}. What nobody stated is common practice at best: replace it by records of your own lab first. What is stated stands in the scenario file, and in the table that --table writes.`,
        ),
        ...assumptionsGrid('What nobody stated: from machine classes and defaults', defaults),
      ],
    },
    {
      title: 'How this was computed',
      blocks: [
        lede(
          `The lab was played event by event, again and again with fresh luck, a ${periodName(results.run.weeks)} each time. Each number is an average over replications or a percentile over all jobs of all replications; its interval rests on the replications, which are independent of each other. The same scenario, seed and program version give the same numbers.`,
        ),
        { kind: 'facts', facts: originFacts(results) },
        ...lawsGrid(results),
      ],
    },
  ];
}
