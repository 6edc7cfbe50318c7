import { MONTH_NAMES } from './words.ts';

const WEEKDAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'];

/** `Thu 4 Mar 15:30`. @param at date and time of the lab, `2027-03-04 15:30` */
export function momentText(at: string): string {
  const { weekday, day, month, time } = partsOf(at);
  return `${weekday.slice(0, 3)} ${day} ${month.slice(0, 3)} ${time}`;
}

/** `Thursday 4 March`. */
export function dayText(at: string): string {
  const { weekday, day, month } = partsOf(at);
  return `${weekday} ${day} ${month}`;
}

/** `15:30`. */
export function timeOfDayText(at: string): string {
  return partsOf(at).time;
}

function partsOf(at: string) {
  const date = new Date(`${at.slice(0, 10)}T00:00Z`);
  return {
    weekday: WEEKDAYS[date.getUTCDay()] ?? '',
    day: date.getUTCDate(),
    month: MONTH_NAMES[date.getUTCMonth()] ?? '',
    time: at.slice(11),
  };
}
