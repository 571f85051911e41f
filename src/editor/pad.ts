import type { StepMade } from '../plan/history.ts';
import { z } from '../plan/zod.ts';
import { keptFrom, type Kept, type KeptStep, type Shelf, type Trail } from './shelf.ts';

/** A place for words that are kept the moment they are written, unlike a database's. It may refuse by throwing. */
export interface Pad {
  names(): readonly string[];
  read(name: string): string | null;
  /** Null takes the name away. */
  write(name: string, text: string | null): void;
}

/** What was asked of the shelf and not yet answered. */
type Asked =
  | { readonly ask: 'put'; readonly kept: Kept; readonly steps: readonly KeptStep[] }
  | {
      readonly ask: 'note';
      readonly plan: string;
      readonly trail: Trail;
      readonly steps: readonly KeptStep[];
    };

const PREFIX = 'soffit unsure ';
/** A longer text is not written twice, characters. */
const LONGEST = 300_000;

/**
 * A shelf that also writes what it is asked to keep on the pad, in the same task, until the shelf has it for sure: a
 * database breaks off what a dying tab has asked of it last.
 */
export function withPad(shelf: Shelf, pad: Pad): Shelf {
  const open = new Map<string, readonly Asked[]>();
  const set = (plan: string, asked: readonly Asked[]) => {
    open.set(plan, asked);
    const text = asked.length === 0 ? null : JSON.stringify(asked);
    try {
      pad.write(PREFIX + plan, text !== null && text.length > LONGEST ? null : text);
    } catch {
      // Where the pad is full or refused, the shelf alone keeps.
    }
  };
  const keeping = async (plan: string, asked: Asked, act: () => Promise<void>): Promise<void> => {
    set(plan, [...(open.get(plan) ?? []), asked]);
    try {
      await act();
    } finally {
      // What the shelf refuses is told to the person, who still has it in hand.
      set(
        plan,
        (open.get(plan) ?? []).filter((one) => one !== asked),
      );
    }
  };
  return {
    ...shelf,
    put: (kept, steps = []) => keeping(kept.key, { ask: 'put', kept, steps }, () => shelf.put(kept, steps)),
    note: (plan, trail, steps) =>
      keeping(plan, { ask: 'note', plan, trail, steps }, () => shelf.note(plan, trail, steps)),
    remove: async (key) => {
      set(key, []);
      await shelf.remove(key);
    },
  };
}

/**
 * Asks of the shelf once more what a tab that died had asked of it. Whatever is no such thing is wiped.
 * @param alone does something while no other tab has the plan, or not at all
 */
export async function settlePad(
  shelf: Shelf,
  pad: Pad,
  alone: (plan: string, act: () => Promise<void>) => Promise<void>,
): Promise<void> {
  for (const name of pad.names()) {
    if (!name.startsWith(PREFIX)) continue;
    const plan = name.slice(PREFIX.length);
    await alone(plan, async () => {
      for (const asked of askedFrom(pad.read(name))) await again(shelf, asked);
      pad.write(name, null);
    });
  }
}

async function again(shelf: Shelf, asked: Asked): Promise<void> {
  if (asked.ask === 'note') return shelf.note(asked.plan, asked.trail, asked.steps);
  const held = keptFrom(await shelf.take(asked.kept.key));
  // Somebody has gone on since.
  if (held && held.at > asked.kept.at) return;
  await shelf.put(asked.kept, asked.steps);
  if (typeof (await shelf.lastOpen()) !== 'string') await shelf.noteOpen(asked.kept.key);
}

const count = z.int().nonnegative();
const trail = z.object({ version: count, length: count, at: count });
// A step is read by the schema when it comes off the shelf, as every other one.
const steps = z.array(
  z.object({ number: count, step: z.custom<StepMade>((step) => typeof step === 'object') }),
);
const kept = z.custom<Kept>((held) => keptFrom(held) !== null);
const list = z.array(
  z.union([
    z.object({ ask: z.literal('put'), kept, steps }),
    z.object({ ask: z.literal('note'), plan: z.string(), trail, steps }),
  ]),
);

function askedFrom(text: string | null): readonly Asked[] {
  try {
    return list.safeParse(JSON.parse(text ?? '[]')).data ?? [];
  } catch {
    return [];
  }
}
