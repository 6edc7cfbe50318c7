import type { PartAnswer } from '@buildweek/results';
import { type Html, html } from '../html.ts';

/** How the answer came about, and what it leaves out. */
export function partOrigin(answer: PartAnswer): Html {
  const { program, lab, part } = answer;
  const facts: readonly (readonly [string, string])[] = [
    ['Program', `${program.name} ${program.version}`],
    ['Part', part.name],
    ['Lab', lab.isTypical ? `${lab.name}; typical machines, no scenario was given` : lab.name],
    ['Asked for on', answer.asked.map((asked) => asked.label).join(', ')],
    ['Seed', answer.seed],
    ['Plays', String(answer.plays)],
  ];
  return html`
<section id="origin" aria-labelledby="origin-title">
<h2 id="origin-title">How this was computed</h2>
<p class="lede">The part was sent through the lab on each route, in the hours in which people of the lab are there. The
lab is empty: nothing else is made, no machine and nobody is busy with other jobs, and nothing goes wrong. So the hours
are a floor: in a lab at work they are longer, and how much longer a run of the whole lab tells.</p>
<p class="lede">Everything was played ${answer.plays} times with fresh luck in every duration. The typical value is that of the play in
the middle; the spread is what one play in ten stays below and one in ten above. It is no
confidence interval. The same part, lab, seed and program version give the same numbers.</p>
<dl class="origin">${facts.map(([term, value]) => html`<div><dt>${term}</dt><dd><bdi>${value}</bdi></dd></div>`)}</dl>
</section>`;
}
