/** A first-come queue of numbers without allocation; it grows when it must. */
export class NumberRing {
  private values = new Float64Array(256);
  private head = 0;
  length = 0;

  push(value: number): void {
    if (this.length === this.values.length) this.grow();
    this.values[(this.head + this.length++) & (this.values.length - 1)] = value;
  }

  /** The one that came first; there must be one. */
  shift(): number {
    const value = this.values[this.head];
    this.head = (this.head + 1) & (this.values.length - 1);
    this.length--;
    return value;
  }

  clear(): void {
    this.head = 0;
    this.length = 0;
  }

  private grow(): void {
    const larger = new Float64Array(this.values.length * 2);
    for (let index = 0; index < this.length; index++) {
      larger[index] = this.values[(this.head + index) & (this.values.length - 1)];
    }
    this.values = larger;
    this.head = 0;
  }
}
