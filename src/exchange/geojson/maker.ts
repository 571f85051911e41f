import type { Fault } from '../../base/fault.ts';
import { GREATEST_COORDINATE, SAME_POINT } from '../../base/tolerance.ts';
import type { Vec2 } from '../../base/vector.ts';
import { barrierLine } from '../../model/barrierLine.ts';
import { validFootprint } from '../../model/footprint.ts';
import type { Block, Structure } from '../../model/structure.ts';
import { cleanName } from '../../plan/commands/renameThing.ts';
import { spanFaults } from '../../plan/drawing.ts';
import type { Geographic } from '../../plan/plan.ts';
import { Tally } from '../report.ts';
import { siteFromPlace } from '../tangentPlane.ts';
import { barrierOf, barrierSort } from './barrier.ts';
import { buildingOf, type BuiltBuilding, type Ground } from './building.ts';
import type { Position, Rings } from './feature.ts';
import { verticalOf } from './heights.ts';
import { besideParts, Parts, replaces, type Part } from './parts.ts';
import { hasRoofSpace } from './roofs.ts';
import { isNamed, nameOf, type Item } from './sorting.ts';
import { treeOf } from './tree.ts';

/** A footprint in the site frame, and the feature that it is of. */
interface Plot extends Part {
  readonly item: Item;
  name: string;
  /** Where it ends above the ground, m. */
  readonly top: number;
}

/** Makes structures of sorted features, and counts what it took, left and assumed. */
export class Maker {
  readonly structures: Structure[] = [];
  readonly faults: Fault[] = [];
  readonly taken = new Tally();
  readonly assumed = new Tally();
  private readonly left: Tally;
  private readonly ids = new Set<string>();
  private readonly site: (place: { latitude: number; longitude: number }) => Vec2;

  constructor(origin: Geographic, left: Tally) {
    this.site = siteFromPlace(origin);
    this.left = left;
  }

  /** Makes one thing after another; yields the share done after each. */
  *make(items: readonly Item[], plain: boolean): Generator<number, void> {
    const plots: { readonly part: Plot[]; readonly building: Plot[] } = { part: [], building: [] };
    const count = items.length;
    for (const [index, item] of items.entries()) {
      const name =
        cleanName(nameOf(item.feature, SORTS[item.role], index + 1)) || `${SORTS[item.role]} ${index + 1}`;
      if (item.role === 'barrier') this.barrier(item, name);
      else if (item.role === 'tree') this.tree(item, name);
      else {
        const ground = this.groundOf(item, name);
        if (ground) plots[item.role].push({ item, name, ground, ...levelsOf(item) });
      }
      yield (0.5 * index) / count;
    }
    const parts = new Parts(plots.part);
    for (const [index, plot] of plots.building.entries()) {
      this.outline(plot, parts);
      if (plain) this.assumed.add('assumed.plain');
      yield 0.5 + (0.4 * index) / count;
    }
    for (const [index, plot] of plots.part.entries()) {
      this.building(plot, plot.ground);
      yield 0.9 + (0.1 * index) / count;
    }
  }

  private outline(plot: Plot, parts: Parts<Plot>): void {
    const within = parts.within(plot.ground);
    within
      .filter(({ item }) => !isNamed(item.feature))
      .forEach((part, index) => {
        part.name = cleanName(`${plot.name}, part ${index + 1}`);
      });
    const replacing = within.filter((part) => replaces(part, plot.top));
    const rest = besideParts(plot.ground, replacing);
    if (replacing.length > 0)
      this.left.add(rest.length === 0 ? 'left.forParts' : 'left.partlyForParts', plot.name);
    for (const ground of rest) {
      const valid = replacing.length === 0 ? ground : this.validGround(ground, plot.item, plot.name);
      if (valid) this.building(plot, valid);
    }
  }

  private building({ item, name }: Plot, ground: Ground): void {
    const built = buildingOf(ground, item.feature.tags, this.idOf(item, 'building'), name);
    if ('code' in built) return this.refuseItem('left.heights', name, [built]);
    const kind = built.structure.kind === 'canopy' ? 'canopy' : item.role;
    this.taken.add(`taken.${kind}`, name);
    this.assume(built, name);
    this.structures.push(built.structure);
  }

  private assume({ structure, vertical, flattened }: BuiltBuilding, name: string): void {
    if (vertical.by === 'default') this.assumed.add('assumed.height', name);
    if (vertical.by === 'levels') this.assumed.add('assumed.levels', name);
    if (flattened) this.assumed.add(`assumed.flat-${flattened}`, name);
    if (structure.kind === 'building' && structure.roof.kind !== 'flat' && structure.got.roof === 'guessed')
      this.assumed.add('assumed.pitch', name);
  }

  private barrier(item: Item, name: string): void {
    const { tags } = item.feature;
    const sort = barrierSort(tags);
    if (!sort || item.drawn.kind === 'point') return;
    if (item.drawn.kind === 'polygon' && tags['area'] === 'yes') return this.block(item, name);
    const places = item.drawn.kind === 'line' ? item.drawn.line : (item.drawn.rings[0] ?? []);
    const { line, closed } = this.lineOf(places);
    const barrier = barrierOf(line, closed, sort, tags, this.idOf(item, sort), name);
    const valid = barrierLine(barrier);
    const faults = valid.ok ? this.farFaults(line, name) : valid.faults;
    if (faults.length > 0) return this.refuseItem('left.barrier', name, faults);
    this.taken.add(`taken.${sort}`, name);
    if (barrier.got.height === 'guessed') this.assumed.add('assumed.barrierHeight', name);
    if (sort === 'fence' && tags['fence_type'] === undefined && barrier.passage === 'solid')
      this.assumed.add('assumed.fence', name);
    this.structures.push(barrier);
  }

  /** A hedge or wall that is mapped as the ground it covers. */
  private block(item: Item, name: string): void {
    const ground = this.groundOf(item, name);
    const sort = barrierSort(item.feature.tags);
    if (!ground || !sort) return;
    const { base, height, got } = barrierOf([], true, sort, item.feature.tags, 'block', name);
    const block: Block = {
      kind: 'block',
      id: this.idOf(item, sort),
      name,
      hidden: false,
      locked: false,
      outline: ground.outline,
      base,
      height,
      passage: 'solid',
      got: { outline: 'mapped', base: 'guessed', height: got.height },
    };
    this.taken.add(`taken.${sort}`, name);
    if (got.height === 'guessed') this.assumed.add('assumed.barrierHeight', name);
    this.structures.push(block);
  }

  private tree(item: Item, name: string): void {
    if (item.drawn.kind !== 'point') return;
    const at = this.siteOf(item.drawn.at);
    const faults = this.farFaults([at], name);
    if (faults.length > 0) return this.refuseItem('left.far', name, faults);
    const tree = treeOf(at, item.feature.tags, this.idOf(item, 'tree'), name);
    this.taken.add('taken.tree', name);
    if (tree.got.height === 'guessed' || tree.got.crown === 'guessed') this.assumed.add('assumed.tree', name);
    this.structures.push(tree);
  }

  private groundOf(item: Item, name: string): Ground | null {
    const rings: Rings = item.drawn.kind === 'polygon' ? item.drawn.rings : [];
    const [outline = [], ...holes] = rings.map((ring) => this.lineOf(ring).line);
    return this.validGround({ outline, holes }, item, name);
  }

  /** A ground whose rings are simple and run as they should; null, with the reason kept, where they are not. */
  private validGround({ outline, holes }: Ground, item: Item, name: string): Ground | null {
    const far = this.farFaults(outline, name);
    const valid = far.length > 0 ? null : validFootprint(outline, holes, name);
    if (valid?.ok) return { outline: valid.value.outline, holes: valid.value.holes };
    const where = item.feature.id === null ? [] : [item.feature.id];
    const faults = [...far, ...(valid?.faults ?? [])].map((fault) => ({
      ...fault,
      path: [...where, ...fault.path],
    }));
    this.refuseItem(far.length > 0 ? 'left.far' : 'left.outline', name, faults);
    return null;
  }

  /** Faults of corners that no plan holds: too far away, or too far apart. */
  private farFaults(corners: readonly Vec2[], name: string): readonly Fault[] {
    const far = corners.flat().find((value) => Math.abs(value) > GREATEST_COORDINATE);
    if (far !== undefined)
      return [{ code: 'coordinate.far', path: [], given: Math.round(far), subject: name }];
    return spanFaults(name, corners, []);
  }

  /** Positions as corners; a line that comes back to its beginning is closed and does not repeat it. */
  private lineOf(places: readonly Position[]): { readonly line: readonly Vec2[]; readonly closed: boolean } {
    const line = places.map((place) => this.siteOf(place));
    const [first, last] = [line[0], line.at(-1)];
    if (!first || !last || line.length < 3) return { line, closed: false };
    const closed = Math.hypot(first[0] - last[0], first[1] - last[1]) < SAME_POINT;
    return { line: closed ? line.slice(0, -1) : line, closed: closed && line.length > 3 };
  }

  /** To the millimetre: finer than any map, and two buildings that share a corner go on sharing it. */
  private siteOf([longitude, latitude]: Position): Vec2 {
    const [x, y] = this.site({ longitude, latitude });
    return [Math.round(x * 1000) / 1000 + 0, Math.round(y * 1000) / 1000 + 0];
  }

  private refuseItem(code: string, name: string, faults: readonly Fault[]): void {
    this.left.add(code, name);
    this.faults.push(...faults);
  }

  private idOf({ feature }: Item, sort: string): string {
    const given =
      feature.id !== null && /^(?:way|relation|node)\/\d{1,18}$/.test(feature.id)
        ? feature.id.replace('/', '-')
        : null;
    let id = given ?? `${sort}-${this.ids.size + 1}`;
    while (this.ids.has(id)) id = `${given ?? sort}-${this.ids.size + 1}`;
    this.ids.add(id);
    return id;
  }
}

function levelsOf({ feature }: Item): { readonly base: number; readonly top: number } {
  const vertical = verticalOf(feature.tags, hasRoofSpace(feature.tags));
  return { base: vertical?.base ?? 0, top: vertical?.top ?? Infinity };
}

const SORTS = { building: 'Building', part: 'Building', barrier: 'Barrier', tree: 'Tree' } as const;
