import type { OrientedPart, Process } from './oriented-part.ts';

/** Differences below this share are not worth a word. */
const WORTH_A_WORD = 0.02;

/** Says in one sentence why an orientation was chosen, against the one of the file. */
export function orientationReason(
  best: OrientedPart,
  given: OrientedPart,
  tried: readonly OrientedPart[],
  process: Process,
): string {
  if (!best.fits) {
    return `Too big for the build space in all ${tried.length} orientations that were tried; ${sides(given)} as given.`;
  }
  const rivals = tried.filter(({ fits }) => fits);
  const before = best === given ? null : given;
  const facts = [
    ...(process === 'PBF' ? [] : supportFacts(best, before, rivals)),
    ...heightFacts(best, before, rivals),
    ...platformFacts(best, before),
  ].join(', ');
  if (best === given) return `Best as given, of ${tried.length} orientations: ${facts}.`;
  const built = `Built ${best.orientation.name}: ${facts}.`;
  if (!given.fits) return `As given, ${sides(given)}, it does not fit the build space. ${built}`;
  if (process === 'MEX' && best.isFirm && !given.isFirm) return `As given it does not stand firmly. ${built}`;
  return built;
}

/** What there is to say of the supports, beside those of another orientation or by themselves. */
function supportFacts(
  best: OrientedPart,
  other: OrientedPart | null,
  rivals: readonly OrientedPart[],
): string[] {
  const own = best.shape.supportedVolume;
  const theirs = other?.shape.supportedVolume ?? null;
  const instead = theirs === null || isAlike(own, theirs) ? '' : ` instead of ${volume(theirs)}`;
  if (isLeast(best, rivals, ({ shape }) => shape.supportedVolume)) {
    return [`least support (${own === 0 ? 'none' : volume(own)}${instead})`];
  }
  if (other !== null && instead === '') return [];
  return [`${own === 0 ? 'nothing' : volume(own)} to support${instead}`];
}

function heightFacts(
  best: OrientedPart,
  other: OrientedPart | null,
  rivals: readonly OrientedPart[],
): string[] {
  const own = best.shape.height;
  const theirs = other?.shape.height ?? null;
  const instead = theirs === null || isAlike(own, theirs) ? '' : ` instead of ${length(theirs)}`;
  if (isLeast(best, rivals, ({ shape }) => shape.height)) return [`lowest (${length(own)} high${instead})`];
  if (other !== null && instead === '') return [];
  return [`${length(own)} high${instead}`];
}

function platformFacts(best: OrientedPart, other: OrientedPart | null): string[] {
  if (other === null) return [];
  const ours = best.shape;
  const theirs = other.shape;
  if (isAlike(ours.width * ours.depth, theirs.width * theirs.depth)) return [];
  return [
    `on ${length(ours.width)} x ${length(ours.depth)} instead of ${length(theirs.width)} x ${length(theirs.depth)}`,
  ];
}

/** Whether nothing is less, and something is more. */
function isLeast(
  best: OrientedPart,
  rivals: readonly OrientedPart[],
  value: (part: OrientedPart) => number,
): boolean {
  const own = value(best);
  return (
    rivals.every((rival) => own <= value(rival) * (1 + WORTH_A_WORD)) &&
    rivals.some((rival) => !isAlike(own, value(rival)))
  );
}

function isAlike(one: number, other: number): boolean {
  return Math.abs(one - other) <= WORTH_A_WORD * Math.max(one, other);
}

function sides(part: OrientedPart): string {
  const { width, depth, height } = part.shape;
  return [width, depth, height]
    .map((side) => rounded(side))
    .join(' x ')
    .concat(' mm');
}

function length(value: number): string {
  return `${rounded(value)} mm`;
}

function rounded(value: number): string {
  return value < 10 ? value.toFixed(1) : value.toFixed(0);
}

function volume(value: number): string {
  return `${(value / 1000).toFixed(value < 100_000 ? 1 : 0)} cm3`;
}
