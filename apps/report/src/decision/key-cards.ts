import {
  type DecisionAnswer,
  type EstimateOrRefused,
  type KeyNumber,
  type WrittenUnit,
  writtenFigure,
  writtenUnit,
} from '@buildweek/results';
import { term } from '../glossary.ts';
import { type Html, html } from '../html.ts';

const YEARS: WrittenUnit = { size: 1, one: 'year', many: 'years', leastDecimals: 1, isMoney: false };

const SUBJECTS: Readonly<Record<KeyNumber['subject'], Html>> = {
  promise: term('promises kept', 'Promises kept'),
  cost: term('cost in a year', 'Cost'),
  payback: term('payback', 'Payback'),
  speed: term('lead time', 'Lead time'),
};

/** The numbers that matter, large, each with its interval and what it is without the proposal. */
export function keyCards({ keyNumbers, currency }: DecisionAnswer): Html {
  return html`<dl class="cards">${keyNumbers.map((number) => card(number, currency))}</dl>`;
}

function card(number: KeyNumber, currency: string | null): Html {
  const { subject, label, value, today, note } = number;
  const unit = unitOf(number, currency);
  const missing = missingWords(subject);
  return html`<div class="card">
<dt><span class="subject">${SUBJECTS[subject]}</span> <bdi>${label}</bdi></dt>
<dd class="value">${valueWords(value, unit, missing)}</dd>
<dd class="range">${rangeWords(value, unit)}</dd>
${note === '' ? null : html`<dd class="note-line"><bdi>${note}</bdi></dd>`}
${today === null ? null : html`<dd class="before">As it is: ${plainWords(today, unit, missing)}</dd>`}
</div>
`;
}

function unitOf({ unit, value, today }: KeyNumber, currency: string | null): WrittenUnit {
  if (unit === 'years') return YEARS;
  const values = [value, today].flatMap((one) => (one?.kind === 'estimate' ? [one.value] : []));
  return writtenUnit(unit, values, currency);
}

/** What stands for a value that lies beyond everything. */
function missingWords(subject: KeyNumber['subject']): string {
  return subject === 'payback' ? 'not paid back' : 'not in time';
}

function valueWords(value: EstimateOrRefused, unit: WrittenUnit, missing: string): Html {
  if (value.kind !== 'estimate') {
    return html`<span class="none">${value.kind === 'never' ? missing : 'not given'}</span>`;
  }
  return html`${writtenFigure(value, unit).value} <span class="unit">${unit.many}</span>`;
}

function rangeWords(value: EstimateOrRefused, unit: WrittenUnit): Html {
  if (value.kind !== 'estimate') return html`${value.reason}`;
  const { range } = writtenFigure(value, unit);
  const level = Number((value.level * 100).toFixed(1));
  return range === null
    ? html`known exactly`
    : html`${range.low} to ${range.high}, with ${level}\u00a0% ${term('confidence')}`;
}

function plainWords(value: EstimateOrRefused, unit: WrittenUnit, missing: string): string {
  if (value.kind !== 'estimate') return value.kind === 'never' ? missing : 'not given';
  const { value: words, range } = writtenFigure(value, unit);
  return `${words} ${unit.many}${range === null ? '' : ` (${range.low} to ${range.high})`}`;
}
