/** Units of length that mesh files use. */
export type LengthUnit = 'micron' | 'mm' | 'cm' | 'inch' | 'foot' | 'm';

/** Millimetres in one unit (3MF Core Specification 1.4.0, ST_Unit). */
export const MILLIMETRES_IN: Readonly<Record<LengthUnit, number>> = {
  micron: 0.001,
  mm: 1,
  cm: 10,
  inch: 25.4,
  foot: 304.8,
  m: 1000,
};
