import type { ClassTexts } from '../fields.ts';

/** A breakdown as a class has it; all of it worded as in a scenario file. */
export interface ClassBreakdown {
  readonly called: string;
  /** `every` and `build`. */
  readonly texts: ClassTexts;
  /** Time of a repair by one's own people; null: by a service visit. */
  readonly repair: string | null;
  /** `response` and `takes` of a service visit. */
  readonly service: ClassTexts;
}

/** What goes wrong with machines of a class, and what they owe. */
export interface ClassTroubles {
  readonly breakdowns: readonly ClassBreakdown[];
  /** `every` and `takes`. */
  readonly maintenance: ClassTexts;
  readonly fails: string;
  /** Share of parts that are found bad behind the build; for stages that say `rejects: usual`. */
  readonly rejects: string;
}

const OWN = 'fault';
const SERVICE = 'fault for the service';

/**
 * Breakdowns, failures, maintenance and rejects of the machine classes. All of it is common practice, no
 * source: replace it by what your own machines show.
 *
 * A class with service visits has two kinds of breakdown: five of six faults are mended by one's own people,
 * one waits for a visit. Together they come as often as the class breaks down (every 500 h: one in 600 h and
 * one in 3,000 h). What powder machines need after every build belongs to their set-up and unloading.
 */
export const MACHINE_TROUBLES: ReadonlyMap<string, ClassTroubles> = new Map<string, ClassTroubles>([
  [
    'small MEX',
    {
      breakdowns: [own('about 250 h of running', '0.5 to 6 h, usually 1.5')],
      maintenance: { every: '200 h of running', takes: '1 h' },
      fails: '5 % of builds',
      rejects: '3 %',
    },
  ],
  [
    'heated MEX',
    {
      breakdowns: [
        own('about 600 h of running', '1 to 8 h, usually 4'),
        service('about 3000 h of running', '20 to 64 h, usually 30', '2 to 8 h, usually 4'),
      ],
      maintenance: { every: '300 h of running', takes: '2 h' },
      fails: '5 % of builds',
      rejects: '3 %',
    },
  ],
  [
    'small mask VPP',
    {
      breakdowns: [own('about 400 h of running', '0.5 to 8 h, usually 2')],
      maintenance: { every: '150 h of running', takes: '1 h' },
      fails: '6 % of builds',
      rejects: '5 %',
    },
  ],
  [
    'large laser VPP',
    {
      breakdowns: [
        own('about 840 h of running', '2 to 12 h, usually 6'),
        service('about 4200 h of running', '20 to 110 h, usually 48', '2 to 10 h, usually 6'),
      ],
      maintenance: { every: '500 h of running', takes: '4 h' },
      fails: '4 % of builds',
      rejects: '3 %',
    },
  ],
  [
    'compact PBF',
    {
      breakdowns: [
        own('about 600 h of running', '1 to 10 h, usually 5'),
        service('about 3000 h of running', '20 to 110 h, usually 36', '2 to 10 h, usually 5'),
      ],
      maintenance: { every: '500 h of running', takes: '4 h' },
      fails: '4 % of builds',
      rejects: '2.5 %',
    },
  ],
  [
    'large PBF',
    {
      breakdowns: [
        own('about 840 h of running', '2 to 16 h, usually 8'),
        service('about 4200 h of running', '36 to 110 h, usually 60', '3 to 10 h, usually 6'),
      ],
      maintenance: { every: '500 h of running', takes: '8 h' },
      fails: '3 % of builds',
      rejects: '2.5 %',
    },
  ],
]);

function own(every: string, repair: string): ClassBreakdown {
  return { called: OWN, texts: { every, build: 'is lost' }, repair, service: {} };
}

function service(every: string, response: string, takes: string): ClassBreakdown {
  return {
    called: SERVICE,
    texts: { every, build: 'is lost' },
    repair: null,
    service: { response, takes, hours: 'always' },
  };
}
