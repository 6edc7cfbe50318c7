/** The end of a channel, as far as it is needed here. */
export interface Port<Sent, Received> {
  postMessage(message: Sent): void;
  onmessage: ((event: { readonly data: Received }) => void) | null;
}
