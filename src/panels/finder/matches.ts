/** The words of a text, small, without what joins or ends them. */
export const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[\s,:·–—]+/u)
    .filter((word) => word !== '');

/**
 * How well a label answers what was typed: every word typed must begin a word of the label. The lower the better; null
 * where one is not found. Words in the label's order, and at its beginning, come first.
 */
export function rankOf(typed: readonly string[], label: string): number | null {
  const held = wordsIn(label);
  let rank = 0;
  let last = -1;
  for (const word of typed) {
    const after = held.findIndex((other, index) => index > last && other.startsWith(word));
    const at = after >= 0 ? after : held.findIndex((other) => other.startsWith(word));
    if (at < 0) return null;
    rank += at + (after < 0 ? held.length : 0) + (held[at] === word ? 0 : 0.5);
    last = at;
  }
  return rank;
}
