import { type Html, html } from './html.ts';

/** A word that has to be explained: what it is called, and what it means in a sentence or two. */
interface Explained {
  readonly name: string;
  readonly meaning: string;
}

/** Words of the field that stand on the pages. */
const GLOSSARY = {
  'lead time': {
    name: 'lead time',
    meaning:
      'From the moment a job is complete in the lab to its last good part, by the clock: nights, weekends and waits count.',
  },
  percentile: {
    name: 'percentile',
    meaning:
      'The time within which a stated share of jobs is finished: nine of ten jobs take no longer than the 90 % percentile.',
  },
  confidence: {
    name: 'confidence',
    meaning:
      'Chance makes every figure a little uncertain. An interval with 95 % confidence is made in a way that catches the true long-run figure 95 times in a hundred. It says nothing of whether the assumptions are right.',
  },
  'one period': {
    name: 'one period',
    meaning:
      'What a single period, such as one quarter, may bring by luck alone: a wider range than that of the long-run average.',
  },
  replications: {
    name: 'replications',
    meaning:
      'Times that the same lab was played over the same weeks, each with fresh luck: other arrivals, failures and absences.',
  },
  'same random numbers': {
    name: 'same random numbers',
    meaning:
      'Every plan meets the same jobs, failures and absences, so that a difference comes from the plans and not from luck. Also called common random numbers.',
  },
  'promises kept': {
    name: 'promises kept',
    meaning:
      'The share of jobs that are finished by the date that was promised for them, of all jobs that have one.',
  },
  'ignored weeks': {
    name: 'ignored weeks',
    meaning:
      'Weeks that are played before counting starts, so that the lab is not empty at the beginning. Also called warm-up.',
  },
  'jobs in the lab': {
    name: 'jobs in the lab',
    meaning:
      'Jobs that have come and are not finished, whether worked on or waiting. Also called work in progress.',
  },
  'cost in a year': {
    name: 'cost in a year',
    meaning:
      'Purchases spread over their lives with interest, upkeep, people for every hour of their roster, material, and work sent out.',
  },
  payback: {
    name: 'payback',
    meaning:
      'Years until what the lab saves against sending everything out has repaid what had to be bought. Where it never does in the years that are looked at, it is not paid back.',
  },
  'net present value': {
    name: 'net present value',
    meaning:
      'All payments of the coming years, later ones counted for less because money costs interest: above nothing, the lab is worth its purchase.',
  },
  busy: {
    name: 'busy',
    meaning:
      'The share of the time on duty, or of all hours for machines, in which there is work in hand. Also called utilization.',
  },
} as const satisfies Readonly<Record<string, Explained>>;

export type GlossaryTerm = keyof typeof GLOSSARY;

const idOf = (term: string): string => `term-${term.replaceAll(' ', '-')}`;

/**
 * A word that opens its explanation where it is used, by pointer, finger and keyboard, without script: a button with a
 * popover (HTML standard). The explanations themselves are put on the page by {@link explanations}.
 *
 * @param words how the text says it; the name of the term when left out
 */
export function term(term: GlossaryTerm, words: string = GLOSSARY[term].name): Html {
  return html`<button type="button" class="term" popovertarget="${idOf(term)}">${words}</button>`;
}

/** Explanations of the terms that a page uses, each once: to open, and as a list for print and old browsers. */
export function explanations(page: readonly Html[]): { readonly section: Html; readonly popovers: Html } {
  const used = (Object.keys(GLOSSARY) as GlossaryTerm[])
    .filter((term) => page.some(({ source }) => source.includes(`popovertarget="${idOf(term)}"`)))
    .map((term) => ({ id: idOf(term), ...GLOSSARY[term] }));
  if (used.length === 0) return { section: html``, popovers: html`` };
  return {
    section: html`
<section id="words" aria-labelledby="words-title">
<h2 id="words-title">What the words mean</h2>
<dl class="origin">${used.map(({ name, meaning }) => html`<div><dt><dfn>${name}</dfn></dt><dd>${meaning}</dd></div>`)}</dl>
</section>`,
    popovers: html`${used.map(
      ({ id, name, meaning }) => html`
<div popover id="${id}" class="explained" role="note" aria-label="${name}"><p><strong>${name}</strong> ${meaning}</p></div>`,
    )}`,
  };
}
