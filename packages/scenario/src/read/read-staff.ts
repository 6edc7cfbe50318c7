import type { HourSpan, StaffRules } from '@buildweek/model';
import { changeScenario } from '../change/change-scenario.ts';
import { ChangeError, type ChangeWording, changeOf, readChanges } from '../change/change-wording.ts';
import { flowText } from '../change/flow-text.ts';
import type { Fields } from '../fields.ts';
import type { ScenarioStaff, StaffOption } from '../scenario.ts';
import type { SourceNode, SourcePath } from '../source/source-node.ts';
import { plainDuration } from '../words/duration.ts';
import { wholeNumber } from '../words/numbers.ts';
import { windows } from '../words/week.ts';
import { type Wording, WordingError } from '../words/wording-error.ts';

/**
 * Rest and weekly hours are the minima of Directive 2003/88/EC, articles 3 and 6 (there an average over months), six
 * days in a row follow from its weekly rest, and its night holds midnight to 05:00; inputs, whatever law applies.
 */
const USUAL = { rest: '11 h', week: '48 h', days: '6', night: '23:00-06:00' };

/** Names that mean the lab as it is. */
const TODAY = 'today';

/** Ways of staffing, and what the hours of each person are held against. */
export function readStaff(fields: Fields): ScenarioStaff {
  if (!fields.has('staff')) return { options: [], rules: usualRules() };
  const staff = fields.group('staff');
  return { options: readOptions(staff), rules: readRules(staff) };
}

function usualRules(): StaffRules {
  return {
    restHours: hoursAbove0(24, USUAL.rest)(USUAL.rest),
    hoursPerWeek: hoursAbove0(168, USUAL.week)(USUAL.week),
    daysInARow: Number(USUAL.days),
    night: night(USUAL.night),
  };
}

function readRules(staff: Fields): StaffRules {
  return {
    restHours: staff.readOr('rest', hoursAbove0(24, USUAL.rest), USUAL.rest),
    hoursPerWeek: staff.readOr('hours a week', hoursAbove0(168, USUAL.week), USUAL.week),
    daysInARow: staff.readOr('days in a row', wholeNumber(1, USUAL.days, 365), USUAL.days),
    night: staff.readOr('night', night, USUAL.night),
  };
}

/** A number of hours that is known, above 0. @param most more than there are */
function hoursAbove0(most: number, example: string): Wording<number> {
  const expected = `a time above 0, at most ${most} h`;
  return (text) => {
    const { distribution, typicalHours } = plainDuration(text);
    if (distribution.kind === 'constant' && typicalHours > 0 && typicalHours <= most) return typicalHours;
    throw new WordingError(
      `"${text}" is not ${expected}.`,
      expected,
      typicalHours > most ? `${most} h` : example,
    );
  };
}

const night: Wording<HourSpan> = (text) => {
  const [span, ...more] = windows(text);
  if (span !== undefined && more.length === 0) return span;
  throw new WordingError(`"${text}" is more than one night.`, 'one stretch of the day', USUAL.night);
};

function readOptions(staff: Fields): StaffOption[] {
  const options = staff.group('options');
  // What a change misses may be what is wrong elsewhere, which has been reported.
  const isSound = !staff.reading.hasErrors;
  return staff.names('options').flatMap((name): StaffOption[] => {
    if (name.toLowerCase() === TODAY) {
      options.report(
        name,
        'key',
        `"${name}" is what the options are compared with.`,
        'another name',
        'late start',
      );
      return [];
    }
    const node = options.node(name);
    const path = options.pathOf(name);
    if (node === undefined) return [];
    const changes = changesOf(options, node, path, isSound);
    if (changes.length > 0)
      options.assume(name, changes.map(({ wording }) => wording).join('; '), 'stated in the scenario');
    return changes.length === 0 ? [] : [{ name, meaning: '', changes }];
  });
}

/** The changes of an option; one that cannot be made is reported where it stands. */
function changesOf(options: Fields, node: SourceNode, path: SourcePath, isSound: boolean): ChangeWording[] {
  const { reading } = options;
  const { text } = reading.source;
  const changes: ChangeWording[] = [];
  const take = (at: SourcePath, read: () => readonly ChangeWording[]): void => {
    try {
      const found = read();
      changeScenario(text, found);
      changes.push(...found);
    } catch (error) {
      if (!(error instanceof ChangeError)) throw error;
      if (!isSound) return;
      const place = at.at(-1);
      reading.report(at, typeof place === 'string' ? 'key' : 'value', {
        message: `There is no way to make the option "${String(path.at(-1))}". ${error.message}`,
        expected: 'a place of the scenario with what is to stand there',
        write: error.write,
      });
    }
  };
  const takeGroup = (group: SourceNode, at: SourcePath): void => {
    if (group.kind !== 'map') return;
    for (const entry of group.entries) {
      take([...at, entry.key], () => [changeOf(entry.key, flowText(entry.node, text))]);
    }
  };
  takeGroup(node, path);
  if (node.kind !== 'list') return changes;
  node.items.forEach((item, index) => {
    if (item.kind === 'scalar') take([...path, index], () => readChanges(item.text));
    else takeGroup(item, [...path, index]);
  });
  return changes;
}
