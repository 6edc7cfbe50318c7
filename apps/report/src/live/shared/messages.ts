import type { History, SimulationSettings } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { ReaderState } from './reader-state.ts';

/** What the page asks of the director. Answers carry the number of what they answer. */
export type Request =
  /** What the changes come to in words, and what is wrong with them. */
  | { readonly kind: 'describe'; readonly number: number; readonly state: ReaderState }
  /** Play the changed lab against the plan. */
  | { readonly kind: 'play'; readonly number: number; readonly state: ReaderState }
  /** Play what every answer needs of the plan itself, while nobody waits. */
  | { readonly kind: 'prepare' }
  /** Stop playing. */
  | { readonly kind: 'stop' }
  /** Draw a chart of both labs, as they were last played. */
  | { readonly kind: 'draw'; readonly number: number; readonly chart: string };

export type Reply =
  | {
      readonly kind: 'described';
      readonly number: number;
      /** As `--with` takes them. */
      readonly wordings: readonly string[];
      /** What is wrong, in the words of the scenario; empty: it can be played. */
      readonly reasons: readonly string[];
      /** The scenario with the changes; null when something is wrong. */
      readonly text: string | null;
      /** The same on the command line, to be copied; null when nothing is changed. */
      readonly command: string | null;
    }
  | { readonly kind: 'progress'; readonly number: number; readonly done: number; readonly total: number }
  | {
      readonly kind: 'answer';
      readonly number: number;
      /** Whether there is a sharper one to come. */
      readonly isRough: boolean;
      readonly replications: number;
      /** The difference in a sentence, as text. */
      readonly sentence: string;
      /** Escaped by whoever wrote it. */
      readonly html: string;
    }
  | { readonly kind: 'drawn'; readonly number: number; readonly html: string }
  | { readonly kind: 'failed'; readonly number: number; readonly message: string };

/** What the director asks of a player. A lab is sent once to each of them, with the number that it goes by. */
export type PlayerTask =
  | { readonly kind: 'lab'; readonly lab: number; readonly data: Lab }
  | {
      readonly kind: 'replication';
      readonly lab: number;
      readonly task: number;
      readonly settings: SimulationSettings;
    };

export type PlayerReply =
  | { readonly kind: 'history'; readonly task: number; readonly history: History }
  | { readonly kind: 'failed'; readonly task: number; readonly message: string };
