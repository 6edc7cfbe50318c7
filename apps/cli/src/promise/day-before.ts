import { PROMISE_VERSION, type PromiseAnswer, promiseAnswerSchema } from '@buildweek/results';
import type { Before } from '@buildweek/study';
import { badInput } from '../failure.ts';
import { readText } from '../files/read-file.ts';
import { readingOf } from '../files/scenario-file.ts';

const HOW = 'Such a document is written by: buildweek promise FILE --all --json DOCUMENT';

/**
 * The answer of the day before, with its lab where its scenario can still be read.
 *
 * @param path of the document
 * @param scenario path of the scenario of today, beside which the files of the old one are looked for
 * @param now moment of today, `2027-03-01 09:30`
 * @throws Failure for bad input: no such document, one without the jobs, or one that is not from before
 */
export function readDayBefore(path: string, scenario: string, now: string): Before {
  const answer = documentIn(path);
  if (answer.openJobs === null)
    throw badInput(`${path} tells of no jobs in the lab: it was made without --all.\n${HOW}`);
  if (answer.now >= now) {
    throw badInput(
      `${path} is of ${answer.now}, and now it is ${now}: an answer from before is needed.\n${HOW}`,
    );
  }
  const reading = readingOf(answer.scenario.text, scenario, ' of the day before');
  return {
    now: answer.now,
    openJobs: answer.openJobs,
    lab: reading.kind === 'scenario' ? reading.lab : null,
  };
}

function documentIn(path: string): PromiseAnswer {
  const text = readText(path, 'answer of the day before');
  let plain: unknown;
  try {
    plain = JSON.parse(text);
  } catch {
    throw badInput(`${path} is no JSON document.\n${HOW}`);
  }
  const { format, version } = (plain ?? {}) as { readonly format?: unknown; readonly version?: unknown };
  if (format !== 'buildweek promise') throw badInput(`${path} holds no promised dates.\n${HOW}`);
  if (version !== PROMISE_VERSION) {
    throw badInput(
      `${path} is of version ${String(version)}; this program reads version ${PROMISE_VERSION}.\n${HOW}`,
    );
  }
  const parsed = promiseAnswerSchema.safeParse(plain);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw badInput(
    `${path} is damaged at ${issue?.path.join(' / ') ?? 'its top'}: ${issue?.message ?? ''}.\n${HOW}`,
  );
}
