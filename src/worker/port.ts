/** One end of a line to a worker, whichever kind of worker it is. */
export interface Port {
  send(message: unknown, transfer?: readonly Transferable[]): void;
  hear(listener: (message: unknown) => void): void;
}

interface Postable {
  postMessage(message: unknown, options: { transfer: Transferable[] }): void;
  addEventListener(type: 'message', listener: (event: MessageEvent<unknown>) => void): void;
}

/** The line of a browser worker, seen from either side. */
export const portOf = (end: Postable): Port => ({
  send: (message, transfer = []) => end.postMessage(message, { transfer: [...transfer] }),
  hear: (listener) => end.addEventListener('message', ({ data }) => listener(data)),
});
