/** Kinds of events in the calendar; the subject is the position or number of what is named. */
export const EVENT_TASK_ENDS = 0;
export const EVENT_PHASE_ENDS = 1;
export const EVENT_WAIT_ENDS = 2;
export const EVENT_OTHER_DUTIES_END = 3;
export const EVENT_GRACE_ENDS = 4;
export const EVENT_WINDOW_ENDS = 5;
export const EVENT_WINDOW_BEGINS = 6;
export const EVENT_ARRIVAL = 7;
export const EVENT_INITIAL_MACHINE_ENDS = 8;
export const EVENT_GROUP_TIMER = 9;
export const EVENT_OTHER_DUTIES_DUE = 10;
export const EVENT_MEASURED_END = 11;
export const EVENT_CAP = 12;
export const EVENT_OTHER_DUTIES_DAY = 13;
