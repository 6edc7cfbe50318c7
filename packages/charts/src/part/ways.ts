import type { PartAnswer, WayOfMaking } from '@buildweek/results';
import { shorten } from '../format.ts';
import { PROCESS_COLOURS } from '../palette.ts';
import { fitName, textWidth } from '../text-width.ts';

/** Dashes of the first, second, … way of one process; after these they come again, and letter and mark tell. */
const DASHES: readonly (readonly number[])[] = [
  [1, 0],
  [7, 4],
  [2, 3],
  [10, 3, 2, 3],
];
const SHAPES = ['circle', 'square', 'triangle-up', 'diamond', 'triangle-down', 'cross'] as const;
const FIRST_LETTER = 'A'.charCodeAt(0);
const LETTERS = 26;
const MOST_LETTERS = 40;

/** A way of making the part, and how every chart draws it. */
export interface DrawnWay {
  readonly way: WayOfMaking;
  /** The same letter in every chart. */
  readonly code: string;
  readonly colour: string;
  readonly dash: readonly number[];
  readonly shape: (typeof SHAPES)[number];
}

function codeOf(index: number): string {
  const letter = String.fromCharCode(FIRST_LETTER + (index % LETTERS));
  return index < LETTERS ? letter : `${letter}${Math.floor(index / LETTERS) + 1}`;
}

/** The ways of an answer, each with a letter and a mark of its own, in the colour of its process. */
export function drawnWays(answer: PartAnswer): DrawnWay[] {
  return answer.ways.map((way, index) => {
    const before = answer.ways.slice(0, index).filter((other) => other.process === way.process).length;
    return {
      way,
      code: codeOf(index),
      colour: PROCESS_COLOURS[way.process],
      dash: DASHES[before % DASHES.length] ?? [1, 0],
      shape: SHAPES[index % SHAPES.length] ?? 'circle',
    };
  });
}

/** "A  resin part, VPP", with the name of the route cut to the room that there is, CSS pixels. */
export function wayLabel({ way, code }: DrawnWay, room: number, fontSize: number, bold = false): string {
  const suffix = way.process === 'other' ? '' : `, ${way.process}`;
  const prefix = `${code}  `;
  const left = room - textWidth(prefix + suffix, fontSize, bold);
  return `${prefix}${fitName(way.route, left, fontSize, bold)}${suffix}`;
}

/** The name of a route within a sentence, cut where it is very long. */
export function quotedRoute(route: string): string {
  return `“${shorten(route, MOST_LETTERS)}”`;
}
