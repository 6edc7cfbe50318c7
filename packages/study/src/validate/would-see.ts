import type { DoubtSubject, Lab } from '@buildweek/model';
import type { WouldSee } from '@buildweek/results';
import { clopperPearsonInterval, globalEnvelope } from '@buildweek/statistics';
import { applyDoubt } from '../doubts/changes/apply-doubt.ts';
import { familiesOf } from './families.ts';
import type { Observation } from './observation.ts';
import { type LogPlay, playLog } from './play-log.ts';

/** Logs that are made of each lab that is otherwise. */
export const LOGS_OF_EACH = 99;
const LEVEL = 0.95;

/** Something that may take longer than modelled. */
interface Slowed {
  readonly what: string;
  readonly about: DoubtSubject;
}

/** What may take longer: the work of each skill, and printing. */
export function whatMaySlow(lab: Lab): Slowed[] {
  const skills = [...new Set(lab.people.flatMap((group) => group.skills))];
  const works = skills.map(
    (of): Slowed => ({ what: `times of ${of}`, about: { kind: 'work times', by: 'skill', of } }),
  );
  const all: Slowed[] = [...works, { what: 'print times', about: { kind: 'print times', of: null } }];
  const asItIs = JSON.stringify(lab);
  return all.filter(({ about }) => JSON.stringify(applyDoubt(lab, about, 2)) !== asItIs);
}

/**
 * What the check would see of the same jobs: logs of labs in which something takes longer than modelled are put in the
 * place of what happened, and it is counted how many of them contradict the model.
 *
 * @param lab with the jobs of the log as its demand
 * @param simulated the replications of the model as it is
 * @param factor how much longer it takes, above 1
 * @returns null when somebody stopped
 */
export async function wouldSee(
  lab: Lab,
  simulated: readonly Observation[],
  factor: number,
  falseAlarmRate: number,
  play: LogPlay,
): Promise<WouldSee[] | null> {
  const found: WouldSee[] = [];
  for (const { what, about } of whatMaySlow(lab)) {
    // Their luck is that of no replication of the model.
    const logs = await playLog(applyDoubt(lab, about, factor), simulated.length, LOGS_OF_EACH, play);
    if (logs === null) return null;
    const seen = logs.filter((log) => {
      const families = familiesOf([log, ...simulated]).families.map(({ curves }) => curves);
      return globalEnvelope(families, falseAlarmRate).pValue <= falseAlarmRate;
    }).length;
    const { low, high } = clopperPearsonInterval(seen, LOGS_OF_EACH, LEVEL);
    found.push({ what, factor, seen, of: LOGS_OF_EACH, low, high });
  }
  return found;
}
