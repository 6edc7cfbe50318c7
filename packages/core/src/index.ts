export type * from './observe/history.ts';
export type * from './settings.ts';
