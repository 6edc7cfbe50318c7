import { formatLength, formatPlain } from '@buildweek/charts';
import type { PartAnswer, WayOfMaking } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';
import { table } from '../table.ts';
import { wayName } from './way-name.ts';

function sizeWords({ size }: WayOfMaking): string {
  return [size.width, size.depth, size.height].map(formatPlain).join(' × ');
}

function fitTable(answer: PartAnswer): Html {
  return table(
    'fit-table',
    'How many fit in a build, and how long one and a full build print',
    [
      { title: 'Way' },
      { title: 'Machines' },
      { title: 'As it stands, width × depth × height, mm' },
      { title: 'Fit in a build', numeric: true },
      { title: 'Print, one', numeric: true },
      { title: 'Print, full build', numeric: true },
      { title: 'Print per part, full build', numeric: true },
    ],
    answer.ways.map((way) => [
      wayName(answer, way.route),
      html`${way.machineCount} × ${nameText(way.machines)}`,
      sizeWords(way),
      way.mostPerBuild,
      formatLength(way.printHoursOfOne),
      formatLength(way.printHoursOfFull),
      way.mostPerBuild > 0 ? formatLength(way.printHoursOfFull / way.mostPerBuild) : '',
    ]),
    true,
  );
}

/** How the part stands, each way of standing once with the ways of making it that share it. */
function standsTable(answer: PartAnswer): Html {
  const told = [...new Set(answer.ways.map((way) => way.orientation))];
  return table(
    'stands-table',
    'How it stands, and why',
    [{ title: 'Ways' }, { title: 'How it stands' }],
    told.map((orientation) => [
      answer.ways
        .filter((way) => way.orientation === orientation)
        .map((way) => html`<div>${wayName(answer, way.route)}</div>`),
      html`<bdi>${orientation}</bdi>`,
    ]),
  );
}

/** How the part stands on each machine, what fits in a build, and what a full build gains. */
export function fitSection(answer: PartAnswer): Html {
  if (answer.ways.length === 0) return html``;
  return html`
<section id="fit" aria-labelledby="fit-title">
<h2 id="fit-title">What fits in a build</h2>
<p class="lede">Where the print of a full build takes hardly longer than that of one, every further part is nearly
free; where it grows with every part, a fuller build gains nothing in print time.</p>
${fitTable(answer)}
${standsTable(answer)}
</section>`;
}

/** Routes on which the part cannot be made, and why. */
export function impossibleSection(answer: PartAnswer): Html {
  if (answer.impossible.length === 0) return html``;
  return html`
<section id="impossible" aria-labelledby="impossible-title">
<h2 id="impossible-title">Ways on which it cannot be made</h2>
${table(
  'impossible-table',
  'Routes of the lab that were left out',
  [{ title: 'Route' }, { title: 'Why not' }],
  answer.impossible.map((one) => [nameText(one.route), html`<bdi>${one.reason}</bdi>`]),
)}
</section>`;
}

function listed(id: string, title: string, lede: string, notes: readonly string[]): Html {
  if (notes.length === 0) return html``;
  return html`
<section id="${id}" aria-labelledby="${id}-title">
<h2 id="${id}-title">${title}</h2>
<p class="lede">${lede}</p>
<ul class="notes">${notes.map((note) => html`<li><bdi>${note}</bdi></li>`)}</ul>
</section>`;
}

/** What was found when the part was measured. */
export function measuredSection({ part }: PartAnswer): Html {
  return listed(
    'measured',
    'What was found when the part was measured',
    'Check these first where a number looks odd.',
    part.notes,
  );
}

/** What was taken for granted. */
export function partAssumptions({ assumptions }: PartAnswer): Html {
  return listed(
    'assumptions',
    'Assumptions',
    'What nobody stated is common practice at best: replace it by records of your own lab first.',
    assumptions,
  );
}
