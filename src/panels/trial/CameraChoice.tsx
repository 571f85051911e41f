import { useStore } from 'zustand';
import type { Editor } from '../../editor/editor.ts';
import { Button } from '../../fittings/Button.tsx';
import styles from './trial.module.css';

/** Says what to do where no camera is chosen, or there is none. */
export function CameraChoice({ editor, toModel }: { readonly editor: Editor; toModel(): void }) {
  const plan = useStore(editor.store, (state) => state.plan);
  const cameras = plan.cameraOrder.flatMap((id) => plan.cameras[id] ?? []);
  if (cameras.length === 0)
    return (
      <div className={styles.choose}>
        <h2>Nothing to try yet</h2>
        <p>
          Place a camera in the Model first. Then try another lens, height or tilt here, beside how it stands,
          before anything is drilled.
        </p>
        <Button
          look="main"
          press={() => {
            toModel();
            editor.hold('camera');
          }}
        >
          Place a camera
        </Button>
      </div>
    );
  return (
    <div className={styles.choose}>
      <h2>Which camera?</h2>
      <p>Its other settings are tried beside how it stands. The plan changes only when you keep one.</p>
      <div className={styles.acts}>
        {cameras.map(({ id, name }) => (
          <Button key={id} press={() => editor.select({ kind: 'camera', id })}>
            {name}
          </Button>
        ))}
      </div>
    </div>
  );
}
