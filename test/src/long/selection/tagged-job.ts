import type { Tandem } from './erlang-tandem.ts';

/** Chance of more jobs at a station than are followed. */
const NEGLIGIBLE = 1e-6;

/**
 * The chances of all states of one job on its way through two stations, jump after jump. Older jobs are those that came
 * to the lab before it; both stations serve them first.
 *
 * Its states are
 * - waiting at the first station, by jobs ahead of it in the queue, younger ones behind it, and jobs at the second
 *   station, which are all older;
 * - in service there, by older jobs in service beside it, younger ones there, jobs at the second station, and how many
 *   older ones of these wait;
 * - waiting at the second station, by older jobs still in service at the first and older ones that wait ahead of it; all
 *   servers are busy then, and whoever they serve, each departure starts one of those;
 * - in service at the second station.
 */
export class TaggedJob {
  private readonly tandem: Tandem;
  /** Chances of each event at one jump: an arrival, and the end of the work of one server at either station. */
  private readonly arrival: number;
  private readonly first: number;
  private readonly second: number;
  /** Numbers of jobs that are followed at either station; one more is counted as one fewer. */
  private readonly here: number;
  private readonly there: number;
  private waitsFirst: Float64Array;
  private servedFirst: Float64Array;
  private waitsSecond: Float64Array;
  private servedSecond = 0;

  /** @param rate of the jumps, an hour: at least that of all events together */
  constructor(tandem: Tandem, rate: number) {
    const { arrivalRate, service, servers } = tandem;
    this.tandem = tandem;
    this.arrival = arrivalRate / rate;
    this.first = 1 / service[0] / rate;
    this.second = 1 / service[1] / rate;
    const one = longRun(arrivalRate * service[0], servers[0]);
    const two = longRun(arrivalRate * service[1], servers[1]);
    this.here = one.length;
    this.there = two.length;
    this.waitsFirst = new Float64Array(this.here ** 2 * this.there);
    this.servedFirst = new Float64Array(servers[0] * this.here * this.there ** 2);
    this.waitsSecond = new Float64Array(servers[0] * this.there);
    one.forEach((chance, found) => {
      two.forEach((other, beyond) => {
        if (found < servers[0]) {
          const state = this.served(found, 0, beyond, Math.max(0, beyond - servers[1]));
          this.servedFirst[state] = chance * other;
        } else this.waitsFirst[this.waits(found - servers[0], 0, beyond)] = chance * other;
      });
    });
  }

  /** Chance that it has not left the second station. */
  isThere(): number {
    let total = this.servedSecond;
    for (const part of [this.waitsFirst, this.servedFirst, this.waitsSecond]) {
      for (const chance of part) total += chance;
    }
    return total;
  }

  jump(): void {
    const before = {
      waitsFirst: this.waitsFirst,
      servedFirst: this.servedFirst,
      waitsSecond: this.waitsSecond,
    };
    this.waitsFirst = new Float64Array(before.waitsFirst.length);
    this.servedFirst = new Float64Array(before.servedFirst.length);
    this.waitsSecond = new Float64Array(before.waitsSecond.length);
    this.servedSecond *= 1 - this.second;
    this.fromWaitingFirst(before.waitsFirst);
    this.fromServedFirst(before.servedFirst);
    this.fromWaitingSecond(before.waitsSecond);
  }

  private fromWaitingFirst(chances: Float64Array): void {
    const [servers, next] = this.tandem.servers;
    for (let ahead = 0; ahead < this.here; ahead++) {
      for (let behind = 0; behind < this.here; behind++) {
        for (let beyond = 0; beyond < this.there; beyond++) {
          const chance = chances[this.waits(ahead, behind, beyond)] as number;
          if (chance === 0) continue;
          const ended = chance * servers * this.first;
          const left = chance * Math.min(beyond, next) * this.second;
          const to = Math.min(beyond + 1, this.there - 1);
          add(
            this.waitsFirst,
            this.waits(ahead, Math.min(behind + 1, this.here - 1), beyond),
            chance * this.arrival,
          );
          if (ahead > 0) add(this.waitsFirst, this.waits(ahead - 1, behind, to), ended);
          else add(this.servedFirst, this.served(servers - 1, behind, to, Math.max(0, to - next)), ended);
          if (beyond > 0) add(this.waitsFirst, this.waits(ahead, behind, beyond - 1), left);
          add(this.waitsFirst, this.waits(ahead, behind, beyond), chance * (1 - this.arrival) - ended - left);
        }
      }
    }
  }

  private fromServedFirst(chances: Float64Array): void {
    const [servers, next] = this.tandem.servers;
    for (let older = 0; older < servers; older++) {
      for (let younger = 0; younger < this.here; younger++) {
        for (let beyond = 0; beyond < this.there; beyond++) {
          for (let waiting = 0; waiting <= Math.max(0, beyond - next); waiting++) {
            const chance = chances[this.served(older, younger, beyond, waiting)] as number;
            if (chance === 0) continue;
            const own = chance * this.first;
            const olderEnded = chance * older * this.first;
            const youngerEnded = chance * Math.min(younger, servers - 1 - older) * this.first;
            const left = chance * Math.min(beyond, next) * this.second;
            const to = Math.min(beyond + 1, this.there - 1);
            const later = Math.min(younger + 1, this.here - 1);
            add(this.servedFirst, this.served(older, later, beyond, waiting), chance * this.arrival);
            if (beyond < next) this.servedSecond += own;
            else add(this.waitsSecond, this.waitsAhead(older, waiting), own);
            if (older > 0) {
              const ahead = beyond < next ? 0 : Math.min(waiting + 1, to - next);
              add(this.servedFirst, this.served(older - 1, younger, to, ahead), olderEnded);
            }
            if (younger > 0)
              add(this.servedFirst, this.served(older, younger - 1, to, waiting), youngerEnded);
            if (beyond > 0) {
              add(this.servedFirst, this.served(older, younger, beyond - 1, Math.max(0, waiting - 1)), left);
            }
            add(
              this.servedFirst,
              this.served(older, younger, beyond, waiting),
              chance * (1 - this.arrival) - own - olderEnded - youngerEnded - left,
            );
          }
        }
      }
    }
  }

  private fromWaitingSecond(chances: Float64Array): void {
    const [servers, next] = this.tandem.servers;
    for (let older = 0; older < servers; older++) {
      for (let ahead = 0; ahead < this.there; ahead++) {
        const chance = chances[this.waitsAhead(older, ahead)] as number;
        const ended = chance * older * this.first;
        const left = chance * next * this.second;
        if (older > 0)
          add(this.waitsSecond, this.waitsAhead(older - 1, Math.min(ahead + 1, this.there - 1)), ended);
        if (ahead > 0) add(this.waitsSecond, this.waitsAhead(older, ahead - 1), left);
        else this.servedSecond += left;
        add(this.waitsSecond, this.waitsAhead(older, ahead), chance - ended - left);
      }
    }
  }

  private waits(ahead: number, behind: number, beyond: number): number {
    return (ahead * this.here + behind) * this.there + beyond;
  }

  private served(older: number, younger: number, beyond: number, waiting: number): number {
    return ((older * this.here + younger) * this.there + beyond) * this.there + waiting;
  }

  private waitsAhead(older: number, ahead: number): number {
    return older * this.there + ahead;
  }
}

function add(chances: Float64Array, state: number, chance: number): void {
  chances[state] = (chances[state] as number) + chance;
}

/** Chances of 0, 1, 2, … jobs at a station of its own in the long run (M/M/c), as far as they are followed. */
function longRun(load: number, servers: number): number[] {
  const weights = [1];
  let total = 1;
  let last = 1;
  // Beyond the servers the rest of the series is at most last / (1 − use).
  for (let count = 1; count <= servers || last / (1 - load / servers) > NEGLIGIBLE * total; count++) {
    last *= load / Math.min(count, servers);
    weights.push(last);
    total += last;
  }
  return weights.map((weight) => weight / total);
}
