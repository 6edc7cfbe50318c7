const FIRST_SLOTS = 1 << 12;

/**
 * Gives equal points one number: the way from corners of single triangles to a mesh whose triangles share vertices.
 * Points are equal when their coordinates are; zero and minus zero are.
 */
export class VertexTable {
  #positions = new Float64Array(3 * (FIRST_SLOTS / 2));
  /** Open addressing: vertex number plus one, or zero where a slot is free. */
  #slots = new Int32Array(FIRST_SLOTS);
  #count = 0;
  readonly #point = new Float64Array(3);
  readonly #words = new Int32Array(this.#point.buffer);

  /** Number of the point, new or known. Coordinates are finite. */
  add(x: number, y: number, z: number): number {
    const slots = this.#slots;
    const mask = slots.length - 1;
    // Adding zero turns minus zero into zero.
    let slot = this.#hash(x + 0, y + 0, z + 0) & mask;
    for (;;) {
      const vertex = slots[slot] - 1;
      if (vertex < 0) break;
      const at = 3 * vertex;
      const positions = this.#positions;
      if (positions[at] === x && positions[at + 1] === y && positions[at + 2] === z) return vertex;
      slot = (slot + 1) & mask;
    }
    const vertex = this.#count++;
    slots[slot] = vertex + 1;
    const at = 3 * vertex;
    this.#positions[at] = x + 0;
    this.#positions[at + 1] = y + 0;
    this.#positions[at + 2] = z + 0;
    if (2 * this.#count >= slots.length) this.#grow();
    return vertex;
  }

  /** x, y and z of the points in the order of their numbers. */
  positions(): Float64Array {
    return this.#positions.slice(0, 3 * this.#count);
  }

  #hash(x: number, y: number, z: number): number {
    this.#point[0] = x;
    this.#point[1] = y;
    this.#point[2] = z;
    const words = this.#words;
    let hash = Math.imul(words[0] ^ Math.imul(words[1], 0x85ebca6b), 0x9e3779b1);
    hash = Math.imul(hash ^ (hash >>> 15) ^ words[2] ^ Math.imul(words[3], 0xc2b2ae35), 0x85ebca6b);
    hash = Math.imul(hash ^ (hash >>> 13) ^ words[4] ^ Math.imul(words[5], 0x27d4eb2f), 0xc2b2ae35);
    return hash ^ (hash >>> 16);
  }

  #grow(): void {
    const positions = new Float64Array(2 * this.#positions.length);
    positions.set(this.#positions);
    this.#positions = positions;
    const slots = new Int32Array(2 * this.#slots.length);
    const mask = slots.length - 1;
    for (let vertex = 0; vertex < this.#count; vertex++) {
      const at = 3 * vertex;
      let slot = this.#hash(positions[at], positions[at + 1], positions[at + 2]) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = vertex + 1;
    }
    this.#slots = slots;
  }
}
