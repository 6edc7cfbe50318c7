import { type TypicalValue, typicalValue } from './typical-value.ts';

/**
 * What stations of a class hold when the shapes of all parts that come to them are known: litres of the boxes
 * around the parts. Of other classes size does not matter: they take whole builds. Common practice, no source.
 */
export const STATION_VOLUMES: ReadonlyMap<string, TypicalValue> = new Map([
  ['support bath', typicalValue('holds', 'litres', [5, 15, 60])],
  ['cure unit', typicalValue('holds', 'litres', [4, 12, 60])],
  ['blasting cabinet', typicalValue('holds', 'litres', [3, 8, 30])],
  ['drying oven', typicalValue('holds', 'litres', [20, 50, 200])],
]);
