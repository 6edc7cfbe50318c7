import type { Fields } from '../fields.ts';
import type { ScenarioShape } from '../scenario.ts';
import { MESH_UNITS } from '../shape-reader.ts';
import { anyText, choice } from '../words/choice.ts';
import { measure } from '../words/measure.ts';
import { size } from '../words/size.ts';
import { checkMeasures } from './check-measures.ts';

const SIZE_KEYS = ['volume', 'surface', 'supported volume', 'support contact'] as const;
const MESH_KEYS = ['unit', 'orientation'] as const;
const TYPED_KEYS = ['print', 'fits', 'space'] as const;

/** What a part says of its shape; null when it says nothing, or what it says is wrong. */
export function readPartShape(part: Fields): ScenarioShape | null {
  const isMesh = part.has('mesh');
  const isSize = part.has('size');
  if (isMesh) {
    for (const key of ['size', ...SIZE_KEYS])
      part.refuse(key, 'the mesh says it.', 'the mesh, or size and volume');
  } else if (!part.reading.isMisspelt(part.path)) {
    for (const key of MESH_KEYS) part.refuse(key, 'there is no mesh.', 'mesh: parts/bracket.stl');
  }
  if (!isMesh && !isSize) {
    if (part.reading.isMisspelt(part.path)) return null;
    for (const key of SIZE_KEYS) part.refuse(key, 'there is no size.', 'size: 42 x 42 x 11 mm');
    return null;
  }
  refuseTypedTimes(part, isMesh ? 'mesh' : 'size');
  return isMesh ? readMesh(part) : readSize(part);
}

/** Print times and numbers that follow from the shape are not typed beside it. */
function refuseTypedTimes(part: Fields, shape: 'mesh' | 'size'): void {
  const typed = TYPED_KEYS.filter((key) => part.has(key));
  const [first] = typed;
  if (first === undefined) return;
  const names = typed.map((key) => `"${key}"`).join(' and ');
  part.report(
    first,
    'key',
    `${names} ${typed.length === 1 ? 'is' : 'are'} typed, and "${shape}" says it in another way: choose one.`,
    `"${shape}", from which print time and what fits follow, or "print" and "fits" without it`,
    `the part without ${names}, or without "${shape}"`,
  );
}

function readMesh(part: Fields): ScenarioShape | null {
  const path = part.read('mesh', anyText);
  const saysUnit = /\.3mf$/i.test(path ?? '');
  if (saysUnit) part.refuse('unit', 'a 3MF file says its unit itself.', 'the part without it');
  const unit = saysUnit ? null : part.readOr('unit', choice(...MESH_UNITS), 'mm');
  const orientation = part.readOr('orientation', choice('best', 'as given'), 'best');
  return path === undefined ? null : { kind: 'mesh', path, unit, orientation };
}

function readSize(part: Fields): ScenarioShape | null {
  if (!part.has('volume')) {
    part.missing('volume', 'how much of its box is part', 'volume: 5200 mm3');
  }
  const box = part.read('size', size);
  const volume = part.read('volume', measure('volume', '5200 mm3'));
  const surface = part.read('surface', measure('area', '60 cm2')) ?? null;
  const supportedVolume =
    part.read('supported volume', measure('volume', '800 mm3', { orZero: true })) ?? null;
  const supportContact = part.read('support contact', measure('area', '120 mm2', { orZero: true })) ?? null;
  if (box === undefined || volume === undefined) return null;
  const shape = { kind: 'size', size: box, volume, surface, supportedVolume, supportContact } as const;
  return checkMeasures(part, shape) ? shape : null;
}
