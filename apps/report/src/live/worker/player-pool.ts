import type { History, SimulationSettings } from '@buildweek/core';
import type { Lab } from '@buildweek/model';
import type { ReplicationExecutor, StopSignal } from '@buildweek/study';
import type { PlayerReply, PlayerTask } from '../shared/messages.ts';
import type { Port } from './port.ts';

/** Tasks handed out to each player: one to play and one to go on with at once. */
const TASKS_PER_PLAYER = 2;

interface Task {
  readonly lab: Lab;
  readonly settings: SimulationSettings;
  readonly stop: StopSignal | null;
  done(outcome: Outcome): void;
}

type Outcome = { readonly history: History } | { readonly error: Error } | 'stopped';

interface Player {
  readonly port: Port<PlayerTask, PlayerReply>;
  readonly running: Map<number, Task>;
  /** Numbers of the labs that it has. */
  readonly labs: Set<number>;
}

/** Plays replications in other workers of the page. Several runs share the players in the order in which they asked. */
export class PlayerPool implements ReplicationExecutor {
  private readonly players: readonly Player[];
  private readonly waiting: Task[] = [];
  private readonly numbers = new WeakMap<Lab, number>();
  private nextLab = 0;
  private nextTask = 0;

  /** @param ports to the players, at least one */
  constructor(ports: readonly Port<PlayerTask, PlayerReply>[]) {
    this.players = ports.map((port) => ({ port, running: new Map(), labs: new Set() }));
    for (const player of this.players) {
      player.port.onmessage = ({ data }) => this.arrived(player, data);
    }
  }

  async *run(
    lab: Lab,
    settings: readonly SimulationSettings[],
    stop: StopSignal | null,
  ): AsyncGenerator<History> {
    const arrived: Outcome[] = [];
    let wake = (): void => {};
    const done = (outcome: Outcome): void => {
      arrived.push(outcome);
      wake();
    };
    const stopped = (): void => done('stopped');
    stop?.addEventListener('abort', stopped);
    try {
      for (const one of settings) this.waiting.push({ lab, settings: one, stop, done });
      this.handOut();
      for (let received = 0; received < settings.length; received++) {
        while (arrived.length === 0 && !stop?.aborted) {
          await new Promise<void>((resolve) => {
            wake = resolve;
          });
        }
        const outcome = stop?.aborted ? 'stopped' : arrived.shift();
        if (outcome === undefined || outcome === 'stopped') return;
        if ('error' in outcome) throw outcome.error;
        yield outcome.history;
      }
    } finally {
      stop?.removeEventListener('abort', stopped);
    }
  }

  private arrived(player: Player, reply: PlayerReply): void {
    const task = player.running.get(reply.task);
    player.running.delete(reply.task);
    task?.done(reply.kind === 'history' ? { history: reply.history } : { error: new Error(reply.message) });
    this.handOut();
  }

  private handOut(): void {
    for (;;) {
      const player = this.leastBusy();
      if (player === undefined) return;
      let task = this.waiting.shift();
      while (task?.stop?.aborted) task = this.waiting.shift();
      if (task === undefined) return;
      this.give(player, task);
    }
  }

  private leastBusy(): Player | undefined {
    const fewest = Math.min(...this.players.map(({ running }) => running.size));
    return fewest < TASKS_PER_PLAYER
      ? this.players.find(({ running }) => running.size === fewest)
      : undefined;
  }

  private give(player: Player, task: Task): void {
    const lab = this.numbers.get(task.lab) ?? this.nextLab++;
    this.numbers.set(task.lab, lab);
    if (!player.labs.has(lab)) {
      player.labs.add(lab);
      player.port.postMessage({ kind: 'lab', lab, data: task.lab });
    }
    const number = this.nextTask++;
    player.running.set(number, task);
    player.port.postMessage({ kind: 'replication', lab, task: number, settings: task.settings });
  }
}
