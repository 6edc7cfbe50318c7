import { describe, expect, it } from 'vitest';
import { parseResults } from './parse-document.ts';
import { RESULTS_VERSION, type Results } from './results.ts';

const band = { value: [], low: [], high: [], level: 0.95, replications: 20 };

/** The smallest document there is: a lab without anything. */
function emptyResults(): Results {
  return {
    format: 'buildweek results',
    version: RESULTS_VERSION,
    program: { name: 'buildweek', version: '0.1.0' },
    scenario: { name: 'nothing', text: 'buildweek: 1', hash: '0'.repeat(64), files: [] },
    lab: {
      name: 'nothing',
      startDate: '2024-01-01',
      clockChanges: [],
      calendars: [],
      labCalendar: 'always',
      people: [],
      machines: [],
      stations: [],
      carriers: [],
      parts: [],
      demand: [],
      dispatch: {
        order: ['machine', 'station', 'bench'],
        fitOn: 'typical',
        within: 'promise',
        rushInterrupts: false,
      },
      initialState: { jobs: [], machines: [] },
      deadlines: [],
    },
    run: {
      seed: 'a',
      replications: 20,
      replicationLimit: 20,
      weeks: 1,
      ignoredWeeks: { weeks: 0, method: 'given', note: 'none' },
      capWeeks: 1,
      level: 0.95,
      stopped: 'number of replications reached',
      precision: null,
    },
    headline: [],
    targets: [],
    jobs: [],
    flow: { arrivedJobs: band, finishedJobs: band, finishedParts: band, jobsInLab: band },
    queues: [],
    hours: [],
    machines: [],
    builds: [],
    stations: [],
    people: [],
    trouble: { equipment: [], parts: [] },
    money: null,
    sentOut: [],
    handCalculation: [],
    handLeadTimes: [],
    assumptions: [],
    cautions: [],
    checks: [],
    warnings: [],
  };
}

describe('parseResults', () => {
  it('gives back the document that was written', () => {
    expect(parseResults(JSON.stringify(emptyResults()))).toEqual(emptyResults());
  });

  it('says which version a document of another version has, and what to do', () => {
    const text = JSON.stringify({ ...emptyResults(), version: 1 });
    expect(() => parseResults(text)).toThrow(
      /has version 1; this program reads version 3\. Run its scenario again/,
    );
  });

  it('says where a document is damaged', () => {
    const damaged = { ...emptyResults(), run: { ...emptyResults().run, weeks: 'thirteen' } };
    expect(() => parseResults(JSON.stringify(damaged))).toThrow(/damaged at run \/ weeks/);
  });

  it('tells half a document and something else from results', () => {
    const text = JSON.stringify(emptyResults());
    expect(() => parseResults(text.slice(0, 200))).toThrow(/not a whole results document/);
    expect(() => parseResults('{"format":"a picture"}')).toThrow(/not a results document/);
    expect(() => parseResults('[]')).toThrow(/not a results document/);
  });
});
