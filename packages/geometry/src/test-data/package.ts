import { strToU8, zipSync } from 'fflate';

const RELATIONSHIPS =
  '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="a" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel" Target="/3D/part.model"/></Relationships>';

/** A 3MF package written by hand around the text of its model, with further files. */
export function packageOf(model: string, further: Readonly<Record<string, string>> = {}): Uint8Array {
  const files: Record<string, Uint8Array> = {
    '_rels/.rels': strToU8(RELATIONSHIPS),
    '3D/part.model': strToU8(model),
  };
  for (const [name, text] of Object.entries(further)) files[name] = strToU8(text);
  return zipSync(files, { mtime: '1980-01-01T00:00:00' });
}

/** The text of a model from its objects and items. */
export function modelOf(objects: string, items: string, attributes = 'unit="millimeter"'): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<model ${attributes} xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02" xmlns:p="http://schemas.microsoft.com/3dmanufacturing/production/2015/06">
<resources>${objects}</resources><build>${items}</build></model>`;
}

/** A box of the given sides at the origin as an object. */
export function boxObject(id: number, sides: readonly [number, number, number], type = 'model'): string {
  const vertices = [0, 1, 2, 3, 4, 5, 6, 7]
    .map((corner) => {
      const [x, y, z] = sides.map((side, axis) => (corner & (1 << axis) ? side : 0));
      return `<vertex x="${x}" y="${y}" z="${z}"/>`;
    })
    .join('');
  const faces = '0 2 1,1 2 3,4 5 6,5 7 6,0 1 4,1 5 4,2 6 3,3 6 7,0 4 2,2 4 6,1 3 5,3 7 5';
  const triangles = faces
    .split(',')
    .map((face) => face.split(' '))
    .map(([a, b, c]) => `<triangle v1="${a}" v2="${b}" v3="${c}"/>`)
    .join('');
  return `<object id="${id}" type="${type}"><mesh><vertices>${vertices}</vertices><triangles>${triangles}</triangles></mesh></object>`;
}
