import { listed, nearest } from '../nearest.ts';
import { nearestUnit, toBase, UNIT_WORDS, type Unit, type UnitKind, unitNamed } from './units.ts';
import { WordingError } from './wording-error.ts';
import { workingDaysRefusal } from './working-days.ts';

/** A number with the unit that stands behind it, or none. */
export interface Amount {
  readonly number: number;
  readonly unit: Unit | null;
  /** As it was written. */
  readonly text: string;
}

const HOUR: Unit = { kind: 'time', times: 1, over: 1 };

const TOKEN = /\d+(?:[.,]\d+)?|\.\d+|[\p{L}][\p{L}0-9²³]*|\S/gu;

/**
 * A text that is read word by word. Commas that separate are skipped; a comma inside a number is refused,
 * since `1,5` is one and a half to some and one and five to others.
 */
export class Phrase {
  readonly text: string;
  readonly expected: string;
  /** A text that would do; changes once the words say which kind is meant. */
  example: string;
  private readonly tokens: readonly string[];
  /** Positions of tokens with a comma in front. */
  private readonly afterComma = new Set<number>();
  private position = 0;

  /**
   * @param expected what the place takes, for messages
   * @param example a text that would do
   */
  constructor(text: string, expected: string, example: string) {
    this.text = text;
    this.expected = expected;
    this.example = example;
    const tokens = text.match(TOKEN) ?? [];
    for (const token of tokens) {
      if (/\d,\d/.test(token)) {
        throw new WordingError(
          `"${token}" has a comma inside a number.`,
          `${expected}; decimals with a point, a space behind a comma that separates`,
          text.replaceAll(token, token.replace(',', '.')),
        );
      }
    }
    const words: string[] = [];
    for (const token of tokens) {
      if (token === ',') this.afterComma.add(words.length);
      else words.push(token);
    }
    this.tokens = words;
    if (this.tokens.length === 0) throw this.error('Nothing is said here.');
  }

  get next(): string {
    return this.tokens[this.position] ?? '';
  }

  get atEnd(): boolean {
    return this.position >= this.tokens.length;
  }

  get startsWithNumber(): boolean {
    return /^\.?\d/.test(this.next);
  }

  /** Takes the next word when it is one of these. */
  take(...words: readonly string[]): boolean {
    if (!words.includes(this.next.toLowerCase())) return false;
    this.position++;
    return true;
  }

  need(word: string): void {
    if (!this.take(word)) {
      throw this.error(
        this.atEnd ? `"${word}" is missing at the end.` : `"${word}" is missing before "${this.next}".`,
      );
    }
  }

  number(): number {
    if (this.next === '-') throw this.error('It cannot be negative.');
    if (!this.startsWithNumber) {
      throw this.error(this.atEnd ? 'A number is missing at the end.' : `"${this.next}" is not a number.`);
    }
    return Number(this.tokens[this.position++]);
  }

  /** A number with its unit; `1 h 30 min` counts as one. */
  amount(kind: UnitKind): Amount {
    const from = this.position;
    const number = this.number();
    const unit = this.unit(kind);
    if (unit === null || kind !== 'time') return { number, unit, text: this.since(from) };
    let hours = toBase(number, unit);
    let last = unit;
    for (;;) {
      const before = this.position;
      const more = this.startsWithNumber && !this.afterComma.has(before) ? this.number() : null;
      const smaller = more === null ? undefined : unitNamed(this.next);
      if (more === null || smaller?.kind !== 'time' || toBase(1, smaller) >= toBase(1, last)) {
        this.position = before;
        const text = this.since(from);
        return last === unit ? { number, unit, text } : { number: hours, unit: HOUR, text };
      }
      this.position++;
      hours += toBase(more, smaller);
      last = smaller;
    }
  }

  /** The unit that comes next, if the next word is no word of the wording itself. */
  private unit(kind: UnitKind): Unit | null {
    const word = this.next;
    if (word === '' || !/^[\p{L}%]/u.test(word)) return null;
    const unit = unitNamed(word);
    if (unit !== undefined) {
      if (unit.kind !== kind) {
        const message = `"${word}" measures ${aKind(unit.kind)}, and ${aKind(kind)} is needed here.`;
        throw this.error(message, this.withUnit(word, USUAL_UNITS[kind]));
      }
      this.position++;
      return unit;
    }
    if (WORDS_AFTER_NUMBERS.has(word.toLowerCase())) return null;
    const refusal = kind === 'time' ? workingDaysRefusal(this.text, this.expected) : null;
    if (refusal !== null) throw refusal;
    const meant = nearestUnit(word);
    throw new WordingError(
      `"${word}" is not a unit.`,
      `${this.expected}; units are ${UNIT_WORDS[kind]}`,
      // "m" is no minute where a length is meant.
      meant === null || unitNamed(meant)?.kind !== kind ? this.example : this.withUnit(word, meant),
    );
  }

  private withUnit(word: string, unit: string): string {
    return this.text.replace(new RegExp(`(?<!\\p{L})${escaped(word)}(?!\\p{L})`, 'u'), unit);
  }

  /** A unit that stands alone, as behind a list. */
  unitOnly(kind: UnitKind): Unit {
    const unit = this.unit(kind);
    if (unit === null) throw this.error(`"${this.next}" is not understood here.`);
    return unit;
  }

  /** @throws WordingError when something is left */
  end(): void {
    if (!this.atEnd)
      throw this.error(`"${this.tokens.slice(this.position).join(' ')}" is not understood here.`);
  }

  error(message: string, write = this.example): WordingError {
    return new WordingError(message, this.expected, write);
  }

  /** An error about a word that is none of those possible here. */
  unknownWord(candidates: readonly string[]): WordingError {
    const meant = nearest(this.next, candidates);
    return new WordingError(
      `"${this.next}" is not understood here.`,
      `${this.expected}; words that can start it: ${listed(candidates, 20)}`,
      meant === null ? this.example : this.text.replace(this.next, meant),
    );
  }

  private since(from: number): string {
    return this.tokens.slice(from, this.position).join(' ');
  }
}

const WORDS_AFTER_NUMBERS = new Set([
  'to',
  'per',
  'of',
  'usually',
  'mean',
  'variation',
  'deviation',
  'shape',
  'scale',
  'plus',
  'x',
]);

const USUAL_UNITS: Readonly<Record<UnitKind, string>> = {
  time: 'min',
  length: 'mm',
  area: 'mm2',
  volume: 'mm3',
  mass: 'g',
  share: '%',
};

function aKind(kind: UnitKind): string {
  return {
    time: 'a time',
    length: 'a length',
    area: 'an area',
    volume: 'a volume',
    mass: 'a mass',
    share: 'a share',
  }[kind];
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}
