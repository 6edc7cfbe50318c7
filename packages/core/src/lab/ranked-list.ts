import { isBefore, type Rank } from './rank.ts';

/** What can stand in a ranked list; it stands in one list at a time. */
export interface Ranked<T> extends Rank {
  before: T | null;
  after: T | null;
}

/**
 * A queue in the order of rank, as a linked list through its members. A newcomer is compared from the tail,
 * because it mostly belongs there.
 */
export class RankedList<T extends Ranked<T>> {
  first: T | null = null;
  private last: T | null = null;
  length = 0;

  add(member: T): void {
    let before = this.last;
    while (before !== null && isBefore(member, before)) before = before.before;
    member.before = before;
    member.after = before === null ? this.first : before.after;
    if (member.after === null) this.last = member;
    else member.after.before = member;
    if (before === null) this.first = member;
    else before.after = member;
    this.length++;
  }

  remove(member: T): void {
    if (member.before === null) this.first = member.after;
    else member.before.after = member.after;
    if (member.after === null) this.last = member.before;
    else member.after.before = member.before;
    member.before = null;
    member.after = null;
    this.length--;
  }

  clear(): void {
    this.first = null;
    this.last = null;
    this.length = 0;
  }
}
