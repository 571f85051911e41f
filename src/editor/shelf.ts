import type { StepMade } from '../plan/history.ts';
import { z } from '../plan/zod.ts';

/** A plan as the device keeps it. `key` is the plan's id, or something else for one that was set aside. */
export interface Kept {
  readonly key: string;
  readonly name: string;
  /** When, ms since 1970. */
  readonly at: number;
  readonly text: string;
  /** Where on its trail of steps the text stands. The trail may have gone on since. */
  readonly trail: Trail | null;
}

/** The steps that led to a plan lie on the shelf by number: how many there are, and how many of them are done. */
export interface Trail {
  /** Of the plan file when they were made; those of another version are not read. */
  readonly version: number;
  readonly length: number;
  readonly at: number;
}

/** A step to be kept under its number, 0 for the first. */
export interface KeptStep {
  readonly number: number;
  readonly step: StepMade;
}

/** A version of a plan to go back to. */
export interface KeptVersion {
  readonly key: string;
  readonly plan: string;
  /** What the person calls it, or the step that had been made. */
  readonly name: string;
  readonly at: number;
  /** Kept by hand: not thinned out. */
  readonly byHand: boolean;
  readonly text: string;
}

/** A picture of a plan, by the SHA-256 of its bytes (hex). */
export interface KeptPicture {
  readonly sha: string;
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Where the device keeps plans. What comes out is anybody's: it is read by `keptFrom`. */
export interface Shelf {
  /** Keeps a plan with new steps of it, all or nothing; steps beyond its trail go. */
  put(kept: Kept, steps?: readonly KeptStep[]): Promise<void>;
  take(key: string): Promise<unknown>;
  /** All of them. */
  list(): Promise<readonly unknown[]>;
  /** Takes a plan away, with its steps, versions and draft. */
  remove(key: string): Promise<void>;
  /** Keeps new steps alone, where writing the whole plan would take too long now. */
  note(plan: string, trail: Trail, steps: readonly KeptStep[]): Promise<void>;
  /** How far the trail of a plan has gone. */
  trail(plan: string): Promise<unknown>;
  /** The steps of a plan, by number. */
  steps(plan: string): Promise<readonly unknown[]>;
  putVersion(version: KeptVersion): Promise<void>;
  versions(plan: string): Promise<readonly unknown[]>;
  removeVersion(key: string): Promise<void>;
  putPicture(picture: KeptPicture): Promise<void>;
  picture(sha: string): Promise<unknown>;
  /** Keeps what is being drawn in a plan; null takes it away. */
  putDraft(plan: string, text: string | null): Promise<void>;
  draft(plan: string): Promise<unknown>;
  /** Which one was open last. */
  lastOpen(): Promise<unknown>;
  noteOpen(key: string): Promise<void>;
}

const count = z.int().nonnegative();

const trail = z.object({ version: count, length: count, at: count });

const kept = z.object({
  key: z.string(),
  name: z.string(),
  at: z.number(),
  text: z.string(),
  trail: trail.nullable().catch(null).default(null),
});

const version = z.object({
  key: z.string(),
  plan: z.string(),
  name: z.string(),
  at: z.number(),
  byHand: z.boolean(),
  text: z.string(),
});

/** How far a trail has gone, out of whatever the shelf held. */
export const trailFrom = (held: unknown): Trail | null => trail.safeParse(held).data ?? null;

/** A kept plan out of whatever the shelf held; null where it is none. The text is not read yet. */
export const keptFrom = (held: unknown): Kept | null => kept.safeParse(held).data ?? null;

const picture = z.object({
  sha: z.string().regex(/^[0-9a-f]{64}$/),
  type: z.string(),
  bytes: z.instanceof(Uint8Array<ArrayBuffer>),
});

/** A kept picture likewise. */
export const pictureFrom = (held: unknown): KeptPicture | null => picture.safeParse(held).data ?? null;

/** A kept version likewise. */
export const versionFrom = (held: unknown): KeptVersion | null => version.safeParse(held).data ?? null;
