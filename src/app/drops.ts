/** Opens a file that is dropped anywhere on the window, and says where, CSS px. */
export function listenToDrops(
  open: (file: File, at: { readonly x: number; readonly y: number }) => Promise<void>,
): () => void {
  const over = (event: DragEvent) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'copy';
  };
  const drop = (event: DragEvent) => {
    const file = event.dataTransfer?.files[0];
    if (!file) return;
    event.preventDefault();
    void open(file, { x: event.clientX, y: event.clientY });
  };
  window.addEventListener('dragover', over);
  window.addEventListener('drop', drop);
  return () => {
    window.removeEventListener('dragover', over);
    window.removeEventListener('drop', drop);
  };
}
