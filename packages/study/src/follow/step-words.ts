/** What is done for a job that the lab does not make itself. */
export const MADE_OUTSIDE = 'made outside';

/** `build: print`, or the stage alone where it is its only step. */
export function stepWords({ stage, phase }: { readonly stage: string; readonly phase: string }): string {
  if (phase === 'outside') return MADE_OUTSIDE;
  return phase === '' || phase === 'work' || phase === 'wait' || phase === stage
    ? stage
    : `${stage}: ${phase}`;
}
