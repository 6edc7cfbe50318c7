import { formatEstimate, MILLIMETRES, PERCENT, PLAIN, type Unit } from '@buildweek/charts';
import type { Builds, Estimate, Results } from '@buildweek/results';
import { type DrawnChart, figure } from '../figure.ts';
import { type Html, html, nameText } from '../html.ts';
import { Reasons } from '../reasons.ts';
import { table } from '../table.ts';
import { estimateCell } from '../words.ts';

const KILOGRAMS: Unit = { size: 1, one: 'kg', many: 'kg', leastDecimals: 1 };

/** Builds of a group that are filled with powder. */
interface PowderBuilds {
  readonly group: string;
  readonly powder: NonNullable<Builds['powder']>;
}

function buildsTable(builds: readonly Builds[]): Html {
  const reasons = new Reasons();
  const manner = { reasons };
  const cake = builds.some((one) => one.packingDensity.kind === 'estimate');
  const body = table(
    'builds-table',
    'Builds of each machine group, averages with intervals',
    [
      { title: 'Machines' },
      { title: 'Parts in a build', numeric: true },
      { title: 'Fill, %', numeric: true },
      { title: 'Height, mm', numeric: true },
      { title: 'Most height, mm', numeric: true },
      ...(cake ? [{ title: 'Share of the part cake that is part, %', numeric: true }] : []),
    ],
    builds.map((one) => [
      nameText(one.group),
      estimateCell(one.partsPerBuild, PLAIN, manner),
      estimateCell(one.meanFill, PERCENT, manner),
      estimateCell(one.meanHeight, MILLIMETRES, manner),
      one.mostHeight,
      ...(cake ? [one.kind === 'platform' ? '' : estimateCell(one.packingDensity, PERCENT, manner)] : []),
    ]),
  );
  return html`${body}${reasons.list()}`;
}

/** What becomes of the used powder of a group, in a sentence. */
function powderSentence({ group, powder }: PowderBuilds): Html {
  const amount = ({ value, low, high }: Estimate): Estimate => ({
    ...powder.surplus,
    value: Math.abs(value),
    low: Math.min(Math.abs(low), Math.abs(high)),
    high: Math.max(Math.abs(low), Math.abs(high)),
  });
  const words = formatEstimate(amount(powder.surplus), KILOGRAMS);
  const name = html`“${nameText(group)}”`;
  if (powder.surplus.low > 0) {
    return html`<li>Used powder of ${name} piles up: ${words} a week more comes back than builds take. A larger share of
used powder in the builds, or somebody who takes it, ends that.</li>`;
  }
  if (powder.surplus.high < 0) {
    return html`<li>Used powder of ${name} runs out: builds take ${words} a week more than comes back, and virgin powder
has to make up for it.</li>`;
  }
  return html`<li>Used powder of ${name} is in balance: whether it piles up or runs out is less than what this run can
tell.</li>`;
}

function powderPart(builds: readonly PowderBuilds[]): Html {
  if (builds.length === 0) return html``;
  return html`
<h3>Powder</h3>
<ul class="notes">${builds.map(powderSentence)}</ul>
${table(
  'powder-table',
  'Powder, kg a week, averages with intervals',
  [
    { title: 'Machines' },
    { title: 'Virgin, into builds', numeric: true },
    { title: 'Used, into builds', numeric: true },
    { title: 'Comes back as used', numeric: true },
    { title: 'Has become parts', numeric: true },
    { title: 'Surplus of used', numeric: true },
  ],
  builds.map(({ group, powder }) => [
    nameText(group),
    ...[powder.virgin, powder.used, powder.returned, powder.inParts, powder.surplus].map((one) =>
      estimateCell(one, KILOGRAMS),
    ),
  ]),
)}`;
}

/** Builds that were packed from the shapes of their parts: how full, how high, and what powder they take. */
export function buildsSection(results: Results, charts: ReadonlyMap<string, DrawnChart>): Html {
  if (results.builds.length === 0) return html``;
  const powders = results.builds.flatMap(({ group, powder }) => (powder === null ? [] : [{ group, powder }]));
  return html`
<section id="builds" aria-labelledby="builds-title">
<h2 id="builds-title">Builds</h2>
<p class="lede">Builds were packed from the sizes of the parts that waited; how full and how high they are follows from
that. The number of parts of a build is no input.</p>
${figure(charts, 'build-fill')}
${buildsTable(results.builds)}
${powderPart(powders)}
</section>`;
}
