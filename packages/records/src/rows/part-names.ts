import { plainWords } from '../text/plain-words.ts';
import { remembered } from './remembered.ts';

/** More names than this are names of files, not types of parts; the rare ones are put together. */
const MOST_TYPES = 25;
/** Share of the jobs below which a part is rare. */
const RARE = 0.01;

/** What became of the names of parts. */
export interface PartNames {
  /** Spellings that were taken for another name: `GEHÄUSE A` for `Gehäuse A`. */
  readonly respelled: readonly { readonly name: string; readonly spellings: readonly string[] }[];
  /** Rare names that were put together, and how many. */
  readonly grouped: readonly { readonly name: string; readonly names: number; readonly jobs: number }[];
}

interface Spelled {
  readonly key: string;
  readonly isFixed: boolean;
  jobs: number;
  readonly spellings: Map<string, number>;
  /** Jobs by the group that they would be put into. */
  readonly groups: Map<string, number>;
}

/** Puts together spellings of one name, and rare names, while rows go by. */
export class PartBook {
  private readonly parts = new Map<string, Spelled>();
  private readonly renamed: ReadonlyMap<string, string>;
  private readonly known: ReadonlyMap<string, string>;
  private readonly spelling = remembered((written) => {
    const own = keyOf(written);
    const given = this.renamed.get(own) ?? this.known.get(own);
    return {
      key: given === undefined ? own : keyOf(given),
      name: given ?? withoutEnding(written),
      given: given !== undefined,
    };
  });
  private jobs = 0;

  /**
   * @param renamed names that the user gives to spellings
   * @param known names that a scenario has; they are never put together
   */
  constructor(renamed: Readonly<Record<string, string>>, known: readonly string[]) {
    this.renamed = new Map(Object.entries(renamed).map(([spelling, name]) => [keyOf(spelling), name]));
    this.known = new Map(known.map((name) => [keyOf(name), name]));
  }

  /**
   * @param written as the cell has it
   * @param group what it may be put together by: its process or material
   * @returns a key, for `nameOf`
   */
  take(written: string, group: string): string {
    const { key, name, given } = this.spelling(written);
    let part = this.parts.get(key);
    if (part === undefined) {
      part = { key, isFixed: given, jobs: 0, spellings: new Map(), groups: new Map() };
      this.parts.set(key, part);
    }
    part.jobs++;
    this.jobs++;
    part.spellings.set(name, (part.spellings.get(name) ?? 0) + 1);
    part.groups.set(group, (part.groups.get(group) ?? 0) + 1);
    return key;
  }

  /** Names by keys, and what was done to them. */
  names(): { nameOf: ReadonlyMap<string, string>; names: PartNames } {
    const nameOf = new Map<string, string>();
    const respelled: { name: string; spellings: string[] }[] = [];
    const grouped = new Map<string, { name: string; names: number; jobs: number }>();
    const isLong = this.parts.size > MOST_TYPES;
    for (const part of this.parts.values()) {
      if (isLong && !part.isFixed && part.jobs < Math.max(RARE * this.jobs, 2)) {
        const group = mostFrequent(part.groups);
        const name = group === '' ? 'other parts' : `other ${group} parts`;
        const before = grouped.get(name) ?? { name, names: 0, jobs: 0 };
        grouped.set(name, { name, names: before.names + 1, jobs: before.jobs + part.jobs });
        nameOf.set(part.key, name);
        continue;
      }
      const name = mostFrequent(part.spellings);
      nameOf.set(part.key, name);
      const others = [...part.spellings.keys()].filter((spelling) => spelling !== name);
      if (others.length > 0) respelled.push({ name, spellings: others });
    }
    return { nameOf, names: { respelled, grouped: [...grouped.values()] } };
  }
}

/** Case, accents, endings of files, spaces, hyphens and underscores do not matter. */
function keyOf(written: string): string {
  return plainWords(withoutEnding(written)).replaceAll(' ', '');
}

function withoutEnding(written: string): string {
  return written
    .trim()
    .replace(/\.(stl|3mf|obj|step|stp|amf)$/i, '')
    .replace(/\s+/g, ' ');
}

function mostFrequent(counts: ReadonlyMap<string, number>): string {
  let best = '';
  let most = 0;
  for (const [name, count] of counts) {
    if (count > most) {
      best = name;
      most = count;
    }
  }
  return best;
}
