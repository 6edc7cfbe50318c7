/** A file that cannot be read as a mesh, or a mesh that cannot be measured. */
export class MeshError extends Error {
  /** What was found, in one sentence. */
  readonly found: string;
  /** What to do about it, in one sentence. */
  readonly remedy: string;

  constructor(found: string, remedy: string) {
    super(`${found} ${remedy}`);
    this.name = 'MeshError';
    this.found = found;
    this.remedy = remedy;
  }
}
