import type { ReaderState, StateBounds } from '../shared/reader-state.ts';
import { element } from './element.ts';

/** What a factor is where nothing is changed, per cent. */
const UNCHANGED = 100;

/** The controls of the page, as its author wrote them. */
export class ChangeForm {
  readonly form: HTMLFormElement;
  private readonly counts: readonly HTMLInputElement[];
  private readonly factors: readonly HTMLInputElement[];
  private readonly hours: HTMLSelectElement | null;

  constructor(root: ParentNode) {
    this.form = element(root, 'form');
    this.counts = [...this.form.querySelectorAll<HTMLInputElement>('[data-count]')];
    this.factors = [...this.form.querySelectorAll<HTMLInputElement>('[data-factor]')];
    this.hours = this.form.querySelector('[data-hours]');
    for (const button of this.form.querySelectorAll<HTMLButtonElement>('[data-step]')) {
      button.addEventListener('click', () => this.step(button));
    }
    this.form.addEventListener('input', () => this.mark());
  }

  /** What can be set, for what a link says. */
  get bounds(): StateBounds {
    return {
      counts: this.counts.map((input) => ({
        ...boundsOf(input),
        id: idOf(input),
        present: presentOf(input),
      })),
      factors: this.factors.map((input) => ({ ...boundsOf(input), id: idOf(input) })),
      hours: [...(this.hours?.options ?? [])].flatMap(({ value }) => (value === '' ? [] : [{ name: value }])),
    };
  }

  get state(): ReaderState {
    const hours = this.hours?.value ?? '';
    return {
      counts: moved(this.counts, presentOf),
      factors: moved(this.factors, () => UNCHANGED),
      hours: hours === '' ? null : hours,
    };
  }

  set state({ counts, factors, hours }: ReaderState) {
    for (const input of this.counts) input.value = String(counts[idOf(input)] ?? presentOf(input));
    for (const input of this.factors) input.value = String(factors[idOf(input)] ?? UNCHANGED);
    if (this.hours !== null) this.hours.value = hours ?? '';
    this.mark();
  }

  private step(button: HTMLButtonElement): void {
    const input = button.parentElement?.querySelector('input');
    if (input === null || input === undefined) return;
    const { low, high } = boundsOf(input);
    const wanted = Number(input.value) + Number(button.dataset.step);
    input.value = String(Math.min(high, Math.max(low, wanted)));
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }

  /** Shows what is no longer as in the plan, and factors in figures. */
  private mark(): void {
    for (const input of this.counts) input.classList.toggle('moved', typedOf(input) !== presentOf(input));
    for (const input of this.factors) {
      const output = input.parentElement?.querySelector('output');
      if (output !== null && output !== undefined) output.textContent = `${input.value}\u00a0%`;
    }
    this.hours?.classList.toggle('moved', this.hours.value !== '');
  }
}

/** Values that are not as in the plan, by the id of their control. */
function moved(
  inputs: readonly HTMLInputElement[],
  usual: (input: HTMLInputElement) => number,
): Record<string, number> {
  return Object.fromEntries(
    inputs.flatMap((input) => {
      const value = typedOf(input);
      return value === usual(input) ? [] : [[idOf(input), value] as const];
    }),
  );
}

/** What is typed in, as a whole number within the bounds; what is no number is as in the plan. */
function typedOf(input: HTMLInputElement): number {
  const { low, high } = boundsOf(input);
  const typed = Number(input.value);
  if (input.value.trim() === '' || !Number.isFinite(typed)) return presentOf(input);
  return Math.min(high, Math.max(low, Math.round(typed)));
}

function idOf({ dataset }: HTMLInputElement): string {
  return dataset.count ?? dataset.factor ?? '';
}

function presentOf({ dataset }: HTMLInputElement): number {
  return dataset.present === undefined ? UNCHANGED : Number(dataset.present);
}

function boundsOf({ min, max }: HTMLInputElement): { low: number; high: number } {
  return { low: Number(min), high: Number(max) };
}
