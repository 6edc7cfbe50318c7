import type { PlayBase } from '../shared/play-base.ts';

/** What a worker is told when it starts: which of the two kinds it is. */
export type WorkerStart =
  | { readonly kind: 'direct'; readonly base: PlayBase; readonly players: readonly MessagePort[] }
  | { readonly kind: 'play'; readonly director: MessagePort };
