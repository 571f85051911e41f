import { readFileSync } from 'node:fs';
import { expect, expectTypeOf, test } from 'vitest';
import type { z } from 'zod';
import type { Plan } from '../../src/plan/plan.ts';
import { planJsonSchema, planSchema } from '../../src/plan/schema.ts';
import { wholePlan } from './wholePlan.ts';

type DeepReadonly<T> = T extends readonly unknown[] | object
  ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
  : T;

test('what the schema gives is what the plan type says', () => {
  expectTypeOf<DeepReadonly<z.output<typeof planSchema>>>().toEqualTypeOf<DeepReadonly<Plan>>();
  expect(planSchema.parse(wholePlan())).toEqual(wholePlan());
});

test('the published JSON Schema is the one that the reader holds files to', () => {
  const published: unknown = JSON.parse(readFileSync('shared/schema/plan.schema.json', 'utf8'));
  // To mend: npm run soffit -- schema > shared/schema/plan.schema.json
  expect(planJsonSchema()).toEqual(published);
});
