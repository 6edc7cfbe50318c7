import type { LaunchRule } from '@buildweek/model';
import { clockTime } from './dates.ts';
import { plainDuration } from './duration.ts';
import { share } from './numbers.ts';
import { weekdays } from './week.ts';
import { readPart, type Wording, WordingError } from './wording-error.ts';

const EXPECTED =
  'one or several of "at once", "when full", "when 60 % full", "after 4 h", "before closing", ' +
  '"before closing preferring an attended end", "mon-fri at 15:00", "when a promise is at risk", with "or" between them';
const EXAMPLE = 'when 60 % full or after 4 h or before closing';

const NOTHING: LaunchRule = {
  fullShare: null,
  waitedHours: null,
  beforeClosing: false,
  fixedHours: null,
  promiseAtRisk: false,
  preferAttendedEnd: false,
};

/** When a machine starts: `when 60 % full or after 4 h or before closing`. @throws WordingError */
export const launchRule: Wording<LaunchRule> = (text) => {
  let rule = NOTHING;
  for (const condition of text.split(/\s+or\s+/i)) {
    const added = conditionOf(condition.trim(), text);
    for (const key of Object.keys(added)) {
      if (rule[key as keyof LaunchRule] !== NOTHING[key as keyof LaunchRule]) {
        throw new WordingError(
          `"${condition.trim()}" comes after a condition of the same kind.`,
          EXPECTED,
          EXAMPLE,
        );
      }
    }
    rule = { ...rule, ...added };
  }
  return rule;
};

/** When a station starts: `at once`, `when 50 % full or after 1 h`. @throws WordingError */
export const stationStart: Wording<{ readonly fullShare: number; readonly waitedHours: number | null }> = (
  text,
) => {
  const rule = launchRule(text);
  if (rule.beforeClosing || rule.fixedHours !== null || rule.promiseAtRisk) {
    throw new WordingError(
      'A station starts by what is waiting, not by the clock of the day or by promises.',
      'at once, when full, when 50 % full, after 1 h, with "or" between them',
      'when 50 % full or after 1 h',
    );
  }
  // Waiting alone is a condition of its own: full then still starts, since nothing more fits.
  return { fullShare: rule.fullShare ?? 1, waitedHours: rule.waitedHours };
};

function conditionOf(condition: string, text: string): Partial<LaunchRule> {
  const words = condition.toLowerCase();
  if (words === 'at once') return { fullShare: 0 };
  if (words === 'when full') return { fullShare: 1 };
  const full = /^when (.+) full$/.exec(words);
  if (full !== null) return { fullShare: readPart(text, full[1] ?? '', share(100)) };
  const after = /^after (.+)$/.exec(words);
  if (after !== null) return { waitedHours: readPart(text, after[1] ?? '', oneTime) };
  if (words === 'before closing') return { beforeClosing: true };
  if (words === 'before closing preferring an attended end')
    return { beforeClosing: true, preferAttendedEnd: true };
  if (words === 'when a promise is at risk') return { promiseAtRisk: true };
  const fixed = /^(.+?) at (.+)$/.exec(words);
  if (fixed !== null) {
    const times = (fixed[2] ?? '').split(/\s*,\s*|\s+and\s+/).map((time) => readPart(text, time, clockTime));
    const hours = readPart(text, fixed[1] ?? '', weekdays).flatMap((day) =>
      times.map((time) => day * 24 + time),
    );
    return { fixedHours: [...new Set(hours)].sort((a, b) => a - b) };
  }
  throw new WordingError(`"${condition}" is not understood here.`, EXPECTED, EXAMPLE);
}

const oneTime: Wording<number> = (text) => {
  const { distribution } = plainDuration(text);
  if (distribution.kind === 'constant') return distribution.value;
  throw new WordingError(`"after ${text}" has to name one time.`, EXPECTED, '4 h');
};
