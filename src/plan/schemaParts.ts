import { CREDIT_LENGTH, ID_LENGTH, LIMITS, NAME_LENGTH, NOTE_LENGTH, type Limit } from './limits.ts';
import { z } from './zod.ts';

/*
 * The small parts of the plan file. A message that is a word of `faultText` (`id.form`) says more than zod's own code;
 * `shapeFaults` takes it as the fault's code.
 */

/** A finite number within a limit; the unit goes into the description. */
export const number = (limit: Limit, description?: string) => {
  const schema = z.number().min(limit.least).max(limit.most);
  return description === undefined ? schema : schema.describe(description);
};

// Not `z.int(words)`, whose words would stand for the limits too.
export const whole = (limit: Limit) => z.number().int('number.whole').min(limit.least).max(limit.most);

const coordinate = z
  .number()
  .min(LIMITS.coordinate.least, 'coordinate.far')
  .max(LIMITS.coordinate.most, 'coordinate.far');

export const vec2 = z
  .tuple([coordinate, coordinate])
  .meta({ id: 'vec2', description: '[x east, y north], m' });

export const vec3 = z
  .tuple([coordinate, coordinate, coordinate])
  .meta({ id: 'vec3', description: '[x east, y north, z up], m' });

/** Names of every object's own machinery would be found in any record. */
const taken = ['constructor', 'toString', 'toLocaleString', 'valueOf', 'hasOwnProperty'];

/** Letters, digits, hyphens and underscores: safe in an OBJ group, a CSV cell and a link. */
const ID_FORM = new RegExp(
  `^(?!(?:${[...taken, 'isPrototypeOf', 'propertyIsEnumerable'].join('|')})$)[A-Za-z0-9][A-Za-z0-9_-]{0,${ID_LENGTH - 1}}$`,
);

export const id = z.string().regex(ID_FORM, 'id.form').meta({ id: 'id' });

/** What a caution, a threshold or a field of a card goes by: like an id, and its parts may be set off by points. */
export const key = z
  .string()
  .regex(new RegExp(ID_FORM.source.replace('[A-Za-z0-9_-]', '[A-Za-z0-9._-]')), 'id.form')
  .meta({ id: 'key' });

/** Controls, lone surrogates, line separators and marks that turn the direction of writing. */
export const UNPRINTABLE = /[\p{Cc}\p{Cs}\u2028\u2029\u202A-\u202E\u2066-\u2069]/u;

const printable = new RegExp(`^[^${UNPRINTABLE.source.slice(1, -1)}]*$`, 'u');

/** What a person calls a thing: any plain text of one line. HTML in it stays text. */
export const name = z
  .string()
  .min(1, 'name.empty')
  .max(NAME_LENGTH, 'name.long')
  .regex(printable, 'name.unprintable')
  .meta({ id: 'name' });

export const credit = z
  .string()
  .min(1, 'name.empty')
  .max(CREDIT_LENGTH, 'name.long')
  .regex(printable, 'name.unprintable');

/** What a person wrote into a field; may be empty. */
export const note = z.string().max(NOTE_LENGTH, 'name.long').regex(printable, 'name.unprintable');

export const got = z.enum(['measured', 'mapped', 'guessed']).meta({
  id: 'got',
  description: 'How a size was got: taped on site, read from a map, or guessed',
});

export const passage = z.enum(['solid', 'screen', 'clear']).meta({
  id: 'passage',
  description: 'What it lets through: nothing, a part (mesh, bare branches), or all by day (glass)',
});

export const ring = z.array(vec2).min(3, 'ring.short').meta({
  id: 'ring',
  description:
    'Corners of a closed ring, the first not repeated; outlines run counter-clockwise, holes clockwise',
});

export const extent = (limit: Limit, description: string) =>
  z.strictObject({ width: number(limit), height: number(limit) }).describe(description);
