import type { Question } from '../assess/assessment.ts';
import type { Found, Wanted } from '../assess/shares.ts';
import type { SiteAsked } from '../assess/together.ts';
import type { TrialChange } from '../assess/trial/change.ts';
import type { SiteAreas } from '../coverage/siteAreas.ts';
import type { Opened } from '../exchange/openFile.ts';
import type { Outcome } from '../base/fault.ts';
import type { Plan } from '../plan/plan.ts';

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
  /** What the second of two settings of a camera gains and loses beside the first. */
  readonly trial: { readonly question: SiteAsked; readonly answer: TrialChange };
  readonly openFile: {
    readonly question: { readonly name: string; readonly bytes: Uint8Array<ArrayBuffer> };
    readonly answer: Outcome<Opened>;
  };
}

export type Job = keyof Jobs;

/** A question with its job. */
export type Ask = { readonly [J in Job]: { readonly job: J; readonly question: Jobs[J]['question'] } }[Job];

/** From the window to the worker. */
export type ToWorker =
  | { readonly kind: 'ask'; readonly id: number; readonly ask: Ask }
  | { readonly kind: 'cancel'; readonly id: number };

/** From the worker to the window. */
export type FromWorker =
  | { readonly kind: 'progress'; readonly id: number; readonly share: number; readonly doing: string }
  | { readonly kind: 'done'; readonly id: number; readonly answer: unknown }
  | { readonly kind: 'cancelled'; readonly id: number }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string };

/*
 * Both ends are this very program, and plans and answers were checked where they came from: here the outline of a message is
 * looked at, by hand, since schemas would be fetched by window and worker before the first coverage.
 */
type Guard<T> = (value: unknown) => value is T;

const holds = (value: unknown, ...keys: readonly string[]): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && keys.every((key) => key in value);

const isText = (value: unknown): boolean => typeof value === 'string';
const isNumber = (value: unknown): boolean => Number.isFinite(value);
const isTextOrNull = (value: unknown): boolean => value === null || isText(value);
const isRecord = (value: unknown): boolean => holds(value) && !Array.isArray(value);

/** Whether something is a list of which each is of a kind. */
const areAll = (value: unknown, is: (one: unknown) => boolean): boolean =>
  Array.isArray(value) && value.every(is);

/** Whether something has some keys. */
const having =
  (...keys: readonly string[]) =>
  (value: unknown): boolean =>
    holds(value, ...keys);

const isPlan: Guard<Plan> = (value): value is Plan =>
  holds(value, 'version', 'structures', 'cameras', 'settings') &&
  isNumber(value['version']) &&
  isRecord(value['structures']) &&
  isRecord(value['cameras']) &&
  isRecord(value['settings']);

const isTarget = (value: unknown): boolean =>
  holds(value, 'kind', 'height') && isText(value['kind']) && isNumber(value['height']);

const isQuestion: Guard<Question> = (value): value is Question =>
  holds(value, 'target', 'alone', 'situation', 'causes') &&
  isTarget(value['target']) &&
  isTextOrNull(value['alone']) &&
  isTextOrNull(value['situation']) &&
  (value['causes'] === 'quick' || value['causes'] === 'exact');

const isWanted: Guard<Wanted> = (value): value is Wanted =>
  holds(value, 'whole', 'causes') && areAll(value['whole'], isText) && areAll(value['causes'], isText);

const isSiteAsked: Guard<SiteAsked> = (value): value is SiteAsked =>
  holds(value, 'seers', 'ring', 'height', 'target', 'bands', 'caps') &&
  areAll(value['seers'], having('camera', 'seen')) &&
  areAll(value['ring'], (corner) => areAll(corner, isNumber)) &&
  isNumber(value['height']) &&
  isTarget(value['target']) &&
  areAll(value['bands'], having('key', 'density')) &&
  areAll(value['caps'], having('above', 'side', 'band'));

const asks: { readonly [J in Job]: Guard<Jobs[J]['question']> } = {
  cover: (value): value is Jobs['cover']['question'] =>
    holds(value, 'plan', 'question', 'wanted', 'laid') &&
    isPlan(value['plan']) &&
    isQuestion(value['question']) &&
    isWanted(value['wanted']) &&
    typeof value['laid'] === 'boolean',
  site: isSiteAsked,
  trial: isSiteAsked,
  openFile: (value): value is Jobs['openFile']['question'] =>
    holds(value, 'name', 'bytes') &&
    typeof value['name'] === 'string' &&
    value['bytes'] instanceof Uint8Array,
};

const isJob = (value: unknown): value is Job => typeof value === 'string' && Object.hasOwn(asks, value);

const isAsk: Guard<Ask> = (value): value is Ask =>
  holds(value, 'job', 'question') && isJob(value['job']) && asks[value['job']](value['question']);

const isToWorker: Guard<ToWorker> = (value): value is ToWorker =>
  holds(value, 'kind', 'id') &&
  Number.isInteger(value['id']) &&
  (value['kind'] === 'cancel' || (value['kind'] === 'ask' && isAsk(value['ask'])));

/** What a message from the worker holds besides its kind and id. */
const REPLIES: Readonly<Record<FromWorker['kind'], (value: Readonly<Record<string, unknown>>) => boolean>> = {
  progress: ({ share, doing }) => isNumber(share) && isText(doing),
  done: (value) => 'answer' in value,
  cancelled: () => true,
  failed: ({ message }) => isText(message),
};

const isFromWorker: Guard<FromWorker> = (value): value is FromWorker => {
  if (!holds(value, 'kind', 'id') || !Number.isInteger(value['id'])) return false;
  const { kind } = value;
  return Object.entries(REPLIES).find(([known]) => known === kind)?.[1](value) === true;
};

function read<T>(what: string, is: Guard<T>, value: unknown): T {
  if (is(value)) return value;
  throw new TypeError(`this is no ${what}`);
}

/** @throws TypeError for what is no such message */
export const toWorker = (raw: unknown): ToWorker => read('message to the worker', isToWorker, raw);

/** @throws TypeError for what is no such message */
export const fromWorker = (raw: unknown): FromWorker => read('message from the worker', isFromWorker, raw);

const isArea = having('value', 'bound', 'how');

const isFound: Guard<Found> = (value): value is Found =>
  holds(value, 'laid', 'whole', 'causes') &&
  (value['laid'] === null || holds(value['laid'], 'scene', 'ground')) &&
  areAll(value['whole'], having('coverage', 'cells', 'shadows')) &&
  areAll(value['causes'], having('camera', 'areas'));

const isOpened: Guard<Outcome<Opened>> = (value): value is Outcome<Opened> =>
  holds(value, 'ok') &&
  (value['ok'] === true
    ? holds(value['value'], 'plan', 'report', 'pictures') &&
      isPlan(value['value']['plan']) &&
      areAll(value['notes'], having('code'))
    : value['ok'] === false && areAll(value['faults'], having('code')));

/** Reads the answer of a message: the asker knows the job. Each throws a TypeError for what is none. */
export const answers: { readonly [J in Job]: (answer: unknown) => Jobs[J]['answer'] } = {
  cover: (answer) => read('coverage', isFound, answer),
  site: (answer) =>
    read(
      'area of the site',
      (value): value is SiteAreas =>
        holds(value, 'atLeast', 'byCount') &&
        areAll(value['atLeast'], isArea) &&
        areAll(value['byCount'], isArea),
      answer,
    ),
  trial: (answer) =>
    read(
      'exchange of settings',
      (value): value is TrialChange =>
        holds(value, 'byBand', 'finer', 'coarser') &&
        areAll(
          value['byBand'],
          (one) => holds(one, 'gained', 'lost') && isArea(one['gained']) && isArea(one['lost']),
        ) &&
        isArea(value['finer']) &&
        isArea(value['coarser']),
      answer,
    ),
  openFile: (answer) => read('opened file', isOpened, answer),
};
