/** Hours as they are written in messages: `2 h 30 min`. */
export function hoursText(hours: number): string {
  if (!Number.isFinite(hours)) return 'any length';
  const minutes = Math.round(hours * 60);
  const whole = Math.floor(minutes / 60);
  if (whole === 0) return `${minutes} min`;
  return minutes % 60 === 0 ? `${whole} h` : `${whole} h ${minutes % 60} min`;
}
