import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { meshReader } from '@buildweek/cli/mesh-reader';
import type { ShapeAnswer, ShapeReader } from '@buildweek/scenario';

const FOLDER = fileURLToPath(new URL('../../scenarios', import.meta.url));

/** Reads the meshes that the scenarios of the repository name, as the command does. */
export const scenarioMeshes: ShapeReader = meshReader((path) => resolve(FOLDER, path));

/** What a reader was asked and what it answered, as plain data for where there are no files. */
export type MeshAnswers = readonly (readonly [request: string, answer: ShapeAnswer])[];

/** A reader that answers as another one, and what it has been asked. */
export function noting(reader: ShapeReader): { readonly reader: ShapeReader; readonly answers: MeshAnswers } {
  const answers: [string, ShapeAnswer][] = [];
  return {
    reader: (request) => {
      const answer = reader(request);
      answers.push([JSON.stringify(request), answer]);
      return answer;
    },
    answers,
  };
}
