import { afterEach, describe, expect, it, vi } from 'vitest';
import { styleFor } from './style.ts';

const terminal = { isTTY: true, write: () => true };

afterEach(() => vi.unstubAllEnvs());

describe('styleFor', () => {
  it('sets emphasis on a terminal only', () => {
    vi.stubEnv('NO_COLOR', '');
    vi.stubEnv('TERM', 'xterm');
    expect(styleFor(terminal).heading('Queues')).toBe('\u001b[1mQueues\u001b[22m');
    expect(styleFor({ write: () => true }).heading('Queues')).toBe('Queues');
  });

  it('sets none when NO_COLOR says so, or the terminal cannot', () => {
    vi.stubEnv('TERM', 'xterm');
    vi.stubEnv('NO_COLOR', '1');
    expect(styleFor(terminal).warning('Warnings')).toBe('Warnings');
    vi.stubEnv('NO_COLOR', '');
    vi.stubEnv('TERM', 'dumb');
    expect(styleFor(terminal).warning('Warnings')).toBe('Warnings');
  });
});
