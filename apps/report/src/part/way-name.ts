import { drawnWays } from '@buildweek/charts';
import type { PartAnswer } from '@buildweek/results';
import { type Html, html, nameText } from '../html.ts';

/** The name of a way with its letter in the charts and its process; of a route that is none, the name alone. */
export function wayName(answer: PartAnswer, route: string): Html {
  const drawn = drawnWays(answer).find((one) => one.way.route === route);
  if (drawn === undefined) return nameText(route);
  const process = drawn.way.process === 'other' ? '' : `, ${drawn.way.process}`;
  return html`${drawn.code}\u00a0 ${nameText(route)}${process}`;
}
