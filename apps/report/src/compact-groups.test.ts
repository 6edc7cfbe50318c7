import { expect, test } from 'vitest';
import { compactGroups } from './compact-groups.ts';

test('What all children of a group say alike, the group says once.', () => {
  expect(
    compactGroups(
      '<g><line x2="0" y2="9" stroke="#aaa" stroke-width="1"/><line x2="0" y2="8" stroke="#aaa" stroke-width="1"/></g>',
    ),
  ).toBe('<g stroke="#aaa" stroke-width="1"><line x2="0" y2="9"/><line x2="0" y2="8"/></g>');
  expect(compactGroups('<g><text fill="#111" x="1">a</text><text fill="#111" x="2">b</text></g>')).toBe(
    '<g fill="#111"><text x="1">a</text><text x="2">b</text></g>',
  );
});

test.each([
  ['differs', '<g><path d="m0,0h1" fill="#a"/><path d="m0,0h2" fill="#b"/></g>'],
  ['one of them leaves open', '<g><path d="m0,0h1" fill="#a"/><path d="m0,0h2"/></g>'],
  ['does not pass on to children', '<g><path d="m0,0h1" opacity="0.5"/><path d="m0,0h2" opacity="0.5"/></g>'],
  ['the group says otherwise', '<g fill="#c"><path d="a" fill="#a"/><path d="b" fill="#a"/></g>'],
  ['belongs to a name', '<g><text x="1">fill="#a"</text><text x="2">fill="#a"</text></g>'],
])('What %s stays where it is.', (_, svg) => {
  expect(compactGroups(svg)).toBe(svg);
});
