import type { StudyProgress } from '@buildweek/study';
import type { TextStream } from './style.ts';

const WIDTH = 24;
/** Milliseconds between two drawings. */
const PAUSE = 100;

/** How far a run is and how long it still takes; nothing at all where there is no terminal. */
export class ProgressBar {
  private readonly stream: TextStream;
  private readonly now: () => number;
  private stage: StudyProgress['stage'] | null = null;
  private startedAt = 0;
  private drawnAt = Number.NEGATIVE_INFINITY;
  private drawn = false;

  constructor(stream: TextStream, now: () => number = () => performance.now()) {
    this.stream = stream;
    this.now = now;
  }

  show(progress: StudyProgress): void {
    if (this.stream.isTTY !== true) return;
    const now = this.now();
    if (progress.stage !== this.stage) {
      this.stage = progress.stage;
      this.startedAt = now;
    }
    if (now - this.drawnAt < PAUSE && progress.done < progress.total) return;
    this.drawnAt = now;
    this.drawn = true;
    this.stream.write(`\r\u001b[2K${progressLine(progress, now - this.startedAt)}`);
  }

  clear(): void {
    if (this.drawn) this.stream.write('\r\u001b[2K');
    this.drawn = false;
  }
}

/** @param elapsed milliseconds since this stage began, which had its first replication done at the first call */
export function progressLine(progress: StudyProgress, elapsed: number): string {
  const { stage, done, total, mayEndSooner } = progress;
  const filled = Math.round((WIDTH * done) / total);
  const bar = '█'.repeat(filled) + '░'.repeat(WIDTH - filled);
  const name = stage === 'pilot' ? 'Looking how long the start lasts' : 'Playing';
  const left =
    done < 3
      ? ''
      : `, ${mayEndSooner ? 'at most ' : ''}${timeWords((elapsed / (done - 1)) * (total - done))} left`;
  return `${name} ${bar} ${done} of ${total}${left}`;
}

function timeWords(milliseconds: number): string {
  const seconds = Math.ceil(milliseconds / 1000);
  if (seconds < 60) return `${seconds} s`;
  const minutes = Math.floor(seconds / 60);
  if (minutes < 60) return `${minutes} min ${String(seconds % 60).padStart(2, '0')} s`;
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')} min`;
}
