import type { Lab } from '@buildweek/model';
import { describe, expect, it } from 'vitest';
import {
  attended,
  batch,
  bench,
  constant,
  lab,
  machine,
  part,
  people,
  queueLab,
  station,
} from '../fixture/lab.ts';
import { cautionsOf } from './cautions.ts';

function topics(of: Lab): string[] {
  return cautionsOf(of).map(({ topic }) => topic);
}

function calendar(of: Lab, hours: readonly (readonly [number, number])[]): Lab {
  const weekly = hours.map(([fromHour, toHour]) => ({ fromHour, toHour }));
  return { ...of, calendars: [{ name: 'day', weekly, closedDays: [], extra: [] }] };
}

const crew = lab({ people: [people('technicians', 2, ['all'])] });

describe('cautionsOf', () => {
  it('warns of what each process has people handle', () => {
    const of = (process: 'MEX' | 'VPP' | 'PBF'): string[] =>
      topics(lab({ machines: [machine('m', { process })], people: [people('technicians', 2, ['all'])] }));
    expect(of('VPP')).toEqual(expect.arrayContaining(['Uncured resin', 'UV light']));
    expect(of('PBF')).toEqual(expect.arrayContaining(['Fine powder', 'Lasers', 'Hot surfaces']));
    expect(of('MEX')).toEqual(expect.arrayContaining(['Fumes and ultrafine particles', 'Hot surfaces']));
    expect(of('MEX')).not.toContain('Fine powder');
  });

  it('finds washing, curing and blasting by the names of stations and stages', () => {
    const washing = lab({
      stations: [station('wash bath'), station('blasting cabinet')],
      people: [people('technicians', 2, ['all'])],
      parts: [part('lever', [batch('rinse', 'wash bath', constant(1)), bench('curing', attended('all', 1))])],
    });
    expect(topics(washing)).toEqual(
      expect.arrayContaining(['Solvents', 'UV light', 'Blasting, sanding, cutting']),
    );
  });

  it('warns of unattended nights only where machines run and people go home', () => {
    const machines = [machine('m')];
    expect(topics({ ...crew, machines })).toContain('Unattended running');
    expect(topics(calendar({ ...crew, machines }, [[0, 168]]))).not.toContain('Unattended running');
    expect(topics(crew)).not.toContain('Unattended running');
  });

  it('warns of lone working where at some hour exactly one person is on duty', () => {
    expect(topics(lab({ people: [people('technicians', 1, ['all'])] }))).toContain('Lone working');
    expect(topics(crew)).not.toContain('Lone working');
    const helped = {
      ...crew,
      people: [...crew.people, people('helper', 1, ['all'], { calendar: 'always' })],
    };
    expect(topics(helped)).toContain('Lone working');
  });

  it('warns of more than 6 h without a break, less than 11 h of rest and more than 48 h a week', () => {
    const broken = [0, 1, 2, 3, 4].flatMap((day) => [
      [day * 24 + 8, day * 24 + 12] as const,
      [day * 24 + 12.5, day * 24 + 16.5] as const,
    ]);
    expect(topics(calendar(crew, broken))).not.toContain('Working time');
    const texts = (hours: readonly (readonly [number, number])[]): string =>
      cautionsOf(calendar(crew, hours))
        .filter(({ topic }) => topic === 'Working time')
        .map(({ text }) => text)
        .join();
    expect(texts([[8, 14.1]])).toMatch(/^The hours of "technicians" have more than 6 h without a break\./);
    const late = [
      [8, 14],
      [17, 22],
      [32, 38],
    ] as const;
    expect(texts(late)).toContain('have less than 11 h of rest between two days.');
    const six = [0, 1, 2, 3, 4, 5].flatMap((day) => [
      [day * 24 + 7, day * 24 + 12] as const,
      [day * 24 + 13, day * 24 + 17] as const,
    ]);
    expect(texts(six)).toContain('have more than 48 h in a week.');
  });

  it('never calls itself a safety assessment, and says nothing of a plain queueing system', () => {
    expect(cautionsOf({ ...crew, machines: [machine('m')] }).at(-1)?.text).toContain('no safety assessment');
    expect(cautionsOf(queueLab())).toEqual([]);
  });
});
