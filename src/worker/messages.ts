import type { Question } from '../assess/assessment.ts';
import type { Found, Wanted } from '../assess/shares.ts';
import type { SiteAsked } from '../assess/together.ts';
import type { SiteAreas } from '../coverage/siteAreas.ts';
import type { Opened } from '../exchange/openFile.ts';
import type { Outcome } from '../base/fault.ts';
import type { Plan } from '../plan/plan.ts';
import { z } from '../plan/zod.ts';

/** What each job is asked and what it answers. */
export interface Jobs {
  /** Some cameras of a plan, with what they share where `laid` asks for it. */
  readonly cover: {
    readonly question: {
      readonly plan: Plan;
      readonly question: Question;
      readonly wanted: Wanted;
      readonly laid: boolean;
    };
    readonly answer: Found;
  };
  /** The exact areas of all cameras together. */
  readonly site: { readonly question: SiteAsked; readonly answer: SiteAreas };
  readonly openFile: {
    readonly question: { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> };
    readonly answer: Outcome<Opened>;
  };
}

export type Job = keyof Jobs;

// Plans and answers were checked where they came from: here their shape is looked at, not every number.
const holds = (value: unknown, ...keys: readonly string[]): boolean =>
  typeof value === 'object' && value !== null && keys.every((key) => key in value);

const plan = z.custom<Plan>((value) => holds(value, 'version', 'structures', 'cameras', 'settings'));

const place = z.tuple([z.number(), z.number()]).readonly();

const looks = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('bearing'), bearing: z.number() }),
  z.object({ kind: z.literal('place'), at: place }),
]);

const surface = z.discriminatedUnion('of', [
  z.object({ of: z.enum(['wall', 'roof']), structure: z.string(), face: z.int() }),
  z.object({ of: z.literal('patch'), patch: z.string() }),
]);

const target = z.discriminatedUnion('kind', [
  z.object({ kind: z.enum(['ground', 'plate', 'height']), height: z.number() }),
  z.object({ kind: z.literal('face'), height: z.number(), looks: z.exactOptional(looks) }),
  z.object({ kind: z.literal('surface'), height: z.literal(0), surface }),
]);

const question = z.object({
  target,
  alone: z.string().nullable(),
  situation: z.string().nullable(),
  causes: z.enum(['quick', 'exact']),
});

const ids = z.array(z.string()).readonly();

const wanted = z.object({ whole: ids, causes: ids });

const siteAsked = z.custom<SiteAsked>((value) =>
  holds(value, 'seers', 'ring', 'height', 'target', 'bands', 'caps'),
);

const found = z.custom<Found>((value) => holds(value, 'laid', 'whole', 'causes'));

const siteAreas = z.custom<SiteAreas>((value) => holds(value, 'atLeast', 'byCount'));

const opened = z.custom<Outcome<Opened>>(
  (value) => holds(value, 'ok', 'value', 'notes') || holds(value, 'ok', 'faults'),
);

const bytes = z.custom<Uint8Array<ArrayBuffer>>((value) => value instanceof Uint8Array);

/** Reads the question of a message, by its job. */
const ask = z.discriminatedUnion('job', [
  z.object({
    job: z.literal('cover'),
    question: z.object({ plan, question, wanted, laid: z.boolean() }),
  }),
  z.object({ job: z.literal('site'), question: siteAsked }),
  z.object({ job: z.literal('openFile'), question: z.object({ name: z.string(), bytes }) }),
]);

export type Ask = z.infer<typeof ask>;

/** From the window to the worker. */
export const toWorker = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('ask'), id: z.int(), ask }),
  z.object({ kind: z.literal('cancel'), id: z.int() }),
]);

export type ToWorker = z.infer<typeof toWorker>;

/** Reads the answer of a message: the asker knows the job. */
export const answers = { cover: found, site: siteAreas, openFile: opened } satisfies {
  readonly [J in Job]: z.ZodType<Jobs[J]['answer']>;
};

/** From the worker to the window. */
export const fromWorker = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('progress'), id: z.int(), share: z.number(), doing: z.string() }),
  z.object({ kind: z.literal('done'), id: z.int(), answer: z.unknown() }),
  z.object({ kind: z.literal('cancelled'), id: z.int() }),
  z.object({ kind: z.literal('failed'), id: z.int(), message: z.string() }),
]);

export type FromWorker = z.infer<typeof fromWorker>;
