import { inverseNormal } from '@buildweek/numbers';

/** A shop whose machine prints as it likes, and a list of what it printed. */

export interface Made {
  readonly name: string;
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  readonly volume: number;
}

/** Heights are whole layers of 0.1 mm; volumes in mm3. */
const PARTS: readonly Made[] = [
  { name: 'plate', width: 90, depth: 60, height: 6, volume: 24_000 },
  { name: 'cup', width: 40, depth: 40, height: 55, volume: 21_000 },
  { name: 'mast', width: 12, depth: 12, height: 160, volume: 9_000 },
  { name: 'block', width: 70, depth: 50, height: 30, volume: 96_000 },
];

export function shop(machine: string, demand = 'plate: { jobs: 5 per week }'): string {
  const parts = PARTS.map(
    ({ name, width, depth, height, volume }) =>
      `  ${name}: { route: part, size: ${width} x ${depth} x ${height} mm, volume: ${volume} mm3, supported volume: 0 mm3 }`,
  );
  return `buildweek: 1
name: Measured shop
starts: 2027-03-01
machines:
  vat:
    process: VPP
    platform: 400 x 400 x 300 mm
    layer: 0.1 mm
${machine}
    start: at once
  other: { start: at once }
routes:
  part:
    - build: { on: vat }
  typed:
    - build: { on: other }
parts:
${parts.join('\n')}
  lid: { route: typed, fits: 4 per build, print: 2 h per build }
demand:
  ${demand}
`;
}

export const LASER_NOW = '    time per layer: 25 s\n    scans: 800 mm2 per s';
export const MASK_NOW = '    time per layer: 8 s\n    bottom layers: 6 at 40 s each';

/** Print hours by the sums that the models are documented with, worked out here by themselves. */
export type Truth = (contents: readonly (readonly [Made, number])[]) => number;

/** 31 s for every layer, and 500 mm2 a second. */
export const laserTruth: Truth = (contents) => {
  const layers = Math.max(...contents.map(([part]) => Math.round(part.height * 10)));
  const area = contents.reduce((sum, [part, pieces]) => sum + (pieces * part.volume) / 0.1, 0);
  return (layers * 31 + area / 500) / 3600;
};

/** 11 s for every layer, and 60 s for each of the first six. */
export const maskTruth: Truth = (contents) => {
  const layers = Math.max(...contents.map(([part]) => Math.round(part.height * 10)));
  return (layers * 11 + 6 * 49) / 3600;
};

/** Source: S. K. Park and K. W. Miller, Random number generators, Communications of the ACM 31 (1988), section 1. */
function draws(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

export interface Measured {
  readonly csv: string;
  readonly builds: readonly {
    readonly contents: readonly (readonly [Made, number])[];
    readonly hours: number;
  }[];
}

/** Builds of one or two kinds of parts, with a lognormal factor of mean 1 on their hours. */
export function measured(truth: Truth, count: number, spread: number, seed: number): Measured {
  const draw = draws(seed);
  const logVariance = Math.log1p(spread * spread);
  const builds = Array.from({ length: count }, (_, index) => {
    const first = PARTS[index % PARTS.length] as Made;
    const second = PARTS[Math.floor(index / 2) % PARTS.length] as Made;
    const pieces = (): number => 1 + Math.floor(8 * draw());
    const contents =
      first === second
        ? [[first, pieces()] as const]
        : [[first, pieces()] as const, [second, pieces()] as const];
    const factor = Math.exp(Math.sqrt(logVariance) * inverseNormal(draw()) - logVariance / 2);
    return { contents, hours: truth(contents) * factor };
  });
  const rows = builds.flatMap(({ contents, hours }, index) =>
    contents.map(([part, pieces], position) => {
      const text = position === 0 ? hours.toFixed(4).replace('.', ',') : '';
      return `${index + 1};${part.name};${pieces};${text}`;
    }),
  );
  return { csv: `\uFEFF# kept by hand\nBuild;Part;Qty;Print time (h)\n\n${rows.join('\r\n')}\n`, builds };
}
