/**
 * Objects that are used again instead of being allocated: `take` gives one that was given back, and makes a
 * new one only when none is left. `at` finds an object by the number it carries into an event.
 */
export class Pool<T> {
  private readonly make: (id: number) => T;
  private readonly objects: T[] = [];
  private readonly free: T[] = [];

  constructor(make: (id: number) => T) {
    this.make = make;
  }

  take(): T {
    const reused = this.free.pop();
    if (reused !== undefined) return reused;
    const made = this.make(this.objects.length);
    this.objects.push(made);
    return made;
  }

  give(object: T): void {
    this.free.push(object);
  }

  at(id: number): T {
    return this.objects[id];
  }

  /** Everything is free again, and comes out in the same order as the first time. */
  reset(): void {
    this.free.length = 0;
    for (let id = this.objects.length - 1; id >= 0; id--) this.free.push(this.objects[id]);
  }
}
