import { mkdirSync, writeFileSync } from 'node:fs';
import { demoMeshes } from '../src/demo-shapes/demo-meshes.ts';

/** Writes the invented parts of the example scenarios to scenarios/parts. */
const folder = new URL('../../../../../scenarios/parts/', import.meta.url);
mkdirSync(folder, { recursive: true });
for (const [name, bytes] of demoMeshes()) writeFileSync(new URL(name, folder), bytes);
