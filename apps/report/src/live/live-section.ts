import type { Factor } from '@buildweek/scenario';
import { type Html, html, nameText } from '../html.ts';
import type { Controls, CountControl, Counted, FactorControl } from './shared/controls.ts';
import type { PlayBase } from './shared/play-base.ts';
import { ROUGH_REPLICATIONS, sharpReplications } from './shared/replications.ts';

const SECTIONS: Readonly<Record<Counted, string>> = {
  people: 'People',
  machines: 'Machines',
  stations: 'Stations',
};

const FACTOR_WORDS: Readonly<Record<Factor, readonly [label: string, meaning: string]>> = {
  demand: ['Jobs that come', 'of each kind, as a share of what the plan expects'],
  'failed builds': ['Builds that fail', 'as a share of the rate in the plan'],
  breakdowns: ['Breakdowns', 'of machines and stations, as a share of how often the plan expects them'],
};

/** The part of a page in which its reader changes the lab and plays it. Without a script it says so. */
export function liveSection(base: PlayBase, controls: Controls): Html {
  const { weeks, replications } = base.run;
  const sharp = sharpReplications(replications);
  return html`
<section id="what-if" class="live" aria-labelledby="what-if-title" data-live>
<h2 id="what-if-title">What if …?</h2>
<p class="lede">Change the lab and play it against ${base.name === 'as it is' ? 'the lab as it is' : base.name}, here in this page: ${weeks} ${weeks === 1 ? 'week' : 'weeks'}, on the
same random numbers. A first answer comes from ${ROUGH_REPLICATIONS} replications${sharp > ROUGH_REPLICATIONS ? `, a sharper one from ${sharp}` : ''}. Nothing leaves
your computer.</p>
<p class="live-off" data-off>This part needs a browser that runs scripts. Everything else on this page does not.</p>
<form class="live-form" data-form hidden>
${(['people', 'machines', 'stations'] as const).map((of) => countsOf(of, controls.counts))}
${hoursChoice(controls)}
${
  controls.factors.length === 0
    ? null
    : html`
<fieldset><legend>What may come otherwise</legend>
<div class="controls">${controls.factors.map(factorControl)}</div>
</fieldset>`
}
<div class="live-buttons">
<button type="submit" class="play" data-play>Play it</button>
<button type="button" data-stop hidden>Stop</button>
<button type="button" data-reset>Back to the plan</button>
</div>
<p class="live-status" role="status" data-status></p>
<progress class="live-progress" max="1" value="0" aria-label="Replications played" data-progress hidden></progress>
<div class="live-refused" role="alert" data-refused hidden><p>This makes no lab that can work:</p><pre tabindex="0" aria-label="What is wrong" data-reasons></pre></div>
<details class="live-words" data-words hidden><summary>The same on the command line, as a file, as a link</summary>
<pre tabindex="0" aria-label="Command" data-command></pre>
<p class="live-buttons"><button type="button" data-save>Save the changed scenario</button>
<button type="button" data-save-plan>Save the scenario of the plan</button></p>
<p class="live-link"><label for="live-link">This page with this change</label> <input id="live-link" type="text" readonly data-link></p>
</details>
</form>
<div class="live-answer" role="region" aria-label="What the change brings" data-answer hidden></div>
</section>`;
}

function countsOf(of: Counted, all: readonly CountControl[]): Html {
  const counts = all.filter((control) => control.of === of);
  if (counts.length === 0) return html``;
  return html`
<fieldset><legend>${SECTIONS[of]}</legend>
<div class="controls">${counts.map(countControl)}</div>
</fieldset>`;
}

function countControl({ id, group, present, low, high, isStated }: CountControl, index: number): Html {
  const input = `live-${id.split('/')[0]}-${index}`;
  const whose = isStated ? ', as the scenario lets it vary' : '';
  return html`
<div class="control count">
<label for="${input}">${nameText(group)}</label>
<span class="steps"><button type="button" data-step="-1" aria-label="One fewer: ${group}">−</button><input id="${input}" type="number" inputmode="numeric" min="${low}" max="${high}" step="1" value="${present}" aria-describedby="${input}-bounds" data-count="${id}" data-present="${present}"><button type="button" data-step="1" aria-label="One more: ${group}">+</button></span>
<span class="bounds" id="${input}-bounds">${present} in the plan; from ${low} to ${high}${whose}</span>
</div>`;
}

function factorControl({ id, low, high, stated }: FactorControl): Html {
  const input = `live-factor-${id.replace(' ', '-')}`;
  const [label, meaning] = FACTOR_WORDS[id];
  const doubt = stated === null ? '' : `; the scenario holds ${stated[0]} to ${stated[1]}\u00a0% possible`;
  return html`
<div class="control">
<label for="${input}">${label}</label>
<span class="slide"><input id="${input}" type="range" min="${low}" max="${high}" step="5" value="100" aria-describedby="${input}-bounds" data-factor="${id}"><output for="${input}">100\u00a0%</output></span>
<span class="bounds" id="${input}-bounds">${meaning}; from ${low} to ${high}\u00a0%${doubt}</span>
</div>`;
}

function hoursChoice({ hours }: Controls): Html {
  if (hours.length === 0) return html``;
  return html`
<fieldset><legend>Shifts and skills</legend>
<div class="controls"><div class="control wide-control">
<label for="live-hours">Who works when</label>
<select id="live-hours" data-hours><option value="">as in the plan</option>
${hours.map(({ name, meaning }) => html`<option value="${name}">${name} (${meaning})</option>\n`)}</select>
</div></div>
</fieldset>`;
}
