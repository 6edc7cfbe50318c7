import type { CostKind } from '@buildweek/results';

/** Kinds of cost as every table and chart names them. */
export const COST_LABELS: Readonly<Record<CostKind, string>> = {
  equipment: 'purchase of equipment',
  upkeep: 'upkeep of equipment',
  people: 'people',
  overtime: 'overtime',
  material: 'material',
  outside: 'made outside',
  other: 'other costs',
};
