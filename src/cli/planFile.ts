import { closeSync, openSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { Fault } from '../base/fault.ts';
import { GREATEST_FILE } from '../exchange/fileText.ts';
import { isPack, unpackPlan } from '../exchange/planPack.ts';
import { faultText } from '../plan/faultText.ts';
import type { Plan, Situation } from '../plan/plan.ts';
import { readPlan } from '../plan/read.ts';
import { BadInput, type Terminal } from './terminal.ts';

/** Faults as one message, a line each. */
export const faultLines = (faults: readonly Fault[]): string => faults.map(faultText).join('\n');

/**
 * The bytes of a file.
 * @throws BadInput where there is none, or it is too large to be opened
 */
export function fileBytes(file: string): Uint8Array {
  let size: number;
  try {
    const status = statSync(file);
    if (!status.isFile()) throw new BadInput(`“${file}” is not a file.`);
    size = status.size;
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw new BadInput(`There is no file “${file}”. Check its name.`);
  }
  if (size > GREATEST_FILE) {
    const mb = (bytes: number) => Math.ceil(bytes / 1024 / 1024);
    const fault = { code: 'file.tooBig', path: [], given: mb(size), allowed: String(mb(GREATEST_FILE)) };
    throw new BadInput(faultText({ ...fault, subject: path.basename(file) }));
  }
  return readFileSync(file);
}

/**
 * The plan in a file; notes on it go to the terminal.
 * @throws BadInput with everything that is wrong with it
 */
export function planOf(file: string, terminal: Terminal): Plan {
  const read = readPlan(planTextOf(file, fileBytes(file)));
  if (!read.ok) throw new BadInput(faultLines(read.faults));
  tell(read.notes, terminal);
  return read.value;
}

/** The text of a plan, alone or packed with its pictures. */
function planTextOf(file: string, bytes: Uint8Array): string {
  if (!isPack(bytes)) return new TextDecoder().decode(bytes);
  const unpacked = unpackPlan(path.basename(file), bytes);
  if (!unpacked.ok) throw new BadInput(faultLines(unpacked.faults));
  return unpacked.value.text;
}

/** What has been said on a terminal: reading a plan and laying it out may notice the same. */
const said = new WeakMap<Terminal, Set<string>>();

/** Says what is amiss without standing in the way, each thing once. */
export function tell(notes: readonly Fault[], terminal: Terminal): void {
  const before = said.get(terminal) ?? new Set();
  said.set(terminal, before);
  for (const note of notes) {
    const text = faultText(note);
    if (before.has(text)) continue;
    before.add(text);
    terminal.err(`Note: ${text}\n`);
  }
}

/**
 * Writes bytes, a text, or one that comes in pieces and may be longer than a string can be.
 * @throws BadInput where the file cannot be written
 */
export function writeFile(file: string, text: string | Uint8Array | Iterable<string>): void {
  let handle: number | undefined;
  try {
    handle = openSync(file, 'w');
    const isWhole = typeof text === 'string' || text instanceof Uint8Array;
    for (const piece of isWhole ? [text] : text) writeFileSync(handle, piece);
  } catch (error) {
    throw new BadInput(
      `“${file}” cannot be written: ${error instanceof Error ? error.message : String(error)}.`,
    );
  } finally {
    if (handle !== undefined) closeSync(handle);
  }
}

/**
 * The situation asked for; null where none was.
 * @throws BadInput on one that the plan does not have
 */
export function situationOf(plan: Plan, id: string | undefined): Situation | null {
  if (id === undefined) return null;
  const situation = Object.hasOwn(plan.situations, id) ? plan.situations[id] : undefined;
  if (!situation)
    throw new BadInput(
      `The plan has no situation “${id}”. It has: ${plan.situationOrder.join(', ') || 'none'}.`,
    );
  return situation;
}
