import { formatNumber, type PartAnswer, type QuantityTimes, type WayOfMaking } from '@buildweek/results';
import { clockSpreadWords, clockWords } from '@buildweek/study';
import { paragraph } from '../terminal/paragraph.ts';
import { listSection, section } from '../terminal/section.ts';
import { harmless, type Style } from '../terminal/style.ts';
import { numbers, tableText, words } from '../terminal/table.ts';

/** What one part costs in hours on each process, on one screen. */
export function partText(answer: PartAnswer, style: Style): string {
  const { part, lab, asked, ways, impossible, plays } = answer;
  const [first, ...others] = asked;
  const place = lab.isTypical ? 'a lab of typical machines' : `"${lab.name}"`;
  const spread = 'in brackets what one play in ten stays below and one in ten above';
  const sections = [
    style.heading(harmless(`${part.name}, ${part.finish}, in ${place}`)),
    answer.verdict.map((sentence) => paragraph(harmless(sentence), '  ')).join('\n'),
    section(
      `Finished after, when asked for on ${first?.label ?? ''}`,
      quantityTable(ways, style, ({ finished }) => {
        const hours = finished.find(({ asked: label }) => label === first?.label)?.hours;
        return hours === undefined ? 'over a year' : clockSpreadWords(hours);
      }),
      style,
    ),
    ...others.map(({ label }) =>
      section(
        `Finished after, when asked for on ${label}`,
        quantityTable(ways, style, ({ finished }) => {
          const hours = finished.find(({ asked: one }) => one === label)?.hours;
          return hours === undefined ? 'over a year' : clockWords(hours.typical);
        }),
        style,
      ),
    ),
    section(
      'Minutes of people per piece',
      quantityTable(ways, style, ({ minutesOfPeoplePerPart: { typical, low, high } }) => {
        return `${minutes(typical)} (${minutes(low)} to ${minutes(high)})`;
      }),
      style,
    ),
    overtakingSection(answer, style),
    section('Where the hours of one piece go', hoursTable(ways, style), style),
    listSection('How it stands', standing(ways), style),
    listSection(
      'Cannot make it',
      impossible.map(({ route, reason }) => `${route}: ${reason}`),
      style,
    ),
    listSection('Measured', part.notes, style),
    paragraph(
      `An empty lab in which nothing goes wrong: the least that it can take. Over ${plays} plays; ${spread}. --json and --page tell all that is assumed.`,
      '',
    ),
    paragraph(cautionWords(answer), ''),
  ];
  return `${sections.filter((text) => text !== '').join('\n\n')}\n`;
}

/** One row for each way, one column for each number of pieces. */
function quantityTable(
  ways: readonly WayOfMaking[],
  style: Style,
  cell: (times: QuantityTimes) => string,
): string {
  const quantities = [...new Set(ways.flatMap((way) => way.quantities.map(({ quantity }) => quantity)))];
  return tableText(
    [
      words('by'),
      ...quantities.map((quantity) => numbers(quantity === 1 ? '1 piece' : `${quantity} pieces`)),
    ],
    ways.map((way) => ({
      cells: [
        nameOf(way),
        ...quantities.map((quantity) => {
          const times = way.quantities.find((one) => one.quantity === quantity);
          return times === undefined ? 'over a year' : cell(times);
        }),
      ],
    })),
    style,
  );
}

function hoursTable(ways: readonly WayOfMaking[], style: Style): string {
  return tableText(
    [
      words('by'),
      numbers('print'),
      numbers('people'),
      numbers('by itself'),
      numbers('nobody there'),
      numbers('fit a build'),
      numbers('print of a full build'),
    ],
    ways.map((way) => {
      const [timeline] = way.timelines;
      const one = way.quantities.find(({ quantity }) => quantity === 1);
      const shares =
        timeline === undefined
          ? ['', '', '']
          : [
              (one?.minutesOfPeoplePerPart.typical ?? timeline.attendedHours * 60) / 60,
              timeline.unattendedHours,
              timeline.closedHours,
            ].map(clockWords);
      return {
        cells: [
          nameOf(way),
          clockWords(way.printHoursOfOne),
          ...shares,
          String(way.mostPerBuild),
          clockWords(way.printHoursOfFull),
        ],
      };
    }),
    style,
  );
}

/** From how many pieces on one way is ahead of another, for those that are the fastest for some number of pieces. */
function overtakingSection({ ways, overtakings }: PartAnswer, style: Style): string {
  const quantities = [...new Set(ways.flatMap((way) => way.curve.map(({ quantity }) => quantity)))];
  const hoursAt = (way: WayOfMaking, quantity: number): number =>
    way.curve.find((point) => point.quantity === quantity)?.hours ?? Number.POSITIVE_INFINITY;
  const leaders = new Set(
    quantities.map((quantity) => {
      const best = Math.min(...ways.map((way) => hoursAt(way, quantity)));
      return ways.find((way) => hoursAt(way, quantity) === best)?.route;
    }),
  );
  const told = overtakings.filter(({ slower, faster }) => leaders.has(slower) && leaders.has(faster));
  if (told.length === 0) return '';
  const table = tableText(
    [
      words('ahead'),
      words('of'),
      numbers('from pieces on'),
      numbers('one play in ten already from'),
      numbers('one only from'),
    ],
    told.map(({ slower, faster, quantity, low, high }) => ({
      cells: [faster, slower, String(quantity), String(low), high === null ? 'not at all' : String(high)],
    })),
    style,
  );
  return section('Which overtakes which, among those that are ever first', table, style);
}

/** How the part stands in the builds of each way; once, where all say the same. */
function standing(ways: readonly WayOfMaking[]): string[] {
  const reasons = new Map<string, string[]>();
  for (const { route, orientation } of ways) {
    reasons.set(orientation, [...(reasons.get(orientation) ?? []), route]);
  }
  return [...reasons].map(([reason, routes]) => `${routes.join(', ')}: ${reason}`);
}

function cautionWords({ cautions }: PartAnswer): string {
  const topics = cautions.map(({ topic }) => topic).filter((topic) => topic !== 'What this is not');
  return `Cautions: ${topics.join('; ')}. Go by the safety data sheets, the rules of the site, and the people licensed to judge them; this is no safety assessment.`;
}

function nameOf({ route, process }: WayOfMaking): string {
  return process === 'other' ? route : `${route} (${process})`;
}

function minutes(value: number): string {
  return formatNumber(value, value < 10 ? 1 : 0);
}
