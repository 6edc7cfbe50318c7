/** A growing list of numbers without boxing; it keeps its memory for the next replication. */
export class Sample {
  private values = new Float64Array(64);
  length = 0;

  clear(): void {
    this.length = 0;
  }

  add(value: number): void {
    if (this.length === this.values.length) {
      const larger = new Float64Array(this.values.length * 2);
      larger.set(this.values);
      this.values = larger;
    }
    this.values[this.length++] = value;
  }

  /** @returns a copy, ascending */
  sorted(): Float64Array {
    return this.values.slice(0, this.length).sort();
  }
}
