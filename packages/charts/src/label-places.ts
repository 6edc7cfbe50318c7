/** A label that stands beside a point, in pixels from the upper left corner of the drawing. */
export interface PointLabel {
  readonly x: number;
  readonly y: number;
  /** Width and height of its text; a width of zero stands for a point without a label. */
  readonly width: number;
  readonly height: number;
  /** Whether it has to stand even where it covers points. */
  readonly isWanted: boolean;
}

/** On which side of its point a label stands. */
export interface LabelPlace {
  readonly side: 'left' | 'right';
  readonly end: 'above' | 'below';
}

/** Pixels between the middle of a point and its label, and half of what the point itself covers. */
export const LABEL_GAP = { across: 8, along: 4 } as const;
const POINT_RADIUS = 7;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const PLACES: readonly LabelPlace[] = [
  { side: 'right', end: 'above' },
  { side: 'right', end: 'below' },
  { side: 'left', end: 'above' },
  { side: 'left', end: 'below' },
];

/**
 * Places labels so that none covers another label or a point: in the order given, so the most important come first,
 * each at the first of four corners of its point where there is room. Where there is none the answer is null, for
 * a label that covers others tells less than none; only one that is wanted may cover points, never labels.
 */
export function placeLabels(
  labels: readonly PointLabel[],
  room: { readonly width: number; readonly height: number },
): readonly (LabelPlace | null)[] {
  const points = labels.map(({ x, y }) => around(x, y));
  const taken: Box[] = [];
  return labels.map((label, own) => {
    if (label.width === 0) return null;
    const free = PLACES.filter((place) => {
      const box = boxAt(label, place);
      const isInside = box.left >= 0 && box.right <= room.width && box.top >= 0 && box.bottom <= room.height;
      return isInside && taken.every((other) => !overlap(box, other));
    });
    const clear = free.find((place) =>
      points.every((point, index) => index === own || !overlap(boxAt(label, place), point)),
    );
    const found = clear ?? (label.isWanted ? free[0] : undefined);
    if (found === undefined) return null;
    taken.push(boxAt(label, found));
    return found;
  });
}

function around(x: number, y: number): Box {
  return { left: x - POINT_RADIUS, right: x + POINT_RADIUS, top: y - POINT_RADIUS, bottom: y + POINT_RADIUS };
}

function boxAt({ x, y, width, height }: PointLabel, { side, end }: LabelPlace): Box {
  const left = side === 'right' ? x + LABEL_GAP.across : x - LABEL_GAP.across - width;
  const top = end === 'above' ? y - LABEL_GAP.along - height : y + LABEL_GAP.along;
  return { left, right: left + width, top, bottom: top + height };
}

function overlap(one: Box, other: Box): boolean {
  return one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
}
