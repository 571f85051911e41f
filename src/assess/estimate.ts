/** What the parts of an assessment cost on a common machine, ms, roughly: by tests/bench. */
const COST = {
  structure: 0.4,
  /** Of laying out, a triangle (for the ground alone, and for rays and shadows too) and a cell. */
  cutFacet: 5e-4,
  facet: 2e-3,
  cell: 2e-5,
  /** Of a camera: at least, a cell and a triangle. */
  camera: 0.5,
  cameraCell: 3e-5,
  cameraFacet: 5e-4,
  causes: 15,
  /** Of the exact areas of the site, a camera. */
  site: 3,
};

/** A scene by size. */
export interface Size {
  readonly facets: number;
  readonly cells: number;
}

/** A scene of which nothing is known yet. */
export const UNKNOWN: Size = { facets: 2_000, cells: 400_000 };

export const buildingCost = (structures: number): number => structures * COST.structure;

export const layingCost = ({ facets, cells }: Size): number => facets * COST.facet + cells * COST.cell;

/** The ground alone, without what rays and shadows need. */
export const groundCost = ({ facets, cells }: Size): number => facets * COST.cutFacet + cells * COST.cell;

/** @param whole cameras to cover, @param causes of how many exact causes are wanted */
export const camerasCost = ({ facets, cells }: Size, whole: number, causes: number): number =>
  whole * (COST.camera + cells * COST.cameraCell + facets * COST.cameraFacet) + causes * COST.causes;

/** The exact areas of a site by so many cameras. */
export const siteCost = (cameras: number): number => cameras * COST.site;
