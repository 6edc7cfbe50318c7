import { type TypicalValue, typicalValue } from './typical-value.ts';

/** Ranges of a machine class beside its own times and its shapes. */
export interface MachineRanges {
  /** Of what goes wrong; the class takes the typical values. */
  readonly troubles: readonly TypicalValue[];
  /** Of hand work before and after the machine, which routes say. */
  readonly work: readonly TypicalValue[];
  /** For planning money. */
  readonly money: readonly TypicalValue[];
}

type Three = readonly [low: number, typical: number, high: number];

const NOVICES =
  'common practice, no source; of novices in an open studio 41 % failed: Song and Telenko, Procedia CIRP 80 (2019)';

/** Low, typical and high values of the machine classes. Common practice, no source, except where it says so. */
export const MACHINE_RANGES: ReadonlyMap<string, MachineRanges> = new Map([
  [
    'small MEX',
    {
      troubles: [
        typicalValue('fails', '% of builds', [2, 5, 15], NOVICES),
        ...rejectsAndBreakdowns([1, 3, 5], [100, 250, 800]),
      ],
      work: [
        preparation('job', [5, 10, 30]),
        perPart('remove supports', [1, 5, 20]),
        perPart('sand', [0, 10, 40]),
        perPart('inspect', [0.5, 3, 10]),
      ],
      money: money([300, 1500, 6000], [15, 30, 80], [0.1, 0.2, 0.3]),
    },
  ],
  [
    'heated MEX',
    {
      troubles: troubles([2, 5, 10], [1, 3, 5], [200, 500, 1500]),
      work: [
        preparation('job', [10, 15, 40]),
        perPart('remove supports', [2, 8, 30]),
        perPart('sand', [0, 10, 40]),
        perPart('inspect', [1, 4, 15]),
      ],
      money: money([10_000, 40_000, 200_000], [40, 120, 500], [1, 3, 6]),
    },
  ],
  [
    'small mask VPP',
    {
      troubles: troubles([3, 6, 15], [2, 5, 8], [150, 400, 1000]),
      work: [
        preparation('job', [10, 20, 45]),
        typicalValue('dry', 'min', [10, 20, 30]),
        perPart('remove supports', [2, 5, 15]),
        perPart('sand', [0, 10, 30]),
        perPart('inspect', [0.5, 3, 10]),
      ],
      money: money([300, 3000, 15_000], [40, 90, 250], [0.05, 0.1, 0.2]),
    },
  ],
  [
    'large laser VPP',
    {
      troubles: troubles([2, 4, 8], [1, 3, 5], [300, 700, 2000]),
      work: [
        preparation('job', [10, 25, 60]),
        typicalValue('dry', 'min', [15, 30, 60]),
        perPart('remove supports', [3, 8, 30]),
        perPart('sand', [0, 15, 60]),
        perPart('inspect', [1, 4, 15]),
      ],
      money: money([40_000, 150_000, 500_000], [80, 150, 300], [0.5, 1.5, 3]),
    },
  ],
  [
    'compact PBF',
    {
      troubles: troubles([2, 4, 8], [1, 2.5, 4], [200, 500, 1200]),
      work: [
        typicalValue('unpack', 'min per build', [20, 30, 45]),
        ...powderWork(),
        perPart('inspect', [0.5, 2, 10]),
      ],
      money: money([12_000, 35_000, 80_000], [60, 90, 150], [1, 1.5, 2]),
    },
  ],
  [
    'large PBF',
    {
      troubles: troubles([1, 3, 6], [1, 2.5, 4], [300, 700, 2000]),
      work: [
        typicalValue('unpack', 'min per build', [45, 90, 180]),
        ...powderWork(),
        perPart('inspect', [0.5, 2, 10]),
      ],
      money: money([120_000, 250_000, 500_000], [45, 70, 120], [3, 5, 8]),
    },
  ],
]);

function troubles(fails: Three, rejects: Three, breaksDown: Three): TypicalValue[] {
  return [typicalValue('fails', '% of builds', fails), ...rejectsAndBreakdowns(rejects, breaksDown)];
}

function rejectsAndBreakdowns(rejects: Three, breaksDown: Three): TypicalValue[] {
  return [
    typicalValue('rejects', '% of parts', rejects),
    typicalValue('breaks down every', 'h of running', breaksDown),
  ];
}

function preparation(basis: string, range: Three): TypicalValue {
  return typicalValue('prepare file', `min per ${basis}`, range);
}

function perPart(name: string, range: Three): TypicalValue {
  return typicalValue(name, 'min per part', range);
}

function powderWork(): TypicalValue[] {
  return [perPart('remove powder', [0.5, 1, 2]), perPart('sand', [0, 5, 20])];
}

function money(price: Three, material: Three, power: Three): TypicalValue[] {
  return [
    typicalValue('price', 'EUR', price),
    typicalValue('material price', 'EUR per kg', material),
    typicalValue('average power', 'kW', power),
  ];
}
