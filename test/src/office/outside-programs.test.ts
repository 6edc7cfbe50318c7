import { expect, it } from 'vitest';
import { findProgram } from './outside-programs.ts';

it('says how a program that opens the files again is installed where there is none', () => {
  expect(() => findProgram('soffice', '/nowhere')).toThrow(
    'apt-get install -y --no-install-recommends libreoffice-impress-nogui libreoffice-calc-nogui',
  );
  expect(() => findProgram('pdftotext', '')).toThrow('poppler-utils');
});
