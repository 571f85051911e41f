import type { AtDistance } from '../../assess/trial/alongAxis.ts';
import type { Edition } from '../../coverage/band.ts';
import type { State } from '../../coverage/state.ts';

/** Each state as a homeowner would say it. */
const WORDS: Readonly<Record<Exclude<State, 'covered'>, string>> = {
  inside: 'inside something',
  'out of frame': 'out of the picture',
  hidden: 'hidden',
  screened: 'through leaves or mesh',
  'too dark': 'too dark',
  'too coarse': 'too few pixels',
};

/** "enough to recognise", "hidden": what is made of a place. */
export function stateWords({ state, band }: Pick<AtDistance, 'state' | 'band'>, { bands }: Edition): string {
  if (state !== 'covered') return WORDS[state];
  return `enough to ${(bands[band - 1]?.name ?? 'see').toLowerCase()}`;
}
