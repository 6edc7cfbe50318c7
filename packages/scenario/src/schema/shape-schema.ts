import { MESH_UNITS } from '../shape-reader.ts';
import { words } from './keys.ts';
import { z } from './zod.ts';

/** Keys of a machine from which builds of parts with a shape follow. */
export const shapedBuilds = {
  platform: words('Build space: width x depth x height', '145 x 82 x 170 mm').optional(),
  margin: words('Left free along every edge; default 0 mm', '3 mm').optional(),
  spacing: words('Left free between two parts; default 2 mm', '2 mm').optional(),
  layer: words('How thick a layer is', '0.05 mm').optional(),
  'time per layer': words(
    'What a layer takes: VPP with a mask all of it; with a laser and PBF recoating alone; MEX what each layer ' +
      'of a part takes beside laying down',
    '8 s',
  ).optional(),
  'lays down': words(
    'MEX: volume laid down in a second, travel and acceleration included',
    '8 mm3 per s',
    '30 cm3 per h',
  ).optional(),
  walls: words('MEX: thickness of solid walls; default 1.2 mm', '1.2 mm').optional(),
  skins: words('MEX: thickness of solid skins at top and bottom; default 0.8 mm', '0.8 mm').optional(),
  infill: words('MEX: share of the inside that is filled; default 20 %', '20 %').optional(),
  'support density': words(
    'MEX: share of the supported volume that is laid down as supports; default 15 %',
    '15 %',
  ).optional(),
  'bottom layers': words(
    'VPP with a mask: first layers, exposed longer; default none',
    '5 at 40 s each',
    '5 at 32 s more each',
    'none',
  ).optional(),
  scans: words('VPP with a laser and PBF: area scanned in a second', '1500 mm2 per s').optional(),
  'packing density': words('PBF: share of the cake that is part at most', '10 %').optional(),
  'boxes fill': words(
    'PBF: share of the cake that boxes around the parts, with their spacing, can take; default 60 %',
    '60 %',
  ).optional(),
  bedding: words('PBF: plain powder below and above the parts together; default 12 mm', '12 mm').optional(),
  powder: z
    .strictObject({
      bed: words('How dense powder lies in the bed', '0.45 g per cm3').optional(),
      parts: words('How dense parts are', '1.0 g per cm3').optional(),
      virgin: words('Share of virgin powder in what a build is filled with', '40 %').optional(),
    })
    .meta({ description: 'PBF: powder that builds take, for its balance; default not counted' })
    .optional(),
  'print time': words(
    'Instead of layers and rates: what a print takes by the volume of parts and the height of the build',
    '1 h per build plus 0.03 h per cm3 plus 0.7 h per cm',
  ).optional(),
  'print time spread': words(
    'How far prints are from their estimate: standard deviation over mean of a lognormal factor; default none',
    '15 %',
    'none',
  ).optional(),
};

/** Keys of a part that say its shape. */
export const partShape = {
  size: words('Box around it as it stands in a build: width x depth x height', '42 x 42 x 11 mm').optional(),
  volume: words('Volume of the part itself, with size', '5200 mm3', '5.2 cm3').optional(),
  surface: words('Area of its surface, with size; default estimated', '60 cm2').optional(),
  'supported volume': words(
    'With size: space between overhangs and what is below them, of which supports fill a share; default estimated',
    '800 mm3',
  ).optional(),
  'support contact': words(
    'With size: area on which supports touch the part; default estimated',
    '120 mm2',
  ).optional(),
  mesh: words('STL or 3MF file with its mesh, instead of size', 'parts/bracket.stl').optional(),
  unit: z
    .enum(MESH_UNITS)
    .meta({ description: 'Unit of the numbers in an STL file, which does not say it; default mm' })
    .optional(),
  orientation: z
    .enum(['best', 'as given'])
    .meta({
      description: 'How the mesh is put up: as suits the process best (default), or as it lies in the file',
    })
    .optional(),
};
