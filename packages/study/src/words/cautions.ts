import type { Lab, Process } from '@buildweek/model';
import type { Caution } from '@buildweek/results';
import { workingTimeCautions } from './working-time-cautions.ts';

const SHEET = 'Go by the safety data sheet of the material and the rules of the site.';

interface Hazard {
  readonly topic: string;
  readonly text: string;
  readonly processes: readonly Process[];
  /** Names of stages, stations and materials that point to it. */
  readonly words: RegExp | null;
}

/** Common hazards of the processes and where they show in a lab. Plain hints, not an assessment. */
const HAZARDS: readonly Hazard[] = [
  {
    topic: 'Uncured resin',
    text: `The plan has people handle uncured resin, which can sensitise the skin for good: gloves, goggles, no skin contact. ${SHEET}`,
    processes: ['VPP'],
    words: /resin/i,
  },
  {
    topic: 'Solvents',
    text: 'Washing and dissolving may use flammable solvents: keep them away from hot parts, ovens and ignition sources, limit what stands in the room, extract the vapour. The safety data sheet and the fire rules of the site decide.',
    processes: [],
    words: /wash|rins|solvent|dissol|alcohol|isopropanol/i,
  },
  {
    topic: 'UV light',
    text: 'Resin machines and cure units work with UV or visible light: keep interlocks and covers in place, and do not look in.',
    processes: ['VPP'],
    words: /cure|curing|\buv\b/i,
  },
  {
    topic: 'Fine powder',
    text: `The plan has people handle fine powder: do not breathe it in, avoid clouds and ignition sources, earth the equipment, use a vacuum made for it. ${SHEET} People licensed to judge dust explosion have to look at it.`,
    processes: ['PBF'],
    words: /powder/i,
  },
  {
    topic: 'Lasers',
    text: 'A laser machine is safe only with its interlocks intact; service is for people trained for it.',
    processes: ['PBF'],
    words: /laser/i,
  },
  {
    topic: 'Fumes and ultrafine particles',
    text: 'Material extrusion gives off ultrafine particles and vapours: how many machines a room bears is for its ventilation to say.',
    processes: ['MEX'],
    words: null,
  },
  {
    topic: 'Hot surfaces',
    text: 'Nozzles, beds, chambers and part cakes are hot: a build is taken out only after its cool-down.',
    processes: ['MEX', 'PBF'],
    words: /oven/i,
  },
  {
    topic: 'Blasting, sanding, cutting',
    text: 'Finishing by hand makes dust, noise and cuts: eye and hearing protection, extraction, sharp tools put away.',
    processes: [],
    words: /blast|sand|grind|polish|support|trim|cut/i,
  },
];

/**
 * One plain line for each hazard that the plan touches: processes, stations, unattended nights, people alone, long
 * hours. Sources: common practice of the trade; which rules apply is for the site and for licensed people to say.
 */
export function cautionsOf(lab: Lab): Caution[] {
  const processes = new Set(lab.machines.map((group) => group.process));
  const names = namesIn(lab);
  const hazards = HAZARDS.filter(
    (hazard) =>
      hazard.processes.some((process) => processes.has(process)) ||
      (hazard.words !== null && names.some((name) => hazard.words?.test(name))),
  ).map(({ topic, text }) => ({ topic, text }));
  const cautions = [...hazards, ...workingTimeCautions(lab)];
  if (cautions.length === 0 || !isPrintLab(lab)) return [];
  return [
    ...cautions,
    {
      topic: 'What this is not',
      text: 'These lines are hints for planning. They are no safety assessment; people licensed to judge the risks on site have to make one.',
    },
  ];
}

/** A plain queueing system, with neither machines nor people, has no hazards. */
function isPrintLab(lab: Lab): boolean {
  return lab.machines.length > 0 || lab.people.length > 0;
}

function namesIn(lab: Lab): string[] {
  return [
    ...lab.stations.map((station) => station.name),
    ...lab.parts.flatMap((part) => [part.material, ...part.stages.map((stage) => stage.name)]),
  ];
}
