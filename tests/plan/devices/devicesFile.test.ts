import { readFileSync } from 'node:fs';
import { expect, expectTypeOf, test } from 'vitest';
import type { z } from 'zod';
import type { DeviceEntry } from '../../../src/plan/devices/deviceEntry.ts';
import {
  devicesJsonSchema,
  type devicesSchema,
  devicesText,
  readDevices,
} from '../../../src/plan/devices/devicesFile.ts';

type DeepReadonly<T> = T extends readonly unknown[] | object
  ? { readonly [K in keyof T]: DeepReadonly<T[K]> }
  : T;

test('what the schema gives is what the type says', () => {
  expectTypeOf<DeepReadonly<z.output<typeof devicesSchema>['devices'][number]>>().toEqualTypeOf<
    DeepReadonly<DeviceEntry>
  >();
});

test('the published JSON Schema is the one that the reader holds files to', () => {
  const published: unknown = JSON.parse(readFileSync('shared/schema/devices.schema.json', 'utf8'));
  // To mend: npm run soffit -- schema devices > shared/schema/devices.schema.json
  expect(devicesJsonSchema()).toEqual(published);
});

test('devices written are devices read', () => {
  const read = readDevices(readFileSync('shared/tables/devices.json', 'utf8'));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  expect(readDevices(devicesText(read.value))).toMatchObject({ ok: true, value: read.value });
});
