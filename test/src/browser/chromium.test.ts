import { expect, test } from 'vitest';
import { findChromium } from './chromium.ts';

test('Chromium is looked for in BUILDWEEK_CHROMIUM first, then on the PATH.', () => {
  expect(findChromium({ BUILDWEEK_CHROMIUM: process.execPath, PATH: '/usr/bin' })).toBe(process.execPath);
});

test('When there is no Chromium, the browser tests fail with the line to install it.', () => {
  expect(() => findChromium({ PATH: '/nowhere' }, '/nowhere/chromium')).toThrow(
    'apt-get install -y chromium',
  );
});
