import { expect, test } from 'vitest';
import { mergePaths } from './merge-paths.ts';

test('Lines become paths, and neighbours that are drawn alike one path.', () => {
  expect(
    mergePaths(
      '<line transform="translate(62.9,0)" x2="0" y2="110" stroke="#c9c" stroke-width="1"/><line transform="translate(94.3,0)" x2="0" y2="110" stroke="#c9c" stroke-width="1"/><line x2="4" y2="-2" stroke="#111"/>',
    ),
  ).toBe(
    '<path d="m62.9,0v110M94.3,0v110" stroke="#c9c" stroke-width="1"/><path d="m0,0l4,-2" stroke="#111"/>',
  );
});

test.each([
  ['drawn otherwise', '<path d="M0,0h1" fill="#a"/><path d="M0,1h1" fill="#b"/>'],
  ['seen through', '<path d="M0,0h1" fill="#a" opacity="0.5"/><path d="M0,1h1" fill="#a" opacity="0.5"/>'],
  ['moved', '<path d="M0,0h1" transform="translate(1,1)"/><path d="M0,0h1" transform="translate(1,1)"/>'],
  ['turned', '<line transform="translate(1,1) rotate(45)" x2="0" y2="110"/>'],
])('What is %s stays apart.', (_, svg) => {
  expect(mergePaths(svg)).toBe(svg);
});
