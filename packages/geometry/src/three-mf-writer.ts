import { strToU8, zipSync } from 'fflate';
import type { Mesh } from './mesh.ts';

/** First instant that a ZIP archive can state, so that equal meshes give equal bytes. */
const FILE_TIME = '1980-01-01T00:00:00';

const CONTENT_TYPES =
  '<?xml version="1.0" encoding="UTF-8"?>\n' +
  '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">' +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>' +
  '</Types>\n';

const RELATIONSHIPS =
  '<?xml version="1.0" encoding="UTF-8"?>\n' +
  '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
  '<Relationship Id="model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel" Target="/3D/3dmodel.model"/>' +
  '</Relationships>\n';

/**
 * Writes a 3MF file (3MF Core Specification 1.4.0) with one object and one build item, in mm. Equal meshes and names
 * give equal bytes on every machine.
 */
export function writeThreeMf(mesh: Mesh, name: string): Uint8Array {
  const { positions, triangles } = mesh;
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">',
    `<resources><object id="1" type="model" name="${escaped(name)}"><mesh>`,
    '<vertices>',
  ];
  for (let at = 0; at < positions.length; at += 3) {
    lines.push(`<vertex x="${positions[at]}" y="${positions[at + 1]}" z="${positions[at + 2]}"/>`);
  }
  lines.push('</vertices>', '<triangles>');
  for (let at = 0; at < triangles.length; at += 3) {
    lines.push(`<triangle v1="${triangles[at]}" v2="${triangles[at + 1]}" v3="${triangles[at + 2]}"/>`);
  }
  lines.push(
    '</triangles>',
    '</mesh></object></resources>',
    '<build><item objectid="1"/></build>',
    '</model>',
    '',
  );
  return zipSync(
    {
      '[Content_Types].xml': strToU8(CONTENT_TYPES),
      '_rels/.rels': strToU8(RELATIONSHIPS),
      '3D/3dmodel.model': strToU8(lines.join('\n')),
    },
    { mtime: FILE_TIME, level: 9 },
  );
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
}
