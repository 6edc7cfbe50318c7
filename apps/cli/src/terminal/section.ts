import { paragraph } from './paragraph.ts';
import type { Style } from './style.ts';

/** A title with what stands below it. */
export function section(title: string, text: string, style: Style): string {
  return `${style.heading(title)}\n${text}`;
}

/** Warnings or cautions as a list; empty when there are none. */
export function listSection(title: string, lines: readonly string[], style: Style): string {
  if (lines.length === 0) return '';
  return section(style.warning(title), lines.map((line) => paragraph(line, '  - ')).join('\n'), style);
}
