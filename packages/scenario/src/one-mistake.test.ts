import { describe, expect, it } from 'vitest';
import { EVERYTHING } from './fixture/everything.ts';
import { edited, PLAIN_LAB, problemsOf } from './fixture/plain-lab.ts';
import { problemsOfShaped, SHAPED_LAB } from './fixture/shaped-lab.ts';
import type { Problem } from './problem.ts';

/** A key or a value of a line. */
const WORDS = /(?<=: |\[|, |\{ )[^:{}[\],]+(?=[,}\]]|$)|(?<=^ *|\{ |, |- )[\w -]+(?=:)/g;

/** The text with a letter missing in one of its keys or values, for all of them. */
function slipsIn(text: string): { slip: string; slipped: string }[] {
  const lines = text.split('\n');
  return lines.flatMap((line, index) =>
    [...line.matchAll(WORDS)].flatMap((match) => {
      const word = match[0].trimEnd();
      if (word.trim().length < 4) return [];
      const wrong = word.slice(0, -2) + word.slice(-1);
      const slippedLine = line.slice(0, match.index) + wrong + line.slice(match.index + word.length);
      const slipped = [...lines.slice(0, index), slippedLine, ...lines.slice(index + 1)].join('\n');
      return { slip: `${index + 1}: ${word.trim()} -> ${wrong.trim()}`, slipped };
    }),
  );
}

/** The text with what is proposed in the place of what was found; null where that is not in one piece. */
function mended(text: string, problem: Problem): string | null {
  const { line, column, found, write } = problem;
  const lines = text.split('\n');
  const written = lines[line - 1] ?? '';
  if (found === '' || !written.startsWith(found, column - 1)) return null;
  const instead = write.replace(/^for example: /, '');
  const mendedLine = written.slice(0, column - 1) + instead + written.slice(column - 1 + found.length);
  return [...lines.slice(0, line - 1), mendedLine, ...lines.slice(line)].join('\n');
}

describe('one mistake', () => {
  it.each([
    ['the plain lab', PLAIN_LAB, problemsOf],
    ['the lab that uses every key', EVERYTHING, problemsOf],
    ['the lab of shapes', SHAPED_LAB, problemsOfShaped],
  ])('is told once, without what follows from it, in %s', (_, text, problemsIn) => {
    const slips = slipsIn(text);
    expect(slips.length).toBeGreaterThan(40);
    const toldMore = slips.flatMap(({ slip, slipped }) => {
      // A name that is not there is told wherever it is used: each of the places may be the wrong one.
      const messages = new Set(
        problemsIn(slipped).map(({ message }) =>
          message.replace(/^There (is|are) no .*$/, 'A name is not there.'),
        ),
      );
      return messages.size > 1 ? [`${slip}: ${[...messages].join(' | ')}`] : [];
    });
    expect(toldMore).toEqual([]);
  });

  it.each([
    ['holds: 2 builds', 'class: wash bah, holds: 2 builds', '"wash bah" is not possible here.'],
    [', takes: 12 min per batch', ', tkaes: 12 min per batch', '"tkaes" is not known in "washer".'],
    ['on: resin', 'on: resni', 'There is no machine or station called "resni".'],
    ['small mask VPP', 'small msk VP', '"small msk VP" is not possible here.'],
    ['promise: 3', 'rush: 0.1, rush promise: 1 working day, promise: 3', '"0.1" has no % behind it.'],
    ['hours:\n', 'hour:\n', '"hour" is not known here.'],
    ['count: 2, hours', 'cout: 2, leave: { 2: 2027-03-02 }, hours', '"cout" is not known in "technicians".'],
  ])('is told once: %s -> %s', (from, to, message) => {
    expect(problemsOf(edited(from, to)).map((problem) => problem.message)).toEqual([message]);
  });

  it('does not come again when what is proposed is written in its place', () => {
    let mendedOnes = 0;
    const again = slipsIn(PLAIN_LAB).flatMap(({ slip, slipped }) => {
      const [problem] = problemsOf(slipped);
      const text = problem === undefined ? null : mended(slipped, problem);
      if (problem === undefined || text === null) return [];
      mendedOnes++;
      const same = problemsOf(text).some(({ message }) => message === problem.message);
      return same ? [`${slip}: ${problem.message} ${problem.write}`] : [];
    });
    expect(again).toEqual([]);
    expect(mendedOnes).toBeGreaterThan(40);
  });

  it('in a key that is there rightly too is told with the one that is meant', () => {
    expect(problemsOf(edited('count: 2, hours', 'count: 2, cuont: 3, hours'))).toMatchObject([
      { found: 'cuont', write: 'the value at "count", which is there too, and delete this line' },
    ]);
  });

  it('in a key of a machine does not make the price of what it builds from a mesh seem to be missing', () => {
    const text = SHAPED_LAB.replace(/^routes:/m, 'money: { currency: EUR }\nroutes:').replace(
      /ring: \{ route: resin part,.*/,
      'ring: { route: resin part, mesh: parts/bracket.stl, material cost: 1, price outside: 3 }',
    );
    const mistaken = (lab: string) =>
      problemsOfShaped(lab)
        .map(({ message }) => message)
        .filter((message) => /cuont|"ring"/.test(message));
    const slipped = text.replace('class: small mask VPP', 'cuont: 4, $&').replace('material cost: 1, ', '');
    expect(mistaken(text)).toEqual([]);
    expect(mistaken(slipped)).toEqual(['"cuont" is not known in "resin".']);
  });

  it('in a skill that somebody has is told where it stands, once for all work that asks for it', () => {
    const text = edited('[run machines, hand work]', '[run machins, hand work]');
    expect(problemsOf(text)).toMatchObject([
      { line: 7, column: 49, found: 'run machins', write: 'run machines' },
    ]);
  });
});
