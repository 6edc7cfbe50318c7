/** A question about plans that has no answer; the message is a sentence for the user that says why. */
export class UnanswerableError extends Error {}
