import { expect, test } from 'vitest';
import { z } from 'zod';
import { DEMO, soffit, soffitJson } from './ran.ts';

const report = z.object({
  edition: z.string(),
  cameras: z.array(
    z.object({
      camera: z.string(),
      cautions: z.array(
        z.object({
          id: z.string(),
          row: z.number(),
          severity: z.enum(['stop', 'fails', 'tight', 'tell']),
          said: z.string(),
          advice: z.string(),
          status: z.string(),
          thresholds: z.array(z.object({ id: z.string(), value: z.number(), usual: z.number() })),
        }),
      ),
      lacks: z.array(z.string()),
    }),
  ),
});

test('soffit cautions tells each camera’s, with figures, words, status and limits', () => {
  const { cameras, edition } = report.parse(soffitJson('cautions', DEMO, '--camera', 'C2'));
  expect(edition).toBe('IEC 62676-4:2014');
  expect(cameras.map(({ camera }) => camera)).toEqual(['C2']);
  const [first] = cameras[0]?.cautions ?? [];
  expect(first).toMatchObject({ row: 31, severity: 'stop', status: 'common practice, no source' });
});

test('in words, worst first, and what is not given', () => {
  const { out, code } = soffit('cautions', DEMO, '--camera', 'C2');
  expect(code).toBe(0);
  expect(out).toMatch(
    /^C2; IEC 62676-4:2014\n {2}Look before you drill: Where the hole comes out inside is not known/,
  );
  expect(out).toContain('Not told, since it is not given:');
});

test('a camera that the plan does not have is refused', () => {
  const { code, err } = soffit('cautions', DEMO, '--camera', 'C9');
  expect(code).toBe(2);
  expect(err).toContain('C9');
});
