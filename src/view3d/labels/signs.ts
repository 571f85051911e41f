import type { Spot } from '../sheet.ts';

const SVG = 'http://www.w3.org/2000/svg';

export function svg<K extends keyof SVGElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, string | number>> = {},
): SVGElementTagNameMap[K] {
  const element = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  return element;
}

export const put = (element: Element, attributes: Readonly<Record<string, string | number>>): void => {
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
};

export interface SignState {
  readonly name: string;
  readonly selected: boolean;
  readonly hovered: boolean;
  /** Something stands before it. */
  readonly behind: boolean;
  /** It does not count just now. */
  readonly idle: boolean;
}

/** A long name stands beside a small disc instead of in it. */
export const isWide = (name: string): boolean => name.length > 3;

const BODY = { x: -9, y: -5.5, width: 16, height: 11, rx: 2 } as const;
const WEDGE = 'M7,-3 L13,-6 L13,6 L7,3 Z';
const DISC = 12;

/** A camera: a body with its lens along the axis as it appears, and its name on a disc at the end of a leader. */
export class CameraSign {
  readonly root = svg('g', { class: 'sign' });
  private readonly leaderHalo = svg('line', { class: 'leaderHalo' });
  private readonly leader = svg('line', { class: 'leader' });
  private readonly turned = svg('g');
  private readonly disc = svg('g');
  private readonly text = svg('text', { 'text-anchor': 'middle', dy: '0.35em' });
  private readonly circle = svg('circle', { class: 'disc', r: DISC });

  constructor(name: string) {
    const halo = svg('rect', { ...BODY, class: 'halo' });
    const wedgeHalo = svg('path', { d: WEDGE, class: 'halo' });
    this.turned.append(
      halo,
      wedgeHalo,
      svg('path', { d: WEDGE, class: 'wedge' }),
      svg('rect', { ...BODY, class: 'body' }),
    );
    this.disc.append(this.circle, this.text);
    this.text.textContent = name;
    this.root.append(this.leaderHalo, this.leader, this.turned, this.disc);
  }

  draw(body: Spot, disc: Spot, turn: number, { name, selected, hovered, behind, idle }: SignState): void {
    const run = Math.hypot(disc.x - body.x, disc.y - body.y) || 1;
    const end = {
      x2: disc.x - ((disc.x - body.x) / run) * DISC,
      y2: disc.y - ((disc.y - body.y) / run) * DISC,
    };
    for (const line of [this.leaderHalo, this.leader]) put(line, { x1: body.x, y1: body.y, ...end });
    put(this.turned, { transform: `translate(${body.x} ${body.y}) rotate(${turn})` });
    put(this.disc, { transform: `translate(${disc.x} ${disc.y})` });
    if (this.text.textContent !== name) this.text.textContent = name;
    const wide = isWide(name);
    put(this.circle, { r: wide ? 5 : DISC });
    put(this.text, wide ? { x: 9, 'text-anchor': 'start' } : { x: 0, 'text-anchor': 'middle' });
    put(this.root, {
      'data-selected': String(selected),
      'data-hovered': String(hovered),
      'data-behind': String(behind),
      'data-idle': String(idle),
      'data-wide': String(wide),
    });
  }
}

/** The cross in which the selected camera's axis ends. */
export function crossSign(): { readonly root: SVGGElement; draw(at: Spot | null): void } {
  const root = svg('g', { class: 'cross' });
  const d = 'M-7,-7 L7,7 M-7,7 L7,-7';
  root.append(svg('path', { d, class: 'crossCasing' }), svg('path', { d, class: 'crossLine' }));
  return {
    root,
    draw(at) {
      root.style.display = at ? '' : 'none';
      if (at) put(root, { transform: `translate(${at.x} ${at.y})` });
    },
  };
}

/** The ring around a spot that is asked about. */
export function pinSign(): { readonly root: SVGGElement; draw(at: Spot | null): void } {
  const root = svg('g');
  root.append(svg('circle', { r: 6, class: 'pinHalo' }), svg('circle', { r: 6, class: 'pin' }));
  return {
    root,
    draw(at) {
      root.style.display = at ? '' : 'none';
      if (at) put(root, { transform: `translate(${at.x} ${at.y})` });
    },
  };
}

/** The place that faces look to, with its name. */
export function lookedSign(): { readonly root: SVGGElement; draw(at: Spot | null): void } {
  const root = svg('g', { class: 'looked' });
  const text = svg('text', { x: 11, dy: '0.35em' });
  text.textContent = 'Faces look here';
  root.append(
    svg('circle', { r: 6, class: 'pinHalo' }),
    svg('circle', { r: 6, class: 'pin' }),
    svg('circle', { r: 2, class: 'lookedDot' }),
    text,
  );
  return {
    root,
    draw(at) {
      root.style.display = at ? '' : 'none';
      if (at) put(root, { transform: `translate(${at.x} ${at.y})` });
    },
  };
}

/** The outline of a face that would carry a camera. */
export function faceOutline(): { readonly root: SVGGElement; draw(corners: readonly Spot[]): void } {
  const root = svg('g');
  const [casing, line] = [svg('polygon', { class: 'faceCasing' }), svg('polygon', { class: 'faceLine' })];
  root.append(casing, line);
  return {
    root,
    draw(corners) {
      root.style.display = corners.length < 3 ? 'none' : '';
      for (const shape of [casing, line])
        put(shape, { points: corners.map(({ x, y }) => `${x},${y}`).join(' ') });
    },
  };
}
