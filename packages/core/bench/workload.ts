/** What a model counts and answers. */
export interface WorkloadResult {
  /** Events of the model (arrivals, ends, failures, window changes), so that both sides count the same. */
  readonly events: number;
  /** For each answer values that are nearly independent: batch means, or one value for each replication. */
  readonly answers: Readonly<Record<string, readonly number[]>>;
}

/** Adds the answers of one replication to those of others. */
export function collect(
  answers: Record<string, number[]>,
  replication: Readonly<Record<string, number>>,
): void {
  for (const [name, value] of Object.entries(replication)) {
    const values = answers[name] ?? [];
    values.push(value);
    answers[name] = values;
  }
}

/** A run of a workload in a process of its own, here and in the reference models alike. */
export interface WorkloadRun extends WorkloadResult {
  /** Seconds of processor time of all threads; start-up of the process is left out. */
  readonly seconds: number;
}

/** A model that is played here and in SimPy. */
export interface Workload {
  readonly key: string;
  readonly title: string;
  /** Arguments of both models, before the seed. */
  readonly sizes: readonly number[];
  /** What one unit of work is, and how many of them the sizes make. */
  readonly unit: string;
  readonly units: number;
  /** File in test/reference. */
  readonly reference: string;
  /** How many times as fast it is meant to be. */
  readonly aim: number;
  /** Known values of answers. */
  readonly theory: Readonly<Record<string, number>>;
}

export const WORKLOADS: readonly Workload[] = [
  {
    key: 'queue',
    title: 'A  M/M/1 on the kernel',
    sizes: [1_000_000],
    unit: 'customers',
    units: 1_000_000,
    reference: 'queue_model.py',
    aim: 60,
    // D. Gross, C. M. Harris, "Fundamentals of Queueing Theory", section 2.2 (from memory): 0.9 / (1 − 0.9) × 0.9 h.
    theory: { 'mean wait, h': 8.1 },
  },
  {
    key: 'breakdowns',
    title: 'B  M/M/8 with breakdowns on the kernel',
    sizes: [1_000_000],
    unit: 'customers',
    units: 1_000_000,
    reference: 'breakdown_model.py',
    aim: 30,
    theory: {},
  },
  {
    key: 'small-lab',
    title: 'C  small lab on the kernel',
    sizes: [52, 100],
    unit: 'weeks',
    units: 5200,
    reference: 'small_lab_model.py',
    aim: 60,
    theory: {},
  },
  {
    key: 'lab',
    title: 'D  lab model (builds, batches, shifts, breakdowns, ranks, records)',
    sizes: [13, 400],
    unit: 'measured weeks',
    units: 5200,
    reference: 'lab_model.py',
    aim: 40,
    theory: {},
  },
];
