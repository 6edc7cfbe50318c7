import { MACHINE_STATES, PERSON_STATES, STATION_STATES, WAIT_CAUSES } from '@buildweek/results';
import { describe, expect, test } from 'vitest';
import {
  HEAT,
  INK,
  luminanceOf,
  MACHINE_STATE_PARTS,
  MUTED_INK,
  PAPER,
  PERSON_STATE_PARTS,
  PRINT_SHARE_PARTS,
  PROCESS_COLOURS,
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

test('Text has at least the contrast that ordinary text needs.', () => {
  expect(contrast(INK, PAPER)).toBeGreaterThan(7);
  expect(contrast(MUTED_INK, PAPER)).toBeGreaterThan(4.5);
});

test('The luminance of black is 0 and of white 1.', () => {
  expect(luminanceOf('#000000')).toBe(0);
  expect(luminanceOf('#ffffff')).toBeCloseTo(1, 12);
});
