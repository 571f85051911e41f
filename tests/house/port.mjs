export const usualPort = 4173;

const advice = `Give a whole number from 1 to 65535, as in: npm start -- --port ${usualPort + 1}`;

/**
 * The port that the words after `npm start --` ask for.
 * @param {readonly string[]} words  as in process.argv, the first two taken away
 * @returns {{ port: number, chosen: boolean }}  chosen: a person named it, so no other will do
 * @throws {RangeError} on an unknown word or a port that is none; the message says how to mend it
 */
export const portFrom = (words) => {
  /** @type {number | undefined} */
  let port;
  for (let at = 0; at < words.length; at += 1) {
    const word = words[at] ?? '';
    const [name, joined] = word.split('=', 2);
    if (name !== '--port') throw new RangeError(`npm start does not know “${word}”. ${advice}`);
    if (joined === undefined) at += 1;
    const text = joined ?? words[at];
    if (text === undefined || text === '') throw new RangeError(`--port has no number after it. ${advice}`);
    port = Number(text);
    if (!/^\d+$/.test(text) || port < 1 || port > 65535)
      throw new RangeError(`“${text}” is no port. ${advice}`);
  }
  return { port: port ?? usualPort, chosen: port !== undefined };
};
