/** An arc of a network with the room that is left in it, and the position of the arc back. */
interface Arc {
  readonly to: number;
  readonly back: number;
  /** May be Infinity. */
  room: number;
}

/**
 * Sends as much as possible from node 0 to the last node, along shortest paths.
 * Source: J. Edmonds and R. M. Karp, "Theoretical improvements in algorithmic efficiency for network flow problems",
 * Journal of the ACM 19 (1972), 248–264 (from memory).
 */
export class FlowNetwork {
  private readonly arcs: Arc[] = [];
  private readonly leaving: number[][];

  /** @param nodes number of nodes; 0 is the source and the last one the sink */
  constructor(nodes: number) {
    this.leaving = Array.from({ length: nodes }, () => []);
  }

  connect(from: number, to: number, capacity: number): void {
    const position = this.arcs.length;
    this.arcs.push({ to, room: capacity, back: position + 1 }, { to: from, room: 0, back: position });
    this.leaving[from]?.push(position);
    this.leaving[to]?.push(position + 1);
  }

  /**
   * Fills the network.
   * @param tolerance room of an arc at or below it counts as none
   * @returns for each node whether it can still be reached from the source: the source side of the smallest cut
   */
  fill(tolerance: number): boolean[] {
    for (;;) {
      const { cameBy, reached } = this.search(tolerance);
      if (!reached[reached.length - 1]) return reached;
      this.augment(cameBy);
    }
  }

  private search(tolerance: number): { cameBy: number[]; reached: boolean[] } {
    const cameBy = this.leaving.map(() => -1);
    const reached = this.leaving.map((_, node) => node === 0);
    const queue = [0];
    for (const node of queue) {
      for (const position of this.leaving[node] ?? []) {
        const arc = this.arcs[position];
        if (arc === undefined || reached[arc.to] || arc.room <= tolerance) continue;
        reached[arc.to] = true;
        cameBy[arc.to] = position;
        queue.push(arc.to);
      }
    }
    return { cameBy, reached };
  }

  private augment(cameBy: readonly number[]): void {
    const path: Arc[] = [];
    for (let node = this.leaving.length - 1; node !== 0; ) {
      const arc = this.arcs[cameBy[node] ?? -1];
      if (arc === undefined) throw new Error('A path through the network is broken.');
      path.push(arc);
      node = this.arcs[arc.back]?.to ?? 0;
    }
    const most = Math.min(...path.map((arc) => arc.room));
    for (const arc of path) {
      arc.room -= most;
      const back = this.arcs[arc.back];
      if (back !== undefined) back.room += most;
    }
  }
}
