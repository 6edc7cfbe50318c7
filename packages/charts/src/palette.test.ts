import { MACHINE_STATES, PERSON_STATES, STATION_STATES, WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import { difference, seenAs, VISIONS } from './fixture/seen-colour.ts';
import {
  BAND,
  HEAT,
  INK,
  LINE,
  luminanceOf,
  MACHINE_STATE_PARTS,
  MUTED_INK,
  OUTER_BAND,
  PAPER,
  PERSON_STATE_PARTS,
  PRINT_SHARE_PARTS,
  PROCESS_COLOURS,
  SECOND_LINE,
  STATION_STATE_PARTS,
  type StackPart,
  textColourOn,
  WAIT_CAUSE_PARTS,
  WORK_FAMILIES,
} from './palette.ts';

/** Contrast ratio of two colours. Source: W3C, Web Content Accessibility Guidelines 2.2, "contrast ratio". */
function contrast(one: string, other: string): number {
  const [low, high] = [luminanceOf(one), luminanceOf(other)].sort((a, b) => a - b) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const STACKS: readonly (readonly [string, readonly StackPart[]])[] = [
  ['hours', [...Object.values(WORK_FAMILIES), ...Object.values(WAIT_CAUSE_PARTS)]],
  ['printing against the rest', Object.values(PRINT_SHARE_PARTS)],
  ['machine states', Object.values(MACHINE_STATE_PARTS)],
  ['station states', Object.values(STATION_STATE_PARTS)],
  ['person states', Object.values(PERSON_STATE_PARTS)],
];

/** Difference of lightness (CIE L*) of a grey print. Source: CIE 15, lightness from relative luminance. */
function lightness(colour: string): number {
  const y = luminanceOf(colour);
  return y <= 216 / 24389 ? (24389 / 27) * y : 116 * Math.cbrt(y) - 16;
}

/** Least colour differences, common practice, no source: 2 can just be seen, 8 at a glance where edges touch. */
const LEAST_IN_A_STACK: Readonly<Record<(typeof VISIONS)[number], number>> = {
  'all colours': 8,
  'no red cones': 8,
  'no green cones': 8,
  'no blue cones': 8,
  grey: 7,
};
/** Where no letter helps, and marks lie apart from each other. */
const LEAST_APART = 10;

describe.each(STACKS)('In the stack of %s', (_, parts) => {
  test('every part has a letter, words and a colour of its own', () => {
    for (const key of ['code', 'label', 'colour'] as const) {
      expect(new Set(parts.map((part) => part[key])).size).toBe(parts.length);
    }
  });

  test('letters follow the order of the stack', () => {
    const codes = parts.map((part) => part.code).sort();
    expect(codes).toEqual(codes.map((_code, index) => String.fromCharCode('A'.charCodeAt(0) + index)));
  });

  test('neighbours differ in lightness, so that a print without colour tells them apart', () => {
    const ordered = [...parts].sort((one, other) => (one.code < other.code ? -1 : 1));
    ordered.slice(1).forEach((part, index) => {
      const before = ordered[index] as StackPart;
      expect(
        Math.abs(lightness(part.colour) - lightness(before.colour)),
        `${before.label} / ${part.label}`,
      ).toBeGreaterThan(5);
    });
  });

  test('every two parts differ for readers who lack one kind of cone, neighbours in grey too', () => {
    const ordered = [...parts].sort((one, other) => (one.code < other.code ? -1 : 1));
    const close = ordered.flatMap((part, index) =>
      ordered.slice(index + 1).flatMap((other, behind) =>
        VISIONS.filter((vision) => vision !== 'grey' || behind === 0)
          .filter((vision) => difference(part.colour, other.colour, vision) < LEAST_IN_A_STACK[vision])
          .map((vision) => `${part.label} / ${other.label}: ${vision}`),
      ),
    );
    expect(close).toEqual([]);
  });

  test('labels in the bars can be read on their ground', () => {
    for (const part of parts)
      expect(contrast(textColourOn(part.colour), part.colour), part.label).toBeGreaterThan(4.5);
  });
});

test('The steps of a map get darker, evenly enough to be told apart on a print without colour.', () => {
  const steps = HEAT.map(lightness);
  steps.slice(1).forEach((step, index) => {
    expect((steps[index] ?? 0) - step).toBeGreaterThan(8);
  });
});

test('Every cause of waiting and every state has a colour.', () => {
  expect(Object.keys(WAIT_CAUSE_PARTS).sort()).toEqual([...WAIT_CAUSES].sort());
  expect(Object.keys(MACHINE_STATE_PARTS).sort()).toEqual([...MACHINE_STATES].sort());
  expect(Object.keys(STATION_STATE_PARTS).sort()).toEqual([...STATION_STATES].sort());
  expect(Object.keys(PERSON_STATE_PARTS).sort()).toEqual([...PERSON_STATES].sort());
});

test('Processes differ in lightness by more than ten steps of a hundred.', () => {
  const steps = Object.values(PROCESS_COLOURS)
    .map(lightness)
    .sort((one, other) => one - other);
  steps.slice(1).forEach((step, index) => {
    expect(step - (steps[index] ?? 0)).toBeGreaterThan(10);
  });
});

test.each(VISIONS)(
  'Processes, and what shares a chart without letters, differ for who sees %s.',
  (vision) => {
    const together = [
      Object.values(PROCESS_COLOURS),
      [LINE, SECOND_LINE, PAPER],
      [LINE, BAND, PAPER],
      [LINE, BAND, OUTER_BAND],
    ];
    for (const colours of together) {
      colours.forEach((one, index) => {
        for (const other of colours.slice(index + 1)) {
          expect(difference(one, other, vision), `${one} / ${other}`).toBeGreaterThan(LEAST_APART);
        }
      });
    }
  },
);

test.each(VISIONS)(
  'Black, grey and white look the same to who sees %s; black and white are 100 apart.',
  (vision) => {
    for (const grey of ['#000000', '#7f7f7f', '#ffffff']) {
      for (const share of seenAs(grey, vision)) expect(share).toBeCloseTo(luminanceOf(grey), 5);
    }
    expect(difference('#000000', '#ffffff', vision)).toBeCloseTo(100, 1);
  },
);

test('Red and green are closer to each other without red or green cones, blue and green without blue cones.', () => {
  const [red, green] = ['#d04030', '#70903c'] as const;
  for (const vision of ['no red cones', 'no green cones'] as const) {
    expect(difference(red, green, vision)).toBeLessThan(difference(red, green, 'all colours') / 2);
  }
  const [blue, teal] = ['#3b6fb6', '#3a8f86'] as const;
  expect(difference(blue, teal, 'no blue cones')).toBeLessThan(difference(blue, teal, 'all colours') / 2);
});

test('Text has at least the contrast that ordinary text needs.', () => {
  expect(contrast(INK, PAPER)).toBeGreaterThan(7);
  expect(contrast(MUTED_INK, PAPER)).toBeGreaterThan(4.5);
});

test('The luminance of black is 0 and of white 1.', () => {
  expect(luminanceOf('#000000')).toBe(0);
  expect(luminanceOf('#ffffff')).toBeCloseTo(1, 12);
});
