import { accept, refuse, type Outcome } from '../base/fault.ts';
import { addStructures } from '../plan/commands/addStructures.ts';
import { cleanName } from '../plan/commands/renameThing.ts';
import { setGround } from '../plan/commands/setGround.ts';
import { emptyPlan } from '../plan/emptyPlan.ts';
import { jsonFault } from '../plan/jsonFault.ts';
import type { Plan } from '../plan/plan.ts';
import { planFrom, readPlan } from '../plan/read.ts';
import { fileText, READABLE } from './fileText.ts';
import { isHeightGrid } from './elevation/gridText.ts';
import { importElevation } from './elevation/importElevation.ts';
import { isGeojson } from './geojson/collection.ts';
import { importGeojson } from './geojson/importGeojson.ts';
import { isPack, unpackPlan, type PictureBytes } from './planPack.ts';
import type { ImportReport } from './report.ts';
import type { Step } from '../assess/step.ts';

/** The id of a plan made from a map, until whoever keeps it gives it one of its own. */
export const IMPORTED = 'imported';

/** A plan out of a file. A report comes with one that was made from a map, null with a plan file. */
export interface Opened {
  readonly plan: Plan;
  readonly report: ImportReport | null;
  /** Of a plan that was saved with its pictures. */
  readonly pictures: PictureBytes;
}

/**
 * Any readable file as a plan, told apart by what it holds and not by its name, in steps between which the job can be
 * called off.
 * @param name  of the file, for its messages and for the name of a plan made from a map
 * @param bytes at most `GREATEST_FILE`
 * @returns     the plan; notes say what was mended or refused of it. Nothing is thrown for any bytes.
 */
export function* openFile(name: string, bytes: Uint8Array): Generator<Step, Outcome<Opened>, void> {
  yield { share: 0, doing: 'Reading the file' };
  if (isPack(bytes)) return packed(name, bytes);
  const text = fileText(name, bytes);
  if (!text.ok) return text;
  if (isHeightGrid(text.value)) return groundPlan(name, text.value);
  const start = text.value.trimStart().charAt(0);
  if (start !== '' && start !== '{' && start !== '[')
    return refuse({ code: 'file.unknown', path: [], allowed: READABLE, subject: name });
  yield { share: 0.05, doing: 'Reading the file' };
  let document: unknown;
  try {
    document = JSON.parse(text.value);
  } catch {
    return refuse(jsonFault(text.value));
  }
  yield { share: 0.2, doing: 'Reading the file' };

  if (isGeojson(document)) return yield* opened(name, document);
  if (!isPlanLike(document))
    return refuse({ code: 'file.unknown', path: [], allowed: READABLE, subject: name });
  const plan = planFrom(document);
  return plan.ok ? accept({ plan: plan.value, report: null, pictures: NONE }, plan.notes) : plan;
}

const NONE: PictureBytes = new Map();

/** A plan that was saved with its pictures. */
function packed(name: string, bytes: Uint8Array): Outcome<Opened> {
  const unpacked = unpackPlan(name, bytes);
  if (!unpacked.ok) return unpacked;
  const plan = readPlan(unpacked.value.text);
  if (!plan.ok) return plan;
  return accept({ plan: plan.value, report: null, pictures: unpacked.value.pictures }, plan.notes);
}

/** Whether JSON means to be a plan, if perhaps a broken one. */
const isPlanLike = (document: unknown): boolean =>
  typeof document === 'object' && document !== null && ('version' in document || 'structures' in document);

function* opened(name: string, document: unknown): Generator<Step, Outcome<Opened>, void> {
  const steps = importGeojson(document);
  for (;;) {
    const { done, value } = steps.next();
    if (!done) {
      yield { share: 0.2 + 0.8 * value.share, doing: value.doing };
      continue;
    }
    if (!value.ok) return value;
    const { report, ...found } = value.value;
    return accept({ plan: addStructures(newPlan(name), found), report, pictures: NONE }, value.notes);
  }
}

/** An empty plan with the ground of a file. */
function groundPlan(name: string, text: string): Outcome<Opened> {
  const read = importElevation(text);
  if (!read.ok) return refuse(...read.faults.map((fault) => ({ subject: name, ...fault })));
  const { ground, report } = read.value;
  return accept({ plan: setGround(newPlan(name), ground), report, pictures: NONE }, read.notes);
}

/** An empty plan named after a file. */
const newPlan = (file: string): Plan =>
  emptyPlan(IMPORTED, cleanName(file.replace(/^.*[/\\]/, '').replace(/\.[a-z.]*$/i, '')) || 'Imported map');
