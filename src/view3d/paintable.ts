/** Whether a canvas is kept out of sight: then nothing need be painted into it. */
export const isHidden = (canvas: HTMLCanvasElement): boolean =>
  'checkVisibility' in canvas && !canvas.checkVisibility({ visibilityProperty: true });

/** Calls back when a canvas has to be painted anew: its context is back, or the window shows it again. Returns how to stop. */
export function whenPaintable(canvas: HTMLCanvasElement, paint: () => void): () => void {
  canvas.addEventListener('webglcontextrestored', paint);
  const region = canvas.closest('[data-look]');
  const shown = new MutationObserver(paint);
  if (region) shown.observe(region, { attributes: true, attributeFilter: ['data-look'] });
  return () => {
    canvas.removeEventListener('webglcontextrestored', paint);
    shown.disconnect();
  };
}
