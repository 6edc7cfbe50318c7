import { describe, expect, it } from 'vitest';
import { MACHINE_STATES, STATION_STATES } from './measures.ts';
import { isHeld, useOfState } from './state-use.ts';

describe('The use of machines and stations', () => {
  it('counts only what goes on for jobs as work, and no breakdown or maintenance', () => {
    const working = (states: readonly (typeof MACHINE_STATES)[number][] | typeof STATION_STATES) =>
      states.filter((state) => useOfState(state) === 'at work');
    expect(working(MACHINE_STATES)).toEqual(['prepare', 'set-up', 'warm-up', 'print', 'cool-down', 'unload']);
    expect(working(STATION_STATES)).toEqual(['load', 'run', 'unload']);
  });

  it('leaves nothing free but what is idle, waits for more parts, or is with somebody else', () => {
    expect(MACHINE_STATES.filter((state) => !isHeld(state))).toEqual(['idle', 'waiting to fill', 'off']);
    expect(STATION_STATES.filter((state) => !isHeld(state))).toEqual(['idle', 'waiting to fill', 'off']);
  });
});
