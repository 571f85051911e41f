import { MessageChannel } from 'node:worker_threads';
import type { MessagePort } from 'node:worker_threads';
import type { Port } from '../../src/worker/port.ts';

const portOf = (end: MessagePort): Port => ({
  send: (message) => end.postMessage(message),
  hear: (listener) => {
    end.on('message', listener);
  },
});

/** Two ends of a real message channel: what is sent is copied, and arrives in a later turn. */
export function line() {
  const { port1, port2 } = new MessageChannel();
  return { near: portOf(port1), far: portOf(port2), close: () => port1.close() };
}
