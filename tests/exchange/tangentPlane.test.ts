import proj4 from 'proj4';
import { expect, test } from 'vitest';
import { ecefFromPlace, siteFromPlace } from '../../src/exchange/tangentPlane.ts';
import { chanceFrom, trials } from '../house/seeded.ts';

// The judge is proj4js, a general projection library (MIT): geocentric coordinates of WGS 84, and its azimuthal
// equidistant map about the origin, which shares neither the plane nor its formula.
const DEGREES = '+proj=longlat +datum=WGS84 +no_defs';
const GEOCENTRIC = '+proj=geocent +datum=WGS84 +units=m +no_defs';

test('geocentric coordinates are those of a general projection library', () => {
  const chance = chanceFrom(4711);
  for (let trial = 0; trial < trials(500, 50_000); trial += 1) {
    const place = { latitude: chance.between(-90, 90), longitude: chance.between(-180, 180) };
    const judge = proj4(DEGREES, GEOCENTRIC, [place.longitude, place.latitude, 0]);
    ecefFromPlace(place).forEach((value, axis) => expect(value).toBeCloseTo(judge[axis] ?? NaN, 5));
  }
});

test('a site of a kilometre comes out as an equidistant map has it, to a millimetre', () => {
  const chance = chanceFrom(1848);
  for (let trial = 0; trial < trials(300, 20_000); trial += 1) {
    const origin = { latitude: chance.between(-85, 85), longitude: chance.between(-180, 180) };
    const judge = proj4(
      DEGREES,
      `+proj=aeqd +lat_0=${origin.latitude} +lon_0=${origin.longitude} +datum=WGS84 +units=m +no_defs`,
    );
    const site = siteFromPlace(origin);
    const [east, north] = [chance.between(-700, 700), chance.between(-700, 700)];
    const [longitude = 0, latitude = 0] = judge.inverse([east, north]);
    const [x, y] = site({ latitude, longitude });
    expect(Math.hypot(x - east, y - north)).toBeLessThan(0.001);
  }
});

test('the origin is the origin, east is +x and north is +y', () => {
  const site = siteFromPlace({ latitude: 51.4576399, longitude: -2.5534038 });
  expect(site({ latitude: 51.4576399, longitude: -2.5534038 })).toEqual([0, 0]);
  const [x, y] = site({ latitude: 51.4576399, longitude: -2.5524038 });
  expect(x).toBeGreaterThan(69);
  expect(Math.abs(y)).toBeLessThan(0.01);
  expect(site({ latitude: 51.4586399, longitude: -2.5534038 })[1]).toBeGreaterThan(111);
});
